"""Where a food stands in the shop, and what most kitchens have."""

from __future__ import annotations

from functools import cache

from rules import table
from rules.foods import Food
from rules.shopping.need import Need


class Aisle(table.Row, frozen=True, kw_only=True):
    """Where a group of foods stands in the shop; `walked` is the place in the walk."""

    id: str
    group: str | None = None
    keeps: str | None = None
    form: str | None = None
    aisle: str
    walked: int


class Staple(table.Row, frozen=True, kw_only=True):
    """A food, or a group, that most kitchens have up to so many grams."""

    id: str
    food: str | None = None
    group: str | None = None
    up_to_g: float


@cache
def aisle(food: Food) -> Aisle:
    """The shelf of a food: frozen food stands in the freezer whatever it is, then group with keeping, then group."""
    rows = table.read("aisles.csv", Aisle)
    fits = [
        row
        for row in rows
        if (row.group in (None, food.group))
        and (row.keeps in (None, food.keeps))
        and (row.form in (None, food.form))
        and (row.group or row.keeps)
    ]
    return max(
        fits,
        key=lambda row: (
            row.keeps == "frozen",
            row.group is not None,
            row.keeps is not None,
            row.form is not None,
        ),
    )


def walked(food: Food | None) -> int:
    """The place of a food in the walk; what nobody knows is looked for first."""
    return aisle(food).walked if food else 0


def likely_at_home(need: Need) -> bool:
    """Whether most kitchens have so much of it."""
    food = need.food
    if food is None:
        return False
    for row in table.read("staples.csv", Staple):
        if row.food == food.name or (row.group == food.group and food.keeps == "shelf"):
            return need.grams is None or need.grams <= row.up_to_g
    return False
