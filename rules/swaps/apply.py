"""The cook's swaps, worked into the recipe before anything else is decided.

The book gives the proportion and its source; a food that the book does not have takes the other's place in the same
amount, and the plan asks. Taking a food out says what it does to the dish.
"""

from __future__ import annotations

import msgspec

from rules.because import COMMON, Ledger, Rule
from rules.circumstances import Day, Units
from rules.foods import Food, Match, catalogue, grams
from rules.foods.names import plain, singulars
from rules.recipe import Amount, Ingredient, Recipe
from rules.swaps.book import Exchange, SwapRow, effect_of, exchange
from rules.swaps.edit import changed
from rules.units import UnitProblem, in_all, kitchen, rounded, to

BOOK = Rule(id="swap.book", because="{got} instead of {was}: {parts}{note}", source="tables/swaps.csv")
SAME = Rule(
    id="swap.same",
    because="{got} instead of {was} in the same amount: the book of swaps has no proportion for it",
    source=COMMON,
)
LESS = Rule(
    id="swap.less",
    because="{got} brings its own {food}: the recipe's is cut by {amount}",
    source="tables/swaps.csv",
)
OUT = Rule(id="swap.out", because="left out as you asked: {effect}", source=COMMON)
FAT = Rule(
    id="swap.fat",
    because="{got} is no firm fat: it cannot be creamed or cut in, so stir it in and expect a denser crumb",
    source=COMMON,
)


def apply(recipe: Recipe, day: Day, ledger: Ledger) -> Recipe:
    """The recipe as it will be cooked: every wish of the day worked in, in order."""
    for swap in day.swaps:
        meant = _meant(swap.food, recipe)
        if not meant:
            ledger.ask(
                swap.food,
                f"There is no {swap.food} in the recipe to change. What was meant?",
                "nothing changed",
            )
        for index in reversed(meant):
            if swap.to is None:
                recipe = _left_out(recipe, index, ledger)
            else:
                recipe = _swapped(recipe, index, swap.to, day.units, ledger)
    return recipe


def _meant(food: str, recipe: Recipe) -> tuple[int, ...]:
    """The ingredients that a word means: by their name, else by their food, else by a word of their name."""
    asked = singulars(plain(food))
    names = [singulars(plain(one.name)) for one in recipe.ingredients]
    by_name = tuple(index for index, name in enumerate(names) if name == asked)
    if by_name:
        return by_name
    found = catalogue().find(food).food
    by_food = tuple(index for index, one in enumerate(recipe.ingredients) if found and one.food == found.name)
    return by_food or tuple(index for index, name in enumerate(names) if f" {asked} " in f" {name} ")


def _left_out(recipe: Recipe, index: int, ledger: Ledger) -> Recipe:
    ingredient = recipe.ingredients[index]
    row = effect_of(_food(ingredient))
    effect = row.effect if row else "the dish is made without it"
    ledger.note(OUT.says(ingredient.name, row, effect=effect))
    return changed(recipe, instead={index: None})


def _swapped(recipe: Recipe, index: int, wish: str, units: Units, ledger: Ledger) -> Recipe:
    ingredient = recipe.ingredients[index]
    food = _food(ingredient)
    into = _wished(wish, ingredient)
    way = exchange(food, into.food)
    count = _count(ingredient, food, way) if way else None
    if way is None or food is None or count is None:
        return _same_amount(recipe, index, wish, into, units, ledger)
    parts = [_part(row, ingredient, count, into.food) for row in way.parts]
    note = f" ({way.main.note})" if way.main.note else ""
    said = " and ".join(f"{_amount(part, units)} {part.name}".strip() for part in parts)
    ledger.note(BOOK.says(ingredient.name, way.main, got=wish, was=ingredient.name, parts=said, note=note))
    if (
        food.group == "fat"
        and not food.is_liquid
        and parts[0].food
        and catalogue().get(parts[0].food).is_liquid
    ):
        ledger.note(FAT.says(ingredient.name, got=parts[0].name))
    recipe = changed(recipe, instead={index: parts[0]}, beside=[(index, part) for part in parts[1:]])
    for row in way.takes:
        recipe = _taken(recipe, row, count, wish, units, ledger)
    return recipe


