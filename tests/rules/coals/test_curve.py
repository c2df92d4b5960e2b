"""A stage drawn over time."""

from __future__ import annotations

from rules.coals.curve import curve
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
