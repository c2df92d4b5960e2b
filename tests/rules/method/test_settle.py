from __future__ import annotations

import pytest

from rules.method import Taking, graph
from rules.recipe import Recipe
from tests.build import amount, doing, line, minutes, recipe, step

CHICKEN = (
    line("chicken thighs", amount(2, "pound")),
    line("olive oil", amount(2, "tablespoon")),
    line("lemon juice", amount(2, "tablespoon")),
    line("paprika", amount(1, "teaspoon")),
    line("onion", amount(1)),
    line("flour", amount(0.5, "cup")),
)
do = doing(*CHICKEN)


def taking(of: Recipe, index: int) -> Taking:
    return graph(of).moments(index)[0]


def test_butter_melted_for_a_batter_is_cold_and_for_a_pan_is_hot() -> None:
    foods = (line("butter", amount(1, "stick")), line("sugar", amount(1, "cup")), line("onion", amount(1)))
    melt = doing(*foods)
    batter = recipe(*foods, steps=(step(melt("melt", "butter"), melt("add", "sugar"), melt("bake")),))
    pan = recipe(*foods, steps=(step(melt("melt", "butter"), melt("add", "onion"), melt("saute")),))
    assert not taking(batter, 0).hot
    assert taking(pan, 0).hot
    assert taking(pan, 2).hot


def test_a_pot_that_is_filled_cold_and_boiled_is_hot() -> None:
    of = recipe(*CHICKEN, steps=(step(do("add", "chicken thighs", "onion", vessel="large pot"), do("boil")),))
    assert taking(of, 0).hot


def test_what_enters_between_two_spells_of_cooking_enters_together() -> None:
    of = recipe(
        *CHICKEN,
        steps=(
            step(do("heat", "olive oil", vessel="pot"), do("brown", "chicken thighs")),
            step(do("add", "onion"), do("add", "paprika"), do("simmer", minutes=minutes(20))),
            step(do("add", "lemon juice")),
        ),
    )
    assert taking(of, 4).group == taking(of, 3).group
    assert taking(of, 2).group != taking(of, 3).group


@pytest.mark.parametrize("deed", ["marinate", "chill"])
def test_raw_meat_that_waits_with_its_seasoning_marinates(deed: str) -> None:
    of = recipe(
        *CHICKEN,
        steps=(
            step(
                do("mix", "chicken thighs", "lemon juice", "paprika", vessel="bowl"),
                do(deed, minutes=minutes(60)),  # type: ignore[arg-type]
            ),
            step(do("heat", "olive oil", vessel="pan"), do("fry", things=("chicken",))),
        ),
    )
    assert taking(of, 3).marinade
    assert not taking(of, 1).marinade


def test_meat_that_rests_after_the_oven_never_marinated() -> None:
    of = recipe(
        *CHICKEN,
        steps=(
            step(
                do("mix", "chicken thighs", "paprika", vessel="roasting pan"),
                do("roast", minutes=minutes(60)),
            ),
            step(do("rest", minutes=minutes(15))),
        ),
    )
    assert not taking(of, 3).marinade


def test_what_is_sprinkled_on_and_then_stirred_is_mixed_in() -> None:
    foods = (
        line("milk", amount(1, "cup")),
        line("baking soda", amount(1, "teaspoon")),
        line("flour", amount(2, "cup")),
    )
    mix = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(
                mix("mix", "milk", "flour", vessel="bowl"),
                mix("top", "baking soda", word="sprinkle"),
                mix("mix"),
            ),
        ),
    )
    assert not taking(of, 1).laid
    assert taking(of, 1).group == taking(of, 2).group


def test_what_is_sprinkled_on_at_the_end_lies_on_top() -> None:
    of = recipe(
        *CHICKEN,
        steps=(step(do("mix", "flour", "lemon juice", vessel="bowl"), do("bake"), do("top", "paprika")),),
    )
    assert taking(of, 3).laid


def test_shares_add_up_to_all_of_it() -> None:
    of = recipe(
        *CHICKEN,
        steps=(
            step(do("mix", ("flour", 0.5), "paprika", vessel="bowl")),
            step(do("mix", ("flour", 0.2), vessel="small bowl")),
        ),
    )
    assert sum(one.share for one in graph(of).moments(5)) == pytest.approx(1)
