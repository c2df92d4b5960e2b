"""Amounts rounded to the measures that people own (handbook chapter 4).

Spoons and cups of the home set, whole grams of a kitchen scale, halves of an onion. A cup that no fraction of the set
comes near is kept to the tablespoon ("1 cup plus 2 tablespoons"). Steps and their limits stand in
`tables/own_measures.csv`.
"""

from __future__ import annotations

from functools import cache
from math import floor

import msgspec

from rules import table
from rules.recipe import Amount
from rules.units.convert import kind, loose_measures, to

#: The fractions of a cup in the home set [cup].
CUPS = (0.0, 1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4, 1.0)
#: A cup further than this from such a fraction is told with tablespoons.
CUP_MISS = 0.03

_SPOONED = frozenset({"teaspoon", "tablespoon", "cup"})
#: Units that hand small amounts to a smaller one, and how far rounding may miss before they do.
_SMALLER = {"liter": "milliliter", "deciliter": "milliliter", "centiliter": "milliliter", "kilogram": "gram"}
SMALLER_MISS = 0.1
#: Under a quarter pound an amount is weighed in ounces.
SCRAP_LB = 0.25
_TO_CUPS = frozenset({"fluid ounce", "pint", "quart", "gallon"})


class OwnMeasure(table.Row, frozen=True, kw_only=True):
    """The smallest step of a unit that people can measure, for amounts above a limit (both in that unit)."""

    id: str
    unit: str
    above: float
    step: float


def rounded(amount: Amount, *, whole: bool = False) -> Amount:
    """The amount in measures that people own; nothing that was more than zero becomes zero.

    `whole` is for what cannot be halved (eggs): halves go up.
    """
    unit, low = _measure(amount.low, amount.unit, whole)
    high_unit, high = _measure(amount.high, amount.unit, whole)
    if high_unit != unit and unit is not None and high_unit is not None:
        low = to(low, unit, high_unit)
        unit = high_unit
    return msgspec.structs.replace(amount, low=low, high=max(low, high), unit=unit)


def _measure(value: float, unit: str | None, whole: bool) -> tuple[str | None, float]:
    if value <= 0:
        return unit, value
    if unit in _TO_CUPS and not _is_stepped(value, _step(unit or "", value)):
        return _spooned(to(value, unit or "", "teaspoon"))
    if unit in _SPOONED:
        return _spooned(to(value, unit or "", "teaspoon"))
    if whole:
        return unit, float(max(1, floor(value + 0.5)))
    if unit in ("ounce", "pound") and to(value, unit or "", "ounce") >= 16:
        unit, value = "pound", to(value, unit or "", "pound")
    if unit == "pound" and not _is_stepped(value, _step("pound", value)) and value < SCRAP_LB:
        unit, value = "ounce", to(value, "pound", "ounce")
    smaller = _SMALLER.get(unit or "")
    if smaller and abs(_stepped(value, _step(unit or "", value)) - value) > SMALLER_MISS * value:
        return _measure(to(value, unit or "", smaller), smaller, whole)
    return unit, _stepped(value, _step(_group(unit), value))


def _spooned(teaspoons: float) -> tuple[str, float]:
    """The unit and value of a volume [teaspoon] in spoons and cups."""
    cups = to(teaspoons, "teaspoon", "cup")
    tablespoons = to(teaspoons, "teaspoon", "tablespoon")
    if tablespoons < 0.96:
        return "teaspoon", _stepped(teaspoons, _step("teaspoon", teaspoons))
    if cups < 0.24:
        # Half a tablespoon is a teaspoon and a half, a third of one a teaspoon: the nearer of the two.
        steps = (_step("tablespoon", tablespoons), 1 / 3)
        return "tablespoon", min(
            (_stepped(tablespoons, step) for step in steps), key=lambda near: abs(near - tablespoons)
        )
    near = floor(cups) + min(CUPS, key=lambda part: abs(cups - floor(cups) - part))
    if abs(near - cups) <= CUP_MISS * cups:
        return "cup", near
    return "cup", to(_stepped(tablespoons, 1.0), "tablespoon", "cup")


def _group(unit: str | None) -> str:
    """The unit under which the steps of a unit stand."""
    if unit is None or unit in loose_measures():
        return "count"
    return unit if unit in _steps() else "count" if kind(unit) is None else unit


@cache
def _steps() -> dict[str, tuple[OwnMeasure, ...]]:
    steps: dict[str, list[OwnMeasure]] = {}
    for row in table.read("own_measures.csv", OwnMeasure):
        steps.setdefault(row.unit, []).append(row)
    return {unit: tuple(sorted(rows, key=lambda row: row.above)) for unit, rows in steps.items()}


def _step(unit: str, value: float) -> float:
    steps = _steps().get(unit, ())
    fitting = [row.step for row in steps if value >= row.above]
    return fitting[-1] if fitting else steps[0].step if steps else 0.25


def _stepped(value: float, step: float) -> float:
    return max(step, round(floor(value / step + 0.5) * step, 4))


def _is_stepped(value: float, step: float) -> bool:
    return abs(_stepped(value, step) - value) <= 0.01 * value
