"""How many times the recipe: people against servings, or a factor as asked (handbook chapter 4, scaling)."""

from __future__ import annotations

from rules.because import Ledger, Rule
from rules.circumstances import Day
from rules.foods import catalogue, counts_whole, scaled
from rules.pot.iron import figure
from rules.recipe import Amount, Recipe, Servings
from rules.units import kitchen, number

HANDBOOK = "handbook of the trade, chapter 4"

PEOPLE = Rule(
    id="scale.people",
    because="{people} people and a recipe for {serves}: everything is taken {factor} times",
    source=HANDBOOK,
)
AS_WRITTEN = Rule(
    id="scale.once",
    because="{people} people and a recipe for {serves}: it is made as written",
    source=HANDBOOK,
)
FACTOR = Rule(id="scale.factor", because="everything is taken {factor} times, as you asked", source=HANDBOOK)
EGGS = Rule(
    id="scale.eggs",
    because="{exact} {food} are counted as {count}: {way}, because an egg does not halve well at camp",
    source=HANDBOOK,
)
BLIND = Rule(
    id="scale.blind",
    because="at {factor} times the recipe the leavener, the salt, the minutes and what boils away do not grow in step:"
    " start with the scaled leavener less a quarter, taste, and look more than watch the clock",
    source=HANDBOOK,
)

#: Words of `Servings.of` that count heads.
_HEADS = frozenset(
    ["serving", "servings", "people", "person", "persons", "portions", "portion", "adults", "guests"]
)


def scaling(recipe: Recipe, day: Day, ledger: Ledger) -> float:
    """The factor on every amount; 1.0 where the servings are unknown, with a question."""
    factor = _factor(recipe, day, ledger)
    if factor != 1.0:
        _tell_eggs(recipe, factor, ledger)
    if factor > figure("leavener scale"):
        ledger.note(BLIND.says("scale", factor=number(factor)))
    return factor


def _factor(recipe: Recipe, day: Day, ledger: Ledger) -> float:
    if day.scale is not None:
        if day.scale != 1.0:
            ledger.note(FACTOR.says("scale", factor=number(day.scale)))
        return day.scale
    if day.people is None:
        return 1.0
    serves = recipe.servings
    if serves is None or serves.high <= 0 or serves.of not in _HEADS:
        makes = f" It makes {_span(serves)} {serves.of}." if serves and serves.high > 0 else ""
        ledger.ask(
            "people",
            f"The recipe does not say how many people it feeds.{makes} How many times shall it be made for {day.people}?",
            "once, as written",
        )
        return 1.0
    fits = serves.low <= day.people <= serves.high
    factor = 1.0 if fits else day.people / ((serves.low + serves.high) / 2)
    if factor == 1.0:
        ledger.note(AS_WRITTEN.says("scale", people=day.people, serves=_span(serves)))
        return factor
    ledger.note(PEOPLE.says("scale", people=day.people, serves=_span(serves), factor=number(factor)))
    return factor


def _span(serves: Servings) -> str:
    low, high = number(serves.low), number(serves.high)
    return low if low == high else f"{low} to {high}"


def _tell_eggs(recipe: Recipe, factor: float, ledger: Ledger) -> None:
    for ingredient in recipe.ingredients:
        food = catalogue().get(ingredient.food) if ingredient.food else None
        for amount in ingredient.amounts[:1]:
            exact = amount.high * factor
            count = scaled(amount, factor, food).high
            if counts_whole(amount, food) and abs(exact - count) > 0.01:
                ledger.note(
                    EGGS.says(
                        ingredient.name,
                        exact=number(exact),
                        food=ingredient.name,
                        count=kitchen(Amount(low=count, high=count)),
                        way="rounded up" if count > exact else "rounded down",
                    )
                )
