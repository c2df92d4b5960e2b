"""What is typed after an option: taken where it has one sense, else refused with what may be typed."""

from __future__ import annotations

from typing import Any

import pytest

from assistant.options import day
from rules.circumstances import Day, PotOwned
from rules.problem import UsageProblem


@pytest.mark.parametrize(
    ("typed", "field", "value"),
    [
        ({"oven": ["12"]}, "pots", (PotOwned(diameter_in=12),)),
        (
            {"oven": ['10"', "14in"], "deep": True},
            "pots",
            (PotOwned(diameter_in=10, depth="deep"), PotOwned(diameter_in=14, depth="deep")),
        ),
        ({"oven": ["12"], "pots": "2"}, "pots", (PotOwned(diameter_in=12, count=2),)),
        ({"people": "9"}, "people", 9),
        ({"temp": "375F"}, "temp_f", 375),
        ({"temp": "350"}, "temp_f", 350),
        ({"temp": "180C"}, "temp_f", 356),
        ({"temp": "180"}, "temp_f", 356),
        ({"air": "45°F"}, "air_f", 45),
        ({"air": "-10 C"}, "air_f", 14),
        ({"air": "60"}, "air_f", 60),
        ({"elevation": "7,000 ft"}, "elevation_ft", 7000),
        ({"elevation": "2100m"}, "elevation_ft", 6890),
        ({"eat": "18:30"}, "eat", "18:30"),
        ({"eat": "6:30 pm"}, "eat", "18:30"),
        ({"eat": "12am"}, "eat", "00:00"),
        ({"eat": "2027-07-03T18:30"}, "eat", "2027-07-03T18:30"),
        ({"eat": "2027-07-03 6pm"}, "eat", "2027-07-03T18:00"),
        ({"zone": "America/Boise"}, "zone", "America/Boise"),
        ({"trip_hours": "2 days"}, "trip_hours", 48),
        ({"cooler_quarts": "45L"}, "cooler_quarts", 47.6),
        ({"wind": "Windy"}, "wind", "windy"),
        ({"ground": "snow"}, "ground", "snow"),
        ({"no_freezer": True}, "freezer", False),
        ({"no_charcoal": True}, "charcoal", False),
        ({"curve": True}, "curve", True),
        ({"units": "metric"}, "units", "metric"),
    ],
    ids=str,
)
def test_an_option_is_taken(typed: dict[str, Any], field: str, value: object) -> None:
    assert (
        value == pytest.approx(getattr(day(typed), field))
        if isinstance(value, float)
        else value == getattr(day(typed), field)
    )


def test_nothing_typed_is_the_usual_day() -> None:
    assert Day() == day({"oven": None, "deep": False, "people": None, "no_freezer": False})


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ({"oven": ["13"]}, "--oven 13: camp pots come in 5, 8, 10, 12, 14 and 16 inches."),
        ({"people": "-3"}, "--people -3: write a whole number from 1 to 200."),
        ({"people": "nine"}, "--people nine: write a whole number from 1 to 200."),
        ({"temp": "50F"}, "--temp 50F: write an oven temperature from 200F to 550F (93C to 288C)."),
        ({"temp": "250"}, "--temp 250: the unit is missing; write 350F or 180C."),
        ({"air": "45X"}, '--air 45X: "X" is no temperature unit; write 45F or 7C.'),
        ({"air": "20"}, "--air 20: the unit is missing; write 45F or 7C."),
        ({"air": "cold"}, "--air cold: this is no temperature; write 45F or 7C."),
        ({"elevation": "2100"}, "--elevation 2100: the unit is missing; write 7000ft or 2100m."),
        ({"eat": "25:99"}, "--eat 25:99: write a time of day from 00:00 to 23:59, or a date and a time as 2027-07-03T18:30."),
        ({"eat": "2027-02-30T18:30"}, "--eat 2027-02-30T18:30: 2027-02-30 is no day of the calendar; write a time of day from 00:00 to 23:59, or a date and a time as 2027-07-03T18:30."),
        ({"zone": "Mars/Base"}, "--zone Mars/Base: write a time zone by its name, as America/Boise or Europe/Oslo."),
        ({"zone": "../../etc/passwd"}, "--zone ../../etc/passwd: write a time zone by its name, as America/Boise or Europe/Oslo."),
        ({"wind": "gale"}, "--wind gale: write calm, breezy or windy."),
        ({"trip_hours": "soon"}, "--trip-hours soon: write hours from 0 to 336, as 30, 30h or 2days."),
        ({"trip_hours": "400"}, "--trip-hours 400: write hours from 0 to 336 (two weeks)."),
        ({"cooler_quarts": "2"}, "--cooler-quarts 2: write a size from 4 to 400 quarts."),
    ],
    ids=str,
)  # fmt: skip
def test_a_refusal_names_what_is_allowed(typed: dict[str, Any], sentence: str) -> None:
    with pytest.raises(UsageProblem) as caught:
        day(typed)
    assert sentence == str(caught.value)
