from __future__ import annotations

import pytest

from rules.circumstances import Day
from tests.build import amount, doing, kinds, line, mates, minutes, packed, reasons, recipe, step

COBBLER = (
    line("blueberries", amount(4, "cup")),
    line("sugar", amount(1, "cup")),
    line("lemon juice", amount(1, "tablespoon")),
    line("flour", amount(1, "cup")),
    line("baking powder", amount(1, "teaspoon")),
    line("milk", amount(1, "cup")),
    line("butter", amount(0.5, "cup")),
    line("cornstarch", amount(1, "tablespoon")),
)
do = doing(*COBBLER)
RIVER_COBBLER = recipe(
    *COBBLER,
    steps=(
        step(do("mix", "blueberries", ("sugar", 0.25), "lemon juice", "cornstarch", vessel="bowl")),
        step(do("melt", "butter", vessel="baking dish")),
        step(do("mix", "flour", ("sugar", 0.75), "baking powder", "milk", vessel="another bowl")),
        step(do("pour", things=("batter", "butter")), do("bake", minutes=minutes(45))),
    ),
)


def test_sugar_in_two_places_is_divided_between_fruit_and_flour() -> None:
    packs = packed(RIVER_COBBLER, "batter bake")
    assert kinds(packs, RIVER_COBBLER)["sugar"] == {"dry mix", "wet mix"}
    shares = [item.share for pack in packs for item in pack.items if item.ingredient == 1]
    assert sorted(shares) == [0.25, 0.75]


def test_fruit_rides_with_its_sugar_and_juice_and_without_its_starch() -> None:
    packs = packed(RIVER_COBBLER, "batter bake")
    assert mates(packs, RIVER_COBBLER, "blueberries") == [{"blueberries", "sugar", "lemon juice"}]
    assert kinds(packs, RIVER_COBBLER)["cornstarch"] == {"dry mix"}


@pytest.mark.parametrize(
    ("day", "travels"), [(Day(), "frozen"), (Day(freezer=False), "cool"), (Day(trip_hours=3), "cool")]
)
def test_the_fruit_bag_is_frozen_where_there_is_a_freezer_and_a_way_to_go(day: Day, travels: str) -> None:
    packs = packed(RIVER_COBBLER, "batter bake", day)
    fruit = next(pack for pack in packs if pack.kind == "wet mix")
    assert fruit.travels == travels


def test_berries_alone_are_washed_and_bagged_apart_from_the_flour() -> None:
    of = recipe(
        *COBBLER,
        steps=(step(do("mix", "flour", "milk", vessel="bowl"), do("fold", "blueberries"), do("bake")),),
    )
    packs = packed(of, "batter bake")
    assert mates(packs, of, "blueberries") == [{"blueberries"}]
    assert kinds(packs, of)["blueberries"] == {"prepped"}
    assert reasons(of, "batter bake", "blueberries") == {"prepped.fruit"}


GLAZE = (
    line("pork belly", amount(1, "pound")),
    line("ketchup", amount(2, "tablespoon")),
    line("honey", amount(2, "tablespoon")),
    line("brown sugar", amount(1, "tablespoon")),
    line("cider vinegar", amount(1, "tablespoon")),
    line("tomato sauce", amount(1, "can")),
)
glaze = doing(*GLAZE)


def test_sauces_of_one_breath_share_a_bottle_with_their_sugar() -> None:
    foods = GLAZE[:4]
    brush = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(
                brush("roast", "pork belly"), brush("coat", "ketchup", "honey", "brown sugar", word="brush")
            ),
        ),
    )
    packs = packed(of, "roast")
    assert mates(packs, of, "ketchup") == [{"ketchup", "honey", "brown sugar"}]


