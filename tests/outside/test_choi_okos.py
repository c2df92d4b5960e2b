"""Thermal properties of food against the printed equations, a property library and a handbook's examples."""

from __future__ import annotations

import pytest

from rules.cold.composition import Composition, conductivity_bounds, density, of_component, specific_heat
from rules.cold.freezing import ice_fraction_of_flesh


@pytest.mark.parametrize(
    ("component", "heat_j", "density_kg", "conductivity_w"),
    [
        ("protein", 2014.211677, 1327.308, 0.184721),
        ("fat", 1991.44648, 923.50215, 0.179325),
        ("carbohydrate", 1558.464002, 1597.5477, 0.208239),
        ("fibre", 1854.936728, 1309.67055, 0.189479),
        ("ash", 1101.955957, 2422.39685, 0.336553),
    ],
)
def test_components_at_5_c_agree_with_a_property_library(
    component: str, heat_j: float, density_kg: float, conductivity_w: float
) -> None:
    """CoolProp 8.0, food fluids, evaluated once at 5 °C; the same equations, so to the printed digits."""
    assert heat_j == pytest.approx(1000 * of_component("specific heat", component, 5), rel=1e-6)
    assert density_kg == pytest.approx(of_component("density", component, 5), rel=1e-6)
    assert conductivity_w == pytest.approx(of_component("conductivity", component, 5), abs=1e-6)


def test_ice_at_minus_20_c_agrees_with_a_property_library() -> None:
    """CoolProp 8.0, food fluids, evaluated once."""
    assert pytest.approx(1000 * of_component("specific heat", "ice", -20), rel=1e-6) == 1940.762
    assert pytest.approx(of_component("density", "ice", -20), rel=1e-6) == 919.5042
    assert pytest.approx(of_component("conductivity", "ice", -20), rel=1e-6) == 2.385194


def test_the_heat_capacity_of_lamb() -> None:
    """ASHRAE Handbook - Refrigeration 2006 chapter 9 example 2, from memory, reproduced by recomputation.

    3.59 kJ/(kg K) as printed; 150 kg over 10 K take 5390 kJ, printed with three digits of the heat capacity.
    """
    lamb = Composition(water=0.7342, protein=0.2029, fat=0.0525, ash=0.0106)
    assert pytest.approx(specific_heat(lamb, 5), abs=0.005) == 3.59
    assert pytest.approx(150 * 10 * specific_heat(lamb, 5), rel=0.002) == 5390


def test_the_conductivity_of_frozen_pork() -> None:
    """ASHRAE Handbook - Refrigeration 2006 chapter 9 example 4, from memory: 1.96 along, 0.519 across at -40 °C."""
    pork = Composition(water=0.7263, protein=0.1955, fat=0.0714, ash=0.0102)
    ice = ice_fraction_of_flesh(water=0.7263, freezing_c=-2.2, temp_c=-40)
    along, across = conductivity_bounds(pork, -40, ice=ice)
    assert pytest.approx(along, abs=0.005) == 1.96
    assert pytest.approx(across, abs=0.0005) == 0.519
    # The chapter quotes densities of 992 to 995 kg/m3 for the same meat.
    assert pytest.approx(density(pork, -40, ice=ice), abs=2.5) == 993.5


@pytest.mark.parametrize(
    ("food", "water", "protein", "fat", "carbohydrate", "fibre", "ash", "printed"),
    [
        ("snap beans", 90.27, 1.82, 0.12, 7.14, 3.4, 0.66, 3.99),
        ("broccoli", 90.69, 2.98, 0.35, 5.24, 3.0, 0.92, 4.01),
        ("cabbage", 92.15, 1.44, 0.27, 5.43, 2.3, 0.71, 4.02),
        ("carrots", 87.79, 1.03, 0.19, 10.14, 3.0, 0.87, 3.92),
        ("celery", 94.64, 0.75, 0.14, 3.65, 1.7, 0.82, 4.07),
        ("sweet corn", 75.96, 3.22, 1.18, 19.02, 2.7, 0.62, 3.62),
        ("cucumbers", 96.01, 0.69, 0.13, 2.76, 0.8, 0.41, 4.09),
        ("garlic", 58.58, 6.36, 0.5, 33.07, 2.1, 1.5, 3.17),
        ("leeks", 83.0, 1.5, 0.3, 14.15, 1.8, 1.05, 3.77),
    ],
)
def test_the_heat_capacity_of_vegetables(
    food: str,
    water: float,
    protein: float,
    fat: float,
    carbohydrate: float,
    fibre: float,
    ash: float,
    printed: float,
) -> None:
    """ASHRAE Handbook - Refrigeration chapter 9 table 3, specific heat above freezing.

    Within 2.5 %: the print used 4.1289 for water, 1.1 % low, and rounds to two decimals.
    """
    made_of = Composition(
        water=water / 100,
        protein=protein / 100,
        fat=fat / 100,
        carbohydrate=(carbohydrate - fibre) / 100,
        fibre=fibre / 100,
        ash=ash / 100,
    )
    assert printed == pytest.approx(specific_heat(made_of, 20), rel=0.025)
