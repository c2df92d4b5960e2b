"""Answers about a whole trip: every side of it, out of its plan, and the figure first."""

from __future__ import annotations

from functools import cache

import pytest

from assistant.chat.beyond.trip_answers import MOST_LINES, answer
from assistant.commands.makers import reader
from assistant.trip.file import trip_of
from rules.trip.model import TripPlan
from rules.trip.plan import plan
from tests.talks import CORPUS


@cache
def weekend() -> TripPlan:
    return plan(trip_of(str(CORPUS / "river-weekend.toml"), reader()))


@pytest.mark.parametrize(
    "about", ["plan", "shopping", "packing", "cold", "coals", "home", "calendar", "diets", "pots"]
)
def test_every_side_of_the_weekend_has_an_answer_of_bounded_length(about: str) -> None:
    lines = answer(about, weekend()).splitlines()
    assert lines
    assert len(lines) <= MOST_LINES + 1
    assert all("{" not in line for line in lines)


def test_every_food_of_the_joined_list_is_on_the_shopping_answer() -> None:
    told = answer("shopping", weekend())
    assert [line.food for line in weekend().shopping if line.food not in told] == []


def test_the_charcoal_is_told_with_every_lighting() -> None:
    total = weekend().fuel
    assert total is not None
    told = answer("coals", weekend())
    assert told.startswith(f"Bring {total.briquettes} briquettes")
    assert told.count("\n- ") == len(total.lightings)


def test_who_must_mind_a_dish_is_told_with_the_plan() -> None:
    told = answer("plan", weekend())
    minded = [one for one in weekend().diets if one.verdict != "fits"]
    assert minded
    assert all(one.said in told for one in minded)


def test_every_warning_stands_in_the_plan() -> None:
    told = answer("plan", weekend())
    assert all(f"Mind: {one}" in told for one in weekend().warnings)


def test_a_trip_without_coolers_coals_or_diets_says_so() -> None:
    bare = TripPlan(name="Bare", leave="2027-07-02T09:00", arrive="2027-07-02T09:00")
    assert "kept cold" in answer("cold", bare)
    assert "needs coals" in answer("coals", bare)
    assert "Nobody was said" in answer("diets", bare)
