"""A trip as far as it was told: meals on weekdays, people, pots, the drive; and the `Trip` that is made of it.

Weekdays become dates when the trip is planned: the first day that was told is the next one of that name after today,
the others follow it.
"""

from __future__ import annotations

from datetime import date, timedelta

from rules.circumstances import Day, PotOwned, Swap
from rules.recipe import Recipe, Struct
from rules.trip.model import Cooler, Meal, Person, Trip

DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")


class DraftMeal(Struct, frozen=True, kw_only=True):
    """A dish on a day: `recipe` under the name `dish`, with what the cook had settled about it."""

    day: str
    meal: str
    clock: str
    dish: str
    recipe: Recipe
    swaps: tuple[Swap, ...] = ()
    temp_f: float | None = None

    @property
    def name(self) -> str:
        """How the meal is called: "Friday supper"."""
        return f"{self.day.capitalize()} {self.meal}"


class Draft(Struct, frozen=True, kw_only=True):
    """What was told so far."""

    name: str = "Trip"
    meals: tuple[DraftMeal, ...] = ()
    persons: tuple[Person, ...] = ()
    pots: tuple[PotOwned, ...] = ()
    coolers: tuple[Cooler, ...] = ()
    leave_day: str | None = None
    leave_clock: str | None = None
    drive_hours: float | None = None
    is_begun: bool = False

    @property
    def is_active(self) -> bool:
        """Whether a trip is being talked about."""
        return self.is_begun or bool(self.meals)


def first_day(draft: Draft) -> str:
    """The weekday on which the trip begins: the one from which all the others follow soonest, whatever was told first."""
    told = list(dict.fromkeys(meal.day for meal in draft.meals))
    return min(told, key=lambda day: max(_behind(other, day) for other in told))


def _behind(weekday: str, first: str) -> int:
    """How many days a weekday comes after another."""
    return (DAYS.index(weekday) - DAYS.index(first)) % 7


def first_date(draft: Draft, today: date) -> date:
    """The date of the trip's first meal: the next such weekday after today."""
    return today + timedelta(days=(DAYS.index(first_day(draft)) - today.weekday() - 1) % 7 + 1)


def trip(draft: Draft, day: Day, today: date) -> Trip:
    """The trip, under the circumstances of the talk."""
    first = first_date(draft, today)
    meals = tuple(
        Meal(
            name=meal.name,
            eat=f"{on(meal.day, first)}T{meal.clock}",
            recipe=meal.recipe,
            swaps=meal.swaps,
            temp_f=meal.temp_f,
        )
        for meal in draft.meals
    )
    return Trip(
        name=draft.name,
        meals=meals,
        leave=_leave(draft, min(meal.eat for meal in meals)),
        drive_hours=draft.drive_hours or 0.0,
        people=day.people,
        persons=draft.persons,
        pots=draft.pots or day.pots,
        coolers=draft.coolers or ((Cooler(quarts=day.cooler_quarts),) if day.cooler_quarts else ()),
        zone=day.zone,
        air_f=day.air_f,
        cooler_air_f=day.trip_air_f,
        wind=day.wind,
        ground=day.ground,
        screen=day.screen,
        elevation_ft=day.elevation_ft,
        freezer=day.freezer,
        charcoal=day.charcoal,
        units=day.units,
        burns=day.burns,
        habit=day.habit,
    )


def on(weekday: str, first: date) -> date:
    """The date of a weekday of the trip, which begins at `first`."""
    return first + timedelta(days=(DAYS.index(weekday) - first.weekday()) % 7)


def _leave(draft: Draft, first_meal: str) -> str | None:
    """The last such weekday up to the first meal, at the hour told; None where neither was."""
    if draft.leave_day is None and draft.leave_clock is None:
        return None
    eaten = date.fromisoformat(first_meal.partition("T")[0])
    clock = draft.leave_clock or "09:00"
    if draft.leave_day is None:
        return f"{eaten}T{clock}"
    return f"{eaten - timedelta(days=(eaten.weekday() - DAYS.index(draft.leave_day)) % 7)}T{clock}"
