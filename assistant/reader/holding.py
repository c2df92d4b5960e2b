"""What a further amount is the size of: of every container or thing counted, or of all there is."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from math import sqrt

import msgspec

from assistant.reader.measures import spellings
from rules import units
from rules.foods import catalogue, grams
from rules.recipe import Amount, Package

#: Nothing is sold by them: in spoons the content of a packet is told another way.
SPOONS = frozenset({"teaspoon", "tablespoon"})


def is_size_of(main: Amount, size: Amount, *, each: bool, sure: bool) -> bool:
    """Whether a further amount is the size of one container (where `sure`), or of each thing counted."""
    if main.package is not None or units.kind(size.unit) is None or (size.unit in SPOONS and not each):
        return False
    return (main.unit in _containers() and (sure or each)) or (
        each and (main.unit is None or sure) and main.high > 1
    )


def packed(main: Amount, size: Amount) -> Amount:
    """The count with the size of each."""
    package = Package(low=size.low, high=size.high, unit=str(size.unit))
    return msgspec.structs.replace(main, package=package)


def is_size_of_one(names: Sequence[str], count: Amount, size: Amount) -> bool:
    """Whether a size behind the name is that of one ("2 cans beans (15 oz)") or of all ("2 boxes pasta (2 lb)").

    What one of them weighs in the catalogue decides; where that is unknown, it is the size of one.
    """
    if count.high <= 1 or not names:
        return True
    food = catalogue().find(names[0], unit=count.unit).food
    one, told = grams(Amount(low=1, high=1, unit=count.unit), food), grams(size, food)
    return not (one and told) or told < one * sqrt(count.high)


@cache
def _containers() -> frozenset[str]:
    return frozenset(known.id for known in spellings().values() if known.kind == "container")
