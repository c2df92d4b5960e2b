"""Coolers over a trip: what lies where, the ice, the days that frozen packs serve as ice."""

from __future__ import annotations

import pytest

from rules.trip.cooler import SAFE_C
from rules.trip.model import Cooler, CoolerPlan, TripPlan
from rules.trip.plan import plan
from tests.trips import meal, pot, trip, weekend

LONG = trip(
    meal("can-chili", "2027-07-02T18:30"),
    meal("chicken-dumplings", "2027-07-04T18:30"),
    meal("cabbage-slaw", "2027-07-03T13:00"),
    pots=(pot(deep=True),),
    cooler_air_f=85.0,
)


def only(planned: TripPlan) -> CoolerPlan:
    (cooler,) = planned.coolers
    return cooler


def rules_of(planned: TripPlan) -> set[str]:
    return {reason.rule for reason in planned.why}


def test_what_is_cooked_last_lies_lowest() -> None:
    for planned in (weekend(), plan(LONG)):
        out = [layer.out_h for layer in only(planned).layers]
        assert out == sorted(out, reverse=True)
        assert "cooler.last-lowest" in rules_of(planned)


def test_every_cold_pack_of_every_dish_lies_in_one_cooler_once() -> None:
    planned = weekend()
    cold = {
        (dish.id, pack.id)
        for dish in planned.dishes
        for pack in dish.plan.packs
        if pack.travels in ("cool", "frozen")
    }
    layers = [(layer.dish, layer.pack) for cooler in planned.coolers for layer in cooler.layers]
    assert sorted(layers) == sorted(cold)


def test_the_ice_keeps_forty_fahrenheit_to_the_end() -> None:
    """40 °F: USDA FSIS, Food Safety While Hiking, Camping and Boating."""
    cooler = only(weekend())
    assert cooler.ice_kg > 0
    assert cooler.warmest_c is not None
    assert cooler.warmest_c <= SAFE_C == pytest.approx((40 - 32) / 1.8)


def test_heat_balances_to_a_tenth_of_a_percent() -> None:
    for planned in (weekend(), plan(LONG)):
        energy = only(planned).energy
        assert energy is not None
        assert abs(energy.missing) < 0.001 * (energy.leak + energy.openings)


def test_frozen_packs_serve_as_ice_for_the_days_they_stay_frozen() -> None:
    planned = plan(LONG)
    frozen = [layer for layer in only(planned).layers if layer.frozen_until_h is not None]
    assert frozen
    assert all(0 < (layer.frozen_until_h or 0) <= layer.out_h for layer in frozen)
    assert all(layer.heat_kj > 0 for layer in frozen)
    assert {"cooler.serves", "cooler.ice"} <= rules_of(planned)


def test_raw_meat_above_what_is_eaten_as_it_is_rides_in_a_box() -> None:
    """The chili's beef is wanted before the slaw and so lies above it: its juice would drip down."""
    planned = plan(LONG)
    beef = next(layer for layer in only(planned).layers if "ground beef" in layer.label)
    assert "lidded box" in (beef.note or "")
    assert "cooler.raw-boxed" in rules_of(planned)


def test_two_coolers_one_stays_shut() -> None:
    planned = plan(
        trip(*LONG.meals, pots=LONG.pots, cooler_air_f=85.0, coolers=(Cooler(quarts=40), Cooler(quarts=25)))
    )
    late, early = planned.coolers
    assert late.quarts > early.quarts
    assert min(layer.out_h for layer in late.layers) >= max(layer.out_h for layer in early.layers)
    assert "cooler.two" in rules_of(planned)


def test_ice_that_does_not_fit_is_due_on_the_way() -> None:
    planned = plan(trip(*LONG.meals, pots=LONG.pots, cooler_air_f=95.0, coolers=(Cooler(quarts=16),)))
    said = " ".join(planned.warnings)
    assert "That does not fit" in said
    assert "on the way before then" in said


def test_more_heat_outside_never_needs_less_ice() -> None:
    needed = [
        only(plan(trip(*LONG.meals, pots=LONG.pots, cooler_air_f=air))).ice_kg for air in (50.0, 70.0, 90.0)
    ]
    assert needed == sorted(needed)
    assert needed[0] < needed[-1]


def test_nothing_cold_needs_no_cooler() -> None:
    assert plan(trip(meal("soda-bread"), freezer=False)).coolers == () or all(
        cooler.layers for cooler in plan(trip(meal("soda-bread"), freezer=False)).coolers
    )


def test_raw_food_thawed_long_before_its_meal_is_warned_of() -> None:
    """Chicken keeps a day from its thaw (USDA FSIS FoodKeeper, low end); five days on the road it thaws on the second."""
    planned = plan(trip(meal("chicken-dumplings", "2027-07-07T18:30"), cooler_air_f=85.0))
    assert any("is thawed by" in warning and "chicken" in warning for warning in planned.warnings)
    assert "cooler.thawed-early" in rules_of(planned)


def test_the_course_counts_as_frozen_what_still_serves_as_ice() -> None:
    planned = plan(LONG)
    cooler = only(planned)
    for reading in cooler.course:
        hard = [
            layer
            for layer in cooler.layers
            if layer.frozen_until_h is not None and layer.frozen_until_h > reading.at_h + 0.25
        ]
        assert abs(reading.frozen - len(hard)) <= 1
