"""What holds for any pot, any temperature, any day."""

from __future__ import annotations

import math

from hypothesis import given, settings
from hypothesis import strategies as st

from rules.circumstances import DIAMETERS_IN, Day
from rules.coals.ask import FOR, coals
from rules.coals.chart import baseline
from rules.coals.cook import cook, temperatures, usual_kg
from rules.coals.counts import WAYS
from rules.coals.counts import coals as counted
from rules.coals.renew import batches
from rules.coals.weather import wind_factor

diameters = st.sampled_from(DIAMETERS_IN)
temps = st.floats(200, 550).map(lambda temp: round(temp, 1))
airs = st.floats(-40, 120).map(round)
winds = st.sampled_from(("calm", "breezy", "windy"))
grounds = st.sampled_from(("dry", "damp", "snow"))
days = st.builds(Day, air_f=airs, wind=winds, ground=grounds, screen=st.booleans())
ways = st.sampled_from(WAYS)


@given(diameters, temps, st.sampled_from(FOR), days, st.integers(1, 360), st.booleans())
@settings(max_examples=150, deadline=None)
def test_every_answer_adds_up(diameter, temp, way, day, minutes, deep) -> None:
    answer = coals(diameter, temp, way, day, minutes=minutes, deep=deep)
    assert answer.top + answer.under == answer.total > 0
    assert answer.fuel.lit == sum(batch.count for batch in answer.fuel.batches)
    assert answer.fuel.reserve == math.ceil(answer.fuel.lit / 4)
    assert answer.fuel.briquettes == answer.fuel.lit + answer.fuel.reserve
    assert all(more.top >= 0 and more.under >= 0 and more.top + more.under > 0 for more in answer.refresh)
    assert all(0 <= more.at_min < minutes for more in answer.refresh)


@given(diameters, temps, temps, days)
def test_hotter_never_takes_fewer(diameter, one, other, day) -> None:
    low, high = sorted((one, other))
    of = [
        counted("bake", diameter_in=diameter, depth="shallow", day=day, temp_f=temp).total
        for temp in (low, high)
    ]
    assert of[0] <= of[1]


@given(temps, days)
def test_a_larger_pot_never_takes_fewer(temp, day) -> None:
    of = [counted("bake", diameter_in=d, depth="shallow", day=day, temp_f=temp).total for d in DIAMETERS_IN]
    assert of == sorted(of)


@given(ways, diameters, airs, airs, winds, grounds)
def test_colder_air_never_takes_fewer(way, diameter, one, other, wind, ground) -> None:
    cold, warm = sorted((one, other))
    of = [
        counted(
            way, diameter_in=diameter, depth="shallow", day=Day(air_f=air, wind=wind, ground=ground)
        ).total
        for air in (cold, warm)
    ]
    assert of[0] >= of[1]


@given(ways, diameters, airs, grounds, st.booleans())
def test_more_wind_never_takes_fewer(way, diameter, air, ground, screen) -> None:
    of = [
        counted(
            way,
            diameter_in=diameter,
            depth="shallow",
            day=Day(air_f=air, wind=word, ground=ground, screen=screen),
        ).total
        for word in ("calm", "breezy", "windy")
    ]
    assert of == sorted(of)


@given(ways, diameters, days)
def test_wetter_ground_never_takes_fewer(way, diameter, day) -> None:
    of = [
        counted(
            way,
            diameter_in=diameter,
            depth="shallow",
            day=Day(air_f=day.air_f, wind=day.wind, ground=ground),
        ).total
        for ground in ("dry", "damp", "snow")
    ]
    assert of == sorted(of)


@given(diameters, temps, st.floats(-1000, 20000))
def test_height_never_changes_a_count(diameter, temp, feet) -> None:
    high = counted("bake", diameter_in=diameter, depth="shallow", day=Day(elevation_ft=feet), temp_f=temp)
    assert high.total == counted("bake", diameter_in=diameter, depth="shallow", day=Day(), temp_f=temp).total


@given(st.sampled_from((8, 10, 12, 14, 16)), st.floats(325, 450))
def test_the_count_between_two_cells_lies_between_them(diameter, temp) -> None:
    low, high = 25 * math.floor(temp / 25), 25 * math.ceil(temp / 25)
    assert baseline(diameter, low).total <= baseline(diameter, temp).total + 1e-9
    assert baseline(diameter, temp).total <= baseline(diameter, high).total + 1e-9


@given(
    st.sampled_from((8, 10, 12, 14, 16)),
    st.sampled_from(("bake", "roast")),
    st.sampled_from((325, 350, 375, 400, 425, 450)),
    st.integers(4, 72).map(lambda n: 5 * n),
    st.builds(Day, air_f=st.integers(0, 95), wind=winds, ground=grounds),
    st.sampled_from((0.5, 0.75, 1.0, 1.5)),
)
@settings(max_examples=60, deadline=None)
def test_the_iron_stays_within_a_pair_of_coals_of_its_aim(diameter, way, temp, minutes, day, fill) -> None:
    """25 °F, from the end of the warm-up, 20 minutes to 6 hours, pots from half to one and a half times the usual load."""
    its = counted(way, diameter_in=diameter, depth="shallow", day=day, temp_f=temp)
    pot = cook(
        way=way,
        coals=its.total,
        exact=its.exact,
        aim_f=its.aim_f,
        diameter_in=diameter,
        depth="shallow",
        air_f=day.air_f,
        faster=wind_factor(diameter, "shallow", its.aim_f, day.air_f, day.wind),
        elevation_ft=0,
        food_kg=usual_kg(diameter) * fill,
        preheat_min=10,
    )
    course = temperatures(pot, minutes=minutes, fresh=batches(pot, minutes))
    away = [abs(point.iron_f - temp) for point in course]
    warm = next((place for place, miss in enumerate(away) if miss <= 25), len(away))
    assert all(miss <= 25 for miss in away[warm:])


@given(
    st.sampled_from((8, 10, 12, 14)),
    st.integers(4, 72).map(lambda n: 5 * n),
    st.builds(Day, air_f=st.integers(0, 95), wind=winds),
    st.sampled_from((0.75, 1.0, 1.5, 1.9)),
    st.sampled_from((0.0, 5000.0, 9000.0)),
)
@settings(max_examples=60, deadline=None)
def test_a_simmer_stays_within_fifteen_degrees_of_the_boil(diameter, minutes, day, fill, feet) -> None:
    its = counted("simmer", diameter_in=diameter, depth="shallow", day=day)
    pot = cook(
        way="simmer",
        coals=its.total,
        exact=its.exact,
        aim_f=its.aim_f,
        diameter_in=diameter,
        depth="shallow",
        air_f=day.air_f,
        faster=wind_factor(diameter, "shallow", its.aim_f, day.air_f, day.wind),
        elevation_ft=feet,
        food_kg=usual_kg(diameter) * fill,
    )
    course = temperatures(pot, minutes=minutes, fresh=batches(pot, minutes))
    assert all(pot.low_f <= point.food_f <= pot.high_f + 1e-6 for point in course)
