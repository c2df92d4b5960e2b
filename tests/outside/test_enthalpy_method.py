"""Freezing and thawing of a flat bag against the enthalpy method solved over its thickness."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from rules.cold.composition import Composition, conductivity, density, specific_heat
from rules.cold.freezing import ice_fraction, particles_at
from rules.cold.slab import curve, freezing_hours, thaw_hours
from rules.cold.thaw import thaw_heat

Array = np.ndarray
FOODS = {
    "beef": Composition(
        water=0.74, protein=0.21, fat=0.04, ash=0.01, particles=particles_at(-1.7, water=0.74)
    ),
    "fruit": Composition(water=0.80, carbohydrate=0.17, fibre=0.02, protein=0.01, sugars=0.15, particles=0.8),
    "stock": Composition(water=0.97, protein=0.02, ash=0.01, particles=0.4),
}
LAYERS = 12
#: From a fan of still air in a chest to a bag moved in ice water.
FILMS = [
    pytest.param(5, 3, id="still air of a cooler"),
    pytest.param(8, 4, id="warm cooler"),
    pytest.param(10, 21, id="open air"),
    pytest.param(20, 33, id="breeze on a hot day"),
    pytest.param(200, 13, id="cold water"),
]


def solved(
    food: Composition,
    *,
    thickness: float,
    h: float,
    around_c: float,
    start_c: float,
    left: Callable[[Array, Array], float],
) -> float:
    """Hours until nothing is `left`: half a slab in layers, its face to the film, its middle closed; scipy, BDF."""
    line = curve(food)
    temps, heats, k = (np.array(part) for part in (line.temps, line.heats, line.conductivities))
    width, rho = thickness / 2 / LAYERS, 1000 * density(food, max(start_c, 0.0))

    def rate(_: float, heat: Array) -> Array:
        temp = np.interp(heat, heats, temps)
        conducts = np.interp(temp, temps, k)
        between = 2 * conducts[1:] * conducts[:-1] / (conducts[1:] + conducts[:-1])
        flow = between * (temp[:-1] - temp[1:]) / width
        change = np.zeros(LAYERS)
        change[0] = (around_c - temp[0]) / (1 / h + width / 2 / conducts[0])
        change[:-1] -= flow
        change[1:] += flow
        return change / (rho * width)

    def event(_: float, heat: Array) -> float:
        return left(np.interp(heat, heats, temps), heat)

    event.terminal = True  # type: ignore[attr-defined]
    begin = np.full(LAYERS, line.heat(start_c))
    run = solve_ivp(rate, (0, 3e6), begin, method="BDF", events=event, rtol=1e-4, atol=0.01)
    return float(run.t_events[0][0]) / 3600


@pytest.mark.parametrize("thickness", [0.02, 0.05])
@pytest.mark.parametrize(("h", "freezer_c"), [(6, -15), (9, -18), (12, -20)])
@pytest.mark.parametrize("name", FOODS)
def test_a_bag_in_the_freezer(name: str, h: float, freezer_c: float, thickness: float) -> None:
    """Until its middle is at -10 °C; within 5 % of the solved slab, whose twelve layers cost 1 %."""
    food = FOODS[name]
    truth = solved(
        food,
        thickness=thickness,
        h=h,
        around_c=freezer_c,
        start_c=4,
        left=lambda temp, _: float(temp[-1]) + 10,
    )
    told = freezing_hours(food, thickness=thickness, freezer_c=freezer_c, start_c=4, h=h)
    assert truth == pytest.approx(told, rel=0.05)


@pytest.mark.parametrize("share", [0.75, 0.95])
@pytest.mark.parametrize("thickness", [0.02, 0.05])
@pytest.mark.parametrize(("h", "around_c"), FILMS)
@pytest.mark.parametrize("name", FOODS)
def test_a_bag_that_thaws(name: str, h: float, around_c: float, thickness: float, share: float) -> None:
    """Until it holds that share of the heat that thaws it: within 6 % of the solved slab, in air and in water."""
    food = FOODS[name]
    goal = curve(food).heat(-18) + share * thaw_heat(food, from_c=-18)
    truth = solved(
        food,
        thickness=thickness,
        h=h,
        around_c=around_c,
        start_c=-18,
        left=lambda _, heat: goal - float(heat.mean()),
    )
    told = thaw_hours(food, thickness=thickness, around_c=around_c, h=h, from_c=-18, share=share)
    assert truth == pytest.approx(told, rel=0.06)


def test_the_solved_slab_itself_freezes_water_as_stefan_says() -> None:
    """Stefan's problem (1891), ice of conductivity k on water at 0 °C, no film: t = l^2 / (4 a x^2).

    x from x exp(x^2) erf(x) = c dT / (L sqrt pi); at -10 °C, c 2.06, L 333.6: x = 0.175. Within 10 %: the slab ends
    at its middle, ours is met by twelve layers and a film of 1e5 W/(m2 K).
    """
    line = curve(Composition(water=1.0))
    assert line.heat(0.1) - line.heat(-0.1) == pytest.approx(333.6, rel=0.01)
    half, ice_k, ice_c, ice_rho = 0.02, 2.25, 2040.0, 917.0
    stefan = half**2 / (4 * ice_k / (ice_rho * ice_c) * 0.175**2) / 3600
    truth = solved(
        Composition(water=1.0),
        thickness=2 * half,
        h=1e5,
        around_c=-10,
        start_c=0.06,
        left=lambda temp, _: float(temp[-1]) + 0.05,
    )
    # Our slab has the density of water, which is what freezes.
    assert truth * ice_rho / 1000 == pytest.approx(stefan, rel=0.1)


@pytest.mark.parametrize(
    ("thickness", "h", "freezer_c"), [(0.02, 9, -18), (0.05, 9, -18), (0.05, 12, -20), (0.07, 6, -18)]
)
def test_the_closed_form_of_pham(thickness: float, h: float, freezer_c: float) -> None:
    """Q. T. Pham, J. Food Technology 21 (1986) 209, as in the ASHRAE Handbook - Refrigeration, chapter 10; from memory.

    A slab between 4 and -10 °C in its middle: both spans of heat over their own driving difference. Its author gives it
    10 % against measured times.
    """
    beef = FOODS["beef"]
    last, first = -10.0, 4.0
    mean = 1.8 + 0.263 * last + 0.105 * freezer_c
    rho = 1000 * density(beef, first)
    frozen = ice_fraction(beef, -40.0)
    precooling = rho * specific_heat(beef, 5) * (first - mean)
    latent = frozen * 333.6
    freezing = rho * (latent + specific_heat(beef, -15, ice=frozen) * (mean - last))
    biot = h * thickness / 2 / conductivity(beef, -12, ice=ice_fraction(beef, -12.0))
    spans = precooling / ((first + mean) / 2 - freezer_c) + freezing / (mean - freezer_c)
    pham = thickness / 2 / h * spans * (1 + biot / 2) / 3600
    told = freezing_hours(beef, thickness=thickness, freezer_c=freezer_c, start_c=first, h=h)
    assert pham == pytest.approx(told, rel=0.1)
