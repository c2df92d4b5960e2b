"""One row of the food catalogue: what a food is, weighs, consists of, and what it may do to people.

The classification (group, form, keeps, hazard, traits) is common practice; every figure's source stands in the row.
"""

from __future__ import annotations

from typing import Literal

from rules import table
from rules.plan import Allergen

Group = Literal[
    "acid", "alcohol", "bread", "canned", "condiment", "cured meat", "dairy", "egg", "fat", "fish", "flavouring",
    "flour", "fruit", "grain", "ground meat", "herb", "leavener", "legume", "nut", "other", "pasta", "poultry",
    "red meat", "salt", "sauce", "shellfish", "spice", "stock", "sugar", "sweet", "thickener", "vegetable", "water",
]  # fmt: skip
Form = Literal["powder", "granule", "liquid", "paste", "solid", "whole", "leafy"]
Keeps = Literal["shelf", "cool", "chilled", "frozen"]
Hazard = Literal["meat", "poultry", "fish", "egg", "flour"]
Trait = Literal[
    "acid",  # sour enough to curdle milk
    "cultured",  # milk that bears acid
    "leavener",  # baking powder, baking soda
    "holds leavener",  # flour or a mix with baking powder in it
    "yeast",
    "starter",
    "hardy",  # whole, it may ride without cooling for days
    "browns when cut",
    "under water when cut",
    "raw kidney bean",
    "honey",
    "spirit",  # about 40 % by volume or more
    "tough",  # a cut that wants hours of moist heat
    "thickens",
    "dried",  # fruit, vegetables
]


class Food(table.Row, frozen=True, kw_only=True):
    """A food of the catalogue; percentages are grams in 100 g of the edible part, weights are grams."""

    name: str
    aliases: tuple[str, ...] = ()
    group: Group
    form: Form
    keeps: Keeps
    fridge_days: int | None = None
    raw_hazard: Hazard | None = None
    #: what it surely holds, whoever made it
    allergens: tuple[Allergen, ...] = ()
    #: what the usual make may hold besides: the packet's label decides
    may_hold: tuple[Allergen, ...] = ()
    freezes: Literal["well", "badly"] | None = None
    traits: tuple[Trait, ...] = ()
    g_per_cup: float | None = None
    g_per_tbsp: float | None = None
    g_per_piece: float | None = None
    piece_word: str | None = None
    water_pct: float | None = None
    fat_pct: float | None = None
    protein_pct: float | None = None
    #: by difference: fiber and sugars are inside it
    carb_pct: float | None = None
    ash_pct: float | None = None
    alcohol_pct: float | None = None
    fiber_pct: float | None = None
    sugars_pct: float | None = None
    #: initial freezing point
    freezing_c: float | None = None
    is_fat: bool = False
    is_liquid: bool = False
    #: the household measures that the weights were read from
    measures: str | None = None
    fridge_source: str | None = None
    freezing_source: str | None = None

    @property
    def key(self) -> str:
        """The name under which the recipe's `food` field quotes it."""
        return self.name

    @property
    def spoken(self) -> str:
        """The name as it is spoken: "canned kidney bean" for "kidney bean, canned"."""
        head, comma, state = self.name.partition(", ")
        return f"{state} {head}" if comma else self.name

    @property
    def is_acid(self) -> bool:
        """Sour enough to curdle milk that waits with it."""
        return "acid" in self.traits

    @property
    def is_cultured(self) -> bool:
        """A cultured milk: it bears acid."""
        return "cultured" in self.traits

    @property
    def is_leavener(self) -> bool:
        """Baking powder or baking soda."""
        return "leavener" in self.traits

    @property
    def is_yeast(self) -> bool:
        """Yeast in any form; a sourdough starter is none."""
        return "yeast" in self.traits

    @property
    def is_hardy(self) -> bool:
        """Produce that may ride unrefrigerated while it is whole."""
        return "hardy" in self.traits

    @property
    def browns_when_cut(self) -> bool:
        """Produce that browns or wilts once cut: it is cut at camp or acidulated."""
        return "browns when cut" in self.traits

    @property
    def is_fresh_herb(self) -> bool:
        """A herb sold fresh."""
        return self.group == "herb" and self.keeps == "chilled"

    @property
    def is_dried_herb(self) -> bool:
        """A herb sold dried."""
        return self.group == "herb" and self.keeps == "shelf"

    @property
    def is_drink_alcohol(self) -> bool:
        """A drink with alcohol, not a flavouring that holds some."""
        return self.group == "alcohol"

    @property
    def is_raw_meat(self) -> bool:
        """Raw meat, poultry, fish or shellfish: it has a pack of its own."""
        return self.raw_hazard in ("meat", "poultry", "fish")
