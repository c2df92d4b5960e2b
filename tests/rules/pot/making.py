"""Small recipes for the tests of the pot."""

from __future__ import annotations

from rules.foods import Item, weigh
from rules.recipe import Amount, Family, Ingredient, Oven, Recipe, Servings


def line(food: str, value: float | None = None, unit: str | None = None, **more: object) -> Ingredient:
    """One ingredient whose name is its food's."""
    amounts = () if value is None else (Amount(low=value, high=value, unit=unit),)
    return Ingredient(line=0, text=food, name=food, food=food, amounts=amounts, **more)  # type: ignore[arg-type]


def recipe(
    *lines: Ingredient, family: Family = "other", vessel: str | None = None, serves: float | None = None
) -> Recipe:
    """A recipe of these lines."""
    return Recipe(
        ingredients=lines,
        family=family,
        oven=Oven(temp_f=350, vessel=vessel) if vessel else None,
        servings=Servings(low=serves, high=serves) if serves else None,
    )


def items(one: Recipe, scale: float = 1.0) -> tuple[Item, ...]:
    """Its items, weighed."""
    return weigh(one, scale)


#: A batter of about a quart.
BATTER = (
    line("all-purpose flour", 2, "cup"),
    line("sugar", 1, "cup"),
    line("baking powder", 1, "tablespoon"),
    line("milk", 1, "cup"),
    line("egg", 2),
    line("butter", 1, "stick"),
)
#: A stew of about three quarts.
STEW = (
    line("beef stew meat", 3, "pound"),
    line("potato", 2, "pound"),
    line("carrot", 1, "pound"),
    line("beef broth", 1, "quart"),
    line("salt"),
)
