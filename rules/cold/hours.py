"""How long the food is in the cooler before the meal, and in what air."""

from __future__ import annotations

from rules import table
from rules.circumstances import Day


class ColdFigure(table.Row, frozen=True, kw_only=True):
    """One figure of the cold chapter."""

    id: str
    value: float
    unit: str


def figure(key: str) -> ColdFigure:
    """The row of one figure of `cold_figures.csv`."""
    return next(row for row in table.read("cold_figures.csv", ColdFigure) if row.id == key)


def in_cooler(day: Day) -> float:
    """Hours from the shutting of the cooler to the meal; a day where the cook did not say."""
    return day.trip_hours if day.trip_hours is not None else figure("trip_hours").value


def air_f(day: Day) -> float:
    """Air around the cooler on the way [°F]: as told, else the air at camp, and never below a mild day's."""
    return day.trip_air_f if day.trip_air_f is not None else max(day.air_f, figure("trip_air_f").value)


def cooler_quarts(day: Day) -> float:
    """Size of the cooler [US quarts]; 48 where the cook did not say."""
    return day.cooler_quarts if day.cooler_quarts is not None else figure("cooler_quarts").value
