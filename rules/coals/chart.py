"""How many briquettes on a mild, calm day: the published chart, exact on its cells (handbook chapter 5).

Counts stay unrounded here, above and below apart; the day's weather comes on top (`balance`), whole briquettes last
(`counts`). Beyond the chart's edge its last cell is carried on by the law of steady heat: the count goes with the
temperature over the air's.
"""

from __future__ import annotations

import math
from functools import cache
from typing import Literal

from rules.recipe import Struct
from rules.table import Row, read

#: Air temperature that the chart means [°F].
CHART_AIR_F = 70.0
ALL_DIAMETERS = "all"

How = Literal["cell", "between", "beyond", "one law"]


class Cell(Row, frozen=True, kw_only=True):
    """One cell of the printed baking chart."""

    id: str
    diameter_in: int
    temp_f: int
    total: int
    top: int
    under: int


class Law(Row, frozen=True, kw_only=True):
    """count = per_degree x diameter^exponent x (T - air_f), fitted to the chart."""

    id: str
    per_degree: float
    exponent: float
    air_f: float


class Count(Struct, frozen=True, kw_only=True):
    """Briquettes before rounding, how they were found (`how`) and the row that it rests on."""

    top: float
    under: float
    how: How
    row: Cell | Law

    @property
    def total(self) -> float:
        """Above and below together."""
        return self.top + self.under


@cache
def column(diameter_in: int) -> tuple[Cell, ...]:
    """The chart's cells for one diameter, coolest first; empty for a pot that the chart does not know."""
    cells = (cell for cell in read("coal_chart.csv", Cell) if cell.diameter_in == diameter_in)
    return tuple(sorted(cells, key=lambda cell: cell.temp_f))


@cache
def law(key: str) -> Law:
    """The fitted line of one diameter (`"12"`), or the one law over all of them (`"all"`)."""
    rows: tuple[Law, ...] = read("coal_law.csv", Law)
    return next(row for row in rows if row.id == key)


def baseline(diameter_in: int, temp_f: float) -> Count:
    """Briquettes above and below for baking at `temp_f` [°F] in calm air of 70 °F, over dry ground, at sea level.

    Source: the printed chart in coal_chart.csv; between its cells the total and the coals above are interpolated and
    the rest lies below; beyond them the last cell goes on with (T - 70 °F).
    """
    cells = column(diameter_in)
    if not cells:
        return _one_law(diameter_in, temp_f)
    if not cells[0].temp_f <= temp_f <= cells[-1].temp_f:
        edge = cells[0] if temp_f < cells[0].temp_f else cells[-1]
        more = (temp_f - CHART_AIR_F) / (edge.temp_f - CHART_AIR_F)
        return Count(top=edge.top * more, under=edge.under * more, how="beyond", row=edge)
    low = next(cell for cell in reversed(cells) if cell.temp_f <= temp_f)
    high = next(cell for cell in cells if cell.temp_f >= temp_f)
    if low is high:
        return Count(top=low.top, under=low.under, how="cell", row=low)
    part = (temp_f - low.temp_f) / (high.temp_f - low.temp_f)
    top = low.top + part * (high.top - low.top)
    total = low.total + part * (high.total - low.total)
    return Count(top=top, under=total - top, how="between", row=low)


def _one_law(diameter_in: int, temp_f: float) -> Count:
    """A pot outside the chart: the one law, divided as the chart divides its smallest pot."""
    one = law(ALL_DIAMETERS)
    total = one.per_degree * diameter_in**one.exponent * (temp_f - one.air_f)
    smallest = baseline(8, temp_f)
    top = total * smallest.top / smallest.total
    return Count(top=top, under=total - top, how="one law", row=one)


def by_law(diameter_in: int, temp_f: float, air_f: float = CHART_AIR_F) -> float:
    """Total briquettes by the fitted line k (T - air) of a diameter of the chart, unrounded."""
    line = law(f"{diameter_in:02d}")
    return line.per_degree * (temp_f - air_f)


def residuals(diameter_in: int) -> dict[int, int]:
    """By temperature [°F]: the fitted line, rounded, less the printed count."""
    return {cell.temp_f: whole(by_law(diameter_in, cell.temp_f)) - cell.total for cell in column(diameter_in)}


def whole(count: float) -> int:
    """The nearest whole number of briquettes, halves upward."""
    return math.floor(count + 0.5)
