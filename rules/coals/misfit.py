"""How well the physics and the printed figures agree: told, not hidden.

The correlations of `balance` against the printed chart, cell by cell; the burn curve against the temperatures of one
chimney, which were kept out of the fit. Handbook chapter 5: where they differ, the published figure is used.
"""

from __future__ import annotations

from rules.coals.balance import INCH, kelvin, loss
from rules.coals.chart import CHART_AIR_F, Cell
from rules.coals.cook import held_loss
from rules.coals.figures import figure
from rules.coals.fuel import chimney_min
from rules.coals.glow import ember
from rules.coals.vessel import iron
from rules.coals.weather import wind_at_the_pot
from rules.recipe import Struct
from rules.table import Row, read


class CellMisfit(Struct, frozen=True, kw_only=True):
    """One cell of the chart: what its pot loses by the correlations and by its own coals [W]."""

    diameter_in: int
    temp_f: int
    by_correlations_w: float
    by_coals_w: float

    @property
    def ratio(self) -> float:
        """The correlations' loss over that of the coals."""
        return self.by_correlations_w / self.by_coals_w


class LogRow(Row, frozen=True, kw_only=True):
    """One reading of a chimney's temperature after lighting."""

    id: str
    after_min: float
    temp_f: float


class LogMisfit(Struct, frozen=True, kw_only=True):
    """One reading of the log: the share of the first glow by its temperature, and by the burn curve."""

    after_min: float
    by_log: float
    by_curve: float


def chart_misfit() -> tuple[CellMisfit, ...]:
    """Every cell of the printed chart against the losses of `balance`."""
    cells: tuple[Cell, ...] = read("coal_chart.csv", Cell)
    return tuple(_cell(cell) for cell in cells)


def _cell(cell: Cell) -> CellMisfit:
    pot = iron(cell.diameter_in, "shallow")
    held = held_loss(
        coals=float(cell.total),
        aim_f=float(cell.temp_f),
        diameter_in=cell.diameter_in,
        depth="shallow",
        air_f=CHART_AIR_F,
        faster=1.0,
    )
    return CellMisfit(
        diameter_in=cell.diameter_in,
        temp_f=cell.temp_f,
        by_correlations_w=loss(
            pot_f=cell.temp_f,
            air_f=CHART_AIR_F,
            wind=wind_at_the_pot("calm", pot.depth_in),
            diameter_m=cell.diameter_in * INCH,
            height_m=pot.depth_in * INCH,
            emissivity=figure("emissivity").value,
        ),
        by_coals_w=held * (cell.temp_f - CHART_AIR_F) / 1.8,
    )


def log_misfit() -> tuple[LogMisfit, ...]:
    """The burn curve against the log of one chimney: radiation goes with the fourth power of the temperature."""
    rows: tuple[LogRow, ...] = read("chimney_log.csv", LogRow)
    hottest = max(kelvin(row.temp_f) for row in rows)
    return tuple(
        LogMisfit(
            after_min=row.after_min,
            by_log=(kelvin(row.temp_f) / hottest) ** 4,
            by_curve=ember().left(row.after_min - chimney_min()),
        )
        for row in rows
    )


def lines() -> list[str]:
    """Both comparisons as text, a line each."""
    chart = (
        f"{cell.diameter_in} in, {cell.temp_f} °F: correlations {cell.by_correlations_w:.0f} W,"
        f" chart's coals {cell.by_coals_w:.0f} W ({(cell.ratio - 1) * 100:+.0f} %)"
        for cell in chart_misfit()
    )
    log = (
        f"{row.after_min:.0f} min after lighting: chimney {row.by_log:.2f} of its glow, curve {row.by_curve:.2f}"
        f" ({row.by_curve - row.by_log:+.2f})"
        for row in log_misfit()
    )
    return [*chart, *log]
