"""The food in one pot as heat sees it: how heavy, and how much heat a degree of it takes (handbook chapter 5)."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from rules.coals.figures import figure
from rules.cold.composition import specific_heat
from rules.cold.contents import composition
from rules.foods import Food, Item, catalogue
from rules.plan import Plan
from rules.recipe import Ingredient, Struct

#: Between the cooler and the boil [°C]; the heat that a food takes changes by a hundredth from one to the other.
HALF_WAY_C = 55.0
#: Groups of foods of which a dish holds little.
SMALL = frozenset({"spice", "herb", "salt", "sugar", "leavener", "fat", "flavouring"})


class Load(Struct, frozen=True, kw_only=True):
    """The food in one pot: its mass [kg] and its specific heat [J/(kg K)]; `is_all` says that every food was weighed."""

    kg: float
    j_kg_k: float
    is_all: bool = True


def load(items: Sequence[Item], pots: int = 1) -> Load | None:
    """The food of a recipe in one of its pots; None where more foods are without a weight than with one.

    Source: Choi and Okos (1986), from the composition of every food; figure `food heat` for one of unknown make.
    """
    known = [(item.food, item.grams) for item in items if item.grams is not None]
    unknown = sum(item.grams is None and not _is_small(item.food, item.ingredient) for item in items)
    if unknown > len(known):
        return None
    return _load(known, pots, is_all=not unknown)


def planned(plan: Plan) -> Load | None:
    """The food that a plan packs, in one of its pots; None where nothing is weighed."""
    foods = catalogue()
    known, is_all = [], True
    for pack in plan.packs:
        for part in pack.items:
            ingredient = plan.recipe.ingredients[part.ingredient]
            food = foods.get(ingredient.food) if ingredient.food else None
            is_all = is_all and (part.grams is not None or _is_small(food, ingredient))
            if part.grams is not None:
                known.append((food, part.grams))
    return _load(known, plan.pot.count if plan.pot else 1, is_all=is_all)


def _load(known: Iterable[tuple[Food | None, float]], pots: int, *, is_all: bool) -> Load | None:
    parts = [(_heat(food), grams) for food, grams in known]
    grams = sum(mass for _, mass in parts)
    if grams <= 0:
        return None
    heat = sum(each * mass for each, mass in parts) / grams
    return Load(kg=grams / 1000 / pots, j_kg_k=heat, is_all=is_all)


def _is_small(food: Food | None, ingredient: Ingredient) -> bool:
    """Whether a food weighs little beside the others, however much of it goes in."""
    return ingredient.to_taste or (food is not None and food.group in SMALL)


def _heat(food: Food | None) -> float:
    made_of = composition(food) if food is not None else None
    return specific_heat(made_of, HALF_WAY_C) * 1000 if made_of is not None else figure("food heat").value
