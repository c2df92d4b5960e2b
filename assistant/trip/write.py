"""A trip as its file, with its recipes in a folder beside it: what `file` reads back as the same trip."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import msgspec

from assistant.files import slug
from assistant.show.source import recipe_source
from rules.circumstances import PotOwned
from rules.recipe import Recipe
from rules.trip.model import Meal, Trip


def trip_files(trip: Trip, leave: str, path: Path) -> dict[Path, str]:
    """The trip's file at `path` and its recipes beside it, by path; each recipe once, however often it is cooked.

    `leave` is when the car leaves, for a trip of which nobody said it.
    """
    folder = f"{path.stem}-recipes"
    names: dict[Recipe, str] = {}
    for meal in trip.meals:
        if meal.recipe not in names:
            names[meal.recipe] = _free(slug(meal.recipe.title or meal.name), set(names.values()))
    files = {path.parent / folder / f"{name}.txt": recipe_source(recipe) for recipe, name in names.items()}
    text = "\n".join(_lines(trip, leave, {recipe: f"{folder}/{name}.txt" for recipe, name in names.items()}))
    return {**files, path: text + "\n"}


def _free(name: str, taken: set[str]) -> str:
    number = 2
    found = name
    while found in taken:
        found, number = f"{name}-{number}", number + 1
    return found


def _lines(trip: Trip, leave: str, names: dict[Recipe, str]) -> Iterator[str]:
    told: dict[str, object] = {"name": trip.name, "leave": trip.leave or leave}
    if trip.drive_hours:
        told["drive_hours"] = trip.drive_hours
    told |= {"zone": trip.zone, "people": trip.people, "fires": trip.fires}
    told["pots"] = [_pot(pot) for pot in trip.pots] or None
    told["coolers"] = [cooler.quarts for cooler in trip.coolers] or None
    told |= {
        "air": f"{trip.air_f:g}F",
        "cooler_air": f"{trip.cooler_air_f:g}F" if trip.cooler_air_f is not None else None,
        "wind": trip.wind,
        "ground": trip.ground,
        "screen": trip.screen or None,
        "elevation": f"{trip.elevation_ft:g}ft" if trip.elevation_ft else None,
        "freezer": None if trip.freezer else False,
        "charcoal": None if trip.charcoal else False,
        "units": trip.units,
    }
    yield from _pairs(told)
    for person in trip.persons:
        yield "\n[[person]]"
        yield from _pairs({"name": person.name, "avoids": list(person.avoids)})
    for meal in trip.meals:
        yield "\n[[meal]]"
        yield from _pairs(_meal(meal, names))


def _meal(meal: Meal, names: dict[Recipe, str]) -> dict[str, object]:
    swapped = {swap.food: swap.to for swap in meal.swaps if swap.to is not None}
    return {
        "name": meal.name,
        "at": meal.eat,
        "recipe": names[meal.recipe],
        "people": meal.people,
        "scale": meal.scale,
        "pots": [_pot(pot) for pot in meal.pots] or None,
        "temp": f"{meal.temp_f:g}F" if meal.temp_f is not None else None,
        "air": f"{meal.air_f:g}F" if meal.air_f is not None else None,
        "wind": meal.wind,
        "ground": meal.ground,
        "screen": meal.screen,
        "elevation": f"{meal.elevation_ft:g}ft" if meal.elevation_ft is not None else None,
        "leave_out": [swap.food for swap in meal.swaps if swap.to is None] or None,
        "swap": swapped or None,
    }


def _pot(pot: PotOwned) -> str:
    size = f"{pot.diameter_in}{' deep' if pot.depth == 'deep' else ''}"
    return size if pot.count == 1 else f"{pot.count} x {size}"


def _pairs(told: dict[str, object]) -> Iterator[str]:
    """Key and value, a line each; a table inside the line, texts quoted as TOML wants."""
    for key, value in told.items():
        if value is not None:
            yield f"{key} = {_value(value)}"


def _value(value: object) -> str:
    if isinstance(value, dict):
        inside = ", ".join(f"{_value(key)} = {_value(each)}" for key, each in value.items())
        return f"{{ {inside} }}"
    if isinstance(value, list):
        return f"[{', '.join(_value(each) for each in value)}]"
    # A JSON text is a TOML text; numbers and truths are written alike.
    return msgspec.json.encode(value).decode()
