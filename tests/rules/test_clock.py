from __future__ import annotations

import pytest

from rules import clock
from rules.circumstances import Day
from rules.problem import UsageProblem


def test_without_a_time_of_the_meal_there_is_no_clock() -> None:
    assert clock.told(Day(), -60) is None


@pytest.mark.parametrize(
    ("at_min", "told"),
    [
        (0, "18:30"),
        (-75, "17:15"),
        (-1200, "22:30 the day before"),
        (-3000, "16:30 2 days before"),
        (360, "00:30 the next day"),
    ],
)
def test_a_time_alone_counts_days_from_the_meal(at_min: float, told: str) -> None:
    assert clock.told(Day(eat="18:30"), at_min) == told


def test_a_time_may_be_written_with_one_digit() -> None:
    assert clock.told(Day(eat="6:30"), 0) == "06:30"


def test_a_date_names_other_days() -> None:
    day = Day(eat="2027-07-03T18:30")
    assert clock.told(day, -60) == "17:30"
    assert clock.told(day, -1800) == "Fri 2 Jul 12:30"


def test_minutes_are_counted_as_they_pass_over_the_night_of_the_change() -> None:
    """In Boise clocks jump from 2:00 to 3:00 on 14 March 2027 (IANA time zone database)."""
    zoned = Day(eat="2027-03-14T12:00", zone="America/Boise")
    assert clock.told(zoned, -11 * 60) == "00:00"
    assert clock.told(Day(eat="2027-03-14T12:00"), -11 * 60) == "01:00"


def test_an_offset_in_the_time_itself_is_kept() -> None:
    meal = clock.meal(Day(eat="2027-07-03T18:30-06:00", zone="Europe/Vienna"))
    assert meal is not None
    assert meal.utcoffset() is not None
    assert meal.hour == 18


@pytest.mark.parametrize(
    ("day", "sentence"),
    [
        (Day(eat="25:00"), "--eat 25:00: write 18:30 or 2027-07-03T18:30."),
        (Day(eat="supper"), "--eat supper: write 18:30 or 2027-07-03T18:30."),
        (Day(eat="2027-02-30T18:30"), "--eat 2027-02-30T18:30: write 18:30 or 2027-07-03T18:30."),
        (Day(eat="18:30", zone="Middle/Earth"), "--zone Middle/Earth: write a zone such as America/Boise."),
    ],
    ids=lambda value: value if isinstance(value, str) else None,
)
def test_a_time_that_cannot_be_says_how_it_is_written(day: Day, sentence: str) -> None:
    with pytest.raises(UsageProblem) as problem:
        clock.meal(day)
    assert str(problem.value) == sentence
