"""Rounding to measures that people own keeps what the recipe says."""

from __future__ import annotations

import pytest

from rules.recipe import Amount
from rules.units import kitchen


def said(value: float, unit: str | None, *, whole: bool = False) -> str:
    return kitchen(Amount(low=value, high=value, unit=unit), units="us", whole=whole)


@pytest.mark.parametrize(
    ("value", "unit", "words"),
    [
        (2.25, "teaspoon", "2 1/4 teaspoons"),
        (5, "teaspoon", "1 tablespoon plus 2 teaspoons"),
        (4, "teaspoon", "1 tablespoon plus 1 teaspoon"),
        (4.5, "teaspoon", "1 1/2 tablespoons"),
        (3, "teaspoon", "1 tablespoon"),
    ],
)
def test_leavener_is_not_rounded_away(value: float, unit: str, words: str) -> None:
    """Five teaspoons of baking powder are not four and a half."""
    assert words == said(value, unit)


@pytest.mark.parametrize(
    ("grams", "words"), [(3, "3 g"), (14, "1/2 ounce"), (25, "25 g"), (200, "7 ounces"), (500, "500 g")]
)
def test_grams_stay_grams_where_ounces_would_change_them(grams: float, words: str) -> None:
    """Three grams of yeast told as a quarter of an ounce would be seven."""
    assert words == said(grams, "gram")
