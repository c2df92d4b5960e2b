"""Each meal's dish planned under the trip's circumstances, its own where it has some.

The plans are those of `rules.convert`; the trip adds how long the food rides, which pots are free and that the cooler
is shared. Whatever moves a dish (a pot that is taken) plans it anew through `planned`.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from rules import convert
from rules.circumstances import Day, PotOwned
from rules.trip import times
from rules.trip.model import Dish, Meal, Trip

#: The cooler's chapter counts two weeks; a longer trip buys its food on the way.
LONGEST_H = 336.0


def in_order(trip: Trip) -> list[Meal]:
    """The meals in the order of eating; those at one moment as they were named."""
    return sorted(trip.meals, key=lambda meal: times.key(times.moment(meal.eat, trip.zone)))


def people(trip: Trip) -> int | None:
    """How many come along: as counted, else as many as have a name."""
    return trip.people or len(trip.persons) or None


def day_of(
    meal: Meal,
    trip: Trip,
    *,
    ready: datetime,
    leave: datetime,
    pots: Sequence[PotOwned] = (),
    scale: float | None = None,
) -> Day:
    """The circumstances of one dish that leaves the fire at `ready`; `pots` and `scale` instead of its own."""
    hours = times.minutes_between(times.shut(leave), ready) / 60
    return Day(
        people=meal.people or people(trip),
        scale=scale if scale is not None else meal.scale,
        pots=tuple(pots) or meal.pots or trip.pots,
        temp_f=meal.temp_f,
        air_f=trip.air_f if meal.air_f is None else meal.air_f,
        wind=meal.wind or trip.wind,
        ground=meal.ground or trip.ground,
        screen=trip.screen if meal.screen is None else meal.screen,
        elevation_ft=trip.elevation_ft if meal.elevation_ft is None else meal.elevation_ft,
        eat=times.written(ready),
        zone=trip.zone,
        trip_hours=min(max(0.0, hours), LONGEST_H),
        trip_air_f=trip.cooler_air_f,
        cooler_quarts=sum(cooler.quarts for cooler in trip.coolers) or None,
        shares_cooler=True,
        freezer=trip.freezer,
        charcoal=trip.charcoal,
        burns=trip.burns,
        habit=trip.habit,
        units=trip.units,
        swaps=meal.swaps,
    )


def planned(
    number: str,
    meal: Meal,
    trip: Trip,
    *,
    leave: datetime,
    ready: datetime | None = None,
    pots: Sequence[PotOwned] = (),
    scale: float | None = None,
) -> Dish:
    """One dish with its plan.

    Raises:
        UsageProblem: when its circumstances cannot be.
        BrokenInvariant: as `rules.convert.camp`.
    """
    eat = times.moment(meal.eat, trip.zone)
    ready = ready or eat
    day = day_of(meal, trip, ready=ready, leave=leave, pots=pots, scale=scale)
    return Dish(
        id=number,
        meal=meal.name,
        title=(meal.recipe.title or meal.name).strip(),
        eat=times.written(eat),
        ready=times.written(ready),
        day=day,
        plan=convert.camp(meal.recipe, day),
    )


def names(dishes: Sequence[Dish]) -> dict[str, str]:
    """By dish: what to call it where several stand beside each other: "Friday supper, Can-Opener Chili"."""
    return {
        dish.id: dish.title if dish.title == dish.meal else f"{dish.meal}, {dish.title}" for dish in dishes
    }
