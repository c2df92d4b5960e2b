"""Trip files: what they may say, and the one sentence for everything that cannot be."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.reader.read import read
from assistant.trip.file import MEAL_KEYS, TRIP_KEYS, trip_of, trip_of_text
from assistant.trip.keys import TripProblem
from rules.circumstances import PotOwned, Swap
from rules.problem import FileProblem
from rules.recipe import Recipe
from rules.trip.model import Cooler, Person, Trip
from tests.trips import WEEKEND

RECIPE = "Stew\n\n2 pounds beef\n1 onion\n\nSimmer for 2 hours.\n"
HEAD = "leave = 2027-07-02T09:00:00\n"
MEAL = '[[meal]]\nname = "Supper"\nat = "Friday 18:30"\nrecipe = "stew.txt"\n'


def reader(text: str, file: str) -> Recipe:
    return read(text, file=file)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "stew.txt").write_text(RECIPE, encoding="utf-8")
    (tmp_path / "poem.txt").write_text("The river went by.\n", encoding="utf-8")
    (tmp_path / "picture.txt").write_bytes(b"\x89PNG\r\n\x1a\n and so on")
    return tmp_path


def told(text: str, folder: Path) -> Trip:
    return trip_of_text(text, "river.toml", folder, reader)


#: What stands in a file, and the whole sentence that it gets; MEAL begins in line 2 where nothing else is said.
BROKEN = {
    "no toml": (
        "leave 2027\n",
        "river.toml, line 1: this is no TOML (expected '=' after a key in a key/value pair); put texts in quotes,"
        " lists in brackets, one key a line.",
    ),
    "no leave": (
        MEAL,
        "river.toml: the trip has no leave, the moment the car leaves; write a date and a time, as"
        ' 2027-07-02T18:30:00 or "2027-07-02 18:30".',
    ),
    "no meals": (
        HEAD,
        "river.toml: no meals; a trip has 1 to 60 meals, each opened by a line [[meal]].",
    ),
    "a meal that is no table": (
        HEAD + 'meal = "stew"\n',
        "river.toml, line 2: meal is no list of tables; open each with a line [[meal]].",
    ),
    "a key that is none": (
        HEAD + "poeple = 9\n" + MEAL,
        'river.toml, line 2: a trip has no key "poeple"; did you mean people?',
    ),
    "a meal's key that is none": (
        HEAD + MEAL + "oven = 12\n",
        'river.toml, line 6: a meal has no key "oven"; there are name, at, recipe, people, scale, pots, temp, air, wind,'
        " ground, screen, elevation, swap, leave_out.",
    ),
    "no moment": (
        HEAD + '[[meal]]\nname = "Supper"\nrecipe = "stew.txt"\n',
        "river.toml, line 2: Supper has no moment at which it is eaten; write a date and a time, as"
        ' 2027-07-02T18:30:00 or "2027-07-02 18:30", or a weekday of the trip, as "Friday 18:30": at = ....',
    ),
    "a day that is none": (
        HEAD + MEAL.replace("Friday 18:30", "Fryday 18:30"),
        'river.toml, line 4: at = "Fryday 18:30" is no moment; write a date and a time, as'
        ' 2027-07-02T18:30:00 or "2027-07-02 18:30", or a weekday of the trip, as "Friday 18:30".',
    ),
    "a meal before leaving": (
        HEAD + MEAL.replace('"Friday 18:30"', "2027-07-01T18:30:00"),
        "river.toml, line 4: Supper is eaten at 2027-07-01T18:30, before leaving at 2027-07-02T09:00; move one of them.",
    ),
    "a clock without a day": (
        HEAD + MEAL.replace("Friday 18:30", "18:30"),
        'river.toml, line 4: at = "18:30" names no day; write a date and a time, as'
        ' 2027-07-02T18:30:00 or "2027-07-02 18:30", or a weekday of the trip, as "Friday 18:30".',
    ),
    "an offset": (
        HEAD + MEAL.replace('"Friday 18:30"', "2027-07-02T18:30:00-06:00"),
        "river.toml, line 4: at = 2027-07-02T18:30:00-06:00 has an offset; write the local time and the trip's zone.",
    ),
    "no recipe": (
        HEAD + '[[meal]]\nname = "Supper"\nat = "Friday 18:30"\n',
        'river.toml, line 2: Supper has no recipe; name its file, as recipe = "stew.txt".',
    ),
    "a recipe that is not there": (
        HEAD + MEAL.replace("stew.txt", "soup.txt"),
        "river.toml, line 5: soup.txt: there is no such file; check the name and the folder.",
    ),
    "a recipe outside the folder": (
        HEAD + MEAL.replace("stew.txt", "../stew.txt"),
        "river.toml, line 5: ../stew.txt lies outside the folder of the trip file; put the recipe beside it, or write"
        " the full path.",
    ),
    "a recipe that is a picture": (
        HEAD + MEAL.replace("stew.txt", "picture.txt"),
        "river.toml, line 5: picture.txt: not a text file (the first bytes look like a picture); paste the recipe as"
        " text.",
    ),
    "people as a word": (
        HEAD + 'people = "nine"\n' + MEAL,
        'river.toml, line 2: people = "nine" cannot be; write a whole number from 1 to 200.',
    ),
    "more names than people": (
        HEAD + "people = 1\n" + MEAL + '[[person]]\nname = "Ada"\n[[person]]\nname = "Ben"\n',
        "river.toml, line 2: people = 1, and 2 have a name; count everybody.",
    ),
    "a person without a name": (
        HEAD + MEAL + '[[person]]\navoids = ["milk"]\n',
        "river.toml, line 6: this person has no name; write the person's name in quotes.",
    ),
    "an avoidance that is a number": (
        HEAD + MEAL + '[[person]]\nname = "Ada"\navoids = [3]\n',
        'river.toml, line 8: avoids holds 3, which is no text; write what they avoid, as ["milk", "pork"].',
    ),
    "a pot that nobody sells": (
        HEAD + 'pots = ["13"]\n' + MEAL,
        'river.toml, line 2: pots = "13" cannot be; camp pots come in 5, 8, 10, 12, 14 and 16 inches.',
    ),
    "a pot in words": (
        HEAD + 'pots = ["the big one"]\n' + MEAL,
        'river.toml, line 2: pots holds \'the big one\'; write sizes in inches, as ["12", "12 deep", "2 x 10"].',
    ),
    "a cooler too small": (
        HEAD + "coolers = [1]\n" + MEAL,
        "river.toml, line 2: coolers = 1 cannot be; write a size from 4 to 400 quarts.",
    ),
    "air without a unit": (
        HEAD + "air = 45\n" + MEAL,
        "river.toml, line 2: air = 45 cannot be; the unit is missing; write 45F or 7C.",
    ),
    "a wind that is none": (
        HEAD + 'wind = "gusty"\n' + MEAL,
        'river.toml, line 2: wind = "gusty" cannot be; write calm, breezy or windy.',
    ),
    "a zone that is none": (
        HEAD + 'zone = "Idaho"\n' + MEAL,
        'river.toml, line 2: zone = "Idaho" cannot be; write a time zone by its name, as America/Boise or Europe/Oslo.',
    ),
    "a drive of a week": (
        HEAD + "drive_hours = 168\n" + MEAL,
        "river.toml, line 2: drive_hours = 168 cannot be; write a number from 0 to 100.",
    ),
    "a swap without a food": (
        HEAD + MEAL + "swap = { butter = 3 }\n",
        'river.toml, line 6: swap holds 3, which is no food; write swap = { butter = "oil" }.',
    ),
    "true in words": (
        HEAD + 'freezer = "yes"\n' + MEAL,
        'river.toml, line 2: freezer = "yes" is no answer; write true or false.',
    ),
}


@pytest.mark.parametrize(("text", "sentence"), BROKEN.values(), ids=BROKEN.keys())
def test_what_cannot_be_is_said_in_one_sentence_with_its_line(text: str, sentence: str, folder: Path) -> None:
    with pytest.raises(TripProblem) as refused:
        told(text, folder)
    assert sentence == str(refused.value)


def test_a_text_without_a_recipe_is_told(folder: Path) -> None:
    (folder / "poem.txt").write_text("\n \n.\n", encoding="utf-8")
    with pytest.raises(TripProblem, match=r"line 5: .*poem\.txt"):
        told(HEAD + MEAL.replace("stew.txt", "poem.txt"), folder)


def test_the_line_is_right_for_the_second_of_two_meals(folder: Path) -> None:
    second = MEAL.replace("Friday 18:30", "Saturday 99:00")
    with pytest.raises(TripProblem) as refused:
        told(f"{HEAD}{MEAL}# a remark\n\n{second}", folder)
    assert refused.value.line == 10


def test_a_link_out_of_the_folder_is_no_way_out(
    folder: Path, tmp_path_factory: pytest.TempPathFactory
) -> None:
    outside = tmp_path_factory.mktemp("outside") / "stew.txt"
    outside.write_text(RECIPE, encoding="utf-8")
    (folder / "link.txt").symlink_to(outside)
    with pytest.raises(TripProblem, match="lies outside"):
        told(HEAD + MEAL.replace("stew.txt", "link.txt"), folder)
    full = told(HEAD + MEAL.replace("stew.txt", str(outside)), folder)
    assert full.meals[0].recipe.title == "Stew"


def test_all_that_a_file_may_say_is_read(folder: Path) -> None:
    trip = told(
        'name = "River"\nleave = "2027-07-02 9:00"\ndrive_hours = 2\nzone = "America/Boise"\npeople = 4\n'
        'pots = [12, "12 deep", "2 x 10"]\ncoolers = [48, "30L"]\nfires = 2\nair = "7C"\ncooler_air = "85F"\n'
        'wind = "breezy"\nground = "damp"\nscreen = true\nelevation = "2100m"\nfreezer = false\nunits = "metric"\n'
        '[[person]]\nname = "Ada"\navoids = "milk"\n'
        '[[meal]]\nname = "Supper"\nat = "sat 6:30 pm"\nrecipe = ["stew.txt", "stew.txt"]\npeople = 3\nscale = 1.5\n'
        'temp = "190C"\nwind = "calm"\nswap = { beef = "pork" }\nleave_out = ["onion"]\n',
        folder,
    )
    assert (trip.name, trip.leave, trip.drive_hours, trip.people) == ("River", "2027-07-02T09:00", 2.0, 4)
    assert trip.pots == (PotOwned(), PotOwned(depth="deep"), PotOwned(diameter_in=10, count=2))
    assert trip.coolers == (Cooler(quarts=48), Cooler(quarts=31.7))
    assert trip.air_f == pytest.approx(44.6)
    assert (trip.cooler_air_f, trip.wind, trip.ground, trip.screen) == (85, "breezy", "damp", True)
    assert (trip.elevation_ft, trip.freezer, trip.units, trip.fires) == (6890, False, "metric", 2)
    assert trip.persons == (Person(name="Ada", avoids=("milk",)),)
    first, second = trip.meals
    assert (first.eat, first.people, first.scale, first.wind) == ("2027-07-03T18:30", 3, 1.5, "calm")
    assert first.temp_f == 374
    assert first.swaps == (Swap(food="beef", to="pork"), Swap(food="onion"))
    assert first.recipe is second.recipe


def test_the_river_weekend_that_ships_reads_without_a_word() -> None:
    trip = trip_of(str(WEEKEND), reader)
    assert len(trip.meals) == 7
    assert trip.file == str(WEEKEND)


def test_a_trip_file_that_is_not_there_is_a_file_problem() -> None:
    with pytest.raises(FileProblem, match="no such file"):
        trip_of("nowhere/river.toml", reader)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "\0",
        "[" * 5000,
        "a = " + "[" * 5000,
        'name = "' + "x" * 100_000 + '"\n',
        "[[meal]]\n" * 2000,
        "= = =",
        "é = 1",
    ],
)
def test_odd_files_are_refused_in_a_sentence(text: str, folder: Path) -> None:
    with pytest.raises(TripProblem) as refused:
        told(text, folder)
    assert len(str(refused.value)) < 600
    assert "\n" not in str(refused.value)


def refusal(text: str) -> str:
    """The sentence that a text gets; empty where it is a trip. Anything but a TripProblem is a failure."""
    try:
        trip_of_text(text, "river.toml", Path("nowhere"), reader)
    except TripProblem as refused:
        return str(refused)
    return ""


@given(st.text(max_size=400))
@settings(max_examples=200)
def test_no_text_raises_anything_but_a_sentence(text: str) -> None:
    assert "\n" not in refusal(text)


VALUES = st.one_of(
    st.integers(-(10**12), 10**12),
    st.floats(allow_nan=True).map(repr),
    st.booleans().map(lambda one: str(one).lower()),
    st.sampled_from(
        [
            "[]",
            "{}",
            "[[]]",
            "[{}]",
            '""',
            '"\\u0000"',
            '"12 deep"',
            '"45F"',
            "2027-07-02",
            "09:00:00",
            '["a", 3]',
        ]
    ),
    st.text(st.characters(exclude_characters='"\\\n\r', exclude_categories=("Cs", "Cc")), max_size=30).map(
        lambda one: f'"{one}"'
    ),
)


@given(
    st.dictionaries(st.sampled_from(TRIP_KEYS), VALUES, max_size=6),
    st.dictionaries(st.sampled_from(MEAL_KEYS), VALUES, max_size=6),
)
@settings(max_examples=200)
def test_no_value_raises_anything_but_a_sentence(top: dict[str, object], meal: dict[str, object]) -> None:
    told_top = {"leave": "2027-07-02T09:00:00", **top}
    told_meal = {"at": "2027-07-03T09:00:00", **meal}
    lines = [f"{key} = {value}" for key, value in told_top.items() if key != "meal"]
    lines += ["[[meal]]", *(f"{key} = {value}" for key, value in told_meal.items())]
    said = refusal("\n".join(lines))
    assert "\n" not in said
    assert not said or said.startswith("river.toml")
