"""A trip file becomes a trip: TOML with our own plain words, every recipe read from its file.

`corpus/river-weekend.toml` shows all of it. Recipe files are named relative to the trip file and stay inside its folder,
so that a trip from a stranger reads nothing else; a full path is taken as it stands, because the cook wrote it.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable
from pathlib import Path, PurePosixPath, PureWindowsPath
from typing import Any

from assistant.files import STANDARD_INPUT, text_of
from assistant.options import AIR, HEIGHT, OVEN, diameter, one_of, quarts, zone
from assistant.trip.keys import Keys, TripProblem
from assistant.trip.moments import WANTED, WEEKDAY_WANTED, dated
from assistant.trip.places import Places
from rules.circumstances import Charcoal, Ground, PotOwned, Swap, Units, Wind, checked
from rules.circumstances import Day as Circumstances
from rules.problem import Problem, UsageProblem
from rules.recipe import Recipe
from rules.trip.model import Cooler, Meal, Person, Trip

#: Reads a recipe's text: called with the text and the file's name.
Reader = Callable[[str, str], Recipe]

TRIP_KEYS = (
    "name", "leave", "drive_hours", "zone", "people", "pots", "coolers", "fires", "air", "cooler_air", "wind", "ground",
    "screen", "elevation", "freezer", "charcoal", "burns", "units", "person", "meal",
)  # fmt: skip
MEAL_KEYS = (
    "name", "at", "recipe", "people", "scale", "pots", "temp", "air", "wind", "ground", "screen", "elevation", "swap",
    "leave_out",
)  # fmt: skip
PERSON_KEYS = ("name", "avoids")
MOST_MEALS, MOST_PEOPLE, MOST_COOLERS = 60, 200, 12
_AT_LINE = re.compile(r"\(at line (\d+),")
_POT = re.compile(r"(?:(\d{1,2})\s*x\s*)?(\S{1,12})(?:\s+(deep|shallow))?", re.IGNORECASE)
POTS_WANTED = 'write sizes in inches, as ["12", "12 deep", "2 x 10"]'


def trip_of(name: str, read: Reader) -> Trip:
    """The trip of a file; `-` is standard input, with recipes beside the folder one stands in.

    Raises:
        FileProblem: the trip file cannot be read.
        TripProblem: something in it cannot be, with its line.
    """
    folder = Path() if name == STANDARD_INPUT else Path(name).parent
    return trip_of_text(text_of(name), name, folder, read)


def trip_of_text(text: str, name: str, folder: Path, read: Reader) -> Trip:
    """The trip that a text tells; recipes are looked for in `folder`.

    Raises:
        TripProblem: something in it cannot be, with its line.
    """
    keys = Keys(_parsed(text, name), file=name, places=Places(text))
    keys.check_names(TRIP_KEYS)
    leave = dated(keys, "leave")
    if leave is None:
        raise keys.fault("leave", "the trip has no leave, the moment the car leaves", WANTED)
    meals = keys.tables("meal")
    if not 1 <= len(meals) <= MOST_MEALS:
        wanted = f"a trip has 1 to {MOST_MEALS} meals, each opened by a line [[meal]]"
        raise keys.fault("meal", f"{len(meals) or 'no'} meals", wanted)
    recipes: dict[str, Recipe] = {}
    told: dict[str, Any] = {
        "name": keys.text("name", "write the trip's name in quotes"),
        "leave": leave,
        "drive_hours": keys.number("drive_hours", 0, 100),
        "zone": keys.read("zone", zone),
        "people": keys.whole("people", MOST_PEOPLE),
        "persons": tuple(map(_person, keys.tables("person"))),
        "pots": _pots(keys),
        "coolers": _coolers(keys),
        "fires": keys.whole("fires", 12),
        "cooler_air_f": keys.within("cooler_air", "trip_air_f", keys.read("cooler_air", AIR.read)),
        "freezer": keys.truth("freezer"),
        "charcoal": keys.truth("charcoal"),
        "burns": keys.read("burns", one_of(Charcoal)),
        "units": keys.read("units", one_of(Units)),
        **_weather(keys),
        "meals": tuple(one for meal in meals for one in _meal(meal, leave, folder, read, recipes)),
        "file": name,
    }
    trip = Trip(**{key: value for key, value in told.items() if value is not None})
    if trip.people and len(trip.persons) > trip.people:
        raise keys.fault(
            "people", f"people = {trip.people}, and {len(trip.persons)} have a name", "count everybody"
        )
    return trip


def _parsed(text: str, name: str) -> dict[str, Any]:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        found = _AT_LINE.search(str(error))
        said = str(error).partition(" (at ")[0]
        raise TripProblem(
            name,
            int(found[1]) if found else None,
            f"this is no TOML ({said[:1].lower()}{said[1:]})",
            "put texts in quotes, lists in brackets, one key a line",
        ) from error
    except RecursionError as error:
        raise TripProblem(
            name, None, "its lists are nested too deeply", "write one list for each key"
        ) from error


def _person(keys: Keys) -> Person:
    keys.check_names(PERSON_KEYS)
    name = keys.needed("name", "write the person's name in quotes")
    return Person(name=name, avoids=keys.texts("avoids", 'write what they avoid, as ["milk", "pork"]'))


def _weather(keys: Keys) -> dict[str, Any]:
    """What a trip and a meal may both say of air, wind and ground."""
    return {
        "air_f": keys.within("air", "air_f", keys.read("air", AIR.read)),
        "wind": keys.read("wind", one_of(Wind)),
        "ground": keys.read("ground", one_of(Ground)),
        "screen": keys.truth("screen"),
        "elevation_ft": keys.within("elevation", "elevation_ft", keys.read("elevation", HEIGHT.read)),
    }


def _pots(keys: Keys) -> tuple[PotOwned, ...]:
    value = keys.values.get("pots", [])
    listed = value if isinstance(value, list) else [value]
    return tuple(_pot(keys, one) for one in listed)


def _pot(keys: Keys, said: object) -> PotOwned:
    found = _POT.fullmatch(str(said).strip()) if isinstance(said, str | int) else None
    if found is None or isinstance(said, bool):
        raise keys.fault("pots", f"pots holds {said!r}", POTS_WANTED)
    count, size, depth = found.groups()
    pot = keys.told(
        "pots",
        said,
        lambda: PotOwned(
            diameter_in=diameter("pots", size),
            depth="deep" if (depth or "").lower() == "deep" else "shallow",
            count=int(count or 1),
        ),
    )
    keys.told("pots", said, lambda: checked(Circumstances(pots=(pot,))))
    return pot


def _coolers(keys: Keys) -> tuple[Cooler, ...]:
    value = keys.values.get("coolers", [])
    listed = value if isinstance(value, list) else [value]
    if len(listed) > MOST_COOLERS:
        raise keys.fault("coolers", f"{len(listed)} coolers", f"name at most {MOST_COOLERS}")
    return tuple(_cooler(keys, one) for one in listed)


def _cooler(keys: Keys, said: object) -> Cooler:
    if isinstance(said, bool) or not isinstance(said, str | int | float):
        raise keys.fault("coolers", f"coolers holds {said}", 'write sizes, as [48, "45L"]')
    size = keys.told("coolers", said, lambda: quarts("coolers", str(said)))
    keys.told("coolers", said, lambda: checked(Circumstances(cooler_quarts=size)))
    return Cooler(quarts=size)


def _meal(keys: Keys, leave: str, folder: Path, read: Reader, recipes: dict[str, Recipe]) -> list[Meal]:
    """One meal: a dish for each of its recipes."""
    keys.check_names(MEAL_KEYS)
    at = dated(keys, "at", leave)
    name = keys.text("name", "write the meal's name in quotes")
    if at is None:
        raise keys.fault(
            "at", f"{name or 'this meal'} has no moment at which it is eaten", f"{WEEKDAY_WANTED}: at = ..."
        )
    if at < leave:
        raise keys.fault(
            "at", f"{name or 'the meal'} is eaten at {at}, before leaving at {leave}", "move one of them"
        )
    files = keys.texts("recipe", 'name its file, as recipe = "stew.txt"')
    if not files:
        raise keys.fault(
            "recipe", f"{name or 'this meal'} has no recipe", 'name its file, as recipe = "stew.txt"'
        )
    shared: dict[str, Any] = {
        "name": name or at.replace("T", " "),
        "eat": at,
        "people": keys.whole("people", MOST_PEOPLE),
        "scale": keys.within("scale", "scale", keys.number("scale", 0.1, 20)),
        "pots": _pots(keys),
        "temp_f": keys.within("temp", "temp_f", keys.read("temp", OVEN.read)),
        "swaps": _swaps(keys),
        **_weather(keys),
    }
    return [Meal(recipe=_recipe(keys, one, folder, read, recipes), **shared) for one in files]


def _swaps(keys: Keys) -> tuple[Swap, ...]:
    wanted = 'write swap = { butter = "oil" }'
    value = keys.values.get("swap", {})
    if not isinstance(value, dict):
        raise keys.fault("swap", f"swap = {value} is no table", wanted)
    for other in value.values():
        if not isinstance(other, str) or not other.strip():
            raise keys.fault("swap", f"swap holds {other!r}, which is no food", wanted)
    out = keys.texts("leave_out", 'write foods, as ["walnuts"]')
    return (
        *(Swap(food=food, to=other.strip()) for food, other in value.items()),
        *(Swap(food=food) for food in out),
    )


def _recipe(keys: Keys, said: str, folder: Path, read: Reader, recipes: dict[str, Recipe]) -> Recipe:
    """The recipe of a file, read once however often it is cooked."""
    if said not in recipes:
        path = _inside(keys, said, folder)
        try:
            recipe = read(text_of(str(path)), said)
        except UsageProblem:
            raise
        except Problem as problem:
            found = str(problem).rstrip(".").removeprefix(f"{path}: ").partition("; ")
            raise keys.fault("recipe", f"{said}: {found[0]}", found[2] or "check the file") from problem
        if not recipe.ingredients and not recipe.steps:
            raise keys.fault(
                "recipe", f"no recipe was found in {said}", "it needs a list of ingredients or a method"
            )
        recipes[said] = recipe
    return recipes[said]


def _inside(keys: Keys, said: str, folder: Path) -> Path:
    """The path of a recipe: a full one as it stands, any other inside the folder of the trip file."""
    if PurePosixPath(said).is_absolute() or PureWindowsPath(said).is_absolute():
        return Path(said)
    if "\0" in said:
        raise keys.fault("recipe", "the name of the recipe's file holds a zero byte", "name a file")
    path = folder / said
    if not path.resolve().is_relative_to(folder.resolve()):
        raise keys.fault(
            "recipe",
            f"{said} lies outside the folder of the trip file",
            "put the recipe beside it, or write the full path",
        )
    return path
