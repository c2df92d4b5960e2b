"""Units against the figures of NIST, the Code of Federal Regulations and the legal definitions.

Sources: NIST, "Metric Household" (equivalents of the common capacity units used in the kitchen, after SP 430), n.d.,
read at nist.gov; 21 CFR 101.9(b)(5)(viii) as quoted in UCUM ticket 120, read at ucum.org; exact definitions of the US
and imperial units (legal, reproduced from memory where no page was read).
"""

from __future__ import annotations

import pytest

from rules.units import to


@pytest.mark.parametrize(
    ("unit", "exact_ml"),
    [
        ("teaspoon", 4.92892159375),
        ("tablespoon", 14.78676478125),
        ("fluid ounce", 29.5735295625),
        ("cup", 236.5882365),
        ("pint", 473.176473),
        ("quart", 946.352946),
        ("gallon", 3785.411784),
        ("cubic inch", 16.387064),
        ("imperial pint", 568.26125),
    ],
)
def test_volumes_are_exact(unit: str, exact_ml: float) -> None:
    """Definitions: nothing but the last bit of a float may differ."""
    assert exact_ml == pytest.approx(to(1, unit, "milliliter"), rel=1e-12)


@pytest.mark.parametrize(
    ("unit", "target", "exact"),
    [
        ("ounce", "gram", 28.349523125),
        ("pound", "gram", 453.59237),
        ("inch", "millimeter", 25.4),
        ("foot", "meter", 0.3048),
    ],
)
def test_masses_and_lengths_are_exact(unit: str, target: str, exact: float) -> None:
    assert exact == pytest.approx(to(1, unit, target), rel=1e-12)


@pytest.mark.parametrize(
    ("many", "one", "count"),
    [
        ("teaspoon", "tablespoon", 3),
        ("tablespoon", "fluid ounce", 2),
        ("tablespoon", "cup", 16),
        ("teaspoon", "cup", 48),
        ("cup", "pint", 2),
        ("cup", "quart", 4),
        ("quart", "gallon", 4),
        ("teaspoon", "quart", 192),
        ("cubic inch", "quart", 57.75),
    ],
)
def test_the_kitchen_table_of_nist(many: str, one: str, count: float) -> None:
    assert count == pytest.approx(to(1, one, many), rel=1e-12)


@pytest.mark.parametrize(
    ("value", "unit", "printed_ml", "half_a_digit"),
    [
        (1, "teaspoon", 4.9, 0.05),
        (1, "tablespoon", 15, 0.5),
        (1, "fluid ounce", 30, 0.5),
        (0.25, "cup", 59, 0.5),
        (0.5, "cup", 118, 0.5),
        (1, "cup", 237, 0.5),
        (1, "pint", 473, 0.5),
        (1, "quart", 946, 0.5),
    ],
)
def test_the_rounded_milliliters_of_nist(
    value: float, unit: str, printed_ml: float, half_a_digit: float
) -> None:
    """Tolerance: half of the last printed digit."""
    assert printed_ml == pytest.approx(to(value, unit, "milliliter"), abs=half_a_digit)


@pytest.mark.parametrize(
    ("unit", "label_ml"), [("teaspoon", 5), ("tablespoon", 15), ("cup", 240), ("fluid ounce", 30)]
)
def test_the_labelling_units_of_the_fda_are_near(unit: str, label_ml: float) -> None:
    """Rounded by law for nutrition labels; within 1.5 % of the true unit."""
    assert label_ml == pytest.approx(to(1, unit, "milliliter"), rel=0.015)


@pytest.mark.parametrize(
    ("fahrenheit", "printed_c"),
    [
        (32, 0),
        (40, 4.4),
        (140, 60),
        (145, 62.8),
        (160, 71.1),
        (165, 73.9),
        (212, 100),
        (350, 176.7),
        (450, 232.2),
    ],
)
def test_temperatures(fahrenheit: float, printed_c: float) -> None:
    """145, 160 and 165 °F as printed in the USDA FSIS list of safe temperatures; the rest by the formula, one digit."""
    assert printed_c == pytest.approx(to(fahrenheit, "fahrenheit", "celsius"), abs=0.051)


@pytest.mark.parametrize(
    ("unit", "teaspoons"),
    [("tad", 1 / 4), ("dash", 1 / 8), ("pinch", 1 / 16), ("smidgen", 1 / 32), ("drop", 1 / 64)],
)
def test_small_measures(unit: str, teaspoons: float) -> None:
    """ "Need a pinch?" (15 Apr 2016), read at iwanttolovemath.blogspot.com; the drop from "What's a pinch, dash,
    smidgen" (n.d.): others have 1/96."""
    assert teaspoons == pytest.approx(to(1, unit, "teaspoon"), rel=1e-12)
