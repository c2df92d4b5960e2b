"""Lengths of time and hours of the day, from one table."""

from __future__ import annotations

from rules import table


class DayFigure(table.Row, frozen=True, kw_only=True):
    """One length of time or hour of the day."""

    id: str
    value: float
    unit: str


def figure(key: str) -> DayFigure:
    """The row of one figure of the day."""
    return next(row for row in table.read("day_figures.csv", DayFigure) if row.id == key)
