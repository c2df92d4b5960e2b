"""Amounts in the words of people: "2 1/4 cups", "1 cup plus 2 tablespoons", "1.5 kg", "2 cans of 14 ounces".

US measures or metric ones, as the cook asked; spoons stay spoons in both.
"""

from __future__ import annotations

from typing import Literal

import msgspec

from rules.recipe import Amount, Package
from rules.units.convert import is_mass, is_volume, kind, to
from rules.units.own import CUPS, rounded

Units = Literal["us", "metric"]

_METRIC = frozenset(
    ["milliliter", "centiliter", "deciliter", "liter", "milligram", "gram", "kilogram", "centimeter"]
)
_SHORT = {
    "milliliter": "ml",
    "centiliter": "cl",
    "deciliter": "dl",
    "liter": "l",
    "milligram": "mg",
    "gram": "g",
    "kilogram": "kg",
    "centimeter": "cm",
}
_WEIGHED = frozenset(["cup", "pint", "quart", "gallon", "stick"])
_SPOONS = frozenset(["teaspoon", "tablespoon"])
#: How far ounces may be from the grams that the recipe gives.
MISS = 0.04
_PLURALS = {"leaf": "leaves", "loaf": "loaves", "half": "halves", "inch": "inches", "foot": "feet", "%": "%"}
_FRACTIONS = {
    1 / 8: "1/8",
    1 / 4: "1/4",
    1 / 3: "1/3",
    3 / 8: "3/8",
    1 / 2: "1/2",
    5 / 8: "5/8",
    2 / 3: "2/3",
    3 / 4: "3/4",
    7 / 8: "7/8",
}


def kitchen(amount: Amount, *, units: Units = "us", whole: bool = False, grams: float | None = None) -> str:
    """The amount as people say it, rounded to measures they own; an empty string for nothing.

    `whole` is for what cannot be halved. In metric a cup of something dry is told in `grams` [g] where they are known:
    metric kitchens weigh.
    """
    if grams is not None and units == "metric" and amount.unit in _WEIGHED:
        amount = Amount(low=grams, high=grams, unit="gram", approx=amount.approx)
    own = rounded(_in_system(amount, units), whole=whole)
    if own.high <= 0:
        return ""
    if own.low < own.high and own.low > 0:
        said = f"{_low_end(own.low, own.unit)} to {_with_unit(own.high, own.unit)}"
    else:
        said = _with_unit(own.high, own.unit)
    if own.package is not None:
        said += f" of {package_size(own.package, units)}"
    return f"about {said}" if own.approx else said


def number(value: float) -> str:
    """A plain number as a cook writes it: "2 1/4", "12", "0.35"."""
    whole, rest = divmod(value, 1)
    for fraction, said in _FRACTIONS.items():
        if abs(rest - fraction) < 0.011:
            return f"{whole:.0f} {said}" if whole else said
    if rest < 0.011 or rest > 0.989:
        return f"{value:.0f}"
    return f"{value:.2f}".rstrip("0").rstrip(".")


def plural(unit: str, count: float) -> str:
    """The unit's word for so many of it."""
    if count <= 1:
        return unit
    if unit in _PLURALS:
        return _PLURALS[unit]
    if unit.endswith(("s", "x", "ch", "sh")):
        return f"{unit}es"
    if unit.endswith("y") and unit[-2:-1] not in "aeiou":
        return f"{unit[:-1]}ies"
    return f"{unit}s"


def _in_system(amount: Amount, units: Units) -> Amount:
    unit = amount.unit
    target: str | None = None
    if unit is None or unit in _SPOONS or kind(unit) not in ("volume", "mass", "length"):
        return amount
    if units == "metric" and unit not in _METRIC:
        if is_mass(unit):
            target = "gram"
        elif is_volume(unit):
            target = "milliliter"
        elif kind(unit) == "length":
            target = "centimeter"
    elif units == "us" and unit in _METRIC:
        if is_mass(unit):
            target = "ounce"
        elif is_volume(unit):
            target = "cup"
        else:
            target = "inch"
    if target is None:
        return amount
    other = msgspec.structs.replace(
        amount, low=to(amount.low, unit, target), high=to(amount.high, unit, target), unit=target
    )
    if target == "ounce" and not _keeps(other):
        # Three grams of yeast are not a quarter of an ounce: what the ounces of a scale would change stays in grams.
        return amount
    return other


def _keeps(amount: Amount) -> bool:
    """Whether rounding to measures people own leaves an amount what it was."""
    own = rounded(amount)
    return abs(
        to(own.high, own.unit or "", "ounce") - to(amount.high, amount.unit or "", "ounce")
    ) <= MISS * to(amount.high, amount.unit or "", "ounce")


def _with_unit(value: float, unit: str | None) -> str:
    if unit is None:
        return number(value)
    if unit == "cup":
        return _cups(value)
    if unit == "gram" and value >= 1000:
        return f"{value / 1000:g} kg"
    if unit == "milliliter" and value >= 1000:
        return f"{value / 1000:g} l"
    if unit == "tablespoon" and (spoons := _teaspoons(value)):
        whole = int(value)
        return f"{whole} {plural(unit, whole)} plus {spoons} {plural('teaspoon', spoons)}"
    if unit in _SHORT:
        return f"{value:g} {_SHORT[unit]}"
    if unit == "%":
        return f"{value:g} %"
    if unit == "pound" and value < 1:
        return _with_unit(to(value, "pound", "ounce"), "ounce")
    return f"{number(value)} {plural(unit, value)}"


def _low_end(value: float, unit: str | None) -> str:
    """The low end of a range: the number alone, unless it needs a unit of its own."""
    if unit == "cup" and not _is_cups(value):
        return _cups(value)
    return f"{value:g}" if unit in _SHORT else number(value)


def _cups(value: float) -> str:
    if _is_cups(value):
        return f"{number(value)} {plural('cup', value)}"
    whole = int(value + 0.005)
    rest = value - whole
    base = max((part for part in CUPS[:-1] if part <= rest and _is_spoons(rest - part)), default=0.0)
    spoons = to(rest - base, "cup", "tablespoon")
    cups = f"{number(whole + base)} {plural('cup', whole + base)} plus " if whole + base else ""
    return cups + _with_unit(spoons, "tablespoon")


def _teaspoons(tablespoons: float) -> int:
    """The whole teaspoons over whole tablespoons; none where half a tablespoon says it."""
    over = to(tablespoons % 1, "tablespoon", "teaspoon")
    return round(over) if tablespoons > 1 and abs(over - round(over)) < 0.05 and 0 < round(over) < 3 else 0


def _is_cups(value: float) -> bool:
    return any(abs(value % 1 - part) < 0.01 for part in CUPS)


def _is_spoons(cups: float) -> bool:
    spoons = to(cups, "cup", "tablespoon")
    return abs(spoons - round(spoons)) < 0.05


def package_size(package: Package, units: Units) -> str:
    """What one container holds or one piece weighs: as it is printed there, in metric for a metric cook."""
    size = Amount(low=package.low, high=package.high, unit=package.unit)
    own = size if units == "us" else rounded(_in_system(size, units))
    if own.low < own.high:
        return f"{number(own.low)} to {_with_unit(own.high, own.unit)}"
    return _with_unit(own.high, own.unit)
