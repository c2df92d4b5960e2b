"""How much room the raw food takes in the pot (handbook chapter 4: from masses and densities, not from a guess).

What is fluid or powder takes the volume of its substance (Choi and Okos); what lies in pieces takes at least the room
of a measuring cup full of them, because only liquid fills the gaps. Beaten and kneaded mixtures hold some air.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from typing import Literal

from rules import table
from rules.foods import Food, Item
from rules.recipe import Family, Struct

#: The temperature at which substances are compared [°C].
ROOM_C = 20.0
#: Groups of which so little goes in that an unknown amount does not matter.
_SMALL = frozenset(
    ["spice", "herb", "salt", "leavener", "flavouring", "fat", "acid", "thickener", "condiment"]
)
_SERVED = (
    "serve",
    "serving",
    "garnish",
    "accompan",
    "to finish",
    "dusting",
    "scoop",
    "dipping",
    "on the side",
)
_FLUID = frozenset(["powder", "granule", "liquid", "paste"])

Component = Literal["water", "protein", "fat", "carbohydrate", "fibre", "ash", "ice", "alcohol"]


class Coefficients(table.Row, frozen=True, kw_only=True):
    """A property of one component as a0 + a1 t + a2 t^2 [t in °C]."""

    id: str
    property: str
    component: Component
    low_c: float
    high_c: float
    a0: float
    a1: float
    a2: float


class PotFamily(table.Row, frozen=True, kw_only=True):
    """What a family of dish asks of the pot."""

    family: Family
    #: the largest share of the depth that the raw food may take
    most: float
    #: volume of the raw mixture over the volume of its parts
    air: float
    has_gaps: bool
    by_area: bool
    least_depth_in: float | None = None
    what: str


class Room(Struct, frozen=True, kw_only=True):
    """The room [ml] that the raw food takes; None where `unknown` foods of some weight have no amount."""

    milliliters: float | None
    unknown: tuple[str, ...] = ()


@cache
def pot_families() -> dict[str, PotFamily]:
    """What each family asks of the pot; families without a pot are not in it."""
    return {row.family: row for row in table.read("pot_families.csv", PotFamily)}


def goes_in(item: Item) -> bool:
    """Whether an ingredient goes into the pot: what is served beside or upon the dish does not."""
    ingredient = item.ingredient
    said = f"{ingredient.notes or ''} {ingredient.prep or ''} {ingredient.component or ''}".lower()
    return not any(word in said for word in _SERVED)


def raw_volume(items: Iterable[Item], family: Family) -> Room:
    """The room that the raw food takes before it cooks."""
    asks = pot_families()[family]
    inside = [item for item in items if goes_in(item)]
    unknown = tuple(item.ingredient.name for item in inside if item.grams is None and not _is_small(item))
    known = [item for item in inside if item.grams is not None]
    if unknown or all(_is_small(item) for item in known):
        return Room(milliliters=None, unknown=unknown)
    return Room(milliliters=asks.air * _room(known, has_gaps=asks.has_gaps))


def _room(items: list[Item], *, has_gaps: bool) -> float:
    substance = sum((item.grams or 0) / substance_g_per_ml(item.food) for item in items)
    if not has_gaps:
        return substance
    # Leaves wilt as they go in, so their heap is not counted.
    pieces = [item for item in items if item.food and item.food.form not in _FLUID | {"leafy"}]
    # A piece that no cup measures (a joint, a chop) lies without gaps of its own.
    bulk = sum(item.milliliters or (item.grams or 0) / substance_g_per_ml(item.food) for item in pieces)
    return max(substance, bulk)


def _is_small(item: Item) -> bool:
    if item.ingredient.optional or item.ingredient.to_taste or item.ingredient.from_ == "method":
        return True
    food = item.food
    # A syrup or a jam without an amount is poured over at the table.
    return food is not None and (food.group in _SMALL or (food.group == "sweet" and food.form in _FLUID))


def substance_g_per_ml(food: Food | None) -> float:
    """The density of a food's substance without gaps [g/ml], from its composition; 1.0 where that is unknown.

    Source: Choi and Okos (1986), densities of the components added by volume.
    """
    if food is None or food.water_pct is None:
        return 1.0
    fiber = food.fiber_pct or 0.0
    shares: dict[Component, float] = {
        "water": food.water_pct,
        "protein": food.protein_pct or 0.0,
        "fat": food.fat_pct or 0.0,
        "carbohydrate": max((food.carb_pct or 0.0) - fiber, 0.0),
        "fibre": fiber,
        "ash": food.ash_pct or 0.0,
        "alcohol": food.alcohol_pct or 0.0,
    }
    total = sum(shares.values())
    if total < 50:
        return 1.0
    volume = sum(share / _component_g_per_ml(component) for component, share in shares.items())
    return total / volume


@cache
def _component_g_per_ml(component: Component) -> float:
    for row in table.read("choi_okos.csv", Coefficients):
        if (row.property, row.component) == ("density", component):
            return (row.a0 + row.a1 * ROOM_C + row.a2 * ROOM_C**2) / 1000
    raise KeyError(component)
