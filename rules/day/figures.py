"""Lengths of time and hours of the day, from one table."""

from __future__ import annotations

from rules import table


def figure(key: str) -> table.Figure:
    """The row of one figure of the day."""
    return table.figures("day_figures.csv")[key]
