"""Turns of pot and lid."""

from __future__ import annotations

import pytest

from rules.circumstances import Day
from rules.coals.turning import turn_every, turning


@pytest.mark.parametrize(
    ("way", "aim", "day", "minutes"),
    [
        ("bake", 350, Day(), 10),
        ("roast", 400, Day(), 10),
        ("bake", 300, Day(), 15),
        ("bake", 300, Day(wind="breezy"), 10),
        ("simmer", 212, Day(), None),
        ("fry", 360, Day(), None),
    ],
)
def test_bakes_are_turned_every_ten_minutes_or_fifteen_when_calm_and_low(way, aim, day, minutes) -> None:
    assert minutes == turn_every(way, aim, day)


def test_a_turn_says_why() -> None:
    assert turning(10).rule == "coals.turn"
    assert "10 minutes" in turning(10).because
