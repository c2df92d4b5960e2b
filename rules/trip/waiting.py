"""Which dishes may wait for their meal, or follow it: bread on a board, a sweet after the stew."""

from __future__ import annotations

from functools import cache

from rules import foods, table
from rules.hazards import JUICY, hazard_of
from rules.trip.model import Dish

#: A dish is sweet when sugar and sweets are so much of its mass.
SWEET_FROM = 0.08
SWEETS = frozenset({"sugar", "sweet"})
#: With so much fruit a bake stays in its pot.
FRUIT_STAYS = 0.25
FRUIT = frozenset({"fruit"})


class Waits(table.Row, frozen=True, kw_only=True):
    """How long a family of dishes waits once done, whether it may follow the meal, and how it waits."""

    id: str
    waits_min: float
    follows: bool
    how: str | None = None


@cache
def _rows() -> dict[str, Waits]:
    return {row.id: row for row in table.read("trip_waits.csv", Waits)}


def waits(dish: Dish) -> Waits | None:
    """How it waits beside the fire; None for what is eaten as it is done.

    What holds meat, poultry or fish never waits, nor does a filling with egg: it would stand in the warm. What is more
    than a quarter fruit does not leave its pot in one piece, so that waiting would free none.
    """
    row = _rows().get(dish.plan.recipe.family)
    if row is None or not row.waits_min:
        return None
    if _share_of(dish, FRUIT) >= FRUIT_STAYS:
        return None
    hazards = {hazard_of(item) for item in foods.weigh(dish.plan.recipe)}
    if hazards & set(JUICY) or (row.id == "pastry or pie" and "egg" in hazards):
        return None
    return row


def follows(dish: Dish) -> bool:
    """Whether it is sweet and may be eaten after the rest of the meal."""
    row = _rows().get(dish.plan.recipe.family)
    return row is not None and row.follows and _share_of(dish, SWEETS) >= SWEET_FROM


def _share_of(dish: Dish, groups: frozenset[str]) -> float:
    """How much of what is known of its mass is foods of those groups."""
    weighed = [(item.food, item.grams) for item in foods.weigh(dish.plan.recipe) if item.food and item.grams]
    total = sum(mass for _, mass in weighed)
    return sum(mass for food, mass in weighed if food.group in groups) / total if total else 0.0
