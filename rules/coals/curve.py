"""The course of temperatures of a planned fire, reckoned on request: what the pot and its food do, stage by stage.

The plan's own lightings and fresh coals are laid on when it says so; the fire is followed as it was when it was
planned.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Literal

import msgspec

from rules.circumstances import Day
from rules.coals.cook import EVERY, Cook, Point, temperatures
from rules.coals.counts import Coals, Way
from rules.coals.counts import coals as counted
from rules.coals.fire import Fire, Pot, after_pause, laid, left_by, over, put_back, raked, trimmed
from rules.coals.fuel import chimney_min
from rules.coals.load import Load, planned
from rules.plan import CurvePoint, Heat, Plan, PotPlan, Stage, StageKind
from rules.recipe import Struct

#: Stages that hold a temperature; the others come to one or leave it.
HELD: frozenset[StageKind] = frozenset({"bake", "roast", "simmer"})
#: The ways of cooking that a kind of stage may be.
_WAYS: dict[StageKind, tuple[Way, ...]] = {
    "warm": ("bake", "roast", "gentle", "simmer", "fry", "gentle fry"),
    "heat fat": ("bake", "roast", "gentle", "fry"),
    "brown": ("fry", "gentle fry"),
    "fry": ("fry", "gentle fry"),
    "boil": ("boil", "bring up"),
    "simmer": ("simmer",),
    "bake": ("bake", "roast", "gentle", "simmer"),
    "roast": ("roast", "bake", "gentle", "simmer"),
    "brown top": ("brown top",),
    "keep warm": ("keep warm",),
}
#: Ways whose temperature is the water's, whatever the plan shows for the height.
_AT_THE_BOIL: frozenset[Way] = frozenset({"simmer", "boil", "bring up"})
_SIMMER_F = 213.0
#: Between two stages that follow each other no more than rounding lies [min].
SHORTEST_PAUSE_MIN = 5.0


class Course(Struct, frozen=True, kw_only=True):
    """A stage followed: its points, and between what [°F] it is to hold its iron or its food; None where nothing is held."""

    stage: Stage
    points: tuple[CurvePoint, ...]
    holds: Literal["iron", "food"] | None = None
    low_f: float | None = None
    high_f: float | None = None

    @property
    def held(self) -> tuple[tuple[float, float], ...]:
        """Minutes from the meal, and the temperature [°F] that matters then."""
        if self.holds == "food":
            return tuple((point.at_min, point.food_f) for point in self.points if point.food_f is not None)
        return tuple((point.at_min, point.iron_f) for point in self.points)


def curve(plan: Plan, day: Day | None = None, *, every_min: float = EVERY) -> tuple[CurvePoint, ...]:
    """Iron and food [°F] of a plan every few minutes from its first coals to its last; empty without a fire."""
    found: list[CurvePoint] = []
    for course in courses(plan, day, every_min=every_min):
        # A stage begins where the one before ended: one point for both.
        found += course.points if not found else course.points[1:]
    return tuple(found)


def with_curve(plan: Plan, day: Day | None = None) -> Plan:
    """The plan with the course of its fire in tenths of a degree (`heat.curve`); itself where it has no fire."""
    if plan.heat is None:
        return plan
    points = tuple(
        CurvePoint(
            at_min=point.at_min,
            iron_f=round(point.iron_f, 1),
            food_f=None if point.food_f is None else round(point.food_f, 1),
        )
        for point in curve(plan, day)
    )
    return msgspec.structs.replace(plan, heat=msgspec.structs.replace(plan.heat, curve=points))


def courses(plan: Plan, day: Day | None = None, *, every_min: float = EVERY) -> tuple[Course, ...]:
    """The stages of a plan over coals, followed one after the other."""
    if plan.heat is None:
        return ()
    return follow(plan.heat, plan.pot, day, load=planned(plan), every_min=every_min)


def follow(
    heat: Heat,
    pot: PotPlan | None = None,
    day: Day | None = None,
    *,
    load: Load | None = None,
    every_min: float = EVERY,
) -> tuple[Course, ...]:
    """The stages of a coal plan followed; without a `load` the pot is as full as pots usually are."""
    return tuple(_followed(heat, pot, day or Day(), load, every_min))


def _followed(
    heat: Heat, pot: PotPlan | None, day: Day, load: Load | None, every_min: float
) -> Iterator[Course]:
    this_pot = Pot(
        diameter_in=pot.diameter_in if pot else 12, depth=pot.depth if pot else "shallow", load=load
    )
    fire: Fire | None = None
    for stage in heat.stages:
        if stage.minutes is None or stage.starts_at_min is None or not stage.top + stage.under:
            continue
        start = stage.starts_at_min
        fire = fire or Fire(at_min=start, iron_f=day.air_f, food_f=None)
        is_pause = start - fire.at_min > SHORTEST_PAUSE_MIN
        fire = (
            after_pause(fire, start, day.air_f) if is_pause else msgspec.structs.replace(fire, at_min=start)
        )
        way, its = _counted(stage, this_pot, day)
        fresh = [(more.at_min - start, float(more.top + more.under)) for more in stage.refresh]
        fire = _laid_on(fire, heat, pot.count if pot else 1, fresh, stage)
        this = over(stage.kind, way, its, fire, this_pot, day)
        points = temperatures(this, minutes=stage.minutes.high, fresh=fresh, every_min=every_min)
        yield _course(stage, this, [_moved(point, start, this) for point in points])
        fire = left_by(this, stage.kind, fire, stage.minutes.high, fresh)


def _counted(stage: Stage, pot: Pot, day: Day) -> tuple[Way, Coals]:
    """The way of cooking that has this stage's coals, and its count."""

    def of(way: Way) -> Coals:
        at_boil = way in _AT_THE_BOIL and (stage.temp_f or 0.0) < _SIMMER_F
        temp_f = None if at_boil else stage.temp_f
        return counted(way, diameter_in=pot.diameter_in, depth=pot.depth, day=day, temp_f=temp_f)

    found = [(way, of(way)) for way in _WAYS[stage.kind]]
    return min(found, key=lambda one: abs(one[1].top - stage.top) + abs(one[1].under - stage.under))


def _laid_on(fire: Fire, heat: Heat, pots: int, fresh: Sequence[tuple[float, float]], stage: Stage) -> Fire:
    """The fire with what is laid on as the stage begins, or without what is taken away."""
    fire, count = raked(fire), stage.top + stage.under
    ready = sum(
        batch.count
        for batch in heat.fuel.batches
        if abs(batch.light_at_min + chimney_min() - fire.at_min) < 1e-6
    )
    new = ready / pots - sum(more for at, more in fresh if at == 0)
    if new >= count:
        return laid(fire, new, count=count)
    fire = put_back(fire, count)
    return laid(fire, new) if new > 0 else trimmed(fire, count)


def _moved(point: Point, start: float, this: Cook) -> CurvePoint:
    food_f = point.food_f if this.body.food_j_k else None
    return CurvePoint(at_min=start + point.at_min, iron_f=point.iron_f, food_f=food_f)


def _course(stage: Stage, this: Cook, points: Sequence[CurvePoint]) -> Course:
    if stage.kind not in HELD:
        return Course(stage=stage, points=tuple(points))
    return Course(stage=stage, points=tuple(points), holds=this.holds, low_f=this.low_f, high_f=this.high_f)
