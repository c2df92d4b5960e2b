"""A stage drawn over time."""

from __future__ import annotations

import pytest

from rules.coals.curve import band, curve
from tests.rules.coals.making import CAKE, STEW, heat


def test_the_curve_of_a_bake_runs_over_its_minutes_and_comes_to_its_aim() -> None:
    bake = heat(CAKE, "batter bake")[0].stages[-1]
    course = curve(bake)
    assert (course[0].at_min, course[-1].at_min) == (
        bake.starts_at_min,
        bake.starts_at_min + bake.minutes.high,
    )
    assert abs(max(point.iron_f for point in course) - 350) <= 25


def test_the_curve_of_a_long_simmer_stays_under_the_boil() -> None:
    simmer = heat(STEW, "stew or braise")[0].stages[-1]
    course = curve(simmer, food_kg=4)
    assert all(190 < point.food_f <= 212 for point in course)


def test_a_stage_without_a_temperature_to_hold_has_no_curve() -> None:
    light, *_ = heat(STEW, "stew or braise")[0].stages
    assert curve(light) == ()


def test_with_the_whole_plan_a_stage_goes_on_where_the_one_before_left_the_pot() -> None:
    """A pan warmed over the same coals begins hotter than one that has only its ten minutes of warming."""
    whole = heat(STEW, "stew or braise")[0]
    simmer = whole.stages[-1]
    alone, after = curve(simmer, food_kg=4), curve(simmer, food_kg=4, heat=whole)
    assert after[0].heat_w == pytest.approx(alone[0].heat_w, rel=0.01)  # as much heat, from older coals
    assert after[4].heat_w < alone[4].heat_w


def test_the_band_of_a_bake_lies_around_its_aim_and_that_of_a_simmer_below_the_boil() -> None:
    bake = heat(CAKE, "batter bake")[0].stages[-1]
    low, high = band(bake) or (0, 0)
    assert (low + high) / 2 == bake.temp_f
    simmer = heat(STEW, "stew or braise")[0].stages[-1]
    assert (band(simmer) or (0, 0))[1] == pytest.approx(212, abs=0.5)
    assert band(heat(STEW, "stew or braise")[0].stages[0]) is None