#: States by which the names of the catalogue are told apart.
_STATES = frozenset(["dried", "dry", "fresh", "frozen", "canned"])


def _wished(wish: str, ingredient: Ingredient) -> Match:
    """The food that is wished for; a word like "canned" or "dried" turns the food that is there."""
    if not set(plain(wish).split()) <= _STATES:
        return catalogue().find(wish)
    name = (ingredient.food or ingredient.name).partition(",")[0]
    bare = " ".join(word for word in plain(name).split() if word not in _STATES)
    return catalogue().find(f"{wish} {bare}")


def _same_amount(recipe: Recipe, index: int, wish: str, into: Match, units: Units, ledger: Ledger) -> Recipe:
    ingredient = recipe.ingredients[index]
    ledger.note(SAME.says(ingredient.name, got=wish, was=ingredient.name))
    was = _food(ingredient)
    if into.food is None or was is None or into.food.group != was.group:
        measured = f"{_amount(ingredient, units)} {ingredient.name}".strip()
        ledger.ask(ingredient.name, f"How much {wish} takes the place of {measured}?", "the same amount")
    new = _renamed(ingredient, wish, into.food.name if into.food else None)
    return changed(recipe, instead={index: new})


def _count(ingredient: Ingredient, food: Food | None, way: Exchange) -> float | None:
    """How many times the swap's own amount the recipe takes; 0 where it states none; None where it cannot be told."""
    amount = in_all(ingredient.amounts)
    if amount is None:
        return 0.0
    middle = (amount.low + amount.high) / 2
    if amount.unit == way.per_unit and amount.package is None:
        return middle / way.per
    if amount.unit and way.per_unit and amount.package is None:
        try:
            return to(middle, amount.unit, way.per_unit) / way.per
        except UnitProblem:
            pass
    asked = grams(amount, food, sizes=ingredient.state)
    one = grams(Amount(low=way.per, high=way.per, unit=way.per_unit), food)
    return asked / one if asked and one else None


def _part(row: SwapRow, was: Ingredient, count: float, wished: Food | None) -> Ingredient:
    """One ingredient that comes in; any oil that was wished stands for the oil of the book."""
    book = catalogue().get(row.into)
    food = wished if wished and wished.group == book.group and wished.form == book.form else book
    value = row.amount * count
    amounts = (rounded(Amount(low=value, high=value, unit=row.unit)),) if count else ()
    return msgspec.structs.replace(_renamed(was, food.spoken, food.name), amounts=amounts)


def _renamed(was: Ingredient, name: str, food: str | None) -> Ingredient:
    """The ingredient under another name; its line and text stay, what was done to it does not."""
    return msgspec.structs.replace(
        was, name=name, food=food, state=(), prep=None, alternatives=(), notes=f"instead of {was.name}"
    )


def _taken(recipe: Recipe, row: SwapRow, count: float, wish: str, units: Units, ledger: Ledger) -> Recipe:
    """Another ingredient gives up what the new one brings along, as far as it has it."""
    for index, ingredient in enumerate(recipe.ingredients):
        amount = in_all(ingredient.amounts)
        if ingredient.food != row.into or amount is None or row.unit is None:
            continue
        try:
            has = to(amount.high, amount.unit or "", row.unit)
        except UnitProblem:
            continue
        less = min(has, row.amount * count)
        left = rounded(Amount(low=has - less, high=has - less, unit=row.unit))
        ledger.note(
            LESS.says(
                ingredient.name,
                row,
                got=wish,
                food=ingredient.name,
                amount=kitchen(Amount(low=less, high=less, unit=row.unit), units=units),
            )
        )
        new = msgspec.structs.replace(ingredient, amounts=(left,)) if has - less > 0.01 else None
        return changed(recipe, instead={index: new})
    return recipe


def _food(ingredient: Ingredient) -> Food | None:
    return catalogue().get(ingredient.food) if ingredient.food else None


def _amount(ingredient: Ingredient, units: Units) -> str:
    amount = in_all(ingredient.amounts)
    return kitchen(amount, units=units) if amount else ""
