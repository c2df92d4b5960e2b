"""Figures in words."""

from __future__ import annotations

import pytest

from assistant.show import words
from rules.circumstances import Day
from rules.plan import Minutes, Plan, PotPlan, Stage


@pytest.mark.parametrize(
    ("low", "high", "told"),
    [(1, 1, "1 minute"), (25, 30, "25 to 30 minutes"), (131, 131, "2 h 11 min"), (180, 240, "3 h to 4 h")],
)
def test_minutes_are_told_as_people_say_them(low: float, high: float, told: str) -> None:
    assert words.minutes(Minutes(low=low, high=high)) == told


@pytest.mark.parametrize(
    ("at_min", "eat", "told"),
    [
        (-75, None, "75 min before"),
        (0, None, "at the meal"),
        (20, None, "20 min after"),
        (-4320, None, "3 days before"),
        (-75, "18:30", "17:15"),
        (-1440, "18:30", "18:30 the day before"),
    ],
)
def test_a_moment_is_a_clock_time_where_the_meal_has_one(at_min: float, eat: str | None, told: str) -> None:
    assert words.when(at_min, Day(eat=eat)) == told


def test_temperatures_put_the_cooks_own_unit_first() -> None:
    assert words.degrees(350) == "350 °F (177 °C)"
    assert words.degrees(350, "metric") == "177 °C (350 °F)"


@pytest.mark.parametrize(
    ("pot", "told"),
    [
        (PotPlan(diameter_in=8, quarts=2), "an 8-inch pot (2 quarts)"),
        (PotPlan(diameter_in=12, depth="deep", quarts=8), "a deep 12-inch pot (8 quarts)"),
        (PotPlan(diameter_in=10, quarts=4, count=3), "three 10-inch pots (4 quarts each)"),
    ],
)
def test_pots_are_named_by_size_and_depth(pot: PotPlan, told: str) -> None:
    assert words.pot(pot) == told


def test_fill_is_told_in_fractions_that_people_see() -> None:
    shares = (0.05, 0.25, 0.34, 0.5, 0.66, 0.75, 0.9, 1.2)
    assert [words.fill(share) for share in shares] == [
        *("hardly covered", "a quarter full", "a third full", "half full"),
        *("two thirds full", "three quarters full", "nearly full", "too full"),
    ]


def test_the_main_stage_is_the_longest_that_cooks(river_plan: Plan) -> None:
    stage = words.main_stage(river_plan)
    assert stage is not None
    assert stage.kind == "bake"


def test_coals_of_one_side_say_so() -> None:
    assert words.coals(Stage(kind="fry", under=30)) == "30 under, none on the lid"
    assert words.coals(Stage(kind="brown top", top=20)) == "20 on the lid, none under"


@pytest.mark.parametrize(
    ("listed", "told"),
    [([], ""), (["milk"], "milk"), (["milk", "egg"], "milk and egg"), (["a", "b", "c"], "a, b and c")],
)
def test_lists_are_joined_as_one_says_them(listed: list[str], told: str) -> None:
    assert words.joined(listed) == told
