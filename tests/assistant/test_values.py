"""The numbers of an utterance, and the words that stand for allergens."""

from __future__ import annotations

import pytest

from assistant.chat.values import allergens_of, number


@pytest.mark.parametrize(
    ("said", "value"),
    [
        ("7 k", 7000),
        ("2 thousand", 2000),
        ("seven thousand two hundred", 7200),
        ("three hundred and fifty", 350),
        ("minus 5", -5),
        ("half a dozen", 6),
    ],
)
def test_a_number_is_read_as_people_say_it(said: str, value: float) -> None:
    counted = number(said.split(), 0)
    assert counted is not None
    assert (counted.value, counted.end) == (value, len(said.split()))


def test_kinds_of_food_mean_their_allergens() -> None:
    assert allergens_of("dairy") == ("milk",)
    assert allergens_of("nuts") == ("tree nuts", "peanuts")
    assert allergens_of("flour") == ()
