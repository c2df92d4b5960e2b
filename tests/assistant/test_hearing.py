"""Stretches of time, degrees, and what is left of a sentence."""

from __future__ import annotations

import pytest

from assistant.chat.beyond.hearing import degrees, hear, left_over, phrases, stretch

TABLE = "log.toml"
MINUTES, HOURS = phrases(TABLE).words("minutes"), phrases(TABLE).words("hours")


@pytest.mark.parametrize(
    ("said", "minutes", "behind"),
    [
        ("35 minutes", 35, 2),
        ("an hour and a quarter more", 75, 5),
        ("an hour and ten, then", 70, 4),
        ("2 hours 20", 140, 3),
        ("1h20", 80, 3),
        ("two hours and the top", 120, 2),
        ("half an hour", 30, 3),
    ],
)
def test_a_stretch_of_time_ends_where_it_ends(said: str, minutes: float, behind: int) -> None:
    found = stretch(hear(said, TABLE), 0, MINUTES, HOURS)
    assert found is not None
    assert (found.value, found.end) == (minutes, behind)


@pytest.mark.parametrize("said", ["a minute", "two days", "nine", "hours", "an oven"])
def test_what_is_no_stretch_of_hours_or_minutes_is_none(said: str) -> None:
    assert stretch(hear(said, TABLE), 0, MINUTES, HOURS) is None


@pytest.mark.parametrize(
    ("said", "unit"),
    [("340", ""), ("340 F", "F"), ("170 degrees C", "C"), ("340°F", "F"), ("340 degrees", "")],
)
def test_degrees_keep_their_unit(said: str, unit: str) -> None:
    found = degrees(hear(said, TABLE), 0)
    assert found is not None
    assert (found.unit, found.end) == (unit, len(hear(said, TABLE).words))


def test_what_is_left_over_is_whole_words_without_small_ones() -> None:
    hearing = hear("well, it took 35 minutes, and we were nine, and so on", TABLE)
    place = hearing.words.index("took")
    assert (
        left_over(hearing, [(place, place + 3)], phrases(TABLE).words("light")) == "we were nine, and so on"
    )


def test_a_mark_between_letters_parts_words_and_between_figures_does_not() -> None:
    assert hear("forty-five", TABLE).words == ("forty", "five")
    assert hear("12-inch", TABLE).text == "12-inch"
