"""Amounts of one food added up over dishes: what measures the same thing is merged, nothing is rounded or lost.

Volumes are added in the largest unit that was named, masses likewise (`rules.units.to`, pint behind it). Where some
dishes weigh a food and others measure it, the density of the food brings the weights into the measures; without a
density both stand beside each other. Counts, packages and loose measures add up each for itself.
"""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from rules.foods import Food
from rules.foods.weight import g_per_ml
from rules.recipe import Amount
from rules.units import is_mass, is_volume, to

Sum = tuple[float, float]


def total(amounts: Sequence[Amount], food: Food | None) -> tuple[Amount, ...]:
    """The amounts in as few as they can be told in, in the order in which their kinds were named first."""
    volume = _in_one(amounts, is_volume)
    mass = _in_one(amounts, is_mass)
    density = g_per_ml(food)
    if volume and mass and density:
        volume, mass = _weighed_into(volume, mass, density), None
    merged: list[Amount] = []
    for amount in amounts:
        if _is(amount, is_volume):
            merged, volume = ([*merged, volume], None) if volume else (merged, volume)
        elif _is(amount, is_mass):
            merged, mass = ([*merged, mass], None) if mass else (merged, mass)
        else:
            merged = _counted_in(merged, amount)
    return tuple(merged)


def _is(amount: Amount, kind: object) -> bool:
    return amount.package is None and callable(kind) and bool(kind(amount.unit))


def _in_one(amounts: Sequence[Amount], kind: object) -> Amount | None:
    """All amounts of one kind in the largest unit among them."""
    fitting = [amount for amount in amounts if _is(amount, kind)]
    if not fitting:
        return None
    largest = max((str(amount.unit) for amount in fitting), key=lambda unit: to(1.0, unit, _base(unit)))
    low, high = (
        sum(to(getattr(amount, end), str(amount.unit), largest) for amount in fitting)
        for end in ("low", "high")
    )
    return Amount(low=low, high=high, unit=largest, approx=any(amount.approx for amount in fitting))


def _base(unit: str) -> str:
    return "milliliter" if is_volume(unit) else "gram"


def _weighed_into(volume: Amount, mass: Amount, density: float) -> Amount:
    """A mass brought into the unit of a volume by the food's density [g/ml]."""
    low, high = (
        base + to(to(value, str(mass.unit), "gram") / density, "milliliter", str(volume.unit))
        for base, value in ((volume.low, mass.low), (volume.high, mass.high))
    )
    return msgspec.structs.replace(volume, low=low, high=high, approx=True)


def _counted_in(merged: list[Amount], amount: Amount) -> list[Amount]:
    """One more count, package or loose measure beside those of its own kind."""
    for place, other in enumerate(merged):
        if (other.unit, other.package) == (amount.unit, amount.package):
            both = msgspec.structs.replace(
                other, low=other.low + amount.low, high=other.high + amount.high, plus=False, each=False
            )
            return [*merged[:place], both, *merged[place + 1 :]]
    return [*merged, msgspec.structs.replace(amount, plus=False, each=False)]
