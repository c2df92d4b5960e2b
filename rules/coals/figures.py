"""The single figures and small tables of the coals, typed: rules of count, weather, briquettes, shares.

Every figure stands in `rules/tables` with its source; this room only finds the row.
"""

from __future__ import annotations

from functools import cache
from typing import TypeVar

from rules.table import Figure, Row, figures, read


class Share(Row, frozen=True, kw_only=True):
    """How the coals of one way of cooking are divided, in whole parts."""

    id: str
    method: str
    top_parts: int
    under_parts: int


class HeatRow(Row, frozen=True, kw_only=True):
    """A count that goes with the pot's diameter, and the temperature it is meant for [°F]."""

    id: str
    per_inch: float
    at_f: float


class WindRow(Row, frozen=True, kw_only=True):
    """A word for wind and its speed at 10 m [mph]."""

    id: str
    speed_mph: float


class GroundRow(Row, frozen=True, kw_only=True):
    """What the pot stands over: its thermal effusivity [W s^0.5/(m2 K)] and the most that it may add below."""

    id: str
    effusivity: float | None = None
    most_factor: float


KeyedRow = TypeVar("KeyedRow", Share, HeatRow, WindRow, GroundRow)


def _one(name: str, row_type: type[KeyedRow], key: str) -> KeyedRow:
    rows: tuple[KeyedRow, ...] = read(name, row_type)
    return next(row for row in rows if row.id == key)


def figure(key: str) -> Figure:
    """The figure of that name, with its source."""
    return figures("coal_figures.csv", "briquettes.csv")[key]


@cache
def share(key: str) -> Share:
    """How the coals are divided for a way of cooking (`bake`, `roast`, `simmer`, `fry` ...)."""
    return _one("coal_shares.csv", Share, key)


@cache
def heat(key: str) -> HeatRow:
    """The count by diameter for `fry`, `gentle fry` or `boil`."""
    return _one("coal_heats.csv", HeatRow, key)


@cache
def wind(key: str) -> WindRow:
    """What a word for wind means."""
    return _one("winds.csv", WindRow, key)


@cache
def ground(key: str) -> GroundRow:
    """What a word for the ground means."""
    return _one("grounds.csv", GroundRow, key)
