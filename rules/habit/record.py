"""One line of the log: what the plan said, what lay on the pot, and what the cook tells afterwards.

The log keeps plain counts and minutes, never a judgement: `fit` reads it anew each time, so a better rule reads an
old log better.
"""

from __future__ import annotations

import math
from typing import Literal

from rules.circumstances import Charcoal, Day, Wind
from rules.plan import Depth, Plan, Stage, StageKind
from rules.recipe import Struct

#: How dark a face came out: pale, a bit pale, right, a bit dark, dark, burnt.
Darkness = Literal[-2, -1, 0, 1, 2, 3]
#: Stages whose minutes a cook means when a dish "took 35 minutes".
TIMED: tuple[StageKind, ...] = ("bake", "roast", "simmer")
COOKING: tuple[StageKind, ...] = (*TIMED, "boil", "fry")


class Told(Struct, frozen=True, kw_only=True):
    """What the cook says after a meal; None for what was not said. `pot_f` is a reading inside the pot [°F]."""

    minutes: float | None = None
    pot_f: float | None = None
    top: Darkness | None = None
    under: Darkness | None = None
    #: briquettes that lay there, where they were not those of the plan
    top_coals: int | None = None
    under_coals: int | None = None


class Cooked(Struct, frozen=True, kw_only=True):
    """A logged cook.

    `chart_*` is what the plan says without anything learnt, on the day as it turned out; `laid_*` the briquettes that
    lay there. Minutes are those of the stage that makes the dish.
    """

    dish: str
    kind: StageKind
    diameter_in: int
    depth: Depth
    charcoal: Charcoal = "briquettes"
    air_f: float
    wind: Wind
    aim_f: float | None
    chart_low_min: float
    chart_high_min: float
    chart_top: int
    chart_under: int
    laid_top: int
    laid_under: int
    told: Told

    @property
    def chart_min(self) -> float:
        """The middle of the planned minutes, as ratios go."""
        return math.sqrt(self.chart_low_min * self.chart_high_min)


def main_stage(plan: Plan) -> Stage | None:
    """The stage that cooks the dish: the longest one over coals of those that bake, roast, simmer, boil or fry."""
    if plan.heat is None:
        return None
    over_coals = [stage for stage in plan.heat.stages if stage.top + stage.under]
    chosen = [stage for stage in over_coals if stage.kind in COOKING] or over_coals
    return max(chosen, key=lambda stage: stage.minutes.high if stage.minutes else 0, default=None)


def cooked(plan: Plan, chart: Plan, day: Day, told: Told) -> Cooked | None:
    """The line of the log for a plan that was cooked; None where it has no stage over coals.

    `plan` is what the cook had in hand, `chart` the same dish on the day as it turned out, with nothing learnt in it.
    """
    stage, usual = main_stage(plan), main_stage(chart)
    if stage is None or usual is None or usual.minutes is None or chart.pot is None:
        return None
    return Cooked(
        dish=chart.recipe.title or "a dish without a name",
        kind=usual.kind,
        diameter_in=chart.pot.diameter_in,
        depth=chart.pot.depth,
        charcoal=day.burns,
        air_f=day.air_f,
        wind=day.wind,
        aim_f=usual.temp_f,
        chart_low_min=usual.minutes.low,
        chart_high_min=usual.minutes.high,
        chart_top=usual.top,
        chart_under=usual.under,
        laid_top=stage.top if told.top_coals is None else told.top_coals,
        laid_under=stage.under if told.under_coals is None else told.under_coals,
        told=told,
    )