def test_sauces_of_two_moments_are_two_and_stay_in_their_bottles() -> None:
    foods = (GLAZE[0], GLAZE[1], GLAZE[4])
    cook = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(cook("brown", "pork belly", vessel="pan"), cook("add", "ketchup")),
            step(cook("simmer", minutes=minutes(20)), cook("mix", "cider vinegar", word="stir in")),
        ),
    )
    packs = packed(of, "stew or braise")
    assert kinds(packs, of)["ketchup"] == kinds(packs, of)["cider vinegar"] == {"pantry"}


def test_a_sauce_that_no_step_names_joins_the_bottle_of_its_neighbour() -> None:
    foods = (GLAZE[0], GLAZE[1], GLAZE[2])
    cook = doing(*foods)
    of = recipe(*foods, steps=(step(cook("brown", "pork belly", vessel="pan"), cook("add", "ketchup")),))
    assert mates(packed(of, "stew or braise"), of, "honey") == [{"ketchup", "honey"}]


def test_a_whole_can_is_never_poured_into_a_bottle() -> None:
    of = recipe(
        *GLAZE,
        steps=(
            step(
                glaze("brown", "pork belly", vessel="pan"), glaze("add", "ketchup", "honey", "tomato sauce")
            ),
        ),
    )
    packs = packed(of, "stew or braise")
    assert kinds(packs, of)["tomato sauce"] == {"pantry"}


SALAD = (
    line("olive oil", amount(3, "tablespoon")),
    line("red wine vinegar", amount(1, "tablespoon")),
    line("salt", amount(0.5, "teaspoon")),
    line("garlic", amount(1, "clove"), prep="minced"),
    line("chickpeas", amount(1, "can")),
    line("onion", amount(1), prep="sliced"),
)
toss = doing(*SALAD)


def test_a_dressing_is_shaken_at_home_with_what_dissolves_and_what_is_minced() -> None:
    of = recipe(*SALAD, steps=(step(toss("mix", "olive oil", "red wine vinegar", "salt", "garlic", vessel="bowl")),
                               step(toss("add", "chickpeas", "onion"))))  # fmt: skip
    packs = packed(of, "no cook")
    assert mates(packs, of, "olive oil") == [{"olive oil", "red wine vinegar", "salt", "garlic"}]
    assert kinds(packs, of)["chickpeas"] == {"pantry"}
    assert kinds(packs, of)["onion"] == {"prepped"}


def test_a_dressing_that_no_step_takes_apart_is_one_bottle_too() -> None:
    of = recipe(
        *SALAD, steps=(step(toss("mix", things=("dressing ingredients",)), toss("add", "chickpeas")),)
    )
    packs = packed(of, "no cook")
    assert mates(packs, of, "olive oil")[0] >= {"olive oil", "red wine vinegar", "salt"}


def test_milk_and_lemon_are_never_bottled_together() -> None:
    foods = (
        line("milk", amount(1, "cup")),
        line("lemon juice", amount(2, "tablespoon")),
        line("vanilla", amount(1, "teaspoon")),
    )
    mix = doing(*foods)
    of = recipe(*foods, steps=(step(mix("mix", "milk", "lemon juice", "vanilla", vessel="jug")),))
    packs = packed(of, "no cook")
    assert mates(packs, of, "milk") == [{"milk"}]


def test_creamed_butter_and_sugar_are_one_pack_and_the_egg_is_not_in_it() -> None:
    foods = (
        line("butter", amount(1, "cup"), state=("softened",)),
        line("sugar", amount(1, "cup")),
        line("eggs", amount(2)),
        line("flour", amount(2, "cup")),
        line("baking soda", amount(1, "teaspoon")),
    )
    mix = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(mix("cream", "butter", "sugar"), mix("beat", "eggs", word="beat in")),
            step(mix("mix", "flour", "baking soda", word="stir in"), mix("bake")),
        ),
    )
    packs = packed(of, "cookie")
    assert mates(packs, of, "butter") == [{"butter", "sugar"}]
    assert kinds(packs, of)["butter"] == {"prepped"}
    assert kinds(packs, of)["eggs"] == {"fresh"}
