from __future__ import annotations

import math

import pytest

from rules.cold.composition import Composition, conductivity
from rules.cold.freezing import ice_fraction
from rules.cold.hours import figure
from rules.cold.slab import thaw_hours
from rules.cold.thaw import state_after, thaw_range
from rules.plan import Hours

FRUIT = Composition(water=0.8, carbohydrate=0.18, sugars=0.15, protein=0.01, fibre=0.01, particles=1.0)


def hours(around_c: float, h: float, *, share: float = 0.85) -> float:
    return thaw_hours(FRUIT, thickness=0.025, around_c=around_c, h=h, from_c=-18, share=share)


def test_warmer_air_and_better_contact_thaw_sooner() -> None:
    assert hours(4, 6.5) > hours(10, 6.5) > hours(10, 200)


def test_air_below_the_freezing_point_thaws_nothing() -> None:
    assert hours(-5, 6.5) == math.inf
    assert thaw_range(FRUIT, thickness=0.025, around=(-8, -5), h=figure("h_cooler"), from_c=-18) is None


def test_thawed_food_conducts_a_third_as_well_as_frozen() -> None:
    """Believed Q. T. Pham, Food Freezing and Thawing Calculations, 2014, from memory: why thawing is the slower way."""
    frozen = conductivity(FRUIT, -18, ice=ice_fraction(FRUIT, -18))
    assert 1 / 4 < conductivity(FRUIT, 5) / frozen < 1 / 2


def test_a_small_package_thaws_in_cold_water_in_about_an_hour() -> None:
    """USDA FSIS advice on thawing in cold water (HealthDay, 11 June 2014): a small package, an hour or less."""
    beef = Composition(water=0.65, protein=0.2, fat=0.14, ash=0.01, particles=0.4)
    water = figure("cold_water")
    found = thaw_hours(beef, thickness=0.02, around_c=water.most, h=200, from_c=-18, share=0.85)
    assert found < 1


@pytest.mark.parametrize(
    ("spent", "state"),
    [(1, "frozen"), (4.9, "frozen"), (5, "part thawed"), (29, "part thawed"), (30, "thawed")],
)
def test_the_state_on_the_way(spent: float, state: str) -> None:
    assert state_after(spent, Hours(low=10, high=30)) == state


def test_what_never_thaws_stays_frozen() -> None:
    assert state_after(1000, None) == "frozen"
