"""What an ingredient takes in all, and what several lines take of one food."""

from __future__ import annotations

import pytest

from rules.recipe import Amount, Package
from rules.units import by_kind, in_all


def amount(value: float, unit: str | None = None, *, plus: bool = False) -> Amount:
    return Amount(low=value, high=value, unit=unit, plus=plus)


def test_what_comes_on_top_is_added_in_the_first_unit() -> None:
    assert in_all([amount(1, "cup"), amount(2, "tablespoon", plus=True)]) == amount(1.125, "cup")
    assert in_all([amount(500, "gram"), amount(50, "gram", plus=True)]) == amount(550, "gram")


def test_another_way_to_say_the_amount_is_not_added() -> None:
    assert in_all([amount(1, "cup"), amount(240, "milliliter")]) == amount(1, "cup")


def test_what_has_no_common_measure_is_left_out_of_the_words() -> None:
    assert in_all([amount(1, "cup"), amount(50, "gram", plus=True)]) == amount(1, "cup")
    assert in_all([amount(2), amount(1, "tablespoon", plus=True)]) == amount(2)


def test_tins_are_not_melted_together() -> None:
    tin = Amount(low=1, high=1, unit="can", package=Package(low=400, high=400, unit="gram"))
    assert in_all([tin, amount(1, "can", plus=True)]) == tin


@pytest.mark.parametrize("none", [(), []])
def test_no_amounts_are_none(none: tuple[Amount, ...]) -> None:
    assert in_all(none) is None


def test_what_is_told_alike_adds_up_in_the_largest_unit_and_the_rest_stays_apart() -> None:
    can = Amount(low=1, high=1, unit="can", package=Package(low=14, high=14, unit="ounce"))
    lines = [amount(8, "tablespoon"), amount(2), amount(1, "cup"), can, amount(3), can]
    cups, count, cans = by_kind(lines).values()
    assert (cups, count) == (amount(1.5, "cup"), amount(5))
    assert (cans.high, cans.unit, cans.package) == (2, "can", can.package)
