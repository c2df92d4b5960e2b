"""The slots of the acts: which kinds of value may fill them, and which values make sense there."""

from __future__ import annotations

from collections.abc import Callable

from assistant.chat.clocks import clock_of
from assistant.chat.lexicon import Word
from assistant.chat.values import Value
from rules.circumstances import DIAMETERS_IN
from rules.foods import catalogue

#: Which kinds of value a slot takes.
KINDS: dict[str, tuple[str, ...]] = {
    "people": ("number",),
    "count": ("number",),
    "and_people": ("number",),
    "and_more": ("number",),
    "moved": ("hours",),
    "factor": ("factor",),
    "scale": ("factor", "number"),
    "part": ("number",),
    "made": ("number", "inches"),
    "pots": ("number",),
    "pot": ("inches", "number"),
    "inches": ("inches",),
    "oven": ("degrees", "number"),
    "oven_bare": ("number",),
    "oven_degrees": ("degrees",),
    "oven_step": ("degrees", "number"),
    "air": ("degrees", "number", "air"),
    "air_degrees": ("degrees", "air"),
    "air_word": ("air",),
    "air_minus": ("number", "degrees"),
    "wind": ("wind",),
    "any_wind": ("wind",),
    "ground": ("ground",),
    "sky": ("sky",),
    "feet": ("feet",),
    "height": ("feet", "number"),
    "clock": ("clock", "number"),
    "sure_clock": ("clock",),
    "hours": ("hours",),
    "quarts": ("quarts",),
    "quarts_number": ("quarts", "number"),
    "units": ("units",),
    "from": ("food",),
    "to": ("food",),
    "food": ("food", "allergen"),
    "fat": ("food",),
    "no_fat": ("food",),
    "added": ("food",),
    "allergen": ("allergen",),
    "as": ("form",),
    "path": ("path",),
    "quoted": ("quoted",),
    "day_name": ("day",),
    "bare": ("number",),
    "other": ("number", "inches", "degrees", "clock"),
    "rest": (),
    "rest_food": (),
    "whole": (),
    "name": (),
}

OVEN_F, OVEN_C = (200, 550), (93, 288)
#: Said of a bake, these are temperatures too, and refused with a sentence.
TOO_HOT_F = (551, 1000)
#: A bare figure up to this is no baking temperature in °F, so it is one in °C.
HIGHEST_BARE_C = 240
AIR_F, AIR_C = (-40, 130), (-40, 50)
LOWEST_CAMP_FT = 100
#: Less than this is how long something cooks, or by how much a meal is moved.
SHORTEST_TRIP_H = 0.5


def is_fat(name: str) -> bool:
    """Whether a food that was named is a fat."""
    food = catalogue().find(name).food
    return food is not None and food.is_fat


def _number(value: Value) -> float:
    return value.value if isinstance(value.value, int | float) else float(value.value)


def _is_whole(value: Value, low: int, high: int) -> bool:
    number = _number(value)
    return number == int(number) and low <= number <= high


def oven_f(value: Value) -> float | None:
    """A baking temperature [°F]; None when it can be none."""
    number = _number(value)
    celsius = OVEN_C[0] <= number <= OVEN_C[1]
    if value.unit == "C" or (not value.unit and celsius and number <= HIGHEST_BARE_C):
        return round(number * 9 / 5 + 32) if celsius else None
    return number if OVEN_F[0] <= number <= OVEN_F[1] else None


def air_f(value: Value, *, is_metric: bool = False) -> float | None:
    """The air's temperature [°F]; None when it can be none."""
    number = _number(value)
    if value.unit == "C" or (not value.unit and is_metric and value.kind != "air"):
        return round(number * 9 / 5 + 32) if AIR_C[0] <= number <= AIR_C[1] else None
    return number if AIR_F[0] <= number <= AIR_F[1] else None


_RULES: dict[str, Callable[[Value], bool]] = {
    "people": lambda value: _is_whole(value, 1, 1000),  # too many are refused with a sentence
    "count": lambda value: _is_whole(value, 1, 100),
    "and_people": lambda value: _is_whole(value, 1, 200),
    "and_more": lambda value: _is_whole(value, 1, 200),
    "moved": lambda value: 0 < _number(value) <= 12,
    "hours": lambda value: _number(value) >= SHORTEST_TRIP_H and value.unit != "min",
    "bare": lambda value: _number(value) > 0,
    "scale": lambda value: 0 < _number(value) <= 20,
    "factor": lambda value: 0 < _number(value) <= 20,
    "made": lambda value: 0 < _number(value) <= 200,
    "part": lambda value: 0 < _number(value) < 1,
    "pots": lambda value: _is_whole(value, 1, 6),
    "pot": lambda value: value.kind == "inches" or _number(value) in DIAMETERS_IN,
    "inches": lambda value: 4 <= _number(value) <= 24,
    "oven": lambda value: oven_f(value) is not None or TOO_HOT_F[0] <= _number(value) <= TOO_HOT_F[1],
    "oven_bare": lambda value: 250 <= _number(value) <= OVEN_F[1] and _number(value) % 5 == 0,
    "oven_degrees": lambda value: oven_f(value) is not None,
    "oven_step": lambda value: 5 <= _number(value) <= 100,
    "air": lambda value: air_f(value) is not None,
    "air_degrees": lambda value: air_f(value) is not None,
    "air_minus": lambda value: _number(value) < 0 and air_f(value) is not None,
    "feet": lambda value: _number(value) >= LOWEST_CAMP_FT or _number(value) == 0,
    "height": lambda value: LOWEST_CAMP_FT <= _number(value) <= 20000 or value.kind == "feet",
    "clock": lambda value: clock_of(value) is not None and _number(value) >= 1,
    "no_fat": lambda value: not is_fat(str(value.value)),
    "fat": lambda value: is_fat(str(value.value)),
    "quarts_number": lambda value: 4 <= _number(value) <= 400,
}


def fits(slot: str, word: Word) -> bool:
    """Whether a word's value makes sense in a slot."""
    value = word.value(KINDS[slot])
    if slot == "people" and word.text == "one":
        return False  # "one of the kids" counts nobody
    rule = _RULES.get(slot)
    return value is not None and (rule is None or rule(value))
