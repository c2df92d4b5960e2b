"""The model of a trip: what the cook says and what comes out travel as JSON and back unchanged."""

from __future__ import annotations

import msgspec

from rules.recipe import Recipe
from rules.trip.model import Meal, Person, Trip


def test_a_trip_survives_the_way_through_json() -> None:
    meal = Meal(name="Friday supper", eat="2027-07-02T18:30", recipe=Recipe(title="Chili"), people=7)
    trip = Trip(
        name="River weekend", meals=(meal,), people=9, persons=(Person(name="Ada", avoids=("milk",)),)
    )
    assert msgspec.json.decode(msgspec.json.encode(trip), type=Trip) == trip
