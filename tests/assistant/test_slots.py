"""Which figures may fill which slot."""

from __future__ import annotations

import pytest

from assistant.chat.slots import air_f, is_fat, oven_f
from assistant.chat.values import Value


def degrees(value: float, unit: str = "") -> Value:
    return Value("degrees", value, 0, 1, unit)


@pytest.mark.parametrize(
    ("value", "unit", "fahrenheit"),
    [
        (375, "", 375),
        (375, "F", 375),
        (190, "C", 374),
        (190, "", 374),
        (220, "", 428),
        (250, "", 250),
        (42, "", None),
        (600, "", None),
        (20, "C", None),
    ],
)
def test_a_baking_temperature_is_one_that_ovens_have(
    value: float, unit: str, fahrenheit: float | None
) -> None:
    assert oven_f(degrees(value, unit)) == fahrenheit


@pytest.mark.parametrize(
    ("value", "unit", "is_metric", "fahrenheit"),
    [
        (40, "", False, 40),
        (8, "", True, 46),
        (8, "C", False, 46),
        (-5, "C", False, 23),
        (350, "", False, None),
        (90, "C", False, None),
    ],
)
def test_an_air_temperature_is_one_that_people_camp_in(
    value: float, unit: str, is_metric: bool, fahrenheit: float | None
) -> None:
    assert air_f(degrees(value, unit), is_metric=is_metric) == fahrenheit


def test_fats_are_told_from_other_foods() -> None:
    assert is_fat("butter")
    assert is_fat("olive oil")
    assert not is_fat("milk")
    assert not is_fat("gravel")
