"""Whatever the amount: conversion goes there and back, rounding stays near, words never fail."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from rules.recipe import Amount, Package
from rules.units import kind, kitchen, number, rounded, to

VOLUMES = (
    "teaspoon",
    "tablespoon",
    "fluid ounce",
    "cup",
    "pint",
    "quart",
    "gallon",
    "milliliter",
    "deciliter",
    "liter",
)
MASSES = ("gram", "kilogram", "ounce", "pound")
WORDS = (
    None,
    *VOLUMES,
    *MASSES,
    "pinch",
    "handful",
    "can",
    "clove",
    "inch",
    "centimeter",
    "%",
    "bunch",
    "zorkmid",
)

values = st.floats(0.01, 5000, allow_nan=False)


@settings(deadline=None)
@given(values, st.sampled_from(VOLUMES), st.sampled_from(VOLUMES))
def test_there_and_back_through_units(value: float, unit: str, target: str) -> None:
    back = to(to(value, unit, target), target, unit)
    assert abs(back - value) <= 1e-9 * value


@given(values, st.sampled_from(VOLUMES + MASSES))
def test_rounding_to_own_measures_stays_near_and_never_loses_the_amount(value: float, unit: str) -> None:
    """A third at most, for the smallest spoons and scraps; nothing becomes nothing."""
    own = rounded(Amount(low=value, high=value, unit=unit))
    assert own.high > 0
    told = to(own.high, own.unit or "", unit)
    smallest = {"volume": to(0.125, "teaspoon", "milliliter"), "mass": 1.0}[kind(unit) or "mass"]
    base = to(value, unit, "milliliter" if kind(unit) == "volume" else "gram")
    if base >= 4 * smallest:
        assert abs(told - value) <= 0.34 * value


@given(values, st.sampled_from(VOLUMES + MASSES))
def test_what_is_rounded_stays_rounded(value: float, unit: str) -> None:
    once = rounded(Amount(low=value, high=value, unit=unit))
    twice = rounded(once)
    assert twice.unit == once.unit
    assert abs(twice.high - once.high) <= 0.051 * once.high


@given(
    values, values, st.sampled_from(WORDS), st.sampled_from(("us", "metric")), st.booleans(), st.booleans()
)
def test_every_amount_has_words(
    low: float, more: float, unit: str | None, units: str, approx: bool, whole: bool
) -> None:
    amount = Amount(
        low=low,
        high=low + more,
        unit=unit,
        approx=approx,
        package=Package(low=14, high=14, unit="ounce") if unit == "can" else None,
    )
    said = kitchen(amount, units=units, whole=whole)  # type: ignore[arg-type]
    assert said
    assert said == said.strip()
    assert "  " not in said


@given(st.floats(0, 1e6, allow_nan=False))
def test_a_number_reads_back_as_itself(value: float) -> None:
    whole, _, fraction = number(value).rpartition(" ")
    if "/" in fraction:
        top, bottom = fraction.split("/")
        read = float(whole or 0) + int(top) / int(bottom)
    else:
        read = float(number(value))
    assert abs(read - value) <= 0.012
