"""Freezing points, ice, heat, freezing and thawing times, and the cooler, against printed figures and examples."""

from __future__ import annotations

import math

import pytest
from iapws import _iapws

from rules.cold.composition import Composition
from rules.cold.contents import composition
from rules.cold.cooler import cold_hours, ice_to_cool, leak_w_per_k
from rules.cold.freezing import (
    enthalpy,
    freezing_point,
    ice_fraction_of_flesh,
    latent_heat,
    particles_at,
)
from rules.cold.hours import figure
from rules.cold.slab import thaw_hours
from rules.foods import catalogue

SPHERE = (1 / 6, 1 / 24)


def plank_seconds(
    *,
    heat_kj: float,
    density: float,
    freezing_c: float,
    around_c: float,
    thickness: float,
    h: float,
    k: float,
    shape: tuple[float, float] = (1 / 2, 1 / 8),
    cover: float = 0.0,
) -> float:
    """Plank's equation as printed in J. Food Engineering 58:267, 2003: slab P 1/2 and R 1/8, sphere 1/6 and 1/24.

    `heat_kj` [kJ/kg] passes the surface, `thickness` [m] is a slab's whole one or a sphere's diameter, `cover` [m2 K/W]
    the resistance of a wrapping.
    """
    p, r = shape
    driving = abs(freezing_c - around_c)
    return 1000 * density * heat_kj / driving * (p * thickness * (1 / h + cover) + r * thickness**2 / k)


@pytest.mark.parametrize(("percent", "printed"), [(10, -0.63), (20, -1.46), (30, -2.64), (40, -4.45)])
def test_sugar_syrup_freezes_where_the_table_says(percent: int, printed: float) -> None:
    """Sucrose by mass percent, believed CRC Handbook, concentrative properties, from memory; two decimals printed."""
    share = percent / 100
    syrup = Composition(water=1 - share, carbohydrate=share, sugars=share, particles=1000 * share / 342.3)
    assert printed == pytest.approx(freezing_point(syrup), abs=0.02)


@pytest.mark.parametrize(("percent", "printed"), [(5, -2.09), (10, -4.47), (20, -10.92)])
def test_spirits_and_water_freeze_where_the_table_says(percent: int, printed: float) -> None:
    """Ethanol by mass percent, believed CRC Handbook, from memory; one constant serves all three within 5 %."""
    share = percent / 100
    drink = Composition(water=1 - share, alcohol=share, particles=1000 * share / 46.07)
    assert printed == pytest.approx(freezing_point(drink), rel=0.05)


@pytest.mark.parametrize(
    ("food", "measured"),
    [("strawberry", -0.9), ("plum", -1.1), ("apple", -1.5), ("cucumber", -0.5), ("cherry tomato", -0.3)],
)
def test_fruit_freezes_near_its_measured_point(food: str, measured: float) -> None:
    """Korean J. Food Preservation 23(3):438, 2016, table 2 (plus or minus 0.3); varieties differ in sugar by half."""
    made_of = composition(catalogue().get(food))
    assert made_of is not None
    assert measured == pytest.approx(freezing_point(made_of), abs=0.5)


@pytest.mark.parametrize(
    ("food", "water", "printed_kj"),
    [("carrots", 87.79, 293), ("corn", 75.96, 254), ("garlic", 58.58, 196), ("celery", 94.64, 316)],
)
def test_latent_heat_is_the_waters(food: str, water: float, printed_kj: float) -> None:
    """ASHRAE Handbook - Refrigeration chapter 9 table 3: 334 kJ for a kilogram of water, printed whole."""
    assert printed_kj == pytest.approx(latent_heat(Composition(water=water / 100)), abs=1)


def test_water_as_a_food_melts_with_the_textbooks_heat() -> None:
    """IAPWS release on ice Ih (2006) against IAPWS-95 would give 333.4 kJ/kg; chapter 9 uses 333.6: within 1 %."""
    water = Composition(water=1.0)
    melting = enthalpy(water, 1e-3) - enthalpy(water, -1e-3)
    ice = _iapws._Ice(273.15, 0.101325)["h"]
    assert -ice == pytest.approx(melting, rel=0.01)
    # From -20 to 20 °C, ice and liquid by the same release.
    heat = 83.9 - _iapws._Ice(253.15, 0.101325)["h"]
    assert heat == pytest.approx(enthalpy(water, 20) - enthalpy(water, -20), rel=0.01)


def test_ice_in_a_beef_carcass() -> None:
    """ASHRAE Handbook - Refrigeration 2006 chapter 9 example 1, from memory: 0.52 at -20 °C, two digits."""
    assert pytest.approx(ice_fraction_of_flesh(water=0.58, freezing_c=-1.7, temp_c=-20), abs=0.005) == 0.52


