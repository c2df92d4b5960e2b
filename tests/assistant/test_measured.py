"""Figures as people say them, with the units behind them."""

from __future__ import annotations

import pytest

from assistant.chat.measured import values
from assistant.reader.tokens import TOKEN


def heard(said: str) -> list[tuple[str, object, str]]:
    words = [found[0] for found in TOKEN.finditer(said)]
    return [(value.kind, value.value, value.unit) for value in values(words)]


@pytest.mark.parametrize(
    ("said", "kind", "value"),
    [
        ("14", "number", 14),
        ("twenty five", "number", 25),
        ("half a dozen", "number", 6),
        ("a hundred and ten", "number", 110),
        ("three seventy five", "number", 375),
        ("7,000 ft", "feet", 7000),
        ("7 k feet", "feet", 7000),
        ("seven thousand two hundred feet", "feet", 7200),
        ("a mile high", "feet", 5280),
        ("sea level", "feet", 0),
        ("ten inch", "inches", 10),
        ("12 s", "inches", 12),
        ("twelves", "inches", 12),
        ("30 hours", "hours", 30),
        ("two day", "hours", 48),
        ("a day and a half", "hours", 36),
        ("two and a half days", "hours", 60),
        ("overnight", "hours", 12),
        ("60 quart", "quarts", 60),
        ("double", "factor", 2),
        ("one and a half times", "factor", 1.5),
        ("x 2", "factor", 2),
        ("150 %", "factor", 1.5),
        ("minus 5 degrees", "degrees", -5),
        ("18:30", "clock", 1110),
        ("half past six", "clock", 390),
        ("quarter to seven", "clock", 405),
        ("twenty to eight", "clock", 460),
        ("noon", "clock", 720),
    ],
)
def test_one_value_is_heard(said: str, kind: str, value: float) -> None:
    ((came, figure, _),) = heard(said)
    assert (came, figure) == (kind, pytest.approx(value))


@pytest.mark.parametrize(
    ("said", "unit"),
    [("190 c", "C"), ("45 f", "F"), ("40 degrees", ""), ("10 degrees celsius", "C"), ("6 pm", "pm")],
)
def test_the_letter_behind_a_figure_is_kept(said: str, unit: str) -> None:
    assert heard(said)[0][2] == unit


def test_two_pots_of_ten_inches_are_not_two_hundred_and_ten() -> None:
    assert heard("two ten inch") == [("number", 2, ""), ("inches", 10, "")]


def test_half_four_is_half_past_four_only_where_a_time_is_told() -> None:
    assert heard("at half four")[0][:2] == ("clock", 270)
    assert heard("for half a dozen")[0][:2] == ("number", 6)
