from __future__ import annotations

import pytest

from rules.units import UnitProblem, is_loose, is_mass, is_volume, kind, loose_measures, to


@pytest.mark.parametrize(
    ("value", "unit", "target", "told"),
    [
        (1, "cup", "tablespoon", 16),
        (3, "teaspoon", "tablespoon", 1),
        (2, "pound", "ounce", 32),
        (1, "gallon", "cubic inch", 231),
        (350, "fahrenheit", "celsius", 176.667),
        (100, "celsius", "fahrenheit", 212),
        (2, "hour", "minute", 120),
        (9, "inch", "centimeter", 22.86),
        (1, "pinch", "teaspoon", 1 / 16),
        (1, "dash", "pinch", 2),
        (1, "salt-spoonful", "teaspoon", 0.25),
        (1, "coffee spoon", "teaspoon", 1),
    ],
)
def test_a_figure_is_told_in_another_unit(value: float, unit: str, target: str, told: float) -> None:
    assert told == pytest.approx(to(value, unit, target), rel=1e-5)


@pytest.mark.parametrize(
    ("unit", "target"),
    [
        ("cup", "gram"),
        ("minute", "inch"),
        ("can", "gram"),
        ("cup", "furlong"),
        ("cups", "milliliter"),
        ("", "cup"),
    ],
)
def test_what_does_not_go_together_is_said(unit: str, target: str) -> None:
    """Only our own words are units: pint alone would read a plural, and a pinch as a pico-inch."""
    with pytest.raises(UnitProblem) as problem:
        to(1, unit, target)
    assert str(problem.value) == (
        f'"{unit}" cannot be turned into "{target}"; both have to measure the same thing.'
    )


def test_a_unit_knows_what_it_measures() -> None:
    assert (kind("cup"), kind("ounce"), kind("inch"), kind("hour")) == ("volume", "mass", "length", "time")
    assert kind("fahrenheit") == "temperature"
    assert kind("can") is kind("piece") is kind(None) is None


def test_a_loose_measure_is_no_measured_volume() -> None:
    assert is_volume("cup")
    assert not is_volume("pinch")
    assert is_loose("pinch")
    assert not is_loose("cup")
    assert is_mass("kilogram")
    assert not is_mass(None)


def test_every_loose_measure_is_a_volume() -> None:
    assert {kind(unit) for unit in loose_measures()} == {"volume"}
