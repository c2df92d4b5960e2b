"""Foods and packs in the words of a step: "2 cups flour", "the dry mix (dry-1)"."""

from __future__ import annotations

from collections.abc import Iterable

from rules.circumstances import Units
from rules.plan import Pack, PackItem
from rules.recipe import Ingredient, Recipe
from rules.units import kitchen

_UNIT_IS_NAME = (
    "clove",
    "head",
    "stalk",
    "leaf",
    "sprig",
    "slice",
    "can",
    "jar",
    "package",
    "bag",
    "bottle",
    "bunch",
    "stick",
)


def amount_of(item: PackItem, ingredient: Ingredient, units: Units) -> str:
    """The amount and the name: "2 cups flour", "3 cloves garlic", "salt"."""
    if item.amount is None:
        return ingredient.name
    said = kitchen(item.amount, units=units, grams=item.grams)
    if not said:
        return ingredient.name
    joint = " of " if item.amount.package is None and said.split()[-1].rstrip("s") in _UNIT_IS_NAME else " "
    return f"{said}{joint if ' of ' not in said else ' '}{ingredient.name}"


def contents(pack: Pack, recipe: Recipe, units: Units) -> list[str]:
    """Every food of a pack with its amount."""
    return [amount_of(item, recipe.ingredients[item.ingredient], units) for item in pack.items]


def joined(parts: Iterable[str]) -> str:
    """A list as one says it: "a, b and c"."""
    told = list(dict.fromkeys(part for part in parts if part))
    if len(told) < 2:
        return "".join(told)
    return f"{', '.join(told[:-1])} and {told[-1]}"


def sentence(text: str) -> str:
    """A sentence: a capital first, a full stop last, no double blanks."""
    text = " ".join(text.split()).rstrip(" .")
    return text[:1].upper() + text[1:] + "." if text else ""
