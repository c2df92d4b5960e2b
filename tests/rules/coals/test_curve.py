"""A planned fire followed: what the pot and its food do over time."""

from __future__ import annotations

import itertools

import msgspec
import pytest

from rules.circumstances import Day
from rules.coals.curve import courses, curve, follow
from rules.coals.load import load
from rules.convert import camp
from rules.foods import weigh
from rules.plan import Heat
from tests.rules.coals.making import CAKE, STEW, TWELVE, action, heat, recipe, step

COLD = Day(air_f=30, wind="windy")


def planned(recipe, family: str) -> Heat:
    found, _ = heat(recipe, family)
    assert found is not None
    return found


def test_a_bake_begins_in_its_band_because_the_pot_is_warmed_first() -> None:
    warm, bake = follow(planned(CAKE, "batter bake"), TWELVE, load=load(weigh(CAKE)))
    assert (warm.stage.kind, warm.holds) == ("warm", None)
    assert warm.points[0].iron_f == 70
    assert all(point.food_f is None for point in warm.points)
    assert (bake.holds, bake.low_f, bake.high_f) == ("iron", 325, 375)
    assert all(325 <= iron <= 375 for _, iron in bake.held)


def test_one_stage_begins_where_the_one_before_left_the_iron() -> None:
    found = follow(planned(STEW, "stew or braise"), TWELVE, load=load(weigh(STEW)))
    for before, stage in itertools.pairwise(found):
        if stage.holds != "food":  # a simmer is planned from the boil on
            assert stage.points[0].iron_f == pytest.approx(before.points[-1].iron_f)
        assert stage.points[0].at_min == before.points[-1].at_min


def test_a_simmer_holds_its_food_under_the_boil() -> None:
    simmer = follow(planned(STEW, "stew or braise"), TWELVE, load=load(weigh(STEW)))[-1]
    assert simmer.holds == "food"
    assert simmer.high_f == pytest.approx(212, abs=0.5)
    assert all(197 - 0.5 <= food <= 212 for _, food in simmer.held)


def test_a_three_hour_stew_and_a_ninety_minute_roast_in_cold_wind_are_renewed_and_hold() -> None:
    day = Day(air_f=25, wind="windy")
    stew = recipe(
        {"beef chuck": (4, "pound"), "potato": (2, "pound"), "water": (1, "quart")},
        step(action("brown", "brown", 0), action("boil", "bring", 2)),
        step(action("simmer", "simmer", minutes=(180, 180))),
    )
    roast = recipe(
        {"pork loin": (4, "pound")},
        step(action("roast", "roast", 0, minutes=(90, 90), temp_f=350.0), temps=(350.0,)),
    )
    for made, family in ((stew, "stew or braise"), (roast, "roast")):
        plan, _ = heat(made, family, day)
        assert plan is not None
        held = follow(plan, TWELVE, day, load=load(weigh(made)), every_min=1.0)[-1]
        assert len(held.stage.refresh) >= 2
        assert all(held.low_f - 0.5 <= temp <= held.high_f + 0.5 for _, temp in held.held)


def test_the_curve_of_a_plan_runs_from_the_first_coals_to_the_last() -> None:
    plan = camp(CAKE, COLD)
    assert plan.heat is not None
    points = curve(plan, COLD)
    times = [point.at_min for point in points]
    over = [stage for stage in plan.heat.stages if stage.top + stage.under]
    assert times == sorted(set(times))
    assert times[0] == over[0].starts_at_min
    assert times[-1] == over[-1].starts_at_min + over[-1].minutes.high
    assert len(points) == sum(len(one.points) for one in courses(plan, COLD)) - len(over) + 1


def test_finer_steps_meet_the_coarse_ones() -> None:
    plan = camp(CAKE)
    fine = {point.at_min: point.iron_f for point in curve(plan, every_min=1)}
    for point in curve(plan):
        assert fine[point.at_min] == pytest.approx(point.iron_f)


def test_the_curve_stands_in_the_plan_only_when_it_is_asked_for() -> None:
    plain, asked = camp(CAKE, COLD), camp(CAKE, msgspec.structs.replace(COLD, curve=True))
    assert plain.heat is not None
    assert asked.heat is not None
    assert plain.heat.curve == ()
    assert [round(point.iron_f, 1) for point in curve(plain, COLD)] == [
        point.iron_f for point in asked.heat.curve
    ]
    assert msgspec.structs.replace(asked.heat, curve=()) == plain.heat


def test_a_plan_without_fire_has_no_curve() -> None:
    assert curve(camp(CAKE, Day(charcoal=False))) == ()
