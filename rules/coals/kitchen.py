"""What the rules about stages look at together, and the families of dish as the fire sees them."""

from __future__ import annotations

from rules.because import Ledger
from rules.circumstances import Day
from rules.coals.pieces import FLESH
from rules.dish import Dish
from rules.foods import Item
from rules.hazards import hazard_of
from rules.recipe import Family, Recipe, Struct

BAKED: frozenset[Family] = frozenset(
    {
        "batter bake", "biscuit or quick bread dough", "yeast bread", "pastry or pie", "cookie", "custard or pudding",
        "casserole or layered bake", "roast", "pot roast",
    }
)  # fmt: skip
#: Bakes for which little or nothing is cooked beforehand: a saucepan in their method melts or scalds.
PLAIN_BAKED: frozenset[Family] = frozenset(
    {"batter bake", "biscuit or quick bread dough", "yeast bread", "cookie"}
)
WET: frozenset[Family] = frozenset({"stew or braise", "soup", "beans or chili", "pot roast"})
FRIED: frozenset[Family] = frozenset({"pan fry or saute", "deep fry", "griddle"})
#: Families whose dish may be made over water alone.
MAY_BE_WET: frozenset[Family] = WET | {"custard or pudding", "boil or steam"}


class Kitchen(Struct, frozen=True, kw_only=True):
    """A recipe with its foods, its family and its day, and the ledger that the rules write in."""

    recipe: Recipe
    items: tuple[Item, ...]
    dish: Dish
    day: Day
    ledger: Ledger

    @property
    def family(self) -> Family:
        """The family of dish."""
        return self.dish.family

    @property
    def has_flesh(self) -> bool:
        """Whether raw meat, poultry or fish is in it."""
        return any(hazard_of(item) in FLESH for item in self.items)
