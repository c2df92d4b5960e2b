"""How long the pot takes to come to its heat, and the food to the boil: minutes out of the fire, in closed form.

A kitchen oven is preheated, so a recipe's minutes begin in the heat. An iron pot has to be brought there: empty over
its coals before a bake, with its food where something was cooked in it first. Handbook chapter 5.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

import msgspec

from rules.because import Rule
from rules.coals.burn import State, after
from rules.coals.chart import whole
from rules.coals.cook import Cook, temperatures
from rules.coals.counts import Coals
from rules.coals.drafts import Draft, usual
from rules.coals.fire import minutes_until
from rules.plan import Reason

#: The pot is warm when it has come this near to its aim [°F] and goes on rising.
WARM_WITHIN_F = 19.0
#: Nobody warms a pot for less, or stands by it for longer [min].
SHORTEST_MIN, LONGEST_MIN = 5.0, 45.0
#: Fresh coals have the iron at its hottest by then [min].
PEAK_WITHIN_MIN = 45.0
#: A pot that was hotter is in its band by then [min], as an oven that is turned down.
COMES_DOWN_MIN = 10.0
#: A pot that does not boil by then wants more coals or less in it [min].
LONGEST_TO_BOIL_MIN = 60.0
#: The boil comes between these shares of the reckoned minutes.
SOONER, LATER = 0.8, 1.1
#: Stages that hold the iron at a temperature.
HELD = frozenset({"bake", "roast"})

WARM = Rule(
    id="heat.warm",
    because="the pot warms {minutes:.0f} minutes with its coals on and under before the food goes in, as an oven is"
    " preheated; after the {printed:.0f} that are printed so much iron would still stand {short:.0f} °F under its aim",
)
COME_UP = Rule(
    id="heat.come-up",
    because="the pot comes from what went before and needs {minutes:.0f} minutes over these coals to reach the heat of"
    " the {kind}; its minutes count from then",
    source="heat in = heat stored + heat lost (computed)",
)
EASED = Rule(
    id="heat.eased",
    because="the pot or its food is hot already, or there is little in it: {fewer} fewer coals than for a usual {kind}, or"
    " the iron would stand above its band",
    source="heat in = heat stored + heat lost (computed)",
)
COME_DOWN = Rule(
    id="heat.come-down",
    because="the pot comes from a hotter stage: coals are taken away down to those of the {kind}, and within about"
    " {minutes:.0f} minutes it has come down, as an oven that is turned down does",
    source="heat in = heat stored + heat lost (computed)",
)


def warmed(draft: Draft, following: Sequence[Draft], this: Cook) -> Draft:
    """The warming of an empty pot: as long as its iron needs, what the fat is heated counted in."""
    goal = this.aim_f - WARM_WITHIN_F
    all_of_it = minutes_until(this, lambda state: state.iron_f >= goal, LONGEST_MIN)
    fat = sum(next_one.high_min for next_one in following[:1] if next_one.kind == "heat fat")
    minutes = max(float(round(all_of_it - fat)), SHORTEST_MIN)
    return _lasting(draft, minutes)


def why_warmed(draft: Draft, this: Cook) -> tuple[Reason, ...]:
    """Why so long."""
    printed = usual("warm")
    short = this.aim_f - after(this.start, this.body, this.ember, printed.low_min).iron_f
    return (WARM.says("warm", printed, minutes=draft.high_min, printed=printed.low_min, short=short),)


def why_come_up(draft: Draft, minutes: float) -> Reason:
    """Why the pot waits before its bake."""
    return COME_UP.says("warm", minutes=minutes, kind=draft.kind)


def is_too_cool(draft: Draft, this: Cook) -> bool:
    """Whether a bake or roast would begin below its band."""
    return draft.kind in HELD and this.holds == "iron" and this.start.iron_f < this.low_f


def why_come_down(draft: Draft, this: Cook) -> tuple[Reason, ...]:
    """How long a pot that comes from more heat takes down to its band; nothing where it is in it."""
    if draft.kind not in HELD or this.holds != "iron" or this.start.iron_f <= this.high_f:
        return ()
    minutes = math.ceil(minutes_until(this, lambda state: state.iron_f <= this.high_f, LONGEST_MIN))
    return (COME_DOWN.says(draft.kind, minutes=minutes, kind=draft.kind),)


def is_too_hot(draft: Draft, this: Cook) -> bool:
    """Whether a bake or roast would rise above its band before its coals fade, or be slow to come down to it."""
    if draft.kind not in HELD or this.holds != "iron":
        return False
    course = temperatures(this, minutes=min(draft.high_min, PEAK_WITHIN_MIN))
    since = COMES_DOWN_MIN if this.start.iron_f > this.high_f else 0.0
    later = [point.iron_f for point in course if point.at_min >= since]
    return max(later, default=0.0) > this.high_f - 1


def one_fewer(its: Coals) -> Coals:
    """The same coals less one, divided as they are."""
    total = its.total - 1
    top = min(whole(total * its.top / its.total), total)
    return msgspec.structs.replace(its, top=top, under=total - top)


def why_eased(draft: Draft, fewer: int) -> Reason:
    """Why there are fewer coals than for a usual pot."""
    return EASED.says(draft.kind, fewer=fewer, kind=draft.kind)


def come_up(draft: Draft, this: Cook) -> Draft:
    """The stage that brings a pot which has cooked already to the heat of its bake, with what is in it."""
    goal = this.aim_f - WARM_WITHIN_F
    minutes = max(float(round(minutes_until(this, lambda state: state.iron_f >= goal, LONGEST_MIN))), 1.0)
    return Draft(
        kind="warm", way=draft.way, low_min=minutes, high_min=minutes, temp_f=draft.temp_f, look="come up"
    )


def brought_up(draft: Draft, this: Cook, renewed: Callable[[float], Sequence[tuple[float, float]]]) -> Draft:
    """Coming to the boil: as long as the food and the coals make it, in fives.

    `renewed` says which fresh coals (at minute, how many) so many minutes would get.
    """

    def boils(state: State) -> bool:
        return state.food_f >= this.body.boil_f - 1

    minutes = minutes_until(this, boils, LONGEST_TO_BOIL_MIN)
    minutes = minutes_until(this, boils, LONGEST_TO_BOIL_MIN, renewed(minutes))
    return msgspec.structs.replace(draft, low_min=_fives(minutes * SOONER), high_min=_fives(minutes * LATER))


def _lasting(draft: Draft, minutes: float) -> Draft:
    return msgspec.structs.replace(draft, low_min=minutes, high_min=minutes)


def _fives(minutes: float) -> float:
    return max(5.0 * round(minutes / 5), 5.0)
