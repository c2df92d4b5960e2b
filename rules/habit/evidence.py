"""What one line of the log says of the cook's pots, charcoal and minutes: weighed equations, linear in logarithms.

A pot that holds more than the chart's heat has `heat` above 0: heat = ln(rise over the air / the chart's rise). It is
the sum of a pot's part and a charcoal's part. Minutes follow as ln(minutes / planned) = minutes - k (heat + coals
laid), where k is "time per heat"; water at the boil takes no heat beyond it, so a simmer has k = 0. What the bread's
two faces tell apart is the pot's `split`: ln(heat above / below over the chart's).
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from rules.circumstances import Charcoal
from rules.habit.figures import bound, figure
from rules.habit.record import TIMED, Cooked
from rules.plan import Depth, StageKind
from rules.recipe import Struct


class Evidence(Struct, frozen=True, kw_only=True):
    """One equation: the effects with their weights add up to `value`, give or take `noise`."""

    weights: Mapping[str, float]
    value: float
    noise: float


def pot_heat(diameter_in: int, depth: Depth) -> str:
    """The name of a pot's part of the heat."""
    return f"heat of the {diameter_in}-inch {depth} pot"


def fuel_heat(charcoal: Charcoal) -> str:
    """The name of a charcoal's part of the heat."""
    return f"heat of {charcoal}"


def pot_split(diameter_in: int, depth: Depth) -> str:
    """The name of a pot's split."""
    return f"split of the {diameter_in}-inch {depth} pot"


def own_minutes(kind: StageKind) -> str:
    """The name of the cook's minutes: simmering is one thing, baking and roasting another."""
    return "minutes of a simmer" if kind == "simmer" else "minutes of a bake"


def spread(effect: str) -> float:
    """How far an effect may lie from nothing before anything is logged."""
    if effect.startswith("heat of the"):
        return figure("pot spread")
    if effect.startswith("heat"):
        return figure("fuel spread")
    return figure("split spread") if effect.startswith("split") else figure("minutes spread")


def time_per_heat(kind: StageKind) -> float:
    """By how many hundredths a dish is shorter for each hundredth of heat more."""
    return 0.0 if kind == "simmer" else figure("time per heat")


def evidence(cook: Cooked) -> Iterator[Evidence]:
    """Every equation that a logged cook gives; none from what cannot be."""
    heat = {
        pot_heat(cook.diameter_in, cook.depth): 1.0,
        fuel_heat(cook.charcoal): 1.0,
    }
    laid = _log(cook.laid_top + cook.laid_under, cook.chart_top + cook.chart_under)
    yield from _minutes(cook, heat, laid)
    yield from _reading(cook, heat, laid)
    yield from _faces(cook, heat, laid)


def _weather_noise(cook: Cooked) -> float:
    """What the day's wind adds to the noise of anything that tells of the heat."""
    return 0.0 if cook.wind == "calm" else figure(f"{cook.wind} noise")


def is_counted(cook: Cooked) -> bool:
    """Whether its minutes, if any were told, can be those of the plan."""
    minutes = cook.told.minutes
    return minutes is None or cook.kind not in TIMED or bound("counted").holds(minutes / cook.chart_min)


def _log(laid: float, chart: float) -> float:
    """The logarithm of a ratio of counts; where one of them is nothing, nothing is known."""
    return math.log(laid / chart) if laid > 0 and chart > 0 else 0.0


def _minutes(cook: Cooked, heat: Mapping[str, float], laid: float) -> Iterator[Evidence]:
    if cook.told.minutes is None or cook.kind not in TIMED or not is_counted(cook):
        return
    per_heat = time_per_heat(cook.kind)
    weights = {own_minutes(cook.kind): 1.0} | {name: -per_heat * part for name, part in heat.items()}
    # A range of the text is spread evenly over its ends, which has the deviation of its length over root 12.
    range_noise = math.log(cook.chart_high_min / cook.chart_low_min) / math.sqrt(12)
    yield Evidence(
        weights={name: weight for name, weight in weights.items() if weight},
        value=math.log(cook.told.minutes / cook.chart_min) + per_heat * laid,
        noise=math.hypot(figure("minutes noise"), range_noise, per_heat * _weather_noise(cook)),
    )


def _reading(cook: Cooked, heat: Mapping[str, float], laid: float) -> Iterator[Evidence]:
    read_f, aim_f = cook.told.pot_f, cook.aim_f
    if read_f is None or aim_f is None or cook.kind == "simmer" or not bound("reading").holds(read_f):
        return
    if read_f > cook.air_f and aim_f > cook.air_f:
        value = math.log((read_f - cook.air_f) / (aim_f - cook.air_f)) - laid
        noise = math.hypot(figure("reading noise"), _weather_noise(cook))
        yield Evidence(weights=heat, value=value, noise=noise)


def _faces(cook: Cooked, heat: Mapping[str, float], laid: float) -> Iterator[Evidence]:
    """Both faces together tell of the heat, apart of the split; a face of which nothing is said was right."""
    if (cook.told.top is None and cook.told.under is None) or cook.kind == "simmer":
        return
    top, under = cook.told.top or 0, cook.told.under or 0
    value = (top + under) / 2 * figure("darkness heat") - laid
    noise = math.hypot(figure("darkness noise"), _weather_noise(cook))
    yield Evidence(weights=heat, value=value, noise=noise)
    moved = _log(cook.laid_top, cook.chart_top) - _log(cook.laid_under, cook.chart_under)
    yield Evidence(
        weights={pot_split(cook.diameter_in, cook.depth): 1.0},
        value=(top - under) * figure("darkness split") - moved,
        noise=figure("split noise"),
    )
