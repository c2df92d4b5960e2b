"""Amounts added up over dishes; outside figures: 8 ounces to a cup by volume, 16 to a pound (NIST Handbook 44)."""

from __future__ import annotations

import pytest

from rules.foods import catalogue
from rules.recipe import Amount
from rules.trip.sums import total
from tests.build import amount


def found(food: str, *amounts: Amount) -> list[tuple[float, str | None]]:
    return [(round(one.low, 4), one.unit) for one in total(amounts, catalogue().get(food))]


@pytest.mark.parametrize(
    ("food", "amounts", "expected"),
    [
        ("sugar", [amount(1, "cup"), amount(8, "tablespoon")], [(1.5, "cup")]),
        ("milk", [amount(1, "pint"), amount(2, "cup")], [(2.0, "pint")]),
        ("ground beef", [amount(1, "pound"), amount(8, "ounce")], [(1.5, "pound")]),
        ("onion", [amount(2), amount(3)], [(5.0, None)]),
    ],
)
def test_what_measures_the_same_is_told_in_one(
    food: str, amounts: list[Amount], expected: list[tuple[float, str | None]]
) -> None:
    assert found(food, *amounts) == expected


def test_weights_are_brought_into_the_measures_by_the_food_s_density() -> None:
    """A stick of butter is half a cup (published: NDSU Extension FN198, read with the swaps)."""
    (one,) = total([amount(1, "cup"), amount(1, "stick")], catalogue().get("butter"))
    assert one.unit == "cup"
    assert one.low == pytest.approx(1.5, abs=0.01)


def test_packages_of_one_size_add_up_and_stay_packages() -> None:
    cans = [amount(2, "can", of=(15, "ounce")), amount(1, "can", of=(15, "ounce"))]
    (one,) = total(cans, catalogue().get("kidney bean, canned"))
    assert (one.low, one.unit) == (3, "can")
    assert one.package == cans[0].package


def test_packages_beside_measures_are_weighed_into_them() -> None:
    bag = amount(1, "bag", of=(8, "ounce"))
    (one,) = total([bag, amount(2, "cup")], catalogue().get("cheddar cheese"))
    assert one.unit == "cup"
    assert one.low == pytest.approx(2 + 8 * 28.3495 / catalogue().get("cheddar cheese").g_per_cup)


def test_a_food_that_is_not_known_keeps_what_cannot_be_merged() -> None:
    assert len(total([amount(1, "cup"), amount(2, "ounce")], None)) == 2


def test_ends_of_a_range_add_up_each_for_itself() -> None:
    one = Amount(low=1, high=2, unit="cup")
    (both,) = total([one, amount(1, "cup")], catalogue().get("sugar"))
    assert (both.low, both.high) == (2, 3)
