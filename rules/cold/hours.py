"""Figures of the cold chapter, and what the day says of the cooler: how long, in what air, how large."""

from __future__ import annotations

from functools import cache

from rules import table
from rules.circumstances import Day


class ColdFigure(table.Row, frozen=True, kw_only=True):
    """One figure of the cold chapter; `low` and `high` where it is a range."""

    id: str
    low: float | None = None
    value: float
    high: float | None = None
    unit: str

    @property
    def least(self) -> float:
        """The low end, or the figure itself."""
        return self.low if self.low is not None else self.value

    @property
    def most(self) -> float:
        """The high end, or the figure itself."""
        return self.high if self.high is not None else self.value


@cache
def _figures() -> dict[str, ColdFigure]:
    return {row.id: row for row in table.read("cold_figures.csv", ColdFigure)}


def figure(key: str) -> ColdFigure:
    """The row of one figure of `cold_figures.csv`."""
    return _figures()[key]


def in_cooler(day: Day) -> float:
    """Hours from the shutting of the cooler to the meal; a day where the cook did not say."""
    return day.trip_hours if day.trip_hours is not None else figure("trip_hours").value


def air_f(day: Day) -> float:
    """Air around the cooler on the way [°F]: as told, else the air at camp, and never below a mild day's."""
    return day.trip_air_f if day.trip_air_f is not None else max(day.air_f, figure("trip_air_f").value)


def cooler_quarts(day: Day) -> float:
    """Size of the cooler [US quarts]; 48 where the cook did not say."""
    return day.cooler_quarts if day.cooler_quarts is not None else figure("cooler_quarts").value


def celsius(temp_f: float) -> float:
    """A temperature [°F] in °C."""
    return (temp_f - 32) / 1.8
