from __future__ import annotations

import math

import pytest

from rules.cold.cooler import budget, cold_hours, leak_kj, room_for_ice_kg


def test_heat_that_comes_in_is_heat_that_is_taken() -> None:
    spent = budget(quarts=48, air_c=30, hours=48, warm_kj=200, bags_kj=350)
    assert spent.heat == pytest.approx(spent.taken, rel=1e-3)


def test_minute_by_minute_the_same_ice_melts() -> None:
    """The budget of a trip is the sum of its minutes, within 0.1 %."""
    whole = budget(quarts=48, air_c=30, hours=24, warm_kj=0, bags_kj=0).ice_kg
    minutes = sum(
        budget(quarts=48, air_c=30, hours=1 / 60, warm_kj=0, bags_kj=0).ice_kg for _ in range(24 * 60)
    )
    assert minutes == pytest.approx(whole, rel=1e-3)


def test_bags_take_no_more_than_comes_in() -> None:
    spent = budget(quarts=48, air_c=20, hours=1, warm_kj=0, bags_kj=10_000)
    assert spent.ice_kg == 0
    assert spent.bags == spent.heat


def test_air_as_cold_as_the_inside_melts_nothing() -> None:
    assert leak_kj(w_per_k=0.6, air_c=-5, inside_c=2, hours=24) == 0
    assert cold_hours(ice_kg=1, quarts=48, air_c=-5) == math.inf


def test_hours_and_ice_are_each_others_inverse() -> None:
    spent = budget(quarts=48, air_c=30, hours=36, warm_kj=120, bags_kj=300)
    hours = cold_hours(ice_kg=spent.ice_kg, quarts=48, air_c=30, warm_kj=120, bags_kj=300)
    assert hours == pytest.approx(36, rel=1e-6)


def test_food_takes_room_from_ice() -> None:
    assert room_for_ice_kg(quarts=48, food_liters=10) < room_for_ice_kg(quarts=48, food_liters=0)
    assert room_for_ice_kg(quarts=4, food_liters=100) == 0
