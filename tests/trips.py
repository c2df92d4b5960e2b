"""Trips for tests: dishes of the corpus at moments of a river weekend."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

from assistant.reader.read import read
from assistant.trip.file import trip_of
from rules.circumstances import PotOwned
from rules.recipe import Recipe
from rules.trip.model import Cooler, Meal, Trip, TripPlan
from rules.trip.plan import plan

CORPUS = Path(__file__).parent.parent / "corpus"
WEEKEND = CORPUS / "river-weekend.toml"
SUPPER = "2027-07-02T18:30"


@cache
def river(name: str) -> Recipe:
    """A recipe of the corpus, read once: "can-chili"."""
    file = f"river-{name}.txt"
    return read((CORPUS / "recipes" / file).read_text(encoding="utf-8"), file=file)


def pot(diameter_in: int = 12, *, deep: bool = False, count: int = 1) -> PotOwned:
    """A pot that comes along."""
    return PotOwned(diameter_in=diameter_in, depth="deep" if deep else "shallow", count=count)


def meal(dish: str, at: str = SUPPER, *, name: str = "Supper", **more: Any) -> Meal:
    """A dish of the corpus at a moment."""
    return Meal(name=name, eat=at, recipe=river(dish), **more)


def trip(*meals: Meal, **more: Any) -> Trip:
    """A trip of nine with one pot and one cooler, unless told otherwise."""
    told: dict[str, Any] = {
        "name": "River weekend",
        "leave": "2027-07-02T09:00",
        "drive_hours": 3.0,
        "people": 9,
        "pots": (pot(),),
        "coolers": (Cooler(quarts=60),),
        "zone": "America/Boise",
        **more,
    }
    return Trip(meals=meals, **told)


@cache
def weekend() -> TripPlan:
    """The plan of the river weekend that ships with the package."""
    return plan(trip_of(str(WEEKEND), lambda text, file: read(text, file=file)))
