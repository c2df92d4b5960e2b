"""Amounts added up: what an ingredient takes in all, and what several lines take of one food."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import msgspec

from rules.recipe import Amount, Package
from rules.units.convert import UnitProblem, is_mass, is_volume, to

#: What amounts that add up have in common: the unit of the sum, and the size of package.
Key = tuple[str | None, Package | None]
COUNT: Key = (None, None)


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


def by_kind(amounts: Sequence[Amount]) -> dict[Key, Amount]:
    """Sums of what is told alike: all volumes, all masses, each count, loose measure and size of package.

    Volumes and masses are told in the largest unit that one of them states; the sum of estimates is one.
    """
    volume, mass = _largest(amounts, is_volume), _largest(amounts, is_mass)
    found: dict[Key, Amount] = {}
    for amount in amounts:
        unit = volume if _is(amount, is_volume) else mass if _is(amount, is_mass) else amount.unit
        low, high = (
            value if unit == amount.unit else to(value, str(amount.unit), str(unit))
            for value in (amount.low, amount.high)
        )
        key = (unit, amount.package)
        other = found.get(key)
        found[key] = Amount(
            low=low + (other.low if other else 0.0),
            high=high + (other.high if other else 0.0),
            unit=unit,
            package=amount.package,
            approx=amount.approx or (other is not None and other.approx),
        )
    return found


def _is(amount: Amount, kind: Callable[[str | None], bool]) -> bool:
    return amount.package is None and kind(amount.unit)


def _largest(amounts: Sequence[Amount], kind: Callable[[str | None], bool]) -> str | None:
    units = [str(amount.unit) for amount in amounts if _is(amount, kind)]
    base = "milliliter" if kind is is_volume else "gram"
    return max(units, key=lambda unit: to(1.0, unit, base), default=None)
