"""Moments of a trip file: a date and a time, or a weekday and a time of the days of the trip."""

from __future__ import annotations

from datetime import datetime, timedelta

from assistant.options import clock, moment
from assistant.trip.keys import Keys, shown
from rules.problem import UsageProblem

WANTED = 'write a date and a time, as 2027-07-02T18:30:00 or "2027-07-02 18:30"'
WEEKDAY_WANTED = f'{WANTED}, or a weekday of the trip, as "Friday 18:30"'
DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")


def dated(keys: Keys, key: str, leave: str | None = None) -> str | None:
    """A moment as "2027-07-02T18:30"; None where the key is absent. With `leave`, weekdays count from that day on."""
    value = keys.values.get(key)
    if value is None:
        return None
    wanted = WEEKDAY_WANTED if leave else WANTED
    if isinstance(value, datetime):
        if value.tzinfo is not None:
            raise keys.fault(
                key, f"{key} = {shown(value)} has an offset", "write the local time and the trip's zone"
            )
        return f"{value:%Y-%m-%dT%H:%M}"
    if not isinstance(value, str):
        raise keys.fault(key, f"{key} = {shown(value)} is no moment", wanted)
    try:
        if leave and (found := _on_weekday(value, leave)):
            return found
        told = moment(key, value)
    except UsageProblem as problem:
        raise keys.fault(key, f"{key} = {shown(value)} is no moment", wanted) from problem
    if "T" not in told:
        raise keys.fault(key, f"{key} = {shown(value)} names no day", wanted)
    return told


def _on_weekday(value: str, leave: str) -> str | None:
    """The first such weekday from the day of leaving on; None where the text names no weekday."""
    word, _, time = value.strip().partition(" ")
    near = [number for number, day in enumerate(DAYS) if len(word) >= 3 and day.startswith(word.lower())]
    if len(near) != 1:
        return None
    day = datetime.fromisoformat(leave)
    day += timedelta(days=(near[0] - day.weekday()) % 7)
    return f"{day:%Y-%m-%d}T{clock('at', time)}"
