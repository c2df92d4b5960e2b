"""The whole trip: nothing of a dish is lost on the way into it, and what cannot be is said."""

from __future__ import annotations

import msgspec
import pytest

from rules.problem import UsageProblem
from rules.trip.model import Trip, TripPlan
from rules.trip.plan import plan
from tests.trips import SUPPER, meal, pot, trip, weekend


def test_the_river_weekend_is_six_meals_for_nine_with_two_pots_and_one_cooler() -> None:
    planned = weekend()
    assert planned.people == 9
    assert len({(dish.eat, dish.meal) for dish in planned.dishes}) == 6
    assert len([person for person in planned.persons if person.avoids]) == 2
    assert len({use.pot for use in planned.pots}) == 2
    assert len(planned.coolers) == 1
    assert not planned.warnings


def test_a_trip_needs_a_meal() -> None:
    with pytest.raises(UsageProblem, match="at least one meal"):
        plan(Trip())


def test_dishes_stand_in_the_order_of_eating() -> None:
    planned = plan(
        trip(meal("egg-bake", "2027-07-03T08:30"), meal("can-chili", SUPPER), pots=(pot(deep=True),))
    )
    assert [dish.eat for dish in planned.dishes] == [SUPPER, "2027-07-03T08:30"]
    assert [dish.id for dish in planned.dishes] == ["1", "2"]


def test_a_meal_s_own_circumstances_hold_for_it_alone() -> None:
    cold, warm = plan(
        trip(
            meal("pan-cornbread", SUPPER, air_f=30.0, wind="windy", people=4),
            meal("pan-cornbread", "2027-07-03T18:30"),
            air_f=80.0,
        )
    ).dishes
    assert (cold.day.air_f, cold.day.wind, cold.day.people) == (30.0, "windy", 4)
    assert (warm.day.air_f, warm.day.wind, warm.day.people) == (80.0, "calm", 9)
    assert cold.plan.heat
    assert warm.plan.heat
    assert cold.plan.heat.fuel.lit > warm.plan.heat.fuel.lit


def test_every_moment_of_a_dish_at_camp_stands_in_the_calendar() -> None:
    planned = weekend()
    for dish in planned.dishes:
        said = " ".join(moment.do for moment in planned.calendar if dish.id in moment.dishes)
        for moment in dish.plan.timeline:
            if moment.kind in ("road", "fire", "coals", "after"):
                assert moment.do in said, moment.do


def test_the_calendar_runs_forward_and_begins_at_home() -> None:
    calendar = weekend().calendar
    moments = [moment.at for moment in calendar]
    assert moments == sorted(moments)
    assert calendar[0].kind == "home"
    assert {"home", "road", "light", "coals", "fire", "meal", "after"} == {moment.kind for moment in calendar}


def test_lightings_stand_in_the_calendar_once() -> None:
    planned = weekend()
    assert planned.fuel is not None
    lit = [moment.at for moment in planned.calendar if moment.kind == "light"]
    assert lit == [lighting.at for lighting in planned.fuel.lightings]


def test_every_caution_of_every_dish_is_given() -> None:
    planned = weekend()
    wanted = {caution.id for dish in planned.dishes for caution in dish.plan.cautions}
    assert wanted == {caution.id for caution in planned.cautions}
    monoxide = [caution for caution in planned.cautions if caution.id == "carbon-monoxide"]
    assert planned.fuel is not None
    assert [f"{planned.fuel.briquettes} briquettes" in caution.text for caution in monoxide] == [True]


def test_a_meal_whose_coals_would_be_lit_on_the_road_is_warned_of() -> None:
    planned = plan(trip(meal("bean-pot", "2027-07-02T12:30"), pots=(pot(deep=True),)))
    assert any("eat later, or leave earlier" in warning for warning in planned.warnings)


def test_what_is_left_open_is_asked_once() -> None:
    planned = plan(
        trip(meal("pan-cornbread"), meal("cabbage-slaw"), people=None, pots=(), coolers=(), leave=None)
    )
    asked = [question.about for question in planned.questions]
    assert {"leave", "people", "pot", "cooler", "air"} <= set(asked)
    assert len(asked) == len(set(asked))


def test_the_same_trip_gives_the_same_bytes() -> None:
    told = trip(meal("can-chili"), meal("pan-cornbread"), pots=(pot(), pot(deep=True)))
    assert msgspec.json.encode(plan(told)) == msgspec.json.encode(plan(told))


def test_a_plan_survives_the_way_through_json() -> None:
    planned = weekend()
    assert msgspec.json.decode(msgspec.json.encode(planned), type=TripPlan) == planned


def test_a_fire_ban_lights_nothing() -> None:
    planned = plan(trip(meal("can-chili"), charcoal=False))
    assert planned.fuel is None
    assert planned.pots == ()


def test_a_dish_of_another_people_count_is_shopped_for_alone() -> None:
    """The joined list says which dish needs how much of what several need."""
    planned = weekend()
    flour = next(line for line in planned.shopping if line.food == "all-purpose flour")
    assert len(flour.for_) > 1
    assert flour.grams == pytest.approx(sum(share.grams or 0.0 for share in flour.for_))
    assert "trip.joined" in {reason.rule for reason in planned.why}
