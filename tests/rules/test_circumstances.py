from __future__ import annotations

import pytest

from rules.circumstances import Day, PotOwned, checked
from rules.problem import UsageProblem


def test_a_day_that_can_be_comes_back_unchanged() -> None:
    day = Day(people=9, pots=(PotOwned(diameter_in=14, depth="deep", count=2),), air_f=40, wind="windy")
    assert checked(day) is day


@pytest.mark.parametrize(
    ("day", "sentence"),
    [
        (
            Day(pots=(PotOwned(diameter_in=13),)),
            "--oven 13: camp pots come in 5, 8, 10, 12, 14, 16 inches.",
        ),
        (Day(people=-3), "--people -3: write a whole number from 1 to 200."),
        (Day(temp_f=50), "--temp 50F: write an oven temperature from 200F to 550F (93C to 288C)."),
        (Day(air_f=200), "--air 200F: write an air temperature from -40F to 120F (-40C to 49C)."),
        (Day(scale=0), "--scale 0: write a factor from 0.1 to 20."),
        (Day(trip_hours=-1), "--trip-hours -1: write hours from 0 to 336 (two weeks)."),
        (Day(elevation_ft=30000), "--elevation 30000ft: write a height from -1400ft to 20000ft."),
        (Day(cooler_quarts=1), "--cooler-quarts 1: write a size from 4 to 400 quarts."),
        (Day(trip_air_f=200), "--trip-air 200F: write a temperature from -40F to 130F."),
        (Day(pots=(PotOwned(count=0),)), "--pots 0: write a whole number from 1 to 12."),
    ],
    ids=lambda value: value if isinstance(value, str) else None,
)
def test_a_day_that_cannot_be_names_what_is_allowed(day: Day, sentence: str) -> None:
    with pytest.raises(UsageProblem) as problem:
        checked(day)
    assert str(problem.value) == sentence
