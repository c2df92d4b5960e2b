"""The cooler's physics over days, against closed forms and against the heat contents that it moves.

Outside: the exponential of a lumped body (any text on heat transfer), ice's 333.6 kJ/kg (ASHRAE Handbook - Refrigeration
2006, chapter 9), the enthalpies of Choi and Okos that `rules.cold` is tested with.
"""

from __future__ import annotations

import math
from itertools import pairwise

import pytest

from rules.cold.composition import Composition, specific_heat
from rules.cold.freezing import enthalpy
from rules.cold.hours import figure
from rules.trip.thermal import LEAST_CAPACITY, Bagged, Cooled, Curve, Load, curve, run, walls_kw_per_k

MEAT = Composition(water=0.7, protein=0.2, fat=0.09, ash=0.01, particles=0.55)
BROTH = Composition(water=0.98, protein=0.015, ash=0.005, particles=0.2)


def bag(key: str = "meat", kg: float = 1.0, out_h: float = 40.0) -> Bagged:
    return Bagged(key=key, made_of=MEAT, kg=kg, thick=0.03, out_h=out_h)


def pot_of(key: str = "broth", kg: float = 2.0, out_h: float = 40.0) -> Cooled:
    return Cooled(key=key, made_of=BROTH, kg=kg, out_h=out_h)


def test_food_alone_warms_as_a_lumped_body() -> None:
    """T = air + (T0 - air) exp(-t G / C); backward steps of a quarter of an hour lag by less than a percent."""
    load = Load(quarts=48, air_c=29, hours=24, ice_kg=0, cool=(pot_of(out_h=24),))
    walls, lid = walls_kw_per_k(48)
    capacity = LEAST_CAPACITY + 2.0 * specific_heat(BROTH, figure("in_cooler").value)
    start = figure("warm_food").value
    expected = 29 + (start - 29) * math.exp(-24 * 3600 * (walls + lid) / capacity)
    assert run(load).states[-1].inside_c == pytest.approx(expected, rel=0.01)


def test_ice_melts_by_the_heat_that_comes_in() -> None:
    course = run(Load(quarts=48, air_c=29, hours=24, ice_kg=20))
    came_in = course.leak + course.openings
    # The melt water is a little above freezing: it holds one or two percent of what came in.
    assert course.melted_kg == pytest.approx(came_in / figure("latent_heat").value, rel=0.02)
    assert came_in == pytest.approx(sum(walls_kw_per_k(48)) * 29 * 24 * 3600, rel=0.05)


@pytest.mark.parametrize("ice_kg", [0.0, 0.5, 3.0, 12.0])
@pytest.mark.parametrize("air_c", [5.0, 21.0, 38.0])
def test_heat_balances_however_much_ice_and_whatever_the_air(ice_kg: float, air_c: float) -> None:
    """Bags are counted by `enthalpy` at the temperature they are taken out at, which the course never asks."""
    frozen = (bag("a", 1.2, 9.0), bag("b", 0.3, 20.0), bag("c", 2.5, 55.0))
    cool = (pot_of("d", 1.0, 10.0), pot_of("e", 3.0, 50.0))
    course = run(Load(quarts=60, air_c=air_c, hours=55, ice_kg=ice_kg, frozen=frozen, cool=cool))
    out = dict(course.out)
    taken = sum(
        one.kg * (enthalpy(MEAT, curve(MEAT).temp(out[one.key])) - enthalpy(MEAT, figure("freezer").value))
        for one in frozen
    )
    came_in = course.leak + course.openings + course.cooled
    assert course.bags == pytest.approx(taken, rel=1e-3)
    assert came_in == pytest.approx(course.melted_kg * figure("latent_heat").value + taken, rel=1e-3)


def test_frozen_bags_spare_ice() -> None:
    with_bags = run(Load(quarts=48, air_c=29, hours=30, ice_kg=15, frozen=(bag(kg=3, out_h=30),)))
    without = run(Load(quarts=48, air_c=29, hours=30, ice_kg=15))
    assert with_bags.melted_kg < without.melted_kg
    spared = (without.melted_kg - with_bags.melted_kg) * figure("latent_heat").value
    assert spared == pytest.approx(with_bags.bags, rel=0.1)


def test_the_inside_never_leaves_the_range_between_freezer_and_air() -> None:
    course = run(
        Load(quarts=30, air_c=35, hours=72, ice_kg=2, frozen=(bag(kg=0.05, out_h=72),), cool=(pot_of(),))
    )
    assert all(figure("freezer").value <= state.inside_c <= 35 for state in course.states)
    assert all(later.ice_kg <= earlier.ice_kg for earlier, later in pairwise(course.states))


def test_what_is_taken_out_takes_no_more_heat() -> None:
    course = run(Load(quarts=48, air_c=29, hours=20, ice_kg=10, frozen=(bag(out_h=5),)))
    assert [key for state in course.states if state.at_h >= 5 for key, _ in state.bags] == []
    assert [key for key, _ in course.out] == ["meat"]


@pytest.mark.parametrize(
    "food",
    [MEAT, BROTH, Composition(fat=1.0), Composition(water=0.3, sugars=0.7, carbohydrate=0.7, particles=3)],
)
def test_the_curve_is_the_enthalpy_read_both_ways(food: Composition) -> None:
    """1.5 kJ/kg is half a percent of what a moist food takes to thaw."""
    line = Curve(food)
    for temp in (-25.0, -18.0, -7.3, -2.9, -1.1, -0.4, 3.0, 12.0):
        assert line.heat(temp) == pytest.approx(enthalpy(food, temp), abs=1.5)
        assert line.temp(line.heat(temp)) == pytest.approx(temp, abs=1e-6)


def test_four_gallon_jugs_of_ice_last_three_to_four_days() -> None:
    """A hobby record at 80 °F, the one from which the leak of a 48-quart chest was taken (`cooler_ua`): unverified."""
    jugs_kg = 4 * 3.785 * 0.917
    course = run(Load(quarts=48, air_c=26.7, hours=120, ice_kg=jugs_kg))
    gone = next(state.at_h for state in course.states if state.ice_kg < 0.05)
    assert 60 <= gone <= 100
