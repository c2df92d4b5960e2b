"""A trip as told becomes a trip with dates."""

from __future__ import annotations

from datetime import date

import pytest

from assistant.chat.beyond.draft import Draft, DraftMeal, first_date, first_day, on, trip
from rules.circumstances import Day, PotOwned, Swap
from rules.recipe import Recipe
from rules.trip.model import Cooler, Person

#: A Wednesday.
TODAY = date(2027, 6, 30)


def draft(*days: str, **more: object) -> Draft:
    meals = tuple(
        DraftMeal(day=day, meal="supper", clock="18:30", dish="stew", recipe=Recipe(title="Stew"))
        for day in days
    )
    return Draft(meals=meals, **more)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("days", "first"),
    [(["friday", "saturday", "sunday"], "friday"), (["saturday", "friday"], "friday"), (["sunday", "monday"], "sunday"),
     (["tuesday"], "tuesday"), (["monday", "saturday", "sunday"], "saturday")],
)  # fmt: skip
def test_a_trip_begins_on_the_day_that_the_others_follow_soonest(days: list[str], first: str) -> None:
    assert first_day(draft(*days)) == first


@pytest.mark.parametrize(
    ("day", "wanted"),
    [("friday", date(2027, 7, 2)), ("wednesday", date(2027, 7, 7)), ("thursday", date(2027, 7, 1))],
)
def test_the_first_day_is_the_next_of_its_name_after_today(day: str, wanted: date) -> None:
    assert first_date(draft(day), TODAY) == wanted


def test_every_day_of_the_week_follows_the_first() -> None:
    dates = [on(day, date(2027, 7, 2)) for day in ("friday", "saturday", "sunday", "monday", "thursday")]
    assert [one.day for one in dates] == [2, 3, 4, 5, 8]


def test_the_circumstances_are_those_of_the_talk() -> None:
    day = Day(
        people=9,
        pots=(PotOwned(),),
        cooler_quarts=60,
        air_f=75,
        wind="breezy",
        elevation_ft=3000,
        burns="lump charcoal",
    )
    told = trip(draft("friday"), day, TODAY)
    assert (told.people, told.pots, told.coolers) == (9, (PotOwned(),), (Cooler(quarts=60),))
    assert (told.air_f, told.wind, told.elevation_ft, told.burns) == (75, "breezy", 3000, "lump charcoal")
    assert told.meals[0].eat == "2027-07-02T18:30"
    assert told.meals[0].name == "Friday supper"


def test_what_was_told_of_the_trip_goes_before_the_talk() -> None:
    own = draft(
        "friday",
        pots=(PotOwned(diameter_in=10),),
        coolers=(Cooler(quarts=30),),
        persons=(Person(name="Ada"),),
        drive_hours=4.0,
    )
    told = trip(own, Day(pots=(PotOwned(),), cooler_quarts=60), TODAY)
    assert (told.pots, told.coolers, told.drive_hours) == (own.pots, own.coolers, 4.0)
    assert told.persons == own.persons


def test_what_was_settled_about_a_kept_recipe_rides_along() -> None:
    meal = DraftMeal(
        day="friday",
        meal="supper",
        clock="18:30",
        dish="stew",
        recipe=Recipe(),
        swaps=(Swap(food="beer"),),
        temp_f=375,
    )
    told = trip(Draft(meals=(meal,)), Day(), TODAY).meals[0]
    assert (told.swaps, told.temp_f) == (meal.swaps, 375)


@pytest.mark.parametrize(
    ("day", "clock", "leave"),
    [("friday", "09:00", "2027-07-02T09:00"), ("thursday", "18:00", "2027-07-01T18:00"), (None, "08:00", "2027-07-02T08:00"),
     ("friday", None, "2027-07-02T09:00"), (None, None, None)],
)  # fmt: skip
def test_the_car_leaves_on_the_last_such_day_before_the_first_meal(
    day: str | None, clock: str | None, leave: str | None
) -> None:
    told = trip(draft("friday", leave_day=day, leave_clock=clock), Day(), TODAY)
    assert told.leave == leave
