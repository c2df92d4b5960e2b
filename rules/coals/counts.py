"""Whole briquettes above and below for one way of cooking, on a day (handbook chapter 5).

The printed chart or the pot's diameter gives the count of a mild day, the way of cooking its division, the day its
factors; the whole number comes last, so that above plus below is the count.
"""

from __future__ import annotations

from typing import Literal, get_args

from rules.because import Rule
from rules.circumstances import Day
from rules.coals.chart import CHART_AIR_F, Count, Law, baseline, whole
from rules.coals.figures import figure, heat, share
from rules.coals.weather import factors
from rules.habit import coal_factor, split_factor
from rules.plan import Depth, Reason
from rules.recipe import Struct

Way = Literal[
    "bake", "roast", "gentle", "simmer", "boil", "bring up", "fry", "gentle fry", "brown top", "keep warm"
]
WAYS: tuple[Way, ...] = get_args(Way)
#: Ways of which the lid carries nothing.
ALL_UNDER: frozenset[Way] = frozenset({"fry", "gentle fry", "boil"})
#: Ways counted by the pot's diameter.
BY_DIAMETER: frozenset[Way] = ALL_UNDER | {"bring up"}

CHART = Rule(
    id="coals.chart",
    because="for {temp:.0f} °F a {diameter}-inch pot takes {total} briquettes on a calm day of 70 °F, {top} above and"
    " {under} below",
)
BETWEEN = Rule(
    id="coals.between",
    because="{temp:.0f} °F lies between two columns of the printed chart: the count for a {diameter}-inch pot is"
    " {total:.1f}, taken in proportion",
)
BEYOND = Rule(
    id="coals.beyond",
    because="{temp:.0f} °F lies beyond the printed chart, which ends at {edge} °F: {total:.1f} briquettes for a"
    " {diameter}-inch pot is carried on from there and less sure",
)
ONE_LAW = Rule(
    id="coals.small",
    because="no chart prints a {diameter}-inch pot: {total:.1f} briquettes for {temp:.0f} °F comes from the one law"
    " that fits the larger pots, so look early",
)
SHARE = Rule(
    id="coals.share",
    because="{method} wants its coals {top_parts} to {under_parts}, above to below",
)
DIAMETER = Rule(
    id="coals.diameter",
    because="{note}: {total:.0f} for {diameter} inches",
)


class Coals(Struct, frozen=True, kw_only=True):
    """Briquettes of one stage, whole; `exact` is their unrounded number, `aim_f` what the pot is held at [°F]."""

    top: int
    under: int
    aim_f: float
    exact: float
    reasons: tuple[Reason, ...] = ()

    @property
    def total(self) -> int:
        """Above and below together."""
        return self.top + self.under


def coals(way: Way, *, diameter_in: int, depth: Depth, day: Day, temp_f: float | None = None) -> Coals:
    """Briquettes for a way of cooking in a pot, at an oven temperature [°F] where there is one."""
    base, reasons = _mild(way, diameter_in, temp_f)
    aim = base.aim_f
    day_factors = factors(diameter_in=diameter_in, depth=depth, pot_f=aim, day=day, under=base.under)
    top = base.top * day_factors.both
    under = base.under * day_factors.both + day_factors.ground_coals
    top, under, learnt = _as_logged(top, under, diameter_in, depth, day)
    total = whole(top + under)
    above = min(whole(top), total)
    why = (*reasons, *day_factors.reasons, *learnt)
    return Coals(top=above, under=total - above, aim_f=aim, exact=top + under, reasons=why)


def _as_logged(
    top: float, under: float, diameter_in: int, depth: Depth, day: Day
) -> tuple[float, float, tuple[Reason, ...]]:
    """Both halves as the cook's own log corrects them; untouched where there is none."""
    if day.habit is None:
        return top, under, ()
    heat, split = coal_factor(day, diameter_in, depth), split_factor(day, diameter_in, depth)
    total = (top + under) * heat.factor
    if not top or not under:
        return top * heat.factor, under * heat.factor, heat.reasons
    odds = top / under * split.factor
    return total * odds / (1 + odds), total / (1 + odds), (*heat.reasons, *split.reasons)


class _Mild(Struct, frozen=True, kw_only=True):
    top: float
    under: float
    aim_f: float


def _mild(way: Way, diameter_in: int, temp_f: float | None) -> tuple[_Mild, list[Reason]]:
    """The unrounded count on a mild day, and why."""
    if way in BY_DIAMETER:
        return _by_diameter(way, diameter_in, temp_f)
    aim = temp_f if temp_f is not None else figure(_AIMS.get(way, "bake")).value
    chart = baseline(diameter_in, aim)
    reasons = [_chart_reason(chart, diameter_in, aim)]
    if way == "bake":
        return _Mild(top=chart.top, under=chart.under, aim_f=aim), reasons
    parts = share(way)
    reasons.append(
        SHARE.says(
            "coals", parts, method=parts.method, top_parts=parts.top_parts, under_parts=parts.under_parts
        )
    )
    top = chart.total * parts.top_parts / (parts.top_parts + parts.under_parts)
    return _Mild(top=top, under=chart.total - top, aim_f=aim), reasons


#: The figure that says at what temperature a way of cooking aims when the recipe does not say.
_AIMS: dict[Way, str] = {
    "bake": "bake",
    "roast": "bake",
    "gentle": "gentle",
    "simmer": "simmer",
    "brown top": "brown top",
    "keep warm": "keep warm",
}


def _by_diameter(way: Way, diameter_in: int, temp_f: float | None) -> tuple[_Mild, list[Reason]]:
    """So many per inch of diameter; hotter or cooler fat than the row's takes its part of the law."""
    row = heat(way)
    aim = temp_f if temp_f is not None else row.at_f
    total = row.per_inch * diameter_in * (aim - CHART_AIR_F) / (row.at_f - CHART_AIR_F)
    parts = share("fry" if way in ALL_UNDER else way)
    top = total * parts.top_parts / (parts.top_parts + parts.under_parts)
    reason = DIAMETER.says("coals", row, note=row.note, total=total, diameter=diameter_in)
    return _Mild(top=top, under=total - top, aim_f=aim), [reason]


def _chart_reason(chart: Count, diameter_in: int, temp_f: float) -> Reason:
    row = chart.row
    if isinstance(row, Law):
        return ONE_LAW.says("coals", row, diameter=diameter_in, temp=temp_f, total=chart.total)
    if chart.how == "cell":
        return CHART.says(
            "coals", row, diameter=diameter_in, temp=temp_f, total=row.total, top=row.top, under=row.under
        )
    if chart.how == "between":
        return BETWEEN.says("coals", row, diameter=diameter_in, temp=temp_f, total=chart.total)
    return BEYOND.says("coals", row, diameter=diameter_in, temp=temp_f, total=chart.total, edge=row.temp_f)
