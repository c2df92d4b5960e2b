"""What a change does: the recipe and the day as they are after it. Nothing is planned here."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

import msgspec

from assistant.chat.acts import Meant
from assistant.chat.context import names_of
from assistant.chat.reasons import words_of
from assistant.reader.lines import read_line
from rules.circumstances import Day, PotOwned, Swap, checked
from rules.foods import catalogue
from rules.plan import Plan
from rules.recipe import Ingredient, Recipe

replace = msgspec.structs.replace


class Refused(Exception):
    """A change that cannot be made; `str()` is the sentence for the cook."""


def applied(one: Meant, recipe: Recipe | None, day: Day, plan: Plan | None) -> tuple[Recipe | None, Day]:
    """The recipe and the day after a change.

    Raises:
        UsageProblem: a value that cannot be.
        Refused: there is no such food in the recipe, or nothing to change.
    """
    slots = one.slots
    if one.act in _DAY:
        return recipe, checked(_DAY[one.act](slots, day, plan))
    if recipe is None:
        raise Refused("There is no recipe yet; paste one first.")
    if one.act == "swap":
        return recipe, _swapped(slots, recipe, day)
    if one.act == "leave out":
        return recipe, _left_out(slots, recipe, day)
    back = _put_back(slots, day)
    return (recipe, back) if back is not None else (_added(slots, recipe), day)


def _people(slots: Mapping[str, Any], day: Day, _plan: Plan | None) -> Day:
    return replace(day, people=slots["people"], scale=None)


def _scale(slots: Mapping[str, Any], day: Day, plan: Plan | None) -> Day:
    """A factor on the recipe as written; where the cook named the eaters, on the recipe for them."""
    base = plan.scale if plan is not None and day.people is not None and slots["factor"] != 1 else 1.0
    return replace(day, scale=round(base * slots["factor"], 4), people=None)


def _pot(slots: Mapping[str, Any], day: Day, plan: Plan | None) -> Day:
    now = day.pots[0] if day.pots else PotOwned(**_planned(plan))
    size = slots.get("diameter_in", now.diameter_in)
    depth = slots.get("depth", now.depth if "diameter_in" not in slots else "shallow")
    return replace(day, pots=(PotOwned(diameter_in=size, depth=depth, count=slots.get("count", 1)),))


def _planned(plan: Plan | None) -> dict[str, Any]:
    if plan is None or plan.pot is None:
        return {}
    return {"diameter_in": plan.pot.diameter_in, "depth": plan.pot.depth}


def _weather(slots: Mapping[str, Any], day: Day, _plan: Plan | None) -> Day:
    told = {name: slots[name] for name in ("air_f", "wind", "ground") if name in slots}
    return replace(day, **told, screen=slots.get("screen") == "yes" or day.screen)


def _eat_at(slots: Mapping[str, Any], day: Day, _plan: Plan | None) -> Day:
    """The new time on the date that was given before, if one was."""
    date, _, clock = (day.eat or "").rpartition("T")
    del clock
    return replace(day, eat=f"{date}T{slots['clock']}" if date else slots["clock"])


def _cooler(slots: Mapping[str, Any], day: Day, _plan: Plan | None) -> Day:
    if "freezer" in slots:
        day = replace(day, freezer=slots["freezer"] == "yes")
    return replace(day, cooler_quarts=float(slots["quarts"])) if "quarts" in slots else day


_DAY: dict[str, Callable[[Mapping[str, Any], Day, Plan | None], Day]] = {
    "people": _people,
    "scale": _scale,
    "pot": _pot,
    "temperature": lambda slots, day, _: replace(day, temp_f=float(slots["temp_f"])),
    "weather": _weather,
    "elevation": lambda slots, day, _: replace(day, elevation_ft=float(slots["feet"])),
    "eat at": _eat_at,
    "trip": lambda slots, day, _: replace(day, trip_hours=float(slots["hours"])),
    "fire ban": lambda slots, day, _: replace(day, charcoal=slots["allowed"] == "yes"),
    "cooler": _cooler,
    "units": lambda slots, day, _: replace(day, units=slots["units"]),
}


def _with_swap(day: Day, swap: Swap) -> Day:
    """One wish for each food: a later one takes the place of an earlier one."""
    return replace(day, swaps=(*(one for one in day.swaps if one.food != swap.food), swap))


def _swapped(slots: Mapping[str, Any], recipe: Recipe, day: Day) -> Day:
    to = str(slots["to"])
    said = slots.get("from")
    item = _meant(str(said), recipe) if said is not None else _replaced_by(to, recipe)
    if item is None and said is None:
        raise Refused(f"Say what {to} shall replace: {to} instead of ...")
    if item is None:
        raise Refused(_none_of(str(said), recipe))
    return _with_swap(day, Swap(food=item.name, to=to))


def _left_out(slots: Mapping[str, Any], recipe: Recipe, day: Day) -> Day:
    foods = slots["food"] if isinstance(slots["food"], list) else [slots["food"]]
    for food in foods:
        items = _all_meant(str(food), recipe)
        if not items:
            raise Refused(_none_of(str(food), recipe))
        for item in items:
            day = _with_swap(day, Swap(food=item.name))
    return day


def _none_of(food: str, recipe: Recipe) -> str:
    names = ", ".join(dict.fromkeys(item.name for item in recipe.ingredients))
    return f"{food.capitalize()}: not in this recipe, so nothing changed. It has: {names}."


def _put_back(slots: Mapping[str, Any], day: Day) -> Day | None:
    """The day on which a food that was left out or replaced is in it again; None where it never was out."""
    back = words_of(str(slots["food"]))
    left = tuple(one for one in day.swaps if not back & words_of(one.food))
    return replace(day, swaps=left) if len(left) < len(day.swaps) and "amount" not in slots else None


def _added(slots: Mapping[str, Any], recipe: Recipe) -> Recipe:
    food = str(slots["food"])
    text = f"{slots.get('amount', '')} {food}".strip()
    last = max((item.line for item in recipe.ingredients), default=0)
    read = read_line(text, line=last)
    added = read or (Ingredient(line=last, text=text, name=food, food=_key(food)),)
    return replace(recipe, ingredients=(*recipe.ingredients, *added))


def _key(name: str) -> str | None:
    food = catalogue().find(name).food
    return food.name if food else None


def _meant(said: str, recipe: Recipe) -> Ingredient | None:
    """The ingredient that a word means: the one with that name, else that food, else with that word in its name."""
    found = _all_meant(said, recipe)
    return found[0] if found else None


def _all_meant(said: str, recipe: Recipe) -> list[Ingredient]:
    items = recipe.ingredients
    asked, key = words_of(said), _key(said)
    tests: tuple[Callable[[Ingredient], bool], ...] = (
        lambda item: words_of(item.name) == asked,
        lambda item: any(words_of(name) == asked for name in names_of(item.name)),
        lambda item: key is not None and item.food == key,
        lambda item: _is_of(said, item),
        lambda item: bool(asked) and asked <= words_of(item.name),
    )
    for test in tests:
        found = [item for item in items if test(item)]
        if found:
            return found
    return []


def _is_of(group: str, item: Ingredient) -> bool:
    """Whether an ingredient belongs to a kind of food that was named: nuts, dairy, gluten."""
    from assistant.chat.values import allergens_of

    food = catalogue().find(item.name).food
    return food is not None and bool(set(allergens_of(group)) & set(food.allergens))


def _replaced_by(to: str, recipe: Recipe) -> Ingredient | None:
    """The ingredient that a food most likely replaces: one whose name it shares, or the only one of its kind."""
    shared = [item for item in recipe.ingredients if words_of(item.name) & words_of(to)]
    if len(shared) == 1:
        return shared[0]
    food = catalogue().find(to).food
    if food is None:
        return None
    like = [
        item
        for item in recipe.ingredients
        if (own := catalogue().find(item.name).food) and own.group == food.group
    ]
    return like[0] if len(like) == 1 else None
