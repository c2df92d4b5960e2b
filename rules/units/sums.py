"""What an ingredient takes in all: its first amount with those that come on top of it."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from rules.recipe import Amount
from rules.units.convert import UnitProblem, to


def in_all(amounts: Sequence[Amount]) -> Amount | None:
    """The first amount with every `plus` one added in its unit: "1 cup plus 2 tablespoons" is 1.125 cup.

    One that cannot be turned into that unit is left out (a pinch on top of a teaspoon is no more than said); None for no
    amounts.
    """
    if not amounts:
        return None
    low, high = amounts[0].low, amounts[0].high
    for more in amounts[1:]:
        if more.plus and more.package is None and amounts[0].package is None:
            try:
                low, high = (
                    base
                    + (
                        value
                        if more.unit == amounts[0].unit
                        else to(value, str(more.unit), str(amounts[0].unit))
                    )
                    for base, value in ((low, more.low), (high, more.high))
                )
            except UnitProblem:
                continue
    return msgspec.structs.replace(amounts[0], low=round(low, 6), high=round(high, 6))
