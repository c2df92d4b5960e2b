"""The pot, the heat and the weather: "a bit hotter" is 25 °F more than the plan has, "five below" a cold morning."""

from __future__ import annotations

from assistant.chat.context import Context
from assistant.chat.lexicon import Heard
from assistant.chat.patterns import Found
from assistant.chat.settle.matched import Slots, Told, number_of, set_by, value_of, whole
from assistant.chat.slots import air_f, oven_f
from assistant.chat.values import Value
from rules.circumstances import DIAMETERS_IN

STEP_F = 25
AIR_SLOTS = ("air", "air_degrees", "air_word", "air_minus")
FREEZING_F = 32


def _next_size(match: Found, context: Context) -> int | None:
    """The next larger or smaller pot than the one that is planned with."""
    step, now = set_by(match, "size"), context.pot_in
    if step is None or now is None:
        return None
    others = [size for size in DIAMETERS_IN if (size > now if step == "+" else size < now)]
    return (min(others) if step == "+" else max(others)) if others else None


def pot(match: Found, heard: Heard, context: Context) -> Told:
    """A pot: its diameter, its depth, how many; nothing where it is only asked about."""
    if set_by(match, "asked"):
        yield "pot", {}
        return
    slots: Slots = {}
    size = number_of(match, "pot") or number_of(match, "inches") or _next_size(match, context)
    if size is not None:
        slots["diameter_in"] = int(size) if size == int(size) else size
    if set_by(match, "size") and size is None:
        return
    depth = _depth(match, heard)
    if depth is not None:
        slots["depth"] = depth
    count = number_of(match, "pots")
    if count is not None and (count > 1 or size is None):
        slots["count"] = int(count)
    yield "pot", slots


def _depth(match: Found, heard: Heard) -> str | None:
    """Deep or shallow, whichever was said without a "not" before it."""
    for place in sorted(match.own):
        groups = heard.words[place].groups
        if groups & {"DEEP", "SHALLOW"} and "NOT" not in heard.words[place - 1].groups:
            return "deep" if "DEEP" in groups else "shallow"
    return None


def temperature(match: Found, _heard: Heard, context: Context) -> Told:
    """A baking temperature [°F], or a step up or down from the one that the plan has."""
    if set_by(match, "asked"):
        yield "temperature", {}
        return
    value = value_of(match, "oven") or value_of(match, "oven_degrees") or value_of(match, "oven_bare")
    if value is not None:
        yield "temperature", {"temp_f": whole(oven_f(value) or float(value.value))}
        return
    relative = set_by(match, "temp_f")
    now = context.day.temp_f or context.temp_f
    if relative is None or now is None:
        return
    step = _step_f(value_of(match, "oven_step"))
    by = float(relative) if len(relative) > 1 else (step if relative == "+" else -step)
    yield "temperature", {"temp_f": whole(now + by)}


def _step_f(value: Value | None) -> float:
    if value is None:
        return STEP_F
    return float(value.value) * (1.8 if value.unit == "C" else 1)


def weather(match: Found, heard: Heard, context: Context) -> Told:
    """The air [°F], the wind, what the pot stands on, a windscreen."""
    slots: Slots = {}
    value = next((said for slot in AIR_SLOTS if (said := value_of(match, slot))), None)
    if value is not None:
        rains = any(word.value(("sky",)) for word in heard.words)
        # Rain is water: a figure below freezing on the one scale was meant on the other.
        is_metric = context.day.units == "metric" or (rains and float(value.value) < 32)
        air = air_f(_below(match, value), is_metric=is_metric)
        if air is None:
            return
        if set_by(match, "below") == "freezing":
            air += FREEZING_F if value.unit != "C" else 0
        slots["air_f"] = whole(air)
    for slot in ("wind", "ground"):
        word, fixed = value_of(match, slot), set_by(match, slot)
        if word is not None or fixed is not None:
            slots[slot] = word.value if word is not None else fixed
    if value_of(match, "sky") is not None:
        slots["ground"] = "damp"
    screen = set_by(match, "screen")
    if screen is not None:
        slots["screen"] = screen
    yield "weather", slots


def _below(match: Found, value: Value) -> Value:
    """A figure said to be below zero or below freezing, with its sign."""
    is_below = set_by(match, "below") is not None and isinstance(value.value, float | int)
    return value._replace(value=-abs(float(value.value))) if is_below else value


def elevation(match: Found, _heard: Heard, _context: Context) -> Told:
    """The height of the camp [ft]."""
    fixed = set_by(match, "feet")
    feet = float(fixed) if fixed is not None else number_of(match, "feet")
    yield "elevation", {"feet": round(feet if feet is not None else number_of(match, "height") or 0)}
