"""What an amount of a food weighs and how much room it takes: volume, mass, pieces, packages.

None where it cannot be known: nothing is invented. A range uses its middle. Handbook chapter 4.
"""

from __future__ import annotations

from functools import cache
from math import floor

import msgspec

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
    #: what the ingredient's own amounts are multiplied with
    scale: float = 1.0


#: Pieces that are the shop's package.
PACKAGES = frozenset(
    ["bag", "box", "can", "container", "jar", "bottle", "package", "packet", "pouch", "tub", "block"]
)


class Piece(table.Row, frozen=True, kw_only=True):
    """The weight of a part or a package besides the piece in the catalogue, of a food or of a whole group."""

    id: str
    food: str | None = None
    group: str | None = None
    #: blank: a bare count
    unit: str | None = None
    g_each: float


class PieceWord(table.Row, frozen=True, kw_only=True):
    """Another word for a part or a package ("twig" for a sprig)."""

    word: str
    means: str


class Size(table.Row, frozen=True, kw_only=True):
    """What a size word does to the weight of a piece; `food` blank: any whole produce."""

    id: str
    food: str | None = None
    word: str
    factor: float


def grams(amount: Amount, food: Food | None, *, sizes: tuple[str, ...] = ()) -> float | None:
    """The mass of an amount [g]; None when it cannot be known. `sizes` are size words of the line ("large")."""
    count = (amount.low + amount.high) / 2
    if amount.package is not None:
        size = amount.package
        one = grams(Amount(low=size.low, high=size.high, unit=size.unit), food)
        if one is not None:
            return count * one
    if units.is_mass(amount.unit):
        return units.to(count, amount.unit or "", "gram")
    if food is None:
        return None
    each = _measure(amount.unit, food) if units.is_volume(amount.unit) else _piece(amount.unit, food, sizes)
    return count * each if each is not None else None


def milliliters(amount: Amount, food: Food | None) -> float | None:
    """The bulk volume of an amount [ml], as a measuring cup would show it; None when it cannot be known."""
    stated = _measured(amount)
    if stated is not None:
        return stated
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


def counts_whole(amount: Amount, food: Food | None) -> bool:
    """Whether it cannot be halved: an egg."""
    return food is not None and food.group == "egg" and amount.unit in (None, "piece", "egg")


def scaled(amount: Amount, factor: float, food: Food | None) -> Amount:
    """An amount times the factor; eggs are counted whole, halves up. The size of a package stays what it is."""
    low, high = amount.low * factor, amount.high * factor
    if counts_whole(amount, food):
        low, high = (float(max(1, floor(value + 0.5))) for value in (low, high))
    return msgspec.structs.replace(amount, low=round(low, 4), high=round(high, 4))


def weigh(recipe: Recipe, scale: float = 1.0) -> tuple[Item, ...]:
    """One item per ingredient, in order, scaled."""
    return tuple(_item(index, ingredient, scale) for index, ingredient in enumerate(recipe.ingredients))


def _item(index: int, ingredient: Ingredient, scale: float) -> Item:
    food = catalogue().get(ingredient.food) if ingredient.food else None
    mass = _mass(ingredient, food)
    volume = _volume(ingredient)
    density = g_per_ml(food)
    if volume is None and mass is not None and density:
        volume = mass / density
    return Item(
        index=index,
        ingredient=ingredient,
        food=food,
        grams=mass * scale if mass is not None else None,
        milliliters=volume * scale if volume is not None else None,
        scale=scale,
    )


def _mass(ingredient: Ingredient, food: Food | None) -> float | None:
    """The mass of a line [g]: of its first amount that can be weighed, and of what comes on top of it.

    A weight written beside a measure or a count is better than our tables, unless it is so far off that it must
    belong to something else (a substitute, the whole fruit). Written behind an amount on top, it is the weight of all.
    """
    total: float | None = None
    stated: float | None = None
    for amount in ingredient.amounts:
        mass = None if amount.each else grams(amount, food, sizes=ingredient.state)
        if mass is None:
            continue
        if amount.plus and total is not None:
            total += mass
            stated = stated + mass if stated is not None else None
        elif total is None:
            total = mass
            stated = mass if units.is_mass(amount.unit) else None
        elif stated is None and units.is_mass(amount.unit) and total / 2 <= mass <= 2 * total:
            stated = mass
    return stated if stated is not None else total


def _volume(ingredient: Ingredient) -> float | None:
    """The volume that a line states [ml], with what comes on top of it."""
    total: float | None = None
    for amount in ingredient.amounts:
        volume = None if amount.each else _measured(amount)
        if volume is not None and (total is None or amount.plus):
            total = volume + (total or 0.0)
    return total


def _measured(amount: Amount) -> float | None:
    """The volume that an amount states [ml]."""
    if amount.unit is None or not units.is_volume(amount.unit):
        return None
    return units.to((amount.low + amount.high) / 2, amount.unit, "milliliter")


def _piece(unit: str | None, food: Food, sizes: tuple[str, ...]) -> float | None:
    """One piece, part, package or loose measure of a food [g]."""
    for word in (unit, _piece_words().get(unit or "")):
        if word is None and unit is not None:
            continue
        own = _pieces().get((food.name, word or "")) if food.piece_word in PACKAGES else None
        if own is not None:
            # Twenty olives are no twenty cans.
            return own
        if food.g_per_piece and word in (None, "piece", food.piece_word, food.name):
            return food.g_per_piece * _size_factor(sizes, food)
        part = _part(word or "", food)
        if part is not None:
            return part * (_size_factor(sizes, food) if word is None else 1.0)
        if food.g_per_piece and word == "package" and food.piece_word in PACKAGES:
            return food.g_per_piece
    return _measure(unit, food) if units.is_loose(unit) else None


def _part(word: str, food: Food) -> float | None:
    kinds = ["fresh herb" if food.is_fresh_herb else food.form, food.group]
    if food.group == "dairy" and food.form in ("solid", "granule"):
        kinds.append("cheese")
    parts = _pieces()
    for owner in (food.name, *kinds):
        if (owner, word) in parts:
            return parts[owner, word]
    return None


def _measure(unit: str | None, food: Food) -> float | None:
    """One measure of volume of a food [g]; small spoons go by the spoon, which is often weighed apart."""
    if unit is None:
        return None
    by_spoon = unit in ("teaspoon", "tablespoon") or units.is_loose(unit)
    if food.g_per_tbsp and (by_spoon or not food.g_per_cup):
        return food.g_per_tbsp * units.to(1, unit, "tablespoon")
    return food.g_per_cup * units.to(1, unit, "cup") if food.g_per_cup else None


@cache
def _pieces() -> dict[tuple[str, str], float]:
    rows = table.read("pieces.csv", Piece)
    return {(row.food or row.group or "", row.unit or ""): row.g_each for row in rows}


@cache
def _piece_words() -> dict[str, str]:
    return {row.word: row.means for row in table.read("piece_words.csv", PieceWord)}


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
