"""The kitchen's pan, as the recipe names it: its area, depth and capacity (handbook chapter 4).

"9x13 in", "a nine-inch square pan", "a 20x30cm tin", "2-quart casserole", "muffin tin". A size that the text does not
tell is the usual one of that shape, and `assumed` says so.
"""

from __future__ import annotations

import re
from functools import cache
from math import pi

from rules import table
from rules.recipe import Recipe, Struct
from rules.units import to

_NUMBERS = {
    word: value
    for value, word in enumerate(
        ["six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen"], start=6
    )
}
_FIGURE = r"(\d{1,2}(?:\.\d{1,2})?(?: ?½| 1/2|½)?)"
_UNIT = r'(?:[ -]?(inch(?:es)?|in\b|"|”|″|cm|centimet(?:er|re)s?))?'
_TIMES = r" ?(?:x|×|by|-by-|\*) ?"
_SIDES = re.compile(_FIGURE + _UNIT + _TIMES + _FIGURE + _UNIT + f"(?:{_TIMES}{_FIGURE}{_UNIT})?")
_ONE = re.compile(_FIGURE + _UNIT.removesuffix("?"))
_ROOM = re.compile(_FIGURE + r"[ -]?(quarts?|qt\b|lit(?:er|re)s?|l\b|cups?)")
_ROOM_UNITS = {"q": "quart", "l": "liter", "c": "cup"}
_ROUND = frozenset({"round", "pie", "springform", "tube", "skillet"})


class PanRow(table.Row, frozen=True, kw_only=True):
    """A kitchen pan of the tables, capacity to the brim."""

    id: str
    shape: str
    length_in: float
    width_in: float
    depth_in: float
    cups: float | None = None
    cups_in_tin: int = 1


class PanShape(table.Row, frozen=True, kw_only=True):
    """A kind of pan: the words that name it, the usual size, the depth where none is told."""

    shape: str
    order: int
    words: tuple[str, ...]
    usual: str
    depth_in: float


class Pan(Struct, frozen=True, kw_only=True):
    """A kitchen pan: area [sq in], depth [in], how it was named."""

    shape: str
    area_sq_in: float
    depth_in: float
    said: str
    #: the text names no size: the usual one of that shape
    assumed: bool = False


def pan_of(recipe: Recipe) -> Pan | None:
    """The pan that goes into the kitchen's oven; None where the recipe names none."""
    vessel = recipe.oven.vessel if recipe.oven else None
    return read_pan(vessel) if vessel else None


def read_pan(said: str) -> Pan | None:
    """The pan that some words mean; None where they name neither a kind nor a size of pan."""
    words = re.sub(r"\s+", " ", said.lower())[:120]
    words = re.sub(r"\b(" + "|".join(_NUMBERS) + r")\b", lambda found: str(_NUMBERS[found[1]]), words)
    shape = _shape(words)
    if shape is None:
        return None
    usual = _rows()[shape.usual]
    depth = shape.depth_in
    sides = _SIDES.search(words)
    if sides:
        unit = sides[6] or sides[4] or sides[2] or _likely_unit(sides[1])
        length, width = _inches(sides[1], unit), _inches(sides[3], unit)
        if sides[5]:
            depth = _inches(sides[5], unit)
        elif shape.shape in _ROUND and width < length / 2:
            # A round pan of "9x3" is nine inches wide and three deep.
            width, depth = length, width
        return _pan(shape.shape, length, width, depth, said)
    room = _ROOM.search(words)
    if room:
        inches = to(_value(room[1]), _ROOM_UNITS[room[2][0]], "cubic inch")
        return Pan(shape=shape.shape, area_sq_in=inches / depth, depth_in=depth, said=said)
    one = _ONE.search(words)
    if one and shape.shape != "muffin":
        size = _inches(one[1], one[2])
        return _pan(_turned(shape.shape, words), size, size, depth, said)
    area = _area(shape.shape, usual.length_in, usual.width_in) * usual.cups_in_tin
    # "A dish" or "a pan" alone says nothing about its size.
    if shape.shape == "rectangle":
        return None
    return Pan(shape=shape.shape, area_sq_in=area, depth_in=depth, said=said, assumed=True)


def _pan(shape: str, length: float, width: float, depth: float, said: str) -> Pan | None:
    if not (2 <= width <= 24 and 2 <= length <= 24 and 0.25 <= depth <= 8):
        return None
    return Pan(shape=shape, area_sq_in=_area(shape, length, width), depth_in=depth, said=said)


def _area(shape: str, length: float, width: float) -> float:
    return pi / 4 * length * width if shape in _ROUND or shape == "muffin" else length * width


def _turned(shape: str, words: str) -> str:
    """One size without a shape: a square dish says so, another is round."""
    return "round" if shape == "rectangle" and "square" not in words else shape


def _inches(figure: str, unit: str | None) -> float:
    value = _value(figure)
    return to(value, "centimeter", "inch") if unit and unit.startswith("c") else value


def _likely_unit(figure: str) -> str:
    """Sides above 16 without a unit are centimeters: no kitchen pan is so many inches wide."""
    return "cm" if _value(figure) > 16 else "in"


def _value(figure: str) -> float:
    whole = figure.replace("½", " ").replace("1/2", " ").split()[0]
    half = "½" in figure or "1/2" in figure
    return float(whole) + (0.5 if half else 0.0)


def _shape(words: str) -> PanShape | None:
    return next((shape for shape in _shapes() if any(word in words for word in shape.words)), None)


@cache
def _shapes() -> tuple[PanShape, ...]:
    return tuple(sorted(table.read("pan_shapes.csv", PanShape), key=lambda row: row.order))


@cache
def _rows() -> dict[str, PanRow]:
    return {row.id: row for row in table.read("pans.csv", PanRow)}
