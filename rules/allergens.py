"""Allergens: what the foods of a recipe surely hold of the nine, and which labels must be read.

The food tables say what a food holds whoever made it, and what its usual make may hold besides; the label of the
packet decides in the end. Handbook, section 9.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import get_args

from rules import table
from rules.because import Ledger, Rule
from rules.foods import Food, Item, catalogue
from rules.foods.names import plain, singulars
from rules.hazards import DOUGH_FAMILIES
from rules.plan import Allergen, MayHold
from rules.recipe import Ingredient, Recipe
from rules.wording import listed

HOLDS = Rule(
    id="allergens.holds",
    because="{food} holds {allergens}, whoever made it",
    source="food tables: the usual make of the food, common practice; the label of the packet decides",
)
UNKNOWN = Rule(
    id="allergens.unknown",
    because="{foods}: not in the food tables, so nothing is known of what it holds; read its label",
)

EXACT = ("name", "alias")
NINE: tuple[Allergen, ...] = get_args(Allergen)


class InTheName(table.Row, frozen=True, kw_only=True):
    """What words in the name of a food tell of it, beside or against the food that it is looked up as.

    A brioche is looked up as bread and holds egg besides; tamari is a soy sauce with little or no wheat.
    """

    phrase: str
    allergens: tuple[Allergen, ...] = ()
    may_hold: tuple[Allergen, ...] = ()
    frees: tuple[Allergen, ...] = ()
    when_unknown: bool = False


class FreeFrom(table.Row, frozen=True, kw_only=True):
    """A word on the packet and the allergens that it takes away."""

    word: str
    frees: tuple[Allergen, ...]


def allergens(
    recipe: Recipe,
    items: Sequence[Item],
    ledger: Ledger,
) -> tuple[tuple[Allergen, ...], tuple[MayHold, ...]]:
    """What the foods surely hold of the nine, and what their usual make may hold besides (the label decides).

    Optional foods count, and so do foods that only the method names. A food that may be taken instead of the one in
    the list, and what a word like "gluten-free" takes away, goes to the labels to check.
    """
    sure: set[Allergen] = set()
    check: dict[str, set[Allergen]] = {}
    for item in items:
        held, doubtful = held_by(item.ingredient, item.food)
        sure |= held
        if held:
            named = listed(allergen for allergen in NINE if allergen in held)
            food = item.food.name if item.food else item.ingredient.name
            ledger.note(HOLDS.says(item.ingredient.name, food=food, allergens=named))
        check.setdefault(item.ingredient.name, set()).update(doubtful)
    for bread in _bread_to_serve(recipe):
        sure |= set(bread.allergens)
        ledger.note(HOLDS.says(f"{bread.name} to serve", food=bread.name, allergens=listed(bread.allergens)))
    for item, name, other in alternatives(items):
        if other is not None:
            held = {*other.allergens, *other.may_hold} - freed(item.ingredient)
            check.setdefault(f"{name} instead of {item.ingredient.name}", set()).update(held)
    _ask_about_unknown(items, ledger)
    return _of_nine(sure), tuple(
        MayHold(food=name, may_hold=_of_nine(held)) for name, held in check.items() if held
    )


def held_by(line: Ingredient, food: Food | None) -> tuple[set[Allergen], set[Allergen]]:
    """What a line surely holds, and what its label must be read for: from its food and from the words of its name."""
    told = [row for row in _in_the_name(line.name) if food is None or not row.when_unknown]
    off = freed(line)
    gone = off | {one for row in told for one in row.frees}
    own = set(food.allergens) if food else set()
    named = {one for row in told for one in row.allergens}
    held = (own - gone) | (named - off)
    doubtful = {*(food.may_hold if food else ()), *(one for row in told for one in row.may_hold)}
    return held, (doubtful | (own & gone) | (named & off)) - held


def _in_the_name(name: str) -> list[InTheName]:
    """The rows whose phrase stands in a name, in whole words; singular or plural is all one."""
    words = f" {singulars(plain(name))} "
    return [
        row
        for row in table.read("allergen_words.csv", InTheName)
        if f" {singulars(plain(row.phrase))} " in words
    ]


def _bread_to_serve(recipe: Recipe) -> list[Food]:
    """Bread that the method puts on the table and no line of the list holds; what is baked itself is no such bread."""
    if recipe.family in DOUGH_FAMILIES:
        return []
    known = f"{recipe.title or ''} {' '.join(line.name for line in recipe.ingredients)}".lower()
    served = {
        thing
        for step in recipe.steps
        for action in step.actions
        if action.does == "serve"
        for thing in action.things
    }
    foods = [catalogue().find(thing) for thing in sorted(served) if thing not in known]
    return [
        match.food
        for match in foods
        if match.food is not None and match.food.group == "bread" and match.how in EXACT
    ]


def _of_nine(held: set[Allergen]) -> tuple[Allergen, ...]:
    return tuple(allergen for allergen in NINE if allergen in held)


def freed(line: Ingredient) -> set[Allergen]:
    """The allergens that a word of the line takes away ("gluten-free")."""
    said = {*line.name.split(), *(word for state in line.state for word in state.split())}
    return {one for row in table.read("free_from.csv", FreeFrom) if row.word in said for one in row.frees}


def _ask_about_unknown(items: Sequence[Item], ledger: Ledger) -> None:
    unknown = [item.ingredient.name for item in items if item.food is None]
    if unknown:
        ledger.note(UNKNOWN.says("allergens", foods=listed(unknown)))
        ledger.ask(
            "allergens",
            f"Not in the food tables: {', '.join(dict.fromkeys(unknown))}. Which of the nine allergens does the label name?",
            "counted as holding none; read the label",
        )


def alternatives(items: Sequence[Item]) -> list[tuple[Item, str, Food | None]]:
    """Every food that a line offers instead of its own: the item, the other food's name, the other food."""
    return [
        (item, name, catalogue().find(name).food) for item in items for name in item.ingredient.alternatives
    ]