def test_heat_to_freeze_a_beef_carcass() -> None:
    """ASHRAE Handbook - Refrigeration 2006 chapter 9 example 3, from memory: 34 740 kJ for 150 kg from 10 to -20 °C.

    The chapter uses Chen's fitted equation, we the sum of the components: within 5 %.
    """
    beef = Composition(
        water=0.5821, protein=0.1748, fat=0.2348, ash=0.0083, particles=particles_at(-1.7, water=0.5821)
    )
    assert pytest.approx(freezing_point(beef), abs=1e-6) == -1.7
    assert pytest.approx(150 * (enthalpy(beef, 10) - enthalpy(beef, -20)), rel=0.05) == 34740
    assert pytest.approx(enthalpy(beef, 10) - enthalpy(beef, -1.7), rel=0.05) == 280.38 - 243.14
    assert pytest.approx(enthalpy(beef, -1.7) - enthalpy(beef, -20), rel=0.05) == 243.14 - 48.79


@pytest.mark.parametrize(
    ("heat_kj", "cover", "printed_h"),
    [
        pytest.param(256, 0.001 / 0.06, 4.1, id="latent heat, cardboard"),
        pytest.param(256, 0.0, 2.1, id="latent heat, bare"),
        pytest.param(323, 0.001 / 0.06, 5.2, id="whole heat, cardboard"),
        pytest.param(323, 0.0, 2.6, id="whole heat, bare"),
    ],
)
def test_a_slab_of_meat_between_cold_plates(heat_kj: float, cover: float, printed_h: float) -> None:
    """R. L. Earle, Unit Operations in Food Processing, 2nd ed. 1983: 10 cm, plates at -34 °C; the first two answers
    from memory, the whole heat read. Two digits printed."""
    seconds = plank_seconds(
        heat_kj=heat_kj, density=1090, freezing_c=-2, around_c=-34, thickness=0.1, h=600, k=1.6, cover=cover
    )
    assert printed_h == pytest.approx(seconds / 3600, abs=0.06)


def test_a_sphere_of_food_in_cold_air() -> None:
    """Believed Singh and Heldman, Introduction to Food Engineering, freezing chapter, from memory: 2603 s."""
    seconds = plank_seconds(
        heat_kj=250, density=1000, freezing_c=-1.25, around_c=-40, thickness=0.07, h=50, k=1.2, shape=SPHERE
    )
    assert pytest.approx(seconds, rel=0.001) == 2603


def test_a_block_of_lean_beef() -> None:
    """Believed Singh and Heldman, from memory: 1 x 0.6 x 0.25 m, P 0.3, R 0.085 from their chart: 18.7 h."""
    seconds = plank_seconds(
        heat_kj=333.22 * 0.745,
        density=1050,
        freezing_c=-1.75,
        around_c=-30,
        thickness=0.25,
        h=30,
        k=1.108,
        shape=(0.3, 0.085),
    )
    assert pytest.approx(seconds / 3600, abs=0.05) == 18.7


@pytest.mark.parametrize(("h", "thickness"), [(6, 0.02), (10, 0.04), (20, 0.02)])
def test_ice_melts_in_a_bag_as_plank_says(h: float, thickness: float) -> None:
    """Where Plank's assumptions hold, ice at its melting point and little that warms beside it, ours is within 10 %.

    Under a strong film the melted layers warm meanwhile, which Plank leaves out and the solved slab does not.
    """
    water = Composition(water=1.0)
    plank = plank_seconds(
        heat_kj=333.6, density=1000, freezing_c=0, around_c=15, thickness=thickness, h=h, k=0.58
    )
    told = thaw_hours(water, thickness=thickness, around_c=15, h=h, from_c=-0.1, share=1.0)
    assert plank / 3600 == pytest.approx(told, rel=0.1)


def test_ice_that_cools_fish() -> None:
    """FAO, quantity of ice required, T0713E chapter 3: 10 kg of lean fish from 25 to 0 °C take 2.5 kg.

    FAO rounds 80 kcal/kg and 0.8 kcal/(kg K); within 1 %.
    """
    assert pytest.approx(ice_to_cool(kg=10, kj_per_kg_k=0.8 * 4.1868, from_c=25), rel=0.01) == 2.5


def test_a_gallon_of_drink_melts_its_ice() -> None:
    """70 to 40 °F melts 1.75 lb by the figures of the trade (a maker's tips say 1.5 lb); FAO's equation, within 2 %."""
    pounds = ice_to_cool(kg=3.785, kj_per_kg_k=4.18, from_c=21.1, to_c=4.4) / 0.4536
    assert pytest.approx(pounds, rel=0.02) == 1.75


def test_a_chest_with_four_frozen_gallon_jugs_stays_cold_three_to_four_days() -> None:
    """ "How to Use an Ice Chest", hobby page: about 15 kg of ice, air of 80 °F; the only record of this kind found."""
    days = cold_hours(ice_kg=4 * 3.785, quarts=48, air_c=26.7) / 24
    assert 3 <= days <= 4


def test_the_leak_lies_in_the_range_that_the_record_gives() -> None:
    """3.8 to 5 kg of ice a day at 80 °F are 0.55 to 0.7 W/K by K = U A / L (FAO Technical Paper 436, chapter 7)."""
    assert 0.55 <= leak_w_per_k(48) <= 0.7
    assert 3.8 <= leak_w_per_k(48, known=0.6) * (26.7 - 0) * 86.4 / figure("latent_heat").value <= 5
    assert math.isclose(leak_w_per_k(48 * 8), 4 * leak_w_per_k(48))
