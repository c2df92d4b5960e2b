"""When the meal is, how long it travels, and what of the day is said besides: "half past six", "an hour later"."""

from __future__ import annotations

from assistant.chat.clocks import clock_of
from assistant.chat.context import Context
from assistant.chat.lexicon import Heard
from assistant.chat.patterns import Found
from assistant.chat.settle.matched import Told, number_of, set_by, value_of, whole


def eat_at(match: Found, heard: Heard, context: Context) -> Told:
    """The time of the meal as "18:30", moved from the one that was set where it is said so."""
    value = value_of(match, "clock") or value_of(match, "sure_clock")
    if value is not None:
        clock = clock_of(value, meal=meal_of(heard) or _meal_at(context.day.eat))
    else:
        clock = _moved(match, (context.day.eat or "").rpartition("T")[2])
    if clock is not None:
        yield "eat at", {"clock": clock}


def _meal_at(eat: str | None) -> str | None:
    """The meal of a time that was set before: who breakfasts at half past eight and says nine means the morning."""
    hour = int((eat or "24").rpartition("T")[2].partition(":")[0])
    return "breakfast" if hour < 10 else "lunch" if hour < 14 else None


def _moved(match: Found, eat: str) -> str | None:
    """The time of the meal moved: "make it half past" keeps the hour, "an hour later" counts from it."""
    if not eat:
        return None
    hour, _, minute = eat.partition(":")
    past, by = set_by(match, "past"), number_of(match, "moved")
    if past is not None:
        minutes = int(hour) * 60 + int(past)
    else:
        sign = -1 if set_by(match, "by") == "-" else 1
        minutes = int(hour) * 60 + int(minute) + sign * round((by or 0) * 60)
    minutes %= 24 * 60
    return f"{minutes // 60:02d}:{minutes % 60:02d}"


def meal_of(heard: Heard) -> str | None:
    """The meal that a sentence names, which says which half of the day it is."""
    for word in heard.words:
        for meal in ("breakfast", "brunch", "lunch", "dinner", "supper"):
            if meal in word.text:
                return meal
        if "morning" in word.text:
            return "breakfast"
    return None


def trip(match: Found, _heard: Heard, _context: Context) -> Told:
    """Hours on the way."""
    yield "trip", {"hours": whole(number_of(match, "hours") or 0)}


def fire_ban(match: Found, _heard: Heard, _context: Context) -> Told:
    """Whether charcoal is allowed."""
    yield "fire ban", {"allowed": set_by(match, "allowed") or "no"}


def cooler(match: Found, _heard: Heard, _context: Context) -> Told:
    """The cooler's size [qt], or whether there is a freezer at home."""
    freezer = set_by(match, "freezer")
    if freezer is not None:
        yield "cooler", {"freezer": freezer}
        return
    quarts = number_of(match, "quarts") or number_of(match, "quarts_number") or 0
    yield "cooler", {"quarts": whole(quarts)}


def units(match: Found, _heard: Heard, _context: Context) -> Told:
    """The units that amounts are shown in."""
    value = value_of(match, "units")
    yield "units", {"units": value.value if value is not None else "us"}
