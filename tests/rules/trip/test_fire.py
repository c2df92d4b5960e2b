"""Briquettes of a whole trip: what is shared, what is spared, what stays in the bag."""

from __future__ import annotations

from math import ceil

from rules.trip.plan import plan
from tests.trips import meal, pot, trip, weekend

TOGETHER = trip(meal("pan-cornbread"), meal("dark-gingerbread"), meal("pan-cornbread"), pots=(pot(count=3),))
STACKED = trip(meal("apple-pie"), meal("pan-cornbread"), pots=(pot(), pot(deep=True)), fires=1)


def test_what_is_lit_is_what_the_dishes_light() -> None:
    planned = weekend()
    assert planned.fuel is not None
    own = sum(dish.plan.heat.fuel.lit for dish in planned.dishes if dish.plan.heat)
    assert planned.fuel.lit + planned.fuel.saved == own
    assert planned.fuel.lit == sum(lighting.count for lighting in planned.fuel.lightings)
    assert all(lit.count == sum(part.count for part in lit.for_) for lit in planned.fuel.lightings)


def test_one_reserve_is_smaller_than_a_reserve_for_every_dish() -> None:
    planned = weekend()
    assert planned.fuel is not None
    assert planned.fuel.reserve == ceil(planned.fuel.lit / 4)
    assert planned.fuel.reserve < sum(
        dish.plan.heat.fuel.reserve for dish in planned.dishes if dish.plan.heat
    )
    assert "fire.reserve" in [reason.rule for reason in planned.why]


def test_lightings_close_together_share_a_chimney() -> None:
    """Two pans of the same bread are lit in the same minute."""
    planned = plan(TOGETHER)
    assert planned.fuel is not None
    shared = [lighting for lighting in planned.fuel.lightings if len(lighting.for_) > 1]
    assert shared
    assert "fire.shared" in [reason.rule for reason in planned.why]
    assert {part.dish for lighting in shared for part in lighting.for_} >= {"1", "3"}
    assert all(lighting.count <= 90 for lighting in planned.fuel.lightings)


def test_a_stacked_pot_lights_nothing_under_it() -> None:
    planned = plan(STACKED)
    assert planned.fuel is not None
    assert planned.fuel.saved > 0
    assert "fire.spared" in [reason.rule for reason in planned.why]


def test_a_trip_without_coals_brings_none() -> None:
    planned = plan(trip(meal("cabbage-slaw")))
    assert planned.fuel is None
    assert not [line for line in planned.shopping if line.food == "charcoal briquettes"]
