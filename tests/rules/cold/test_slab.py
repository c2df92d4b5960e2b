from __future__ import annotations

import math

import pytest

from rules.cold.composition import Composition
from rules.cold.freezing import enthalpy, freezing_point
from rules.cold.slab import curve, freezing_hours, thaw_hours

BEEF = Composition(water=0.7, protein=0.2, fat=0.09, ash=0.01, particles=0.5)
HONEY = Composition(water=0.17, carbohydrate=0.83, sugars=0.82, particles=4.5)
WATER = Composition(water=1.0)
RUM = Composition(water=0.4, alcohol=0.4, carbohydrate=0.2, sugars=0.2, particles=12)


@pytest.mark.parametrize("food", [BEEF, HONEY, WATER, RUM, Composition(fat=1.0)], ids=str)
@pytest.mark.parametrize("temp_c", [-30, -10, -5, -3, -1, 0.2, 4, 20])
def test_the_curve_is_the_heat_content(food: Composition, temp_c: float) -> None:
    line = curve(food)
    told = line.heat(temp_c) - line.heat(-18)
    assert enthalpy(food, temp_c) - enthalpy(food, -18) == pytest.approx(told, rel=0.01)


def test_temperature_and_heat_are_each_others_inverse() -> None:
    line = curve(BEEF)
    for temp in (-35.0, -12.0, -3.3, -1.0, 5.0, 18.0):
        assert temp == pytest.approx(line.temp(line.heat(temp)))


def test_honey_never_freezes_at_home() -> None:
    assert freezing_hours(HONEY, thickness=0.03, freezer_c=-18, start_c=4, h=9) == math.inf


def test_twice_as_thick_takes_two_to_four_times_as_long() -> None:
    """Between the surface's resistance (first power) and the food's own (square)."""
    thin = freezing_hours(BEEF, thickness=0.02, freezer_c=-18, start_c=4, h=9)
    thick = freezing_hours(BEEF, thickness=0.04, freezer_c=-18, start_c=4, h=9)
    assert 2 < thick / thin < 4


def test_water_in_ice_water_thaws_for_ever() -> None:
    assert thaw_hours(WATER, thickness=0.03, around_c=0.0, h=200, from_c=-1, share=0.95) == math.inf


def test_nothing_that_is_not_frozen_thaws() -> None:
    warm = freezing_point(BEEF) + 5
    assert thaw_hours(BEEF, thickness=0.03, around_c=20, h=10, from_c=warm, share=0.85) == 0
