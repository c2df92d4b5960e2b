"""Moments of a trip: written as local time of its zone, counted in hours and minutes that really pass.

The clock of one dish is `rules.clock`; this room joins the clocks of several. A moment is a datetime with the zone
where one is known, else a floating one.
"""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

from rules import clock, table
from rules.because import Ledger
from rules.circumstances import Day
from rules.day import figure as day_figure
from rules.trip.model import Trip

#: When the first meal's leaving time is guessed: so long before it, beside the drive [h].
BEFORE_FIRST_MEAL_H = 4
EARLIEST_H = 7


def figure(key: str) -> table.Figure:
    """The row of one figure of `trip_figures.csv`."""
    return table.figures("trip_figures.csv")[key]


def moment(written: str, zone: str | None) -> datetime:
    """A written moment as a datetime.

    Raises:
        UsageProblem: when it is no date and time, or the zone no zone.
    """
    found = clock.meal(Day(eat=written, zone=zone))
    assert found is not None  # `eat` is given
    return found


def written(when: datetime) -> str:
    """A moment as it is written: local time to the minute."""
    rounded = when + timedelta(seconds=30)
    return f"{rounded:%Y-%m-%dT%H:%M}"


def later(when: datetime, minutes: float) -> datetime:
    """The moment so many minutes later, as they pass over a change of clocks too."""
    by = timedelta(minutes=minutes)
    return when + by if when.tzinfo is None else (when.astimezone(UTC) + by).astimezone(when.tzinfo)


def minutes_between(early: datetime, late: datetime) -> float:
    """Minutes from one moment to another, negative when it is the earlier one."""
    if early.tzinfo is not None:
        early, late = early.astimezone(UTC), late.astimezone(UTC)
    return (late - early).total_seconds() / 60


def said(when: datetime) -> str:
    """A moment as it is told: "Fri 2 Jul 18:30"."""
    return f"{date_said(when)} {when:%H:%M}"


def date_said(when: datetime) -> str:
    """The day of a moment: "Fri 2 Jul"."""
    return f"{clock.WEEKDAYS[when.weekday()]} {when.day} {clock.MONTHS[when.month - 1]}"


def leaving(trip: Trip, ledger: Ledger) -> datetime:
    """When the car leaves; where nobody said, in time for the first meal, and the trip asks."""
    if trip.leave is not None:
        return moment(trip.leave, trip.zone)
    first = min(moment(meal.eat, trip.zone) for meal in trip.meals)
    leave = later(first, -60 * (BEFORE_FIRST_MEAL_H + trip.drive_hours)).replace(minute=0)
    if leave.hour < EARLIEST_H or leave.date() < first.date():
        evening = int(day_figure("evening_h").value)
        before = first.replace(hour=evening, minute=0) - timedelta(days=1)
        leave = later(before, -60 * trip.drive_hours)
    ledger.ask("leave", "When do you leave home?", said(leave))
    return leave


def shut(leave: datetime) -> datetime:
    """When the coolers are shut, before leaving."""
    return later(leave, -day_figure("leave_min").value)


def key(when: datetime) -> datetime:
    """What moments are ordered by: the time that passes, not the clock's face."""
    return when.astimezone(UTC) if when.tzinfo is not None else when
