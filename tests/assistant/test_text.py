"""What the cook sees: the first screen, the width, the drawing, colours only where they belong."""

from __future__ import annotations

import re

import pytest
from msgspec.structs import replace

from assistant.show.forms import Look
from assistant.show.kinds import Reasons
from assistant.show.text import coals_text, plan_text, recipe_text, why_text
from rules.circumstances import Day
from rules.coals.ask import coals
from rules.plan import Heat, Moment, Plan, PotPlan, Purchase, Stage
from rules.recipe import Recipe

EVENING = Day(eat="18:30")
ANSI = re.compile(r"\x1b\[[0-9;]*m")


def test_the_first_screen_holds_what_is_needed_with_a_lighter_in_the_hand(river_plan: Plan) -> None:
    """A terminal of 24 lines shows these before anything is scrolled."""
    screen = "\n".join(plan_text(river_plan, Look(day=EVENING)).splitlines()[:24])
    for needed in (
        "Gravel Bar Peach Cobbler",
        "for 9",
        "a 12-inch pot (6 quarts)",
        "we eat 18:30",
        "54 briquettes",
        "17 on the lid",
        "8 under",
        "bake at 350 °F",
        "45 to 50 minutes",
        "first look after 30 min",
        "every 10 min",
        "17:05",
        "1 thing was left open",
    ):
        assert needed in screen


def test_every_part_of_a_plan_is_told(river_plan: Plan) -> None:
    told = " ".join(plan_text(river_plan, Look(day=EVENING)).split())
    for part in (
        "dry-1 Cobbler, dry no cooling; 1-gallon zipper bag 1 1/2 cups flour; ",
        "Up to a month before.",
        "butter into the hot pot first, when the pot is hot",
        "1. Whisk flour and baking powder, bag them.",
        "2. Pour the batter over it",
        "One day before 18:30 Freeze the peaches flat. The day of the meal 17:05 Light 25 briquettes.",
        "Freeze at home: Cobbler, peaches.",
        "Thawed in the cooler after 9 to 14 hours.",
        "Ice to bring: 9.9 lb.",
        "Look at home first flour a 2 lb bag, for 1 1/2 cups; 5 cups left over",
        "camp 54 briquettes; a chimney",
        "LABELS what to write on the bags COBBLER, DRY add 1 1/2 cups milk",
        "Carbon monoxide. Coals give off carbon monoxide: outside only.",
        "Milk and wheat.",
        "Read the label of the flour: it may hold soybeans.",
        "Which pot comes along? Taken: a 12-inch one.",
        "Bring 54 briquettes",
        "2 reasons stand behind this",
    ):
        assert part in told


def test_repeated_turns_are_one_line(river_plan: Plan) -> None:
    turns = tuple(Moment(at_min=minute, do="Turn the lid") for minute in (-50, -40, -30, -20))
    told = plan_text(replace(river_plan, timeline=turns), Look(day=EVENING))
    assert told.count("Turn the lid") == 1
    assert "17:40  Turn the lid. Then every 10 minutes until 18:10." in told


def test_without_a_clock_the_day_counts_from_the_meal(river_plan: Plan) -> None:
    told = plan_text(replace(river_plan, timeline=(Moment(at_min=-85, do="Light up"),)), Look())
    assert "THE DAY   counted to the meal\n  85 min before  Light up.\n" in told


def test_what_is_bought_as_it_is_wanted_is_told_once(river_plan: Plan) -> None:
    can = Purchase(food="corn", buy="1 can (15 ounces)", need="1 can of 15 ounces")
    told = plan_text(replace(river_plan, shopping=(can,)), Look())
    assert "  corn  1 can (15 ounces)\n" in told


@pytest.mark.parametrize("width", [40, 60, 80])
def test_no_line_is_wider_than_the_page(river_plan: Plan, width: int) -> None:
    lines = plan_text(river_plan, Look(width=width, day=EVENING)).splitlines()
    assert [line for line in lines if len(line) > width] == []


def test_colour_changes_no_letter(river_plan: Plan) -> None:
    plain = plan_text(river_plan, Look(day=EVENING))
    coloured = plan_text(river_plan, Look(day=EVENING, color=True))
    assert "\x1b" not in plain
    assert "\x1b" in coloured
    assert [line.rstrip() for line in ANSI.sub("", coloured).splitlines()] == plain.splitlines()


def test_the_drawing_has_a_sign_for_every_briquette(river_plan: Plan) -> None:
    assert plan_text(river_plan, Look()).count("●") == 17 + 8


def test_a_plan_without_coals_says_why(river_plan: Plan) -> None:
    cold = replace(river_plan, heat=None, pot=None, no_coals_because="Nothing is cooked.")
    told = plan_text(cold, Look())
    assert "Nothing is cooked." in told
    assert "●" not in told


def test_two_pots_say_that_the_coals_are_for_each(river_plan: Plan) -> None:
    two = replace(river_plan, pot=PotPlan(diameter_in=12, quarts=6, count=2))
    told = plan_text(two, Look())
    assert "two 12-inch pots (6 quarts each)" in told
    assert "The counts are for each of the two pots" in told


def test_metric_cooks_read_celsius_and_kilograms(river_plan: Plan) -> None:
    told = plan_text(river_plan, Look(day=Day(units="metric")))
    assert "bake at 177 °C" in told
    assert "1.3 kg" in told


def test_markup_and_colour_words_in_a_recipe_stay_text(river_plan: Plan, river_recipe: Recipe) -> None:
    odd = replace(river_plan, recipe=replace(river_recipe, title="[bold red]Pie[/] :fire: \x1b[31m"))
    assert "[bold red]Pie[/] :fire:" in plan_text(odd, Look())


def test_a_plan_of_one_stage_without_pattern_is_drawn_too(river_plan: Plan) -> None:
    assert river_plan.heat
    stage = Stage(kind="simmer", top=4, under=9)
    bare = replace(river_plan, heat=Heat(stages=(stage,), fuel=river_plan.heat.fuel))
    assert plan_text(bare, Look()).count("●") == 13


def test_a_recipe_shows_what_was_not_understood(river_recipe: Recipe) -> None:
    told = recipe_text(river_recipe, Look())
    assert "1 1/2 cups" in told
    assert "line 3" in told
    assert "As made on the gravel bar." in told


def test_a_coal_count_is_drawn_and_explained() -> None:
    told = coals_text(coals(12, 350, "bake"), Look())
    assert told.startswith("25 briquettes: 17 on the lid, 8 under")
    assert told.count("●") == 25
    assert "WHY" in told
    assert max(map(len, told.splitlines())) <= 80


def test_reasons_stand_with_their_source(river_plan: Plan) -> None:
    told = " ".join(why_text(Reasons(about="baking powder", why=river_plan.why[:1]), Look()).split())
    assert "Baking powder rides dry: once wet it spends its gas within minutes." in told
    assert "common practice, no source [dry.leavener]" in told
