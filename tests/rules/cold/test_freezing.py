from __future__ import annotations

import pytest

from rules.cold.composition import Composition
from rules.cold.freezing import (
    REFERENCE_C,
    enthalpy,
    freezing_point,
    ice_fraction,
    particles_at,
    temperature,
)

BEEF = Composition(water=0.7, protein=0.2, fat=0.09, ash=0.01, particles=0.5)
SYRUP = Composition(water=0.7, carbohydrate=0.3, sugars=0.3, particles=0.3 / 0.3423)
HONEY = Composition(water=0.17, carbohydrate=0.83, sugars=0.82, particles=4.5)
WATER = Composition(water=1.0)


def test_freezing_point_and_particles_are_each_others_inverse() -> None:
    made = particles_at(-2.5, water=0.7, sugars=0.3)
    assert freezing_point(
        Composition(water=0.7, carbohydrate=0.3, sugars=0.3, particles=made)
    ) == pytest.approx(-2.5)


@pytest.mark.parametrize("food", [BEEF, SYRUP, WATER], ids=["beef", "syrup", "water"])
@pytest.mark.parametrize("temp_c", [-30.0, -12.0, -3.0, 5.0, 25.0])
def test_temperature_and_heat_are_each_others_inverse(food: Composition, temp_c: float) -> None:
    assert temperature(food, enthalpy(food, temp_c)) == pytest.approx(temp_c, abs=1e-4)


@pytest.mark.parametrize("food", [BEEF, SYRUP, WATER], ids=["beef", "syrup", "water"])
def test_heat_and_ice_go_one_way(food: Composition) -> None:
    degrees = [REFERENCE_C + step / 2 for step in range(160)]
    heats = [enthalpy(food, degree) for degree in degrees]
    ice = [ice_fraction(food, degree) for degree in degrees]
    assert heats == sorted(heats)
    assert ice == sorted(ice, reverse=True)


def test_there_is_no_ice_above_the_freezing_point_and_never_more_than_water() -> None:
    assert ice_fraction(SYRUP, freezing_point(SYRUP)) == 0
    assert 0 < ice_fraction(SYRUP, -18) < SYRUP.water
