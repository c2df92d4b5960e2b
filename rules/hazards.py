"""What is handled raw: meat, poultry, fish, eggs, flour and dry kidney beans, as this recipe uses them.

A food's own hazard stands in the catalogue; whether it applies is decided here from the line (cooked, canned) and
from the method (a roux and a boiled slurry are no dough, an egg boiled in its shell is not handled raw). Cautions,
kit and cooler ask here. Handbook, sections 6, 8 and 9.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import cache
from typing import Literal

from rules import table
from rules.dish import Dish
from rules.foods import Food, Item, catalogue
from rules.foods.names import plain, singulars
from rules.recipe import Action, Deed, Family, Ingredient, Recipe

Kind = Literal["poultry", "meat", "fish", "egg", "flour"]
#: the kinds whose juices must stay apart; a second utensil and soap go with them
JUICY: tuple[Kind, ...] = ("poultry", "meat", "fish")

#: A food bought in one of these states is no longer raw. After a comma ("bacon, cooked and crumbled") the cook does it.
COOKED_BEFORE = frozenset(
    {
        "cooked", "precooked", "pre-cooked", "leftover", "rotisserie", "roasted", "canned", "tinned", "smoked",
        "hard-boiled", "boiled", "pasteurized", "pasteurised", "powdered", "dried",
    }
)  # fmt: skip
DOUGH_FAMILIES: frozenset[Family] = frozenset(
    {
        "batter bake",
        "biscuit or quick bread dough",
        "yeast bread",
        "pastry or pie",
        "cookie",
        "griddle",
        "deep fry",
    }
)
ALCOHOL_FREE = ("non alcoholic", "nonalcoholic", "alcohol free", "dealcoholized", "de alcoholized")
#: Here flour stirred into water thickens a sauce.
MOIST_FAMILIES: frozenset[Family] = frozenset(
    {"stew or braise", "soup", "beans or chili", "pot roast", "casserole or layered bake", "boil or steam"}
)
DOUGH_DEEDS: frozenset[Deed] = frozenset({"knead", "roll", "shape", "rub", "cut in", "fold", "rise", "coat"})
DREDGING_WORDS = frozenset(
    {"coat", "dredge", "dust", "dip", "dunk", "flour", "toss", "roll", "bread", "cover"}
)
#: What is said to come of flour that stays raw for a while.
DOUGHS = frozenset(
    {
        "batter",
        "dough",
        "dumpling",
        "dumplings",
        "crust",
        "topping",
        "crumble",
        "streusel",
        "biscuit",
        "biscuits",
        "pastry",
    }
)
SHELL_DEEDS: frozenset[Deed] = frozenset(
    {
        "boil",
        "simmer",
        "steam",
        "cool",
        "peel",
        "chop",
        "drain",
        "rinse",
        "serve",
        "cover",
        "rest",
        "add",
        "top",
    }
)
HEAT_DEEDS: frozenset[Deed] = frozenset(
    {
        "heat", "melt", "brown", "saute", "fry", "deep fry", "griddle", "boil", "simmer", "reduce", "deglaze", "steam",
        "pressure cook", "bake", "roast", "broil", "grill", "smoke", "toast",
    }
)  # fmt: skip
BOWLS = ("bowl", "cup", "jar", "plate", "dish", "bag", "board", "surface")


class HazardWord(table.Row, frozen=True, kw_only=True):
    """A word in the name of a food that the catalogue does not know, and what it raises ("none" ends the matter)."""

    word: str
    raises: Literal["poultry", "meat", "fish", "egg", "flour", "drink", "none"]


def raw(kind: Kind, recipe: Recipe, items: Sequence[Item], dish: Dish) -> tuple[Item, ...]:
    """The foods of one kind that are handled raw, in the order of the list."""
    return tuple(
        item for item in items if hazard_of(item) == kind and _applies(kind, item, recipe, items, dish)
    )


def only_named(kind: Kind, recipe: Recipe, items: Sequence[Item]) -> tuple[str, ...]:
    """Raw meat, poultry or fish that the method handles and no line of the list holds ("dunk your chicken")."""
    listed = " ".join(item.food.name for item in items if item.food)
    if any(hazard_of(item) == kind for item in items):
        return ()
    things = dict.fromkeys(
        thing for step in recipe.steps for action in step.actions for thing in action.things
    )
    return tuple(thing for thing in things if thing not in listed and _is_raw_by_name(thing, kind))


def _is_raw_by_name(name: str, kind: Kind) -> bool:
    match = catalogue().find(name)
    return match.how in ("name", "alias") and match.food is not None and match.food.raw_hazard == kind


def alternatively_raw(kind: Kind, item: Item, name: str, other: Food | None) -> bool:
    """True when the food that may be taken instead of `item` is raw in this way and `item` itself is not raw."""
    if _words(name) & COOKED_BEFORE or other is None:
        return False
    return other.raw_hazard == kind and hazard_of(item) not in JUICY


def dry_kidney_beans(recipe: Recipe, items: Sequence[Item]) -> tuple[Item, ...]:
    """Dry red or white (cannellini) kidney beans: bought dry, or soaked by the method."""
    return tuple(item for item in items if _is_kidney_bean(item) and _is_dry(item, recipe))


def actions_with(recipe: Recipe, index: int) -> Iterator[tuple[Action, ...]]:
    """For every action that takes the ingredient: the actions of its step up to and including it."""
    for step in recipe.steps:
        for place, action in enumerate(step.actions):
            if any(use.ingredient == index for use in action.uses):
                yield step.actions[: place + 1]


def is_drink(name: str, food: Food | None) -> bool:
    """Wine, beer and spirits; extracts and bitters are flavourings, root beer and alcohol-free beer no such drinks.

    `name` is the food as written, with its words of state before it.
    """
    if any(word in name.replace("-", " ") for word in ALCOHOL_FREE):
        return False
    return food.is_drink_alcohol if food else _told_by_words(name) == "drink"


def hazard_of(item: Item) -> str | None:
    """What a food is by itself when raw (or "drink"): from the catalogue, else from the words of its name."""
    return item.food.raw_hazard if item.food else _told_by_words(item.ingredient.name)


def _told_by_words(name: str) -> str | None:
    """What an unknown food is taken for: better a warning too many than raw meat taken for none."""
    found = [_hazard_words()[word] for word in singulars(plain(name)).split() if word in _hazard_words()]
    return None if not found or "none" in found else found[-1]


@cache
def _hazard_words() -> dict[str, str]:
    return {row.word: row.raises for row in table.read("hazard_words.csv", HazardWord)}


def _applies(kind: Kind, item: Item, recipe: Recipe, items: Sequence[Item], dish: Dish) -> bool:
    if _words(item.ingredient.state, item.ingredient.name) & COOKED_BEFORE and kind != "flour":
        return False
    if kind == "egg":
        return not _stays_in_its_shell(item, recipe)
    if kind == "flour":
        return _is_handled_raw(item, recipe, items, dish)
    return True


def _words(*texts: str | Iterable[str]) -> set[str]:
    joined = " ".join(text if isinstance(text, str) else " ".join(text) for text in texts)
    return set(joined.lower().replace(",", " ").split())


def _stays_in_its_shell(item: Item, recipe: Recipe) -> bool:
    if item.ingredient.prep and "boiled" in item.ingredient.prep.replace("-", " ").split():
        return True
    deeds = [chain[-1].does for chain in actions_with(recipe, item.index)]
    return bool(deeds) and deeds[0] in ("boil", "simmer", "steam") and set(deeds) <= SHELL_DEEDS


def _is_handled_raw(item: Item, recipe: Recipe, items: Sequence[Item], dish: Dish) -> bool:
    """A dough bought ready, a family of doughs, dredging, or a batter inside another dish; no roux and no slurry."""
    if item.food is not None and item.food.form in ("solid", "paste"):
        return True
    if dish.family in DOUGH_FAMILIES or dish.family == "no cook":
        return True
    if dish.second in DOUGH_FAMILIES and (dish.leavened or dish.yeasted):
        return True
    if _is_part_of_a_dough(item, items):
        return True
    is_moist = dish.family in MOIST_FAMILIES
    return any(
        _makes_dough(chain[-1], item, items, is_moist=is_moist) or _dredges(chain, items)
        for chain in actions_with(recipe, item.index)
    )


def _is_part_of_a_dough(item: Item, items: Sequence[Item]) -> bool:
    """A part of the recipe that is named as a dough ("dumplings") or holds a leavener."""
    part = item.ingredient.component
    if part is None:
        return False
    beside = [other.food for other in items if other.ingredient.component == part]
    return bool(_words(part) & DOUGHS) or any(
        food is not None and food.group == "leavener" for food in beside
    )


def _makes_dough(action: Action, item: Item, items: Sequence[Item], *, is_moist: bool) -> bool:
    made = _words(action.makes or "", *action.things) & DOUGHS
    if action.does in DOUGH_DEEDS or made - {"batter"} or (made and not is_moist):
        # Flour and water "like a batter" in a stew is a slurry, which is boiled.
        return True
    with_it = [items[use.ingredient] for use in action.uses if use.ingredient != item.index]
    groups = {other.food.group for other in with_it if other.food is not None}
    # Leavened, bound with egg, or a crumble of fat and sugar.
    return bool(groups & {"leavener", "egg"} or groups >= {"fat", "sugar"}) and action.does not in HEAT_DEEDS


def _dredges(chain: Sequence[Action], items: Sequence[Item]) -> bool:
    """Flour on raw food before it meets the heat; flour strewn into a hot pot is a roux."""
    action = chain[-1]
    if _in_a_hot_pot(chain):
        return False
    if action.word.lower() in DREDGING_WORDS:
        return True
    with_it = [items[use.ingredient] for use in action.uses]
    return any(hazard_of(other) in JUICY for other in with_it) and action.does in (
        "mix",
        "season",
        "add",
        "top",
    )


def _in_a_hot_pot(chain: Sequence[Action]) -> bool:
    for action in reversed(chain):
        if action.does in HEAT_DEEDS:
            return True
        if action.vessel and any(bowl in action.vessel.lower() for bowl in BOWLS):
            return False
    return False


def _is_kidney_bean(item: Item) -> bool:
    if item.food is not None and "raw kidney bean" in item.food.traits:
        return True
    named = _words(item.ingredient.name, item.ingredient.food or "", item.food.name if item.food else "")
    return bool(named & {"kidney", "cannellini"})


def _is_dry(item: Item, recipe: Recipe) -> bool:
    line = item.ingredient
    amount = line.amounts[0] if line.amounts else None
    if (amount and amount.unit in ("can", "jar", "box", "package") and not _says_dry(line)) or _words(
        line.state, line.name, line.prep or ""
    ) & {"canned", "tinned", "can", "cooked", "leftover"}:
        return False
    if _says_dry(line) or (item.food is not None and item.food.name.endswith(", dry")):
        return True
    deeds = [chain[-1].does for chain in actions_with(recipe, item.index)]
    # Canned beans are neither soaked nor boiled by themselves before anything else happens to them.
    return "soak" in deeds or (amount is None and deeds[:1] == ["boil"])


def _says_dry(line: Ingredient) -> bool:
    return bool(_words(line.state, line.name, line.prep or "") & {"dry", "dried", "soaked"})
