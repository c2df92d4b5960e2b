"""Amounts of one food added up over dishes: what measures the same thing is merged, nothing is rounded or lost.

Volumes are added in the largest unit that was named, masses likewise (`rules.units.to`, pint behind it). Where dishes
measure one food in different ways (cups here, a weight, a stick or a sized package there), the food's weights bring all
of it into one: cups where something was measured and the density is known, else a weight. Counts, and packages beside
packages, add up each for itself.
"""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from rules.foods import Food
from rules.foods.weight import g_per_ml, grams
from rules.recipe import Amount
from rules.units import is_mass, is_volume, to
from rules.units.sums import COUNT, Key, by_kind


def total(amounts: Sequence[Amount], food: Food | None) -> tuple[Amount, ...]:
    """The amounts in as few as they can be told in, in the order in which their kinds were named first."""
    alike = by_kind(amounts)
    weighed = {key: part for key in alike if (part := _weighed(alike[key], food)) is not None}
    if len(alike) > 1 and any(_measures(key) for key in alike):
        # A bare count stays one: two onions and a cup of them are bought as two onions and some.
        brought = [key for key in alike if key in weighed and key != COUNT]
        if len(brought) > 1:
            return _one_of(brought, alike, weighed, food)
    return tuple(alike.values())


def _measures(key: Key) -> bool:
    return key[1] is None and (is_volume(key[0]) or is_mass(key[0]))


def _weighed(amount: Amount, food: Food | None) -> tuple[float, float] | None:
    """Both ends of an amount [g]; None where it cannot be weighed."""
    low, high = (
        grams(msgspec.structs.replace(amount, low=value, high=value), food)
        for value in (amount.low, amount.high)
    )
    return (low, high) if low is not None and high is not None else None


def _one_of(
    brought: Sequence[Key],
    alike: dict[Key, Amount],
    weighed: dict[Key, tuple[float, float]],
    food: Food | None,
) -> tuple[Amount, ...]:
    """Everything that can be weighed as one amount, in the place of the first of it; the rest stays."""
    low, high = (sum(weighed[key][end] for key in brought) for end in (0, 1))
    unit = next((key[0] for key in brought if key[1] is None and is_volume(key[0])), None)
    density = g_per_ml(food)
    if unit is not None and density:
        low, high = (to(value / density, "milliliter", unit) for value in (low, high))
    else:
        unit = next((key[0] for key in brought if key[1] is None and is_mass(key[0])), "gram")
        low, high = (to(value, "gram", str(unit)) for value in (low, high))
    one = Amount(low=low, high=high, unit=unit, approx=True)
    return tuple(
        one if key == brought[0] else amount
        for key, amount in alike.items()
        if key == brought[0] or key not in brought
    )
