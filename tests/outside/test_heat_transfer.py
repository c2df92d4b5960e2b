"""The physics of pot and coals against reference libraries: `ht` for the correlations, scipy for the differential equations."""

from __future__ import annotations

import math

import ht
import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import least_squares

from rules.coals.balance import air, nu_across, nu_along, nu_facing_down, nu_facing_up, nu_vertical
from rules.coals.burn import Body, Ember, State, history, modes
from rules.coals.figures import figure
from rules.coals.glow import ember
from rules.table import Row, read

PRANDTL = 0.7


@pytest.mark.parametrize("rayleigh", [1e4, 1e6, 1e8, 1e10])
def test_still_air_along_a_wall(rayleigh: float) -> None:
    """Churchill and Chu 1975; `ht` was checked with the paper. Same equation: agreement to rounding."""
    assert ht.Nu_vertical_plate_Churchill(PRANDTL, rayleigh / PRANDTL) == pytest.approx(
        nu_vertical(rayleigh, PRANDTL)
    )


def test_the_textbook_example_of_a_wall() -> None:
    """Bergman et al., Introduction to Heat Transfer, 6th ed., example 9.2: Gr 2.63e9, Pr 0.69, Nu 147."""
    assert pytest.approx(147, abs=0.5) == nu_vertical(0.69 * 2.63e9, 0.69)


@pytest.mark.parametrize("rayleigh", [1e5, 5e6, 5e7])
def test_still_air_over_and_under_a_plate(rayleigh: float) -> None:
    """McAdams, Heat Transmission, 3rd ed.; the laminar cold side only, as under a pot."""
    grashof = rayleigh / PRANDTL
    assert ht.Nu_horizontal_plate_McAdams(PRANDTL, grashof, buoyancy=True) == pytest.approx(
        nu_facing_up(rayleigh)
    )
    assert ht.Nu_horizontal_plate_McAdams(PRANDTL, grashof, buoyancy=False) == pytest.approx(
        nu_facing_down(rayleigh)
    )


@pytest.mark.parametrize("reynolds", [500.0, 6071.0, 5e4, 3e5])
def test_wind_across_a_cylinder(reynolds: float) -> None:
    """Churchill and Bernstein 1977; Re 6071 is example 7.3 of the textbook, Nu 40.6."""
    assert ht.Nu_cylinder_Churchill_Bernstein(reynolds, PRANDTL) == pytest.approx(
        nu_across(reynolds, PRANDTL)
    )


@pytest.mark.parametrize("reynolds", [1e3, 1e5, 4e5])
def test_wind_along_a_lid(reynolds: float) -> None:
    """Laminar plate, Baehr and Stephan: 0.664 Re^1/2 Pr^1/3."""
    assert ht.Nu_horizontal_plate_laminar_Baehr(reynolds, PRANDTL) == pytest.approx(
        nu_along(reynolds, PRANDTL)
    )


@pytest.mark.parametrize(
    ("kelvin", "conductivity", "viscosity", "prandtl"),
    [(300, 0.0263, 15.89e-6, 0.707), (400, 0.0338, 26.41e-6, 0.690), (500, 0.0407, 38.79e-6, 0.684)],
)
def test_properties_of_air(kelvin: float, conductivity: float, viscosity: float, prandtl: float) -> None:
    """Bergman et al., table A.4 (from memory); 3 %: another set of measurements than the standard atmosphere's, cp fixed."""
    found = air(kelvin)
    assert found == pytest.approx((conductivity, viscosity, prandtl), rel=0.03)


POTS = {
    "bake": (Body(iron_j_k=4800, loss_w_k=4.4, food_j_k=8000, contact_w_k=1.8, air_f=70, boil_f=212), 25.0, 200.0, 60.0),
    "stew": (Body(iron_j_k=4800, loss_w_k=4.4, food_j_k=15000, contact_w_k=11, air_f=70, boil_f=212), 24.0, 300.0, 60.0),
    "simmer": (Body(iron_j_k=4800, loss_w_k=4.4, food_j_k=15000, contact_w_k=11, air_f=20, boil_f=203), 16.0, 203.0, 203.0),
    "empty": (Body(iron_j_k=3000, loss_w_k=3.0, food_j_k=0, contact_w_k=0, air_f=40, boil_f=212), 16.0, 40.0, 60.0),
}  # fmt: skip


@pytest.mark.parametrize("name", POTS)
def test_the_closed_form_is_the_solution_of_the_equations(name: str) -> None:
    """Iron and food by scipy's solver (LSODA, tight tolerances); within 1 °F over three hours, fresh coals included."""
    body, coals, iron_f, food_f = POTS[name]
    burning = ember()
    fresh = [(45.0, 8.0), (90.0, 6.0)]
    start = State(iron_f=iron_f, food_f=food_f, modes=modes(burning, coals))
    ours = dict(history(start, body, burning, minutes=180, fresh=fresh, every_min=5))
    minutes = sorted(ours)
    theirs = _solved(body, burning, [(0.0, coals), *fresh], (iron_f, food_f), minutes)
    for at, (iron, food) in zip(minutes, theirs, strict=True):
        assert iron == pytest.approx(ours[at].iron_f, abs=1.0)
        assert food == pytest.approx(ours[at].food_f, abs=1.0) or not body.food_j_k


def _solved(
    body: Body,
    burning: Ember,
    laid: list[tuple[float, float]],
    start: tuple[float, float],
    minutes: list[float],
) -> list[tuple[float, float]]:
    def change(second: float, temps: np.ndarray) -> list[float]:
        iron, food = temps
        heat = sum(
            n * burning.reaching_w * burning.left(second / 60 - at) for at, n in laid if second / 60 >= at
        )
        across = body.contact_w_k * (iron - food) / 1.8 if body.food_j_k else 0.0
        boils = body.food_j_k and food >= body.boil_f and across > 0
        warms = 0.0 if boils or not body.food_j_k else across / body.food_j_k * 1.8
        loss = body.loss_w_k * (iron - body.air_f) / 1.8
        return [(heat - loss - across) / body.iron_j_k * 1.8, warms]

    points, now, state = [], 0.0, np.array(start, dtype=float)
    for at in minutes:
        if at > now:
            found = solve_ivp(
                change, (now * 60, at * 60), state, method="LSODA", rtol=1e-8, atol=1e-8, max_step=2.0
            )
            state, now = found.y[:, -1], at
            state[1] = min(state[1], body.boil_f) if body.food_j_k else state[1]
        points.append((float(state[0]), float(state[1])))
    return points


class LifeRow(Row, frozen=True, kw_only=True):
    id: str
    after_min: float
    left: float


def test_the_burn_curve_is_the_least_squares_of_the_printed_lifetimes() -> None:
    """Steepness and time constant of the shipped figures are the best of all whole steepnesses, to their digits."""
    rows = read("briquette_life.csv", LifeRow)

    def fit(steepness: int) -> tuple[float, float]:
        def misses(tau: np.ndarray) -> list[float]:
            return [1 - (1 - math.exp(-row.after_min / tau[0])) ** steepness - row.left for row in rows]

        found = least_squares(misses, [25.0])
        return float(found.cost), float(found.x[0])

    best = min(range(2, 25), key=lambda steepness: fit(steepness)[0])
    assert figure("steepness").value == best
    assert figure("time constant").value == pytest.approx(fit(best)[1], abs=0.01)
