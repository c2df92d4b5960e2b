"""The figures of food safety, each with its published source beside it in one table."""

from __future__ import annotations

from rules import table


def figure(key: str) -> table.Figure:
    """The row of one limit: a temperature, a time or a rate."""
    return table.figures("safety_figures.csv")[key]


def limit(key: str) -> str:
    """A limit in words: "40 °F"."""
    row = figure(key)
    return f"{row.value:g} {row.unit}"
