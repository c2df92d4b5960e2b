"""Values said by a name or in another measure: gas marks, wind by its speed, tens of degrees, pots by their volume.

The figures behind the names are those of the rules' tables.
"""

from __future__ import annotations

from assistant.chat.values import Value, Words, number, phrase, table
from assistant.reader.numbers import word
from rules.circumstances import DIAMETERS_IN
from rules.coals.figures import wind
from rules.coals.oven import oven_words
from rules.pot.iron import ovens

INCH_CM = 2.54
#: A pot is sold by its rounded diameter: a figure this near [in] means it.
NEAR_IN = 0.7
WINDS = ("calm", "breezy", "windy")
#: Where in its ten a temperature stands that is said to be low, in the middle or high there [°F].
_WITHIN_TEN = {"low": 2, "lower": 2, "mid": 5, "middle": 5, "high": 8, "upper": 8, "": 5}


def named(words: Words, at: int) -> Value | None:
    """The value that a name or a foreign measure gives, if one stands there."""
    return _gas_mark(words, at) or _ten(words, at) or _wind(words, at) or _pot(words, at)


def _gas_mark(words: Words, at: int) -> Value | None:
    """An oven by its mark: "gas mark 6", "gas 4", "mark 5"."""
    place = at + (word(words, at) == "gas")
    place += word(words, place) == "mark"
    row = oven_words().get(f"gas mark {word(words, place)}") if place > at else None
    return Value("degrees", row.temp_f, at, place + 1, "F") if row is not None else None


def _ten(words: Words, at: int) -> Value | None:
    """Air by the ten it stands in [°F]: "the low forties", "mid 50s", "in the 30s"."""
    part = word(words, at) if word(words, at) in _WITHIN_TEN and word(words, at) else ""
    place = at + bool(part)
    place += bool(part) and word(words, place) == "-"
    ten = table().tens.get(word(words, place))
    if ten is None and word(words, place).isdigit() and word(words, place + 1) == "s":
        ten = table().tens.get(f"{word(words, place)}s")
        place += 1
    return Value("air", ten + _WITHIN_TEN[part], at, place + 1) if ten is not None else None


def _wind(words: Words, at: int) -> Value | None:
    """Wind by its speed: "15 mph", "30 km/h"; the word of the table whose speed is nearest."""
    found = number(words, at)
    if found is None or found.article:
        return None
    for unit, mph in table().speeds.items():
        end = phrase(words, found.end, (unit,))
        if end is not None:
            speed = found.value * mph
            nearest = min(WINDS, key=lambda name: abs(wind(name).speed_mph - speed))
            return Value("wind", nearest, at, end)
    return None


def _pot(words: Words, at: int) -> Value | None:
    """A pot by its diameter in centimeters, or by its volume where the word pot stands behind it [in]."""
    found = number(words, at)
    if found is None or found.article:
        return None
    end = phrase(words, found.end, table().centimeters)
    if end is not None:
        near = min(DIAMETERS_IN, key=lambda size: abs(size - found.value / INCH_CM))
        is_near = abs(near - found.value / INCH_CM) <= NEAR_IN
        return Value("inches", float(near if is_near else found.value / INCH_CM), at, end)
    for unit, quarts in table().quarts.items():
        end = phrase(words, found.end, (unit,))
        if end is not None and word(words, end) in ("pot", "oven", "dutch"):
            sold = [oven for oven in ovens() if abs(oven.quarts - found.value * quarts) < NEAR_IN]
            return Value("inches", float(sold[0].diameter_in), at, end) if sold else None
    return None
