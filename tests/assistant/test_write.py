"""A trip written as a file is read back as the same trip, whatever its names hold."""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory

import msgspec
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.commands.makers import reader
from assistant.trip.file import trip_of
from assistant.trip.write import trip_files
from rules.circumstances import PotOwned, Swap
from rules.recipe import Recipe
from rules.trip.model import Cooler, Meal, Person, Trip
from tests.talks import CORPUS

LEAVE = "2027-07-02T09:00"


def recipe(name: str) -> Recipe:
    path = CORPUS / "recipes" / f"river-{name}.txt"
    found: Recipe = reader()(path.read_text(encoding="utf-8"), path.name)
    return found


CHILI, STEW = recipe("can-chili"), recipe("beef-stew")


def back(trip: Trip, folder: Path) -> Trip:
    files = trip_files(trip, LEAVE, folder / "trip.toml")
    for path, text in files.items():
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return trip_of(str(folder / "trip.toml"), reader())


names = st.text(
    st.characters(codec="utf-8", exclude_categories=("Cc", "Cs", "Zl", "Zp")), min_size=1, max_size=20
).filter(lambda said: said.strip() == said and bool(said))
pots = st.lists(
    st.builds(
        PotOwned,
        diameter_in=st.sampled_from((8, 10, 12, 14)),
        depth=st.sampled_from(("shallow", "deep")),
        count=st.integers(1, 3),
    ),
    max_size=3,
).map(tuple)
meals = st.builds(
    Meal,
    name=names,
    eat=st.sampled_from(("2027-07-02T18:30", "2027-07-03T08:30")),
    recipe=st.sampled_from((CHILI, STEW)),
    people=st.none() | st.integers(1, 40),
    temp_f=st.none() | st.sampled_from((325.0, 375.0)),
    wind=st.none() | st.sampled_from(("calm", "windy")),
    swaps=st.lists(
        st.builds(Swap, food=names, to=st.none() | names), max_size=2, unique_by=lambda swap: swap.food
    ).map(tuple),
)
trips = st.builds(
    Trip,
    name=names,
    meals=st.lists(meals, min_size=1, max_size=3).map(tuple),
    leave=st.just(LEAVE),
    drive_hours=st.sampled_from((0.0, 3.5)),
    people=st.none() | st.integers(5, 40),
    persons=st.lists(
        st.builds(Person, name=names, avoids=st.lists(names, max_size=2).map(tuple)), max_size=2
    ).map(tuple),
    pots=pots,
    coolers=st.lists(st.builds(Cooler, quarts=st.sampled_from((25.0, 60.0))), max_size=2).map(tuple),
    air_f=st.sampled_from((45.0, 70.0)),
    wind=st.sampled_from(("calm", "breezy")),
    elevation_ft=st.sampled_from((0.0, 7000.0)),
    freezer=st.booleans(),
    charcoal=st.booleans(),
    units=st.sampled_from(("us", "metric")),
)


@settings(max_examples=40)
@given(trip=trips)
def test_a_trip_comes_back_as_it_was(trip: Trip) -> None:
    with TemporaryDirectory() as folder:
        again = back(trip, Path(folder))
    plain = msgspec.structs.replace
    assert plain(again, file=None, meals=()) == plain(trip, meals=())
    assert [plain(meal, recipe=Recipe(), swaps=()) for meal in again.meals] == [
        plain(meal, recipe=Recipe(), swaps=()) for meal in trip.meals
    ]
    assert [set(meal.swaps) for meal in again.meals] == [set(meal.swaps) for meal in trip.meals]
    assert [meal.recipe.title for meal in again.meals] == [meal.recipe.title for meal in trip.meals]


def test_a_recipe_cooked_twice_is_written_once_and_two_of_one_title_are_two(tmp_path: Path) -> None:
    other = msgspec.structs.replace(STEW, title=CHILI.title)
    meals = [
        Meal(name="one", eat=f"{day}T18:30", recipe=recipe)
        for day, recipe in (("2027-07-02", CHILI), ("2027-07-03", CHILI), ("2027-07-04", other))
    ]
    files = trip_files(Trip(meals=tuple(meals)), LEAVE, tmp_path / "trip.toml")
    assert sorted(path.name for path in files) == [
        "can-opener-chili-2.txt",
        "can-opener-chili.txt",
        "trip.toml",
    ]
    assert f'leave = "{LEAVE}"' in files[tmp_path / "trip.toml"]
