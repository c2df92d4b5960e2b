"""Two dishes and one pot: found, and settled by another pot, by order, by stacking or by a smaller batch.

Dishes that cannot wait are seated first. One that finds its pot taken tries, in this order: another pot that is free;
a moment before or after (where it may wait, or is sweet and follows the meal); fewer helpings, as many as the free pots
hold. Where the fire has no room for one more pot, a covered bake stands on the lid of another. What stays open is said.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import datetime

from rules.because import Ledger, Rule
from rules.trip import dishes as the_dishes
from rules.trip import times
from rules.trip.hearth import Hearth, note, pots_said
from rules.trip.irons import Booked, kind_of, span_of
from rules.trip.model import Dish, Meal, Settled, Trip
from rules.trip.waiting import follows, waits
from rules.trip.ways import another, moved, smaller, stacked

TOO_FEW = Rule(
    id="pots.too-few",
    because="{dish} wants {wanted}, and {all} along: bring more, cook it in turns, or make much less of it",
)
OPEN = Rule(
    id="pots.open",
    because="{dish} wants {wanted} while {others} {have} the fire, and neither waits: bring another pot, or move one of"
    " them",
)


def settle(
    planned: Sequence[Dish], trip: Trip, leave: datetime, ledger: Ledger
) -> tuple[tuple[Dish, ...], tuple[Booked, ...], tuple[Settled, ...]]:
    """The dishes as they can be cooked, who has which pot, and every clash with its way out.

    `planned` are the trip's meals in their order, with ids.
    """
    hearth = Hearth(trip, leave, ledger)
    hearth.names = the_dishes.names(planned)
    meals = dict(zip((dish.id for dish in planned), the_dishes.in_order(trip), strict=True))
    now = {dish.id: dish for dish in planned}
    for dish in sorted(planned, key=lambda dish: _turn(dish, trip.zone)):
        if span_of(dish, trip.zone) is not None:
            now[dish.id] = _seat(dish, meals[dish.id], hearth)
    return tuple(now.values()), tuple(hearth.booked), tuple(hearth.settled)


def _turn(dish: Dish, zone: str | None) -> tuple[bool, str, float, int]:
    """Who is seated first: what cannot wait, then what is eaten first, then what cooks longest."""
    span = span_of(dish, zone)
    cooks = times.minutes_between(span.start, span.ready) if span else 0.0
    return waits(dish) is not None or follows(dish), dish.eat, -cooks, int(dish.id)


def _seat(dish: Dish, meal: Meal, hearth: Hearth) -> Dish:
    """Pots for one dish; the dish as it is cooked now."""
    irons = hearth.pots_for(dish)
    if irons is not None and hearth.has_fire(dish, irons):
        hearth.take(dish, irons)
        return dish
    ways: tuple[Callable[[Dish, Meal, Hearth], Dish | None], ...] = (another, stacked, moved, smaller)
    for way in ways:
        found = way(dish, meal, hearth)
        if found is not None:
            return found
    return _left_open(dish, hearth)


def _left_open(dish: Dish, hearth: Hearth) -> Dish:
    others = hearth.meets(hearth.span(dish))
    if others:
        note(hearth, OPEN, "open", dish, have="has" if len(others) == 1 else "have")
    else:
        come = "comes" if len(hearth.irons) == 1 else "come"
        note(hearth, TOO_FEW, "open", dish, all=f"only {pots_said(hearth.irons)} {come}")
    kind = kind_of(dish.plan.pot) if dish.plan.pot else None
    hearth.take(dish, tuple(iron for iron in hearth.irons if iron.kind == kind)[:1])
    return dish
