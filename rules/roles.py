"""What a food is to the packer: its role at the mixing bowl, in the cooler and on the shelf.

Read from `tables/roles.toml`; a food that the catalogue does not know is judged by the words of its name.
"""

from __future__ import annotations

import re
from functools import cache, lru_cache
from typing import Literal

from rules import table
from rules.foods import Food, catalogue
from rules.foods.names import MOST_KEPT, plain, singular
from rules.recipe import Ingredient

Role = Literal[
    "leavener", "yeast", "culture", "pepper", "oats", "dry good", "shelf milk", "boiled egg", "mayonnaise", "cooked grain",
    "jar", "ice", "flour", "sugar", "salt", "starch", "spice", "herb", "crumbs", "dough", "bread", "fat", "fish", "meat",
    "cured meat", "egg", "cheese", "cultured", "milk", "mix-in", "juice", "fruit", "zest", "extract", "acid", "spirits",
    "stock", "sauce", "nut paste", "syrup", "can", "grain", "fresh pasta", "tofu", "greens", "vegetable", "water", "drink",
    "caustic", "unknown",
]  # fmt: skip

#: Powders and granules of a dry mix.
DRY: frozenset[Role] = frozenset(
    {
        "flour",
        "sugar",
        "salt",
        "pepper",
        "leavener",
        "starch",
        "spice",
        "dry good",
        "oats",
        "crumbs",
        "mix-in",
    }
)
#: What gives a dry mix its body: with one of these the salt and sugar beside it stay dry.
BODY: frozenset[Role] = frozenset({"flour", "starch", "oats", "crumbs", "leavener"})
#: What seasons: it enters in spoons and pinches.
SEASONING: frozenset[Role] = frozenset({"salt", "pepper", "spice", "sugar", "dry good"})
#: Pourable or spoonable, and keeps on the shelf until it is mixed.
SHELF_WET: frozenset[Role] = frozenset(
    {"juice", "acid", "spirits", "sauce", "syrup", "extract", "nut paste", "zest"}
)
#: Milk in any liquid or spoonable form.
DAIRY: frozenset[Role] = frozenset({"milk", "cultured", "shelf milk"})
#: Foods of which one line of the list serves several moments of the method.
POURED_AGAIN: frozenset[Role] = frozenset(
    {"fat", "salt", "pepper", "spice", "sugar", "water", "flour", "cheese", "herb", "milk", "starch"}
)


class RoleRow(table.Row, frozen=True, kw_only=True):
    """One row of `roles.toml`."""

    role: Role
    foods: tuple[str, ...] = ()
    groups: tuple[str, ...] = ()
    forms: tuple[str, ...] = ()
    keeps: tuple[str, ...] = ()
    words: tuple[str, ...] = ()


@cache
def _rows() -> tuple[RoleRow, ...]:
    return table.read("roles.toml", RoleRow)


@cache
def _keys() -> frozenset[str]:
    return frozenset(food.name for food in catalogue())


@cache
def _of_food(key: str) -> Role:
    food = catalogue().get(key)
    for row in _rows():
        if food.name in row.foods:
            return row.role
    for row in _rows():
        if (
            food.group in row.groups
            and (not row.forms or food.form in row.forms)
            and (not row.keeps or food.keeps in row.keeps)
        ):
            return row.role
    return "unknown"


@cache
def _of_words() -> dict[str, Role]:
    words: dict[str, Role] = {}
    for row in _rows():
        for word in row.words:
            words.setdefault(word, row.role)
    return words


@lru_cache(maxsize=MOST_KEPT)
def _of_name(name: str) -> Role:
    words = [singular(word) for word in re.findall(r"[\w-]+", plain(name)[:200])]
    known = _of_words()
    return next((known[word] for word in reversed(words) if word in known), "unknown")


def role_of(ingredient: Ingredient, food: Food | None = None) -> Role:
    """The role of an ingredient's food; `unknown` when neither the catalogue nor its name tells."""
    key = food.name if food is not None else ingredient.food
    if key is None or key not in _keys():
        return _of_name(ingredient.name)
    role = _of_food(key)
    if role == "drink" and "powder" in ingredient.name.split():
        return "dry good"
    return role
