"""Figures of food safety and hazards against the agencies that publish them."""

from __future__ import annotations

import pytest

from rules import cautions, safety, table
from rules.foods import catalogue
from rules.plan import CautionId

#: Figures as printed; each must stand in the caution's text.
PRINTED: dict[CautionId, tuple[str, ...]] = {
    # FoodSafety.gov (HHS and USDA FSIS), Safe Minimum Internal Temperatures, 2019 or later.
    "raw-poultry": ("165 °F",),
    "raw-meat": ("160 °F", "145 °F", "3 minutes"),
    "raw-fish": ("145 °F",),
    "raw-egg": ("160 °F",),
    # FDA 2024: danger zone 40 to 140 °F, two hours, one above 90 °F.
    "two-hour": ("40 °F", "140 °F", "two hours", "one hour", "90 °F"),
    # Cold storage chart and safe temperatures, FoodSafety.gov.
    "leftovers": ("3 to 4 days", "165 °F", "40 °F"),
    # FDA Bad Bug Book, quoted by Ohio State University: soak 5 hours, boil 30 minutes.
    "kidney-beans": ("5 hours", "30 minutes"),
    # INSPQ, "Honey - never for babies under age 1"; CDC says the same.
    "honey-infant": ("12 months",),
    # US Forest Service checklist: 15 ft to the tent, a circle of 10 ft.
    "fire-restrictions": ("10 feet", "15 feet", "stage 1", "stage 2"),
    # Harborview Injury Prevention and Research Center: children 3 ft away.
    "hot-iron": ("3 feet",),
}


@pytest.mark.parametrize("key", PRINTED)
def test_a_caution_says_the_published_figures(key: CautionId) -> None:
    for figures in PRINTED[key]:
        assert figures in cautions.TEXTS[key].text


@pytest.mark.parametrize("word", ["tent", "camper", "vehicle", "cabin", "garage", "open window or a fan"])
def test_carbon_monoxide_names_every_place_that_the_commission_names(word: str) -> None:
    """US Consumer Product Safety Commission, document 5012 and the charcoal page."""
    assert word in cautions.TEXTS["carbon-monoxide"].text


@pytest.mark.parametrize(("feet", "minutes"), [(0, "1 minute"), (6500, "1 minute"), (6501, "3 minutes")])
def test_water_is_boiled_longer_high_up(feet: float, minutes: str) -> None:
    """CDC: rolling boil for 1 minute, above 6500 ft for 3."""
    assert minutes == cautions.rolling_boil(feet)


@pytest.mark.parametrize(
    ("feet", "low", "high"),
    [(3000, 0, 1 / 8), (5000, 1 / 8, 1 / 4), (7000, 1 / 4, 1 / 2), (10000, 1 / 2, 2 / 3)],
)
def test_less_leavener_high_up(feet: float, low: float, high: float) -> None:
    """S. G. Purdy, Pie in the Sky (2005): teaspoon less per teaspoon of baking powder or soda."""
    row = cautions.less_leavener(feet)
    assert (low, high) == (row.low_tsp, pytest.approx(row.high_tsp, abs=0.001))


def test_food_is_out_of_the_cold_for_two_hours_and_one_in_hot_air() -> None:
    """FDA, "Food Safety While Eating Outdoors", 24 July 2024: two hours, one when it is above 90 °F."""
    assert (safety.figure("out_h").value, safety.figure("out_hot_h").value) == (2, 1)
    assert safety.limit("hot_air_f") == "90 °F"


def test_cold_is_40_and_hot_is_140() -> None:
    """USDA FSIS on the danger zone, May-June 2016."""
    assert (safety.limit("cold_f"), safety.limit("hot_f")) == ("40 °F", "140 °F")


def test_raw_flesh_thaws_in_cold_water_as_long_as_printed() -> None:
    """USDA FSIS, HealthDay, 11 June 2014: water changed every 30 minutes; half an hour a pound for a whole turkey."""
    assert safety.figure("water_change_min").value == 30
    assert safety.figure("water_h_per_lb").value * 4 == pytest.approx(2)


@pytest.mark.parametrize(
    ("food", "days"),
    [
        ("ground beef", 1),
        ("ground turkey", 1),
        ("whole chicken", 1),
        ("chicken thigh", 1),
        ("beef chuck roast", 3),
        ("pork chop", 3),
        ("bacon", 7),
        ("pork sausage", 1),
        ("egg", 21),
    ],
)
def test_days_in_the_refrigerator_are_the_charts_low_end(food: str, days: int) -> None:
    """Cold storage chart, FoodSafety.gov: raw poultry and ground meat 1 to 2 days, steaks and roasts 3 to 5, bacon a
    week, eggs in the shell 3 to 5 weeks."""
    assert days == catalogue().get(food).fridge_days


def test_every_caution_has_words_and_a_source() -> None:
    """The register of cautions is whole: one row for every id of the plan's schema."""
    assert set(cautions.RAISED_BY) <= set(cautions.TEXTS)
    assert all(row.source and row.text for row in table.read("cautions.toml", cautions.CautionText))
