"""One pot on the lid of another: whose coals are then the upper one's heat from below."""

from __future__ import annotations

from rules.plan import Heat, Stage
from rules.trip.irons import Booked, Iron
from rules.trip.model import Dish

#: Stages during which a lid stays on, and those before them that want it off for a moment only.
COVERED = frozenset({"bake", "roast", "brown top", "keep warm", "rise", "light", "warm", "heat fat"})
#: A pot on another's lid is over coals no longer than that one, but for so much [min].
STACKED_LONGER = 10.0


def carries(below: Booked, iron: Iron, dish: Dish) -> bool:
    """Whether a pot may stand on that dish's lid: both bake covered, it is no larger, and the lid bears enough coals."""
    lower, upper = below.dish.plan.heat, dish.plan.heat
    if lower is None or upper is None or len(below.irons) != 1:
        return False
    covered = all(stage.kind in COVERED for heat in (lower, upper) for stage in heat.stages)
    return (
        covered
        and _minutes(upper) <= _minutes(lower) + STACKED_LONGER
        and iron.diameter_in <= below.irons[0].diameter_in
        and main_stage(lower).top >= main_stage(upper).under > 0
    )


def _minutes(heat: Heat) -> float:
    stage = main_stage(heat)
    return stage.minutes.high if stage.minutes else 0.0


def main_stage(heat: Heat | None) -> Stage:
    """The longest stage over coals."""
    assert heat is not None  # only dishes over coals have pots
    burning = [stage for stage in heat.stages if stage.kind != "light"] or list(heat.stages)
    return max(burning, key=lambda stage: stage.minutes.high if stage.minutes else 0.0)
