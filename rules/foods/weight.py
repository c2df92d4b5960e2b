"""What an amount of a food weighs and how much room it takes: volume, mass, pieces, packages.

None where it cannot be known: nothing is invented. A range uses its middle. Handbook chapter 4.
"""

from __future__ import annotations

from functools import cache

from rules import table, units
from rules.foods.catalogue import catalogue
from rules.foods.food import Food
from rules.recipe import Amount, Ingredient, Recipe, Struct


class Item(Struct, frozen=True, kw_only=True):
    """An ingredient with its food and its weight [g] and bulk volume [ml], scaled; None where not known."""

    index: int
    ingredient: Ingredient
    food: Food | None = None
    grams: float | None = None
    milliliters: float | None = None


class Piece(table.Row, frozen=True, kw_only=True):
    """The weight of a part or a package of a food besides the piece in the catalogue."""

    key: str
    food: str
    unit: str
    g_each: float


class Size(table.Row, frozen=True, kw_only=True):
    """What a size word does to the weight of a piece; `food` blank: any whole produce."""

    key: str
    food: str | None = None
    word: str
    factor: float


ONE_PIECE = frozenset({None, "piece", "whole", "unit", "each"})


def grams(amount: Amount, food: Food | None, *, sizes: tuple[str, ...] = ()) -> float | None:
    """The mass of an amount [g]; None when it cannot be known. `sizes` are size words of the line ("large")."""
    middle = (amount.low + amount.high) / 2
    if amount.package is not None:
        size = amount.package
        one = grams(Amount(low=size.low, high=size.high, unit=size.unit), food)
        if one is not None:
            return middle * one
    if amount.unit is not None and units.is_mass(amount.unit):
        return units.to(middle, amount.unit, "gram")
    if food is None:
        return None
    each = _grams_each(amount.unit, food)
    if each is not None:
        return (
            middle
            * each
            * (
                _size_factor(sizes, food)
                if amount.unit in ONE_PIECE or amount.unit == food.piece_word
                else 1.0
            )
        )
    return None


def milliliters(amount: Amount, food: Food | None) -> float | None:
    """The bulk volume of an amount [ml], as a measuring cup would show it; None when it cannot be known."""
    if units.is_volume(amount.unit) and amount.unit is not None:
        return units.to((amount.low + amount.high) / 2, amount.unit, "milliliter")
    mass = grams(amount, food)
    density = g_per_ml(food)
    return mass / density if mass is not None and density else None


def g_per_ml(food: Food | None) -> float | None:
    """The bulk density of a food [g/ml] as a measuring cup holds it."""
    if food is None:
        return None
    if food.g_per_cup:
        return food.g_per_cup / units.to(1, "cup", "milliliter")
    if food.g_per_tbsp:
        return food.g_per_tbsp / units.to(1, "tablespoon", "milliliter")
    return None


def weigh(recipe: Recipe, scale: float = 1.0) -> tuple[Item, ...]:
    """One item per ingredient, in order, scaled."""
    return tuple(_item(index, ingredient, scale) for index, ingredient in enumerate(recipe.ingredients))


def _item(index: int, ingredient: Ingredient, scale: float) -> Item:
    food = catalogue().get(ingredient.food) if ingredient.food else None
    mass = volume = None
    for amount in ingredient.amounts:
        mass = grams(amount, food, sizes=ingredient.state) if mass is None else mass
        volume = milliliters(amount, food) if volume is None else volume
    if volume is None and mass is not None:
        density = g_per_ml(food)
        volume = mass / density if density else None
    return Item(
        index=index,
        ingredient=ingredient,
        food=food,
        grams=mass * scale if mass is not None else None,
        milliliters=volume * scale if volume is not None else None,
    )


def _grams_each(unit: str | None, food: Food) -> float | None:
    """One unit of a food [g]."""
    part = _pieces().get((food.name, unit or ""))
    if part is not None:
        return part
    if food.g_per_piece and (unit in ONE_PIECE or unit in (food.piece_word, food.name)):
        return food.g_per_piece
    if unit is None:
        return None
    if unit in ("tablespoon", "teaspoon", "dash", "pinch") and food.g_per_tbsp:
        return food.g_per_tbsp * units.to(1, unit, "tablespoon")
    if units.kind(unit) == "volume":
        density = g_per_ml(food)
        return density * units.to(1, unit, "milliliter") if density else None
    return None


@cache
def _pieces() -> dict[tuple[str, str], float]:
    return {(row.food, row.unit): row.g_each for row in table.read("pieces.csv", Piece)}


def _size_factor(sizes: tuple[str, ...], food: Food) -> float:
    for word in sizes:
        factor = _sizes().get((food.name, word))
        if factor is None and food.form == "whole":
            factor = _sizes().get(("", word))
        if factor is not None:
            return factor
    return 1.0


@cache
def _sizes() -> dict[tuple[str, str], float]:
    return {(row.food or "", row.word): row.factor for row in table.read("sizes.csv", Size)}
