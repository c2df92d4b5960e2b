from __future__ import annotations

import pytest

from rules.recipe import Amount, Package
from rules.units import kitchen, number, plural


def amount(
    value: float, unit: str | None = None, *, high: float | None = None, approx: bool = False
) -> Amount:
    return Amount(low=value, high=high or value, unit=unit, approx=approx)


@pytest.mark.parametrize(
    ("value", "unit", "us", "metric"),
    [
        (2.25, "cup", "2 1/4 cups", "530 ml"),
        (1.125, "cup", "1 cup plus 2 tablespoons", "270 ml"),
        (0.375, "cup", "1/4 cup plus 2 tablespoons", "90 ml"),
        (0.5, "cup", "1/2 cup", "120 ml"),
        (1, "tablespoon", "1 tablespoon", "1 tablespoon"),
        (1.25, "teaspoon", "1 1/4 teaspoons", "1 1/4 teaspoons"),
        (1.5, "pound", "1 1/2 pounds", "680 g"),
        (0.4, "pound", "6 ounces", "180 g"),
        (1500, "gram", "3 1/4 pounds", "1.5 kg"),
        (473, "milliliter", "2 cups", "470 ml"),
        (2, "liter", "8 1/2 cups", "2 l"),
        (3, None, "3", "3"),
        (2, "leaf", "2 leaves", "2 leaves"),
        (1, "bunch", "1 bunch", "1 bunch"),
        (3, "bunch", "3 bunches", "3 bunches"),
        (2, "inch", "2 inches", "5 cm"),
        (2, "%", "2 %", "2 %"),
        (0, "cup", "", ""),
    ],
)
def test_an_amount_in_the_words_of_people(value: float, unit: str | None, us: str, metric: str) -> None:
    assert kitchen(amount(value, unit)) == us
    assert kitchen(amount(value, unit), units="metric") == metric


def test_a_range_keeps_both_ends() -> None:
    assert kitchen(amount(2, "cup", high=3)) == "2 to 3 cups"
    assert kitchen(amount(2, "cup", high=3), units="metric") == "470 to 710 ml"
    assert (
        kitchen(amount(0.15, "cup", high=0.3)) == "2 tablespoons plus 1 teaspoon to 1/4 cup plus 1 tablespoon"
    )


def test_about_stays_about() -> None:
    assert kitchen(amount(2, "cup", approx=True)) == "about 2 cups"


def test_a_can_says_its_size() -> None:
    cans = Amount(low=2, high=2, unit="can", package=Package(low=14, high=14, unit="ounce"))
    assert kitchen(cans) == "2 cans of 14 ounces"
    assert kitchen(cans, units="metric") == "2 cans of 400 g"


def test_metric_kitchens_weigh_what_is_dry() -> None:
    assert kitchen(amount(2, "cup"), units="metric", grams=250) == "250 g"
    assert kitchen(amount(2, "cup"), grams=250) == "2 cups"
    assert kitchen(amount(2, "teaspoon"), units="metric", grams=9) == "2 teaspoons"


def test_eggs_are_told_whole() -> None:
    assert kitchen(amount(2.25), whole=True) == "2"


@pytest.mark.parametrize(
    ("value", "said"),
    [(0.25, "1/4"), (1.125, "1 1/8"), (2.667, "2 2/3"), (3, "3"), (0.995, "1"), (1.4, "1.4"), (12.0, "12")],
)
def test_numbers_as_a_cook_writes_them(value: float, said: str) -> None:
    assert number(value) == said


def test_plurals() -> None:
    assert [plural(unit, 2) for unit in ("cup", "loaf", "dash", "box", "patty", "tray")] == [
        "cups",
        "loaves",
        "dashes",
        "boxes",
        "patties",
        "trays",
    ]
    assert plural("cup", 0.5) == "cup"


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
    assert words == kitchen(amount(value, unit))


@pytest.mark.parametrize(
    ("grams", "words"), [(3, "3 g"), (14, "1/2 ounce"), (25, "25 g"), (200, "7 ounces"), (500, "500 g")]
)
def test_grams_stay_grams_where_ounces_would_change_them(grams: float, words: str) -> None:
    """Three grams of yeast told as a quarter of an ounce would be seven."""
    assert words == kitchen(amount(grams, "gram"))
