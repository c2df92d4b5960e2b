"""The figures of food safety, each with its published source beside it in one table."""

from __future__ import annotations

from rules import table


class SafetyFigure(table.Row, frozen=True, kw_only=True):
    """One limit: a temperature, a time or a rate."""

    id: str
    value: float
    unit: str


def figure(key: str) -> SafetyFigure:
    """The row of one limit."""
    return next(row for row in table.read("safety_figures.csv", SafetyFigure) if row.id == key)


def limit(key: str) -> str:
    """A limit in words: "40 °F"."""
    row = figure(key)
    return f"{row.value:g} {row.unit}"
