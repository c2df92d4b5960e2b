"""Numbers as recipes write them."""

from __future__ import annotations

import pytest

from assistant.reader.numbers import fraction, number
from assistant.reader.tokens import doc


def words(text: str) -> list[str]:
    return [token.lower_ for token in doc(text)]


@pytest.mark.parametrize(
    ("value", "read", "text"),
    [
        (2, 1, "2 cups"),
        (1.5, 2, "1 1/2 cups"),
        (1.5, 3, "1-1/2 cups"),
        (1.5, 3, "1 and 1/2 cups"),
        (1.5, 4, "one and a half cups"),
        (2.75, 4, "2 & three quarters cups"),
        (0.5, 1, "1/2 cup"),
        (0.5, 2, "half a cup"),
        (0.5, 3, "half of an onion"),
        (0.25, 4, "a quarter of a pound"),
        (0.75, 3, "three-quarters cup"),
        (0.5, 3, "1 / 2 cup"),
        (1.5, 1, "1,5 dl"),
        (0.125, 1, "0,125 l"),
        (1200, 1, "1,200 g"),
        (1000000, 1, "1,000,000 g"),
        (0.5, 1, ".5 cup"),
        (12, 2, "a dozen eggs"),
        (6, 3, "half a dozen eggs"),
        (24, 2, "2 dozen eggs"),
        (2, 3, "a couple of onions"),
        (25, 3, "twenty-five olives"),
        (1, 1, "a bay leaf"),
        (10.75, 2, "10 3/4 oz"),
    ],
)
def test_a_number_is_read_with_the_place_after_it(value: float, read: int, text: str) -> None:
    found = number(words(text), 0)
    assert found is not None
    assert (value, read) == (pytest.approx(found.value), found.end)


@pytest.mark.parametrize(
    "text",
    [
        "cups",
        "1/0 cup",
        "80/20 beef",
        "a few sprigs",
        "a little oil",
        "half and half",
        "1.2.3",
        "½",
        "",
        "-1",
    ],
)
def test_what_is_no_number_is_none(text: str) -> None:
    assert number(words(text), 0) is None


def test_a_fraction_above_one_stands_alone() -> None:
    found = fraction(["3/2", "cups"], 0)
    assert found is not None
    assert found.value == 1.5
    mixed = number(["1", "9/13"], 0)
    assert mixed is not None
    assert mixed.value == 1
