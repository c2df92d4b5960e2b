"""The clock of the day: what time it is so many minutes before the meal.

`Day.eat` is a time ("18:30") or a date and a time; with a zone the minutes are counted as they pass, also over the
night when clocks change. Nothing here reads the clock of the machine. Handbook, section 8.
"""

from __future__ import annotations

from datetime import UTC, datetime, time, timedelta
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from rules.circumstances import Day
from rules.problem import UsageProblem

WEEKDAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
#: A day for meals whose date nobody gave; only its clock is ever shown.
SOME_DAY = datetime(2001, 1, 10)


def meal(day: Day) -> datetime | None:
    """The moment of eating; None when the cook gave no time.

    Raises:
        UsageProblem: when `eat` is no time or `zone` no zone.
    """
    if day.eat is None:
        return None
    try:
        when = datetime.fromisoformat(day.eat) if has_date(day) else _on_some_day(day.eat)
    except ValueError as error:
        raise UsageProblem("--eat", day.eat, "write 18:30 or 2027-07-03T18:30") from error
    if day.zone is None or when.tzinfo is not None:
        return when
    try:
        return when.replace(tzinfo=ZoneInfo(day.zone))
    except (ZoneInfoNotFoundError, ValueError) as error:
        raise UsageProblem("--zone", day.zone, "write a zone such as America/Boise") from error


def has_date(day: Day) -> bool:
    """Whether the cook gave the date of the meal with its time."""
    return day.eat is not None and len(day.eat) > len("18:30:00")


def at(day: Day, at_min: float) -> datetime | None:
    """The moment `at_min` minutes from eating (negative before it)."""
    eating = meal(day)
    return _moved(eating, at_min) if eating is not None else None


def told(day: Day, at_min: float) -> str | None:
    """The clock time as it is shown: "17:15"; on another day than the meal's with that day before it."""
    eating, moment = meal(day), at(day, at_min)
    if eating is None or moment is None:
        return None
    clock = f"{moment:%H:%M}"
    days = (moment.date() - eating.date()).days
    if days == 0:
        return clock
    if has_date(day):
        return f"{WEEKDAYS[moment.weekday()]} {moment.day} {MONTHS[moment.month - 1]} {clock}"
    return f"{clock} {_other_day(days)}"


def _on_some_day(clock: str) -> datetime:
    hours = clock if len(clock.partition(":")[0]) == 2 else f"0{clock}"
    return datetime.combine(SOME_DAY, time.fromisoformat(hours))


def _moved(when: datetime, minutes: float) -> datetime:
    by = timedelta(minutes=minutes)
    return when + by if when.tzinfo is None else (when.astimezone(UTC) + by).astimezone(when.tzinfo)


def _other_day(days: int) -> str:
    if days > 0:
        return "the next day" if days == 1 else f"{days} days later"
    return "the day before" if days == -1 else f"{-days} days before"
