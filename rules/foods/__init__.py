"""The food catalogue: look-up by name (`catalogue().find`), weights (`grams`, `weigh`)."""

from rules.foods.catalogue import Catalogue, Match, catalogue
from rules.foods.food import Food
from rules.foods.weight import Item, counts_whole, grams, scaled, weigh

__all__ = ["Catalogue", "Food", "Item", "Match", "catalogue", "counts_whole", "grams", "scaled", "weigh"]
