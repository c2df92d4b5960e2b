"""The one unit registry, and amounts as people measure and say them (handbook chapter 4).

All conversion goes through pint over our own short definitions file (`units.txt`) and the loose measures of
`tables/loose_measures.csv`; nothing else in the house imports pint. What an amount of a food weighs is `foods`' affair.
"""

from __future__ import annotations

from functools import cache, lru_cache
from importlib import resources
from typing import TYPE_CHECKING, Any, Literal

from rules import table
from rules.problem import Problem

if TYPE_CHECKING:
    from pint import UnitRegistry

Kind = Literal["volume", "mass", "length", "time", "temperature"]

_DIMENSIONS: dict[str, Kind] = {
    "[length] ** 3": "volume",
    "[mass]": "mass",
    "[length]": "length",
    "[time]": "time",
    "[temperature]": "temperature",
}


class UnitProblem(Problem):
    """Two units that measure different things, or a word that is no unit of ours."""

    def __init__(self, unit: str, target: str) -> None:
        super().__init__(unit, target)
        self.unit = unit
        self.target = target

    def sentence(self) -> str:
        """Say which two do not go together."""
        return f'"{self.unit}" cannot be turned into "{self.target}"; both have to measure the same thing.'


class LooseMeasure(table.Row, frozen=True, kw_only=True):
    """A measure without a vessel (pinch, splash): `amount` of the unit `of`."""

    unit: str
    amount: float
    of: str


@cache
def loose_measures() -> dict[str, LooseMeasure]:
    """Every loose measure by its word."""
    return {row.unit: row for row in table.read("loose_measures.csv", LooseMeasure)}


def to(value: float, unit: str, target: str) -> float:
    """`value` in `unit`, told in `target`. Temperatures are readings, not differences.

    Raises:
        UnitProblem: when one of them is unknown or they measure different things.
    """
    factor = _factor(unit, target)
    if factor is not None:
        return value * factor
    return float(_registry().convert(value, _spelled(unit), _spelled(target)))


def kind(unit: str | None) -> Kind | None:
    """What a unit measures; None for a count, a container, an unknown word."""
    return _kind(unit) if unit else None


def is_volume(unit: str | None) -> bool:
    """Whether a unit is a measure of volume with a vessel of its own; a pinch or a splash is none."""
    return kind(unit) == "volume" and unit not in loose_measures()


def is_loose(unit: str | None) -> bool:
    """Whether a unit is a loose measure of volume: pinch, dash, drop, handful, knob, splash and so on."""
    return unit in loose_measures()


def is_mass(unit: str | None) -> bool:
    """Whether a unit is a measure of mass."""
    return kind(unit) == "mass"


@cache
def _registry() -> UnitRegistry[Any]:
    import pint  # 150 ms; a recipe without amounts never needs it

    registry: UnitRegistry[Any] = pint.UnitRegistry(None)
    definitions = resources.files("rules").joinpath("units.txt").read_text(encoding="utf-8")
    registry.load_definitions(definitions.splitlines())
    for row in loose_measures().values():
        registry.define(f"{_spelled(row.unit)} = {row.amount!r} * {_spelled(row.of)}")
    return registry


@cache
def _units() -> frozenset[str]:
    """The names that we gave: pint would also read plurals and prefixes."""
    registry = _registry()
    return frozenset(str(registry.parse_units(name)) for name in registry._units if name.isidentifier())


def _spelled(unit: str) -> str:
    return unit.replace(" ", "_").replace("-", "_")


@lru_cache(maxsize=1024)
def _kind(unit: str) -> Kind | None:
    name = _spelled(unit)
    if name not in _units():
        return None
    return _DIMENSIONS.get(str(_registry().get_dimensionality(name)))


@lru_cache(maxsize=4096)
def _factor(unit: str, target: str) -> float | None:
    """What multiplies a value; None where an offset (a temperature) stands between the two."""
    kinds = _kind(unit), _kind(target)
    if kinds[0] is None or kinds[0] != kinds[1]:
        raise UnitProblem(unit, target)
    if kinds[0] == "temperature":
        return None
    return float(_registry().convert(1.0, _spelled(unit), _spelled(target)))
