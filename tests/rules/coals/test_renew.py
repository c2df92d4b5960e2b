"""Fresh coals: when, how many, and that they keep what matters in its band."""

from __future__ import annotations

import itertools

import pytest

from rules.circumstances import Day
from rules.coals.cook import cook, temperatures
from rules.coals.counts import coals
from rules.coals.renew import batches, renewals, renewing
from rules.coals.weather import wind_factor

COLD_WIND = Day(air_f=25, wind="windy")


def followed(way: str, minutes: float, day: Day, food_kg: float, temp_f: float | None = None):
    """The band, and what matters from the end of its warm-up on [°F]."""
    its = coals(way, diameter_in=12, depth="shallow", day=day, temp_f=temp_f)
    pot = cook(
        way=way,
        coals=its.total,
        exact=its.exact,
        aim_f=its.aim_f,
        diameter_in=12,
        depth="shallow",
        air_f=day.air_f,
        faster=wind_factor(12, "shallow", its.aim_f, day.air_f, day.wind),
        elevation_ft=day.elevation_ft,
        food_kg=food_kg,
        preheat_min=10,
    )
    fresh = batches(pot, minutes)
    course = temperatures(pot, minutes=minutes, fresh=fresh)
    held = [point.iron_f if pot.holds == "iron" else point.food_f for point in course]
    warm = next(place for place, temp in enumerate(held) if pot.low_f <= temp <= pot.high_f)
    return pot, fresh, held[warm:]


def test_a_three_hour_stew_gets_fresh_coals_and_keeps_simmering() -> None:
    pot, fresh, held = followed("simmer", 180, Day(), 5)
    assert fresh
    assert min(held) >= pot.low_f
    assert max(held) <= pot.high_f + 1e-6


def test_a_ninety_minute_roast_in_cold_wind_gets_fresh_coals_and_stays_in_its_band() -> None:
    pot, fresh, held = followed("roast", 90, COLD_WIND, 3, 350)
    assert len(fresh) >= 2
    assert pot.low_f <= min(held)
    assert max(held) <= pot.high_f


@pytest.mark.parametrize("minutes", [20, 45, 60, 90, 150, 240, 360])
def test_a_bake_stays_within_a_pair_of_coals_of_its_aim(minutes) -> None:
    _, _, held = followed("bake", minutes, Day(), 2, 350)
    assert all(abs(temp - 350) <= 25 for temp in held)


def test_wind_brings_the_first_fresh_coals_forward() -> None:
    first = [followed("bake", 90, day, 2, 350)[1][0][0] for day in (Day(), Day(wind="windy"))]
    assert first[1] < first[0]


def test_a_short_bake_needs_none_and_an_hour_does() -> None:
    """Printed: a cook of more than 45 minutes needs fresh coals."""
    its = coals("bake", diameter_in=12, depth="shallow", day=Day(), temp_f=350)
    pot = {"way": "bake", "diameter_in": 12, "depth": "shallow", "day": Day()}
    assert not renewals(its, minutes=45, **pot)
    fresh = renewals(its, minutes=60, **pot)
    assert [more.at_min for more in fresh] == [45]
    assert fresh[0].light_at_min == 25
    assert renewing(fresh, 60)[0].rule == "coals.renew"
    assert renewing((), 60) == ()


def test_fresh_coals_are_divided_as_the_first_ones() -> None:
    its = coals("bake", diameter_in=12, depth="shallow", day=Day(), temp_f=350)
    for more in renewals(its, way="bake", minutes=180, diameter_in=12, depth="shallow", day=Day()):
        assert more.top + more.under == pytest.approx(more.top / its.top * its.total, abs=1.6)


def test_five_or_six_above_and_below_every_half_hour() -> None:
    """Printed for long cooks: add 5 or 6 fresh to top and bottom about every 30 minutes; a hot pot needs fewer."""
    its = coals("roast", diameter_in=12, depth="shallow", day=Day(), temp_f=350)
    fresh = renewals(its, way="roast", minutes=240, diameter_in=12, depth="shallow", day=Day())
    later = fresh[1:-1]
    gaps = [b.at_min - a.at_min for a, b in itertools.pairwise(later)]
    assert all(20 <= gap <= 35 for gap in gaps)
    assert all(3 <= more.top <= 7 for more in later)


def test_open_frying_is_renewed_when_a_quarter_of_the_heat_is_gone() -> None:
    its = coals("fry", diameter_in=12, depth="shallow", day=Day())
    fresh = renewals(its, way="fry", minutes=90, diameter_in=12, depth="shallow", day=Day())
    assert fresh[0].at_min == pytest.approx(50, abs=6)
    assert all(more.top == 0 for more in fresh)
