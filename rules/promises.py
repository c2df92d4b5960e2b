"""What every plan promises, checked before it leaves the house.

Shares of every ingredient over the packs add up to one. Briquettes are whole and never negative. Fuel covers every
stage and refresh. The timeline does not run backwards. Every reason has a registered rule. A broken promise is an
error that names the recipe line, never a wrong plan.
"""

from __future__ import annotations

from collections import defaultdict
from fractions import Fraction

from rules.because import RULES
from rules.plan import Fuel, Heat, Plan, Stage
from rules.problem import BrokenInvariant

#: Shares such as thirds are floats; their sum may miss one by rounding and by no more.
TOLERANCE = 1e-6
RESERVE_SHARE = Fraction(1, 4)


def keep(plan: Plan) -> None:
    """Hold a plan against its promises.

    Raises:
        BrokenInvariant: for the first promise that it breaks.
    """
    _nothing_lost_nothing_doubled(plan)
    if plan.heat:
        for stage in plan.heat.stages:
            _coals_are_whole(stage, plan)
        _fuel_covers(plan.heat, plan)
    elif not plan.no_coals_because:
        raise BrokenInvariant(_name(plan), "a plan without coals says why")
    _time_runs_forwards(plan)
    _every_reason_is_registered(plan)


def _name(plan: Plan) -> str:
    return plan.file or plan.recipe.title or "this recipe"


def _nothing_lost_nothing_doubled(plan: Plan) -> None:
    shares: defaultdict[int, float] = defaultdict(float)
    count = len(plan.recipe.ingredients)
    for pack in plan.packs:
        for item in pack.items:
            if item.share <= 0:
                raise BrokenInvariant(f"{_name(plan)}, pack {pack.id}", "every share is more than nothing")
            if not 0 <= item.ingredient < count:
                raise BrokenInvariant(
                    f"{_name(plan)}, pack {pack.id}", "a pack holds only what the recipe asks for"
                )
            shares[item.ingredient] += item.share
    for index, ingredient in enumerate(plan.recipe.ingredients):
        if abs(shares[index] - 1) > TOLERANCE:
            raise BrokenInvariant(
                f"{_name(plan)}, line {ingredient.line + 1} ({ingredient.name})",
                f"all of it is packed once, not {shares[index]:.3g} times",
            )


def _coals_are_whole(stage: Stage, plan: Plan) -> None:
    counts = [stage.top, stage.under, *(n for fresh in stage.refresh for n in (fresh.top, fresh.under))]
    if any(not isinstance(count, int) or count < 0 for count in counts):
        raise BrokenInvariant(
            f"{_name(plan)}, stage {stage.kind}", "briquettes are counted in whole ones, none negative"
        )


def _fuel_covers(heat: Heat, plan: Plan) -> None:
    fuel: Fuel = heat.fuel
    most = max((stage.top + stage.under for stage in heat.stages), default=0)
    fresh = sum(refresh.top + refresh.under for stage in heat.stages for refresh in stage.refresh)
    reserve = -(-fuel.lit * RESERVE_SHARE.numerator // RESERVE_SHARE.denominator)
    promises = (
        (fuel.lit == sum(batch.count for batch in fuel.batches), "the batches add up to what is lit"),
        (fuel.lit >= max(most, fresh), "what is lit covers every stage and every refresh"),
        (fuel.reserve == reserve, "the reserve is a quarter, rounded up"),
        (fuel.briquettes == fuel.lit + fuel.reserve, "the briquettes are those lit and the reserve"),
    )
    for kept, promise in promises:
        if not kept:
            raise BrokenInvariant(f"{_name(plan)}, fuel", promise)


def _time_runs_forwards(plan: Plan) -> None:
    times = [moment.at_min for moment in plan.timeline]
    if times != sorted(times):
        raise BrokenInvariant(f"{_name(plan)}, timeline", "the day runs forwards")


def _every_reason_is_registered(plan: Plan) -> None:
    for reason in plan.why:
        if reason.rule not in RULES:
            raise BrokenInvariant(
                f"{_name(plan)}, reason {reason.rule}", "every reason has a registered rule"
            )
