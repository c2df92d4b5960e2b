"""Moments of a trip: written, told, counted as they pass."""

from __future__ import annotations

import pytest

from rules.because import Ledger
from rules.problem import UsageProblem
from rules.trip import times
from tests.trips import meal, trip

ZONE = "America/Boise"


def test_a_moment_is_written_as_it_was_read() -> None:
    assert times.written(times.moment("2027-07-02T18:30", ZONE)) == "2027-07-02T18:30"


def test_a_moment_is_told_with_its_day() -> None:
    assert times.said(times.moment("2027-07-02T18:30", None)) == "Fri 2 Jul 18:30"


def test_minutes_are_counted_as_they_pass_over_the_night_when_clocks_go_forward() -> None:
    """In 2027 the United States put their clocks forward on 14 March at 02:00."""
    evening, morning = times.moment("2027-03-13T22:00", ZONE), times.moment("2027-03-14T08:00", ZONE)
    assert times.minutes_between(evening, morning) == 9 * 60
    assert times.written(times.later(evening, 9 * 60)) == "2027-03-14T08:00"


def test_without_a_zone_the_clock_is_a_clock_on_the_table() -> None:
    evening = times.moment("2027-03-13T22:00", None)
    assert times.written(times.later(evening, 10 * 60)) == "2027-03-14T08:00"


@pytest.mark.parametrize(
    ("eat", "leave"),
    [
        ("2027-07-02T18:30", "2027-07-02T11:00"),
        # A breakfast is driven to on the evening before.
        ("2027-07-02T08:30", "2027-07-01T17:00"),
    ],
)
def test_where_nobody_says_when_they_leave_it_is_in_time_for_the_first_meal(eat: str, leave: str) -> None:
    """Pins the guess: four hours and the drive before a supper, the evening before for a breakfast."""
    ledger = Ledger()
    found = times.leaving(trip(meal("can-chili", eat), leave=None), ledger)
    assert times.written(found) == leave
    assert [question.about for question in ledger.questions] == ["leave"]


def test_what_is_no_moment_is_refused() -> None:
    with pytest.raises(UsageProblem):
        times.moment("Friday", None)
