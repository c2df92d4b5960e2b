"""The ways out of a clash: another pot, the lid of a bake, a moment before or after, a smaller batch.

Each takes the dish that found no seat and gives it back as it can be cooked, seated and explained; None where the way
is closed.
"""

from __future__ import annotations

from datetime import datetime

from rules.because import Rule
from rules.trip import times
from rules.trip.hearth import Hearth, again, note, pots_said
from rules.trip.irons import Iron, free
from rules.trip.model import Dish, Meal
from rules.trip.stacking import STACKED_LONGER, carries, main_stage
from rules.trip.waiting import follows, waits
from rules.units import number

ANOTHER = Rule(
    id="pots.another",
    because="{pot} is taken by {others}: {dish} is cooked in {instead}, which is free then",
)
EARLIER = Rule(
    id="pots.earlier",
    because="{taken} by {others}: {dish} is cooked before, done {minutes} minutes earlier, and waits {how}",
)
LATER = Rule(
    id="pots.later",
    because="{taken} by {others}: {dish} is sweet and follows the meal by {minutes} minutes, when there is room again",
)
STACKED = Rule(
    id="pots.stacked",
    because="the fire has room for {fires}: {dish} stands on the lid of {others}, whose {top} coals are its heat from"
    " below; lift it off with two lifters to look under it",
)
SMALLER = Rule(
    id="pots.smaller",
    because="{dish} wants {wanted} and {had} free: made {share} as large it fits, so set more bread or salad"
    " beside it",
)
#: How much of the batch is tried, largest first.
SHARES = (0.9, 0.8, 0.7, 0.6, 0.5)
#: A recipe is not made in a smaller part than this (`rules.circumstances`).
LEAST_SCALE = 0.1
MOST_MOVES = 12


def another(dish: Dish, meal: Meal, hearth: Hearth) -> Dish | None:
    """Another pot that is free, where its own is taken."""
    if hearth.pots_for(dish) is not None:
        return None
    tried, irons = _in_a_free_pot(dish, meal, hearth)
    if irons is None or not hearth.has_fire(tried, irons):
        return None
    note(hearth, ANOTHER, "another pot", dish, instead=pots_said(irons))
    hearth.take(tried, irons)
    return tried


def _in_a_free_pot(dish: Dish, meal: Meal, hearth: Hearth) -> tuple[Dish, tuple[Iron, ...] | None]:
    """The dish in its own pots where they are free, else planned anew for those that are."""
    irons = hearth.pots_for(dish)
    idle = free(hearth.irons, hearth.booked, hearth.span(dish))
    if irons is not None or not idle:
        return dish, irons
    tried = again(dish, meal, hearth, irons=idle)
    return tried, hearth.pots_for(tried)


def stacked(dish: Dish, meal: Meal, hearth: Hearth) -> Dish | None:
    """On the lid of a covered bake, where the fire has no room for one more pot."""
    if hearth.trip.fires is None:
        return None
    tried, irons = _in_a_free_pot(dish, meal, hearth)
    if irons is None or len(irons) != 1:
        return None
    span = hearth.span(tried)
    carried = {one.on for one in hearth.booked}
    for below in hearth.booked:
        # The lid below has to glow by the time that the upper pot wants heat from it.
        glows = times.minutes_between(below.span.start, span.start) >= -STACKED_LONGER
        fits = below.span.burns_with(span) and below.on is None and below.dish.id not in carried and glows
        if fits and carries(below, irons[0], tried):
            fires = f"{hearth.trip.fires} pot{'' if hearth.trip.fires == 1 else 's'}"
            top = main_stage(below.dish.plan.heat).top
            note(hearth, STACKED, "stacking", dish, others=[below], fires=fires, top=top)
            hearth.take(tried, irons, on=below.dish.id)
            return tried
    return None


def moved(dish: Dish, meal: Meal, hearth: Hearth) -> Dish | None:
    """Cooked after the meal or before it, in a pot that is free then; a sweet dish rather after."""
    eat = times.moment(dish.eat, hearth.trip.zone)
    wait = waits(dish)
    after = times.figure("follows_min").value if follows(dish) else 0.0
    moves: list[tuple[float, Dish, tuple[Iron, ...]]] = []
    for ready in _moments(dish, hearth):
        by = times.minutes_between(eat, ready)
        if not (-(wait.waits_min if wait else 0.0) <= by <= after) or by == 0:
            continue
        tried, irons = _in_a_free_pot(again(dish, meal, hearth, ready=ready), meal, hearth)
        early = times.minutes_between(hearth.arrive, hearth.span(tried).start) >= 0
        if irons is not None and early and hearth.has_fire(tried, irons):
            moves.append((by, tried, irons))
    if not moves:
        return None
    # After the meal before ahead of it, and each as near to it as can be.
    by, tried, irons = min(moves, key=lambda move: (move[0] < 0, abs(move[0])))
    if by > 0:
        note(hearth, LATER, "order", dish, minutes=f"{by:.0f}")
    else:
        note(hearth, EARLIER, "order", dish, minutes=f"{-by:.0f}", how=wait.how if wait else "")
    hearth.take(tried, irons)
    return tried


def _moments(dish: Dish, hearth: Hearth) -> list[datetime]:
    """When it could be done instead: just before a pot is wanted, or as soon after one is washed."""
    span = hearth.span(dish)
    cooks = times.minutes_between(span.start, span.ready)
    wash = times.figure("wash_min").value
    blocking = sorted(hearth.meets(span), key=lambda one: times.key(one.span.start))
    before = [times.later(one.span.start, -wash) for one in blocking]
    after = [times.later(one.span.end, cooks) for one in blocking]
    return [*after, *before][:MOST_MOVES]


def smaller(dish: Dish, meal: Meal, hearth: Hearth) -> Dish | None:
    """As much of it as the free pots hold."""
    pot = dish.plan.pot
    idle = free(hearth.irons, hearth.booked, hearth.span(dish))
    if pot is None or not idle:
        return None
    for scale in (share * dish.plan.scale for share in SHARES):
        if scale < LEAST_SCALE:
            break
        tried = again(dish, meal, hearth, irons=idle, scale=scale)
        irons = hearth.pots_for(tried)
        if irons is not None and hearth.has_fire(tried, irons):
            had = f"{pots_said(idle)} {'is' if len(idle) == 1 else 'are'}"
            note(hearth, SMALLER, "smaller", dish, had=had, share=f"{number(scale / dish.plan.scale)} times")
            hearth.take(tried, irons)
            return tried
    return None
