"""When each stage starts, which coals lie on it and which are lit for it (handbook chapter 5).

Times run backwards from the meal on the high end of every stage, so that nobody waits for a pot. Coals move from one
stage to the next and fade meanwhile; what a stage lacks is lit for it, what a long stage loses is renewed.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import msgspec

from rules.circumstances import Day
from rules.coals.counts import Coals
from rules.coals.drafts import Draft
from rules.coals.figures import figure
from rules.coals.fuel import chimney_min
from rules.coals.glow import ember
from rules.coals.renew import renewals
from rules.plan import Batch, Depth, Refresh
from rules.recipe import Struct

#: So much of a stage's coals may be missing before new ones are lit for it.
MISSED_SHARE = 0.1
#: Coals as old as this are left to the ash when a new stage begins [min].
SPENT_MIN = 60.0
#: Stages whose coals warm a pot that holds no food yet.
EMPTY = frozenset({"warm", "heat fat"})


class Timed(Struct, frozen=True, kw_only=True):
    """A stage with its coals and its start [min from the meal]; `coals` None where no coals are needed."""

    draft: Draft
    coals: Coals | None
    starts_at_min: float
    refresh: tuple[Refresh, ...] = ()


def timed(drafts: Sequence[Draft], coals: Sequence[Coals | None], rest_min: float) -> list[Timed]:
    """Stages in a row, the last one ending `rest_min` before the meal; a rise ends when the food meets the heat."""
    found: list[Timed] = []
    end = -rest_min
    food_in = end
    for draft, its in zip(reversed(drafts), reversed(coals), strict=True):
        if draft.kind == "rise":
            end = min(end, food_in) if found and found[-1].draft.kind == "rise" else food_in
        start = end - draft.high_min
        found.append(Timed(draft=draft, coals=its, starts_at_min=start))
        end = start
        if draft.kind not in EMPTY and draft.kind != "rise":
            food_in = start
    return sorted(found, key=lambda stage: stage.starts_at_min)


class _Bed(Struct, frozen=True, kw_only=True):
    """Coals that burn: how many, since when [min from the meal]."""

    count: float
    since_min: float


def fired(
    stages: Sequence[Timed], *, diameter_in: int, depth: Depth, day: Day, food_kg: float | None
) -> tuple[list[Timed], list[Batch]]:
    """The stages with their renewings (minutes from the meal), and every lighting of the chimney."""
    found: list[Timed] = []
    batches: list[Batch] = []
    bed: list[_Bed] = []
    for stage in stages:
        coals = stage.coals
        if coals is None or not coals.total:
            found.append(stage)
            continue
        bed, lit = _fed(bed, coals.total, stage.starts_at_min, sum(batch.count for batch in batches))
        if lit:
            batches.append(Batch(light_at_min=stage.starts_at_min - chimney_min(), count=lit))
        lying = sum(part.count for part in bed)
        fresh = renewals(
            coals,
            way=stage.draft.way,
            minutes=stage.draft.high_min,
            diameter_in=diameter_in,
            depth=depth,
            day=day,
            food_kg=food_kg,
            lying=lying,
            age_min=_age(bed, stage.starts_at_min),
            preheat_min=figure("warm before").value,
        )
        fresh = tuple(
            msgspec.structs.replace(
                more,
                at_min=stage.starts_at_min + more.at_min,
                light_at_min=stage.starts_at_min + more.light_at_min,
            )
            for more in fresh
        )
        batches += [Batch(light_at_min=more.light_at_min, count=more.top + more.under) for more in fresh]
        bed += [_Bed(count=more.top + more.under, since_min=more.at_min) for more in fresh]
        found.append(msgspec.structs.replace(stage, refresh=fresh))
    return found, batches


def _fed(bed: list[_Bed], wanted: int, now: float, lit_before: int) -> tuple[list[_Bed], int]:
    """The bed that gives what `wanted` fresh coals would, and how many were lit for it.

    What is spent goes with the ash, a surplus is taken away.
    """
    glow = ember()
    bed = [part for part in bed if now - part.since_min < SPENT_MIN]
    alive = sum(part.count * glow.left(now - part.since_min) for part in bed)
    missing = wanted - alive
    # A few may be missed, but never so that a stage asks for more than was ever lit.
    if missing > MISSED_SHARE * wanted or wanted > lit_before:
        lit = max(math.ceil(missing), wanted - lit_before, 1)
        return [*bed, _Bed(count=lit, since_min=now)], lit
    kept = min(1.0, wanted / alive) if alive else 1.0
    return [_Bed(count=part.count * kept, since_min=part.since_min) for part in bed], 0


def _age(bed: Sequence[_Bed], now: float) -> float:
    """The age [min] at which coals all of one kind would give what this bed gives."""
    glow = ember()
    count = sum(part.count for part in bed)
    left = sum(part.count * glow.left(now - part.since_min) for part in bed) / count if count else 1.0
    return glow.age_at(left)
