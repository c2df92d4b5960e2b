"""Clock times as people say them."""

from __future__ import annotations

import pytest

from assistant.chat.clocks import clock, clock_of
from assistant.chat.values import Value


@pytest.mark.parametrize(
    ("said", "minutes", "half"),
    [
        ("half past six", 390, ""),
        ("quarter to seven", 405, ""),
        ("ten past six in the evening", 370, "pm"),
        ("6 : 45 am", 405, "am"),
        ("seven o'clock", 420, ""),
        ("1730 hours", 1050, "24"),
        ("0730", 450, "24"),
        ("noon", 720, "24"),
    ],
)
def test_a_time_of_day_is_heard(said: str, minutes: float, half: str) -> None:
    heard = clock(said.split(), 0)
    assert heard is not None
    assert (heard.value, heard.unit) == (minutes, half)


@pytest.mark.parametrize("said", ["1730", "seven", "25 : 99", "2575 hours"])
def test_what_may_be_something_else_is_no_sure_time(said: str) -> None:
    assert clock(said.split(), 0) is None


@pytest.mark.parametrize(
    ("minutes", "unit", "meal", "clock"),
    [
        (390, "", None, "18:30"),
        (390, "am", None, "06:30"),
        (390, "pm", None, "18:30"),
        (480, "", "breakfast", "08:00"),
        (60, "", "lunch", "13:00"),
        (690, "", "lunch", "11:30"),
        (1110, "24", None, "18:30"),
        (720, "am", None, "00:00"),
    ],
)
def test_the_meal_tells_which_half_of_the_day(
    minutes: float, unit: str, meal: str | None, clock: str
) -> None:
    assert clock_of(Value("clock", minutes, 0, 1, unit), meal=meal) == clock


@pytest.mark.parametrize(
    ("figure", "clock"), [(7, "19:00"), (7.3, "19:30"), (730, "19:30"), (1830, "18:30"), (99, None)]
)
def test_a_bare_figure_may_be_a_time(figure: float, clock: str | None) -> None:
    assert clock_of(Value("number", figure, 0, 1)) == clock
