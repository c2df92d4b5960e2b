"""How well the physics and the printed figures agree: told, not hidden.

The correlations of `balance` against the printed chart, cell by cell; the burn curve against the temperatures of one
chimney, which were kept out of the fit. Handbook chapter 5: where they differ, the published figure is used.
"""

from __future__ import annotations

import math

from rules.coals.balance import INCH, kelvin, loss
from rules.coals.chart import CHART_AIR_F, Cell, law, residuals
from rules.coals.cook import held_loss
from rules.coals.figures import figure
from rules.coals.fuel import chimney_min
from rules.coals.glow import ember
from rules.coals.vessel import iron
from rules.coals.weather import wind_at_the_pot
from rules.recipe import Struct
from rules.table import Row, read

#: Diameters that the chart prints.
CHARTED_IN = (8, 10, 12, 14, 16)


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


class ShareRange(Struct, frozen=True, kw_only=True):
    """The share of a briquette's heat that reaches the pot: the fitted constant, and how far it may be off.

    `by_heat_*` with the heating value at its ends, `by_cell_*` were each cell of the chart fitted alone.
    """

    share: float
    by_heat_low: float
    by_heat_high: float
    by_cell_low: float
    by_cell_high: float


def share_range() -> ShareRange:
    """The one fitted constant with its range."""
    share, heating = figure("share reaching").value, figure("heating value").value
    ratios = [cell.ratio for cell in chart_misfit()]
    return ShareRange(
        share=share,
        by_heat_low=share * heating / figure("heating value most").value,
        by_heat_high=share * heating / figure("heating value least").value,
        by_cell_low=share * min(ratios),
        by_cell_high=share * max(ratios),
    )


def log_deviation() -> tuple[float, float]:
    """The curve less the log after the log's peak, as shares of the first glow: root of the mean square, and the most."""
    rows = log_misfit()
    last_peak = max(place for place, row in enumerate(rows) if row.by_log == 1)
    misses = [row.by_curve - row.by_log for row in rows[last_peak + 1 :]]
    mean_square = sum(miss * miss for miss in misses) / len(misses)
    return math.sqrt(mean_square), max(misses, key=abs)


def residual_lines() -> list[str]:
    """The fitted line k (T - 70 °F) of each diameter beside its printed row."""
    return [
        f"{diameter} in: {law(f'{diameter:02d}').per_degree:.4f} (T - 70 °F), rounded, less the print: "
        + ", ".join(
            f"{miss:+d} at {temp} °F" if miss else f"0 at {temp} °F"
            for temp, miss in residuals(diameter).items()
        )
        for diameter in CHARTED_IN
    ]


def lines() -> list[str]:
    """Everything compared, as text: the fitted lines, the fitted constant, the correlations, the burn curve."""
    found = share_range()
    root, most = log_deviation()
    return [
        "The printed chart beside its fitted lines",
        *residual_lines(),
        "",
        "The share of a briquette's heat that reaches the pot, the one constant fitted to the chart",
        f"{found.share:.3f}; {found.by_heat_low:.2f} to {found.by_heat_high:.2f} with the heating value at its ends;"
        f" {found.by_cell_low:.2f} to {found.by_cell_high:.2f} were each cell of the chart fitted alone",
        "",
        "Heat lost by the correlations and by the chart's own coals: radiation bends upward, the chart does not",
        *(
            f"{cell.diameter_in} in, {cell.temp_f} °F: correlations {cell.by_correlations_w:.0f} W,"
            f" chart's coals {cell.by_coals_w:.0f} W ({(cell.ratio - 1) * 100:+.0f} %)"
            for cell in chart_misfit()
        ),
        "",
        "The burn curve beside the log of one chimney, which was kept out of the fit",
        *(
            f"{row.after_min:.0f} min after lighting: chimney {row.by_log:.2f} of its glow, curve {row.by_curve:.2f}"
            f" ({row.by_curve - row.by_log:+.2f})"
            for row in log_misfit()
        ),
        f"after its peak the curve is off by {root:.2f} in the mean square and {most:+.2f} at the most: one chimney"
        " fades sooner than the printed lifetimes say",
    ]
