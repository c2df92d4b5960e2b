"""The figures by which a log is read, and the bounds that nothing learnt may pass."""

from __future__ import annotations

from functools import cache

from rules.table import Row, figures, read


class Bound(Row, frozen=True, kw_only=True):
    """From where to where a factor or a reading may go."""

    id: str
    low: float
    high: float
    unit: str

    def held(self, value: float) -> float:
        """The value, or the end that it would pass."""
        return min(max(value, self.low), self.high)

    def holds(self, value: float) -> bool:
        """Whether the value lies within."""
        return self.low <= value <= self.high


@cache
def _bounds() -> dict[str, Bound]:
    return {row.id: row for row in read("habit_bounds.csv", Bound)}


def figure(key: str) -> float:
    """The figure of that name: a spread before anything is logged, a noise, a step."""
    return figures("habit_figures.csv")[key].value


def bound(key: str) -> Bound:
    """The bounds of that name."""
    return _bounds()[key]
