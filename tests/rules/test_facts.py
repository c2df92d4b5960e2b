from __future__ import annotations

import pytest

from rules.facts import Facts
from rules.method import graph
from rules.recipe import Duration, Oven, Recipe, Step
from tests.build import amount, doing, items, line, minutes, recipe, step


def facts(of: Recipe) -> Facts:
    return Facts(of, items(of), graph(of))


DOUGH = (
    line("flour", amount(500, "gram")),
    line("water", amount(300, "gram")),
    line("active dry yeast", amount(7, "gram")),
    line("egg", amount(1)),
    line("butter", amount(50, "gram")),
)
do = doing(*DOUGH)


def test_hydration_is_water_per_flour_by_weight() -> None:
    of = recipe(*DOUGH[:3], steps=(step(do("mix", "flour", "water", "active dry yeast", vessel="bowl")),))
    assert facts(of).hydration == pytest.approx(0.6, abs=0.005)


def test_an_egg_brings_three_quarters_of_its_weight() -> None:
    of = recipe(*DOUGH[:1], DOUGH[3], steps=(step(do("mix", "flour")),))
    egg = items(of)[1]
    assert egg.grams is not None
    assert facts(of).hydration == pytest.approx(0.7615 * egg.grams / 500, rel=0.02)


def test_an_unknown_amount_of_liquid_leaves_the_hydration_unknown() -> None:
    assert facts(recipe(line("flour", amount(500, "gram")), line("milk"))).hydration is None


def test_the_water_that_boils_pasta_is_not_in_the_dough() -> None:
    foods = (line("flour", amount(200, "gram")), line("egg", amount(2)), line("water", amount(4, "liter")))
    mix = doing(*foods)
    of = recipe(
        *foods,
        steps=(step(mix("mix", "flour", "egg", vessel="bowl")), step(mix("boil", "water", vessel="pot"))),
    )
    assert (facts(of).hydration or 0) < 1


def test_flour_stirred_into_a_hot_pot_is_no_body() -> None:
    foods = (
        line("butter", amount(100, "gram")),
        line("flour", amount(100, "gram")),
        line("milk", amount(1, "liter")),
    )
    cook = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(
                cook("melt", "butter", vessel="saucepan"),
                cook("mix", "flour", word="stir in"),
                cook("simmer", "milk"),
            ),
        ),
    )
    assert facts(of).flour_g == 0


@pytest.mark.parametrize(
    ("title", "main"),
    [("Trout with bean soup", "trout"), ("Beef in red wine", "beef"), ("Apple pie", "apple pie"), (None, "")],
)
def test_the_main_title_ends_where_the_company_begins(title: str | None, main: str) -> None:
    assert facts(recipe(title=title)).main_title == main


def test_a_dish_is_baked_by_what_most_of_it_meets_last() -> None:
    foods = (
        line("chicken breast", amount(1, "pound")),
        line("bulgur", amount(1, "cup")),
        line("spinach", amount(4, "ounce")),
    )
    cook = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(cook("boil", "bulgur", vessel="pot")),
            step(cook("brown", "chicken breast", vessel="skillet"), cook("bake", things=("chicken",))),
            step(cook("add", "spinach", vessel="pot")),
        ),
    )
    assert facts(of).baked_share < 0.5


def test_an_oven_is_known_by_a_figure_a_deed_or_a_tin() -> None:
    assert facts(recipe(oven=Oven(temp_f=350))).oven
    assert facts(recipe(*DOUGH, steps=(step(do("bake")),))).oven
    assert facts(recipe(*DOUGH, steps=(step(do("pour", "flour", vessel="cake tin")),))).oven
    assert not facts(recipe(*DOUGH, steps=(step(do("fry", vessel="pan")),))).oven


def test_oil_brought_to_a_figure_is_a_bath() -> None:
    foods = (line("oil"), line("chicken wings", amount(2, "pound")))
    cook = doing(*foods)
    deep = recipe(*foods, steps=(step(cook("heat", "oil", temp_f=375.0), cook("fry", "chicken wings")),))
    shallow = recipe(*foods, steps=(step(cook("heat", "oil"), cook("fry", "chicken wings")),))
    assert facts(deep).deep
    assert not facts(shallow).deep


def test_dry_beans_count_as_they_weigh_when_cooked() -> None:
    dry = facts(recipe(line("dry pinto beans", amount(1, "pound"), food="pinto bean, dry")))
    assert dry.beans_g == pytest.approx(453.6 * 2.4, rel=0.01)


def test_times_are_summed_by_kind() -> None:
    steps = (Step(line=1, text="", durations=(Duration(what="simmer", low_min=10, high_min=20), minutes(5))),)
    assert facts(recipe(steps=steps)).minutes("simmer") == 20


@pytest.mark.parametrize(
    ("water", "sense"),
    [
        (4000, "the flour only thickens it"),
        (600, "it pours"),
        (400, "between a batter and a dough"),
        (250, "a dough"),
    ],
)
def test_the_sense_of_a_hydration_is_said_in_words(water: float, sense: str) -> None:
    of = recipe(line("flour", amount(500, "gram")), line("water", amount(water, "gram")))
    assert facts(of).sense == sense


def test_flour_in_ten_times_its_water_thickens_and_is_no_body() -> None:
    thin = recipe(line("flour", amount(120, "gram")), line("milk", amount(1.4, "kilogram")))
    batter = recipe(line("flour", amount(120, "gram")), line("milk", amount(400, "gram")))
    assert not facts(thin).has_body
    assert facts(batter).has_body
