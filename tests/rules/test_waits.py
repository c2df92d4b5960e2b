from __future__ import annotations

import pytest

from rules.recipe import Recipe
from rules.waits import figure, pauses, rest_after, stage_after, waits
from tests.build import act, line, minutes, recipe, step

BREAD, MILK, SAUSAGE = line("bread"), line("milk"), line("sausage")
STRATA = recipe(
    SAUSAGE,
    BREAD,
    MILK,
    steps=(
        step(act("brown", 0, vessel="skillet")),
        step(act("add", 1, things=("sausage",)), act("pour", 2)),
        step(act("chill", minutes=minutes(60, what="chill"))),
        step(act("bake", minutes=minutes(45, 55, what="bake"))),
        step(act("rest", minutes=minutes(10, what="rest"))),
    ),
    family="casserole or layered bake",
)


def standing(low: float, high: float | None = None) -> Recipe:
    """A pie that is baked and then cooled."""
    return recipe(
        line("flour"),
        steps=(
            step(act("bake", 0, minutes=minutes(40, what="bake"))),
            step(act("cool", minutes=minutes(low, high, what="rest"))),
        ),
    )


def test_a_wait_knows_what_waits_and_for_which_fire() -> None:
    chill, rest = waits(STRATA)
    assert (chill.what, chill.low_min, chill.fire) == ("chill", 60, "bake")
    assert chill.cooked
    assert {0, 1} <= chill.foods
    assert (rest.what, rest.fire) == ("rest", None)


def test_a_dish_stands_as_long_as_its_method_says_and_no_longer_than_a_day_has_room_for() -> None:
    assert rest_after(STRATA) == 10
    assert rest_after(standing(120)) == 120
    assert rest_after(standing(600)) == figure("longest_rest_min")


def test_nothing_stands_after_a_fire_that_never_was() -> None:
    salad = recipe(line("cabbage"), steps=(step(act("rest", 0, minutes=minutes(30, what="rest"))),))
    assert rest_after(salad) == 0


def test_a_rest_without_a_deed_counts_when_it_stands_after_the_last_fire() -> None:
    rice = recipe(
        line("rice"),
        steps=(
            step(act("simmer", 0, minutes=minutes(15, what="simmer"))),
            step(act("mix")),
        ),
    )
    told = rice.steps[1].__class__(
        line=1, text="Off the heat, 10 min.", durations=(minutes(10, what="rest"),)
    )
    assert rest_after(recipe(line("rice"), steps=(rice.steps[0], told))) == 10
    assert rest_after(recipe(line("rice"), steps=(told, rice.steps[0]))) == 0


def test_what_was_browned_and_then_chills_pauses_before_its_bake() -> None:
    assert pauses(STRATA, ["light", "brown", "bake"]) == {2: 60 + figure("pause_work_min")}


@pytest.mark.parametrize("kinds", [["light", "warm", "bake"], ["bake"], []])
def test_nothing_pauses_before_the_first_fire(kinds: list[str]) -> None:
    assert pauses(STRATA, kinds) == {}  # type: ignore[arg-type]


def test_food_waits_for_the_stage_of_its_own_kind() -> None:
    (chill, _) = waits(STRATA)
    assert stage_after(chill, ["light", "brown", "simmer", "bake", "bake"]) == 3
    assert stage_after(chill, ["light", "fry"]) is None


def test_skewers_in_water_are_no_food_that_waits() -> None:
    soaked = recipe(
        line("water"), line("chicken"), steps=(step(act("soak", 0, minutes=minutes(30, what="rest"))),)
    )
    assert waits(soaked) == ()
