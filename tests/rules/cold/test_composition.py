from __future__ import annotations

import pytest

from rules.cold.composition import (
    Composition,
    conductivity,
    conductivity_bounds,
    density,
    mixture,
    of_component,
    specific_heat,
)

WET = Composition(water=0.8, carbohydrate=0.2)


def test_a_pure_food_has_the_properties_of_its_component() -> None:
    fat = Composition(fat=1.0)
    assert specific_heat(fat, 20) == pytest.approx(of_component("specific heat", "fat", 20))
    assert density(fat, 20) == pytest.approx(of_component("density", "fat", 20))
    assert conductivity(fat, 20) == pytest.approx(of_component("conductivity", "fat", 20))


def test_water_below_zero_follows_its_own_equation() -> None:
    """Choi and Okos give water two equations for its specific heat, which meet near 0 °C within 3 %."""
    above, below = (of_component("specific heat", "water", t) for t in (0.001, -0.001))
    assert above != below
    assert above == pytest.approx(below, rel=0.03)


def test_beyond_its_range_the_nearest_end_holds() -> None:
    assert of_component("density", "water", 500) == of_component("density", "water", 150)


def test_ice_lowers_heat_capacity_and_density_and_raises_conductivity() -> None:
    assert specific_heat(WET, -10, ice=0.7) < specific_heat(WET, -10)
    assert density(WET, -10, ice=0.7) < density(WET, -10)
    assert conductivity(WET, -10, ice=0.7) > conductivity(WET, -10)


def test_heat_goes_easier_along_the_layers_than_across() -> None:
    along, across = conductivity_bounds(WET, 20)
    assert across < conductivity(WET, 20) < along


def test_a_mixture_weighs_its_parts() -> None:
    mixed = mixture(((Composition(water=1.0), 3.0), (Composition(fat=1.0), 1.0), (WET, 0.0)))
    assert (mixed.water, mixed.fat) == (0.75, 0.25)
