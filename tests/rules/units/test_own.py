"""The steps are the home set of the handbook, chapter 4: cups by quarter and third, spoons down to 1/8 teaspoon."""

from __future__ import annotations

import pytest

from rules.recipe import Amount
from rules.units import rounded


@pytest.mark.parametrize(
    ("value", "unit", "own"),
    [
        (2.25, "cup", (2.25, "cup")),
        (0.34, "cup", (1 / 3, "cup")),
        (1.6875, "cup", (5 / 3, "cup")),
        (1.125, "cup", (1.125, "cup")),
        (0.1, "cup", (5 / 3, "tablespoon")),
        (0.02, "cup", (1.0, "teaspoon")),
        (3.4, "teaspoon", (1.0, "tablespoon")),
        (1.1, "teaspoon", (1.0, "teaspoon")),
        (0.3, "teaspoon", (0.25, "teaspoon")),
        (0.01, "teaspoon", (0.125, "teaspoon")),
        (9, "tablespoon", (0.5625, "cup")),
        (1.5, "quart", (1.5, "quart")),
        (1.1, "quart", (13 / 3, "cup")),
        (18, "ounce", (1.25, "pound")),
        (3.6, "ounce", (3.5, "ounce")),
        (337, "gram", (340, "gram")),
        (7.2, "gram", (7, "gram")),
        (1512, "gram", (1500, "gram")),
        (1.7, None, (1.75, None)),
        (4.6, None, (4.5, None)),
        (4.5, "clove", (5, "clove")),
        (0.2, "clove", (1, "clove")),
        (1.3, "pinch", (1.25, "pinch")),
        (0, "cup", (0, "cup")),
    ],
)
def test_amounts_come_in_measures_that_people_own(
    value: float, unit: str | None, own: tuple[float, str | None]
) -> None:
    amount = rounded(Amount(low=value, high=value, unit=unit))
    assert (amount.low, amount.unit) == (pytest.approx(own[0], abs=1e-3), own[1])


def test_what_cannot_be_halved_is_counted_whole_halves_up() -> None:
    counts = [rounded(Amount(low=x, high=x), whole=True).high for x in (0.2, 2.25, 2.5, 3.6)]
    assert counts == [1, 2, 3, 4]


def test_both_ends_of_a_range_get_one_unit() -> None:
    amount = rounded(Amount(low=0.15, high=0.3, unit="cup"))
    assert amount.unit == "cup"
    assert amount.low < amount.high
