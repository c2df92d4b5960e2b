"""Figures, ranges and sizes."""

from __future__ import annotations

import pytest

from assistant.reader.figures import figure, phrase, size
from assistant.reader.tokens import doc


def words(text: str) -> list[str]:
    return [token.text if len(token) == 1 else token.lower_ for token in doc(text)]


@pytest.mark.parametrize(
    ("low", "high", "approx", "text"),
    [
        (2, 3, False, "2-3 cups"),
        (2, 3, False, "2 to 3 cups"),
        (2, 3, False, "between 2 and 3 cups"),
        (2, 3, True, "about 2 or 3 cups"),
        (0.25, 0.5, False, "1/4 to 1/2 cup"),
        (1, 1.5, False, "1-1 1/2 cups"),
        (1.5, 1.5, False, "1-1/2 cups"),
        (1.5, 2, False, "1 1/2-2 cups"),
        (3, 3, True, "3 or so onions"),
        (3, 3, True, "approx. 3 onions"),
        (4, 4, False, "at least 4 onions"),
        (3, 3, False, "3 to 2 cups"),
    ],
)
def test_a_figure_is_a_number_or_a_range(low: float, high: float, approx: bool, text: str) -> None:
    found = figure(words(text), 0)
    assert found is not None
    assert (low, high, approx) == (found.low, found.high, found.approx)


def test_a_figure_of_absurd_size_is_none() -> None:
    assert figure(["999999999"], 0) is None


@pytest.mark.parametrize(
    ("low", "name", "again", "text"),
    [
        (14.5, "ounce", 0, "14.5 oz can"),
        (8, "ounce", 0, "8-ounce can"),
        (400, "gram", 1, "400g/14oz tin"),
        (9, "inch", 0, "9-inch crust"),
    ],
)
def test_a_size_is_a_figure_with_a_measure(low: float, name: str, again: int, text: str) -> None:
    found = size(words(text), 0)
    assert found is not None
    assert (low, name, again) == (found.package.low, found.package.unit, len(found.again))


@pytest.mark.parametrize("text", ["2 cans", "a cup", "cup", "2 large"])
def test_a_count_is_no_size(text: str) -> None:
    assert size(words(text), 0) is None


def test_the_longest_phrase_counts() -> None:
    assert phrase(["firmly", "packed", "cup"], 0, "modifier") == 2
    assert phrase(["walnut-sized"], 0, "modifier") == 1
    assert phrase(["walnut"], 0, "modifier") == 0
