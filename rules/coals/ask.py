"""Coals without a recipe: a pot, a temperature, a way of cooking and a day (`coalside coals`).

Minutes count from coals on. Nothing is decided here that a plan would decide otherwise: the counts, the renewing, the
patterns and the fuel are the same rules.
"""

from __future__ import annotations

from typing import Literal, get_args

from rules.circumstances import DIAMETERS_IN, Day, checked
from rules.coals.counts import Coals
from rules.coals.counts import coals as counted
from rules.coals.fuel import chimney_min, fuel, reasons
from rules.coals.pattern import pattern
from rules.coals.renew import renewals, renewing
from rules.coals.turning import turn_every, turning
from rules.plan import Batch, Depth, Fuel, Pattern, Reason, Refresh
from rules.problem import UsageProblem
from rules.recipe import Struct

For = Literal["bake", "roast", "simmer", "fry"]
FOR: tuple[For, ...] = get_args(For)
MOST_MINUTES = 720
OVEN_F = (200.0, 550.0)


class CoalsAnswer(Struct, frozen=True, kw_only=True, rename={"for_": "for"}):
    """How many briquettes, how they lie, when to turn and renew, and the fuel over `minutes`; `why` says the rest."""

    diameter_in: int
    depth: Depth
    temp_f: float
    for_: For
    minutes: float
    total: int
    top: int
    under: int
    turn_every_min: int | None
    refresh: tuple[Refresh, ...]
    pattern: Pattern
    fuel: Fuel
    why: tuple[Reason, ...] = ()


def coals(
    diameter_in: int,
    temp_f: float | None,
    for_: str,
    day: Day | None = None,
    *,
    minutes: float = 60,
    deep: bool = False,
) -> CoalsAnswer:
    """Briquettes for a pot at an oven temperature [°F]; without one, for what the way of cooking usually takes.

    Raises:
        UsageProblem: naming the option, what was found and what is allowed.
    """
    way = _allowed(diameter_in, temp_f, for_, minutes)
    day = checked(day or Day())
    depth: Depth = "deep" if deep else "shallow"
    found = counted(way, diameter_in=diameter_in, depth=depth, day=day, temp_f=temp_f)
    fresh = renewals(found, way=way, minutes=minutes, diameter_in=diameter_in, depth=depth, day=day)
    batches = [Batch(light_at_min=-chimney_min(), count=found.total)]
    batches += [Batch(light_at_min=more.light_at_min, count=more.top + more.under) for more in fresh]
    total = fuel(batches)
    return CoalsAnswer(
        diameter_in=diameter_in,
        depth=depth,
        temp_f=round(found.aim_f),
        for_=way,
        minutes=minutes,
        total=found.total,
        top=found.top,
        under=found.under,
        turn_every_min=turn_every(way, found.aim_f, day),
        refresh=fresh,
        pattern=pattern(diameter_in, found.top, found.under, spread=way == "fry"),
        fuel=total,
        why=(*found.reasons, *_why(way, found, fresh, minutes, day), *reasons(total)),
    )


def _why(way: For, found: Coals, fresh: tuple[Refresh, ...], minutes: float, day: Day) -> tuple[Reason, ...]:
    every = turn_every(way, found.aim_f, day)
    turned = (turning(every),) if every else ()
    return (*turned, *renewing(fresh, minutes))


def _allowed(diameter_in: int, temp_f: float | None, for_: str, minutes: float) -> For:
    if diameter_in not in DIAMETERS_IN:
        sizes = ", ".join(map(str, DIAMETERS_IN))
        raise UsageProblem("--oven", str(diameter_in), f"camp pots come in {sizes} inches")
    if temp_f is not None and not OVEN_F[0] <= temp_f <= OVEN_F[1]:
        raise UsageProblem(
            "--temp", f"{temp_f:g}F", "write an oven temperature from 200F to 550F (93C to 288C)"
        )
    if not 1 <= minutes <= MOST_MINUTES:
        raise UsageProblem("--minutes", f"{minutes:g}", f"write minutes from 1 to {MOST_MINUTES} (12 hours)")
    for way in FOR:
        if way == for_:
            return way
    raise UsageProblem("--for", for_, f"write one of {', '.join(FOR)}")
