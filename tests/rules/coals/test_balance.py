"""Losses of a pot: larger for hotter iron, colder air, more wind; their own formulas stand in tests/outside."""

from __future__ import annotations

import math

import pytest

from rules.coals.balance import ground_flux, kelvin, loss, loss_ratio, surface_ratio, wind_at

POT = {"diameter_m": 0.305, "height_m": 0.095, "emissivity": 0.9}


def test_iron_as_warm_as_the_air_loses_nothing() -> None:
    assert loss(pot_f=70, air_f=70, wind=1.0, **POT) == pytest.approx(0)


def test_more_heat_goes_with_hotter_iron_colder_air_and_wind() -> None:
    base = loss(pot_f=350, air_f=70, wind=0.5, **POT)
    assert loss(pot_f=375, air_f=70, wind=0.5, **POT) > base
    assert loss(pot_f=350, air_f=30, wind=0.5, **POT) > base
    assert loss(pot_f=350, air_f=70, wind=2.0, **POT) > base


def test_a_camp_pot_at_350_loses_what_some_briquettes_give() -> None:
    """A few hundred watts: 25 briquettes of 120 W, of which a third reaches the pot, give a thousand."""
    assert 400 < loss(pot_f=350, air_f=70, wind=0.25, **POT) < 1000


def test_the_ratio_is_one_on_the_charts_day_and_bounded_in_wind() -> None:
    day = {"pot_f": 350, "calm": 0.25, "wind_most": 1.35, **POT}
    assert loss_ratio(air_f=70, wind=0.25, **day) == pytest.approx(1)
    assert loss_ratio(air_f=70, wind=0.0, **day) == pytest.approx(1)
    assert loss_ratio(air_f=70, wind=40.0, **day) == pytest.approx(1.35)


def test_wind_grows_with_the_logarithm_of_the_height() -> None:
    profile = {"speed": 5.0, "at_m": 10.0, "roughness_m": 0.03}
    assert wind_at(10.0, **profile) == pytest.approx(5)
    assert wind_at(0.03, **profile) == 0
    half = math.sqrt(10 * 0.03)
    assert wind_at(half, **profile) == pytest.approx(2.5)


def test_snow_takes_more_than_damp_soil_and_damp_more_than_dry() -> None:
    bed = {"coals_k": 720.0, "ground_k": 273.0, "ash": 12.5, "seconds": 2700.0}
    dry, damp, snow = (ground_flux(effusivity=value, **bed) for value in (620, 2000, None))
    assert dry < damp < snow
    assert snow == pytest.approx(12.5 * (720 - 273))


def test_the_surface_of_a_pot_of_the_same_depth_is_the_same() -> None:
    assert surface_ratio(diameter_in=12, bottom_in=10, depth_in=3.75, deep_in=3.75) == 1


def test_absolute_zero_is_absolute_zero() -> None:
    assert kelvin(-459.67) == pytest.approx(0)
    assert kelvin(212) == pytest.approx(373.15)
