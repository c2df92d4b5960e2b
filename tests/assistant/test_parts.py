"""The parts of a plan in words."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from assistant.show import parts
from rules.circumstances import Day
from rules.plan import Caution, FatUse, PackItem, Plan, PotPlan, Purchase, Stage
from rules.recipe import Amount, Package


@pytest.mark.parametrize(
    ("use", "told"),
    [
        (FatUse(ingredient=0, goes="cut in at home", when="while both are cold"), "butter is cut into the flour at home, while both are cold"),
        (FatUse(ingredient=0, goes="stirred in", when="together with the milk"), "butter is stirred in together with the milk"),
        (FatUse(ingredient=0, goes="hot pot first"), "butter goes into the hot pot first"),
    ],
)  # fmt: skip
def test_a_fat_is_told_once_with_its_moment(use: FatUse, told: str) -> None:
    assert parts.fat_said(use, "butter") == told


def test_a_caution_that_opens_with_its_heading_says_it_once() -> None:
    raw = Caution(id="raw-meat", text="Raw meat: beef. It travels sealed.", source="x")
    assert parts.caution(raw) == ("Raw meat: beef", "It travels sealed.")
    other = Caution(id="two-hour", text="Food that spoils: beef. It stays cold.", source="x")
    assert parts.caution(other) == ("Two hours, no longer", "Food that spoils: beef. It stays cold.")
    short = Caution(id="raw-meat", text="Raw meat: beef.", source="x")
    assert parts.caution(short) == ("Raw meat", "Raw meat: beef.")


@pytest.mark.parametrize(
    ("buy", "need", "over", "told"),
    [
        ("3 cans (15 ounces)", "3 cans of 15 ounces", None, "3 cans (15 ounces)"),
        ("6 carrots", "6", None, "6 carrots"),
        ("1 small jar", "as the recipe leaves it open", None, "1 small jar, as the recipe leaves it open"),
        ("16 carrots", "6", None, "16 carrots, for 6"),
        ("1 pint (2 cups)", "1 1/2 cups", "1/2 cup", "1 pint (2 cups), for 1 1/2 cups; 1/2 cup left over"),
    ],
)
def test_what_is_wanted_is_told_where_something_else_is_bought(
    buy: str, need: str, over: str | None, told: str
) -> None:
    assert parts.bought(Purchase(food="x", buy=buy, need=need, left_over=over)) == told


def test_the_first_facts_are_people_pot_fuel_and_the_meal(river_plan: Plan) -> None:
    day = Day(people=9, eat="2027-07-03T18:30")
    assert parts.facts(river_plan, day) == [
        "for 9",
        "a 12-inch pot (6 quarts)",
        "half full",
        "54 briquettes",
        "first coals 17:05",
        "we eat Sat 3 Jul 18:30",
    ]


def test_servings_stand_for_people_whom_nobody_counted(river_plan: Plan) -> None:
    facts = parts.facts(replace(river_plan, people=None, pot=None, heat=None, scale=2.0), Day())
    assert facts == ["2 times the recipe"]


def test_several_pots_say_that_the_counts_are_for_each(river_plan: Plan) -> None:
    assert not parts.per_pot(river_plan)
    two = replace(river_plan, pot=PotPlan(diameter_in=12, quarts=6, count=2))
    assert parts.per_pot(two).startswith("The counts are for each of the two pots,")


def test_what_is_packed_is_told_with_size_and_preparation_and_not_as_divided(river_plan: Plan) -> None:
    beans = replace(river_plan.recipe.ingredients[0], name="beans", state=("white",), prep="divided, drained")
    plan = replace(river_plan, recipe=replace(river_plan.recipe, ingredients=(beans,)))
    cans = Amount(low=2, high=2, unit="can", package=Package(low=15, high=15, unit="ounce"))
    told = parts.packed(plan, PackItem(ingredient=0, share=1, amount=cans))
    assert told == "2 cans of white beans (15 ounces each), drained"
    limes = replace(beans, name="limes", state=(), prep="grated zest and juice")
    plan_of_limes = replace(plan, recipe=replace(plan.recipe, ingredients=(limes,)))
    two = PackItem(ingredient=0, share=1, amount=Amount(low=2, high=2))
    assert parts.packed(plan_of_limes, two) == "grated zest and juice of 2 limes"
    assert parts.packed(plan, PackItem(ingredient=0, share=0.5)) == "part of the white beans, drained"


def test_the_rhythm_of_a_stage_names_turns_and_the_first_look() -> None:
    stage = Stage(kind="bake", top=17, under=8, turn_every_min=10, first_look_min=20, starts_at_min=-60)
    turn, look = parts.rhythm(stage, Day(eat="18:30"))
    assert turn.startswith("Every 10 minutes turn the lid")
    assert look == "First look under the lid after 20 minutes (17:50)."
