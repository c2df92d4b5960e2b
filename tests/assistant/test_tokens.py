"""How a cleaned text is cut into words and signs, and how phrases are found in it."""

from __future__ import annotations

import time

import pytest

from assistant.reader.tokens import Finder, Mark, doc


@pytest.mark.parametrize(
    ("tokens", "text"),
    [
        (["350", "F", "."], "350F."),
        (["9", "x", "13", "-", "inch"], "9x13-inch"),
        (["1", "-", "1/2", "cups"], "1-1/2 cups"),
        (["2.5", "dl", "/", "1", "cup"], "2.5dl/1 cup"),
        (["1,5", "l"], "1,5l"),
        ([".5", "tsp"], ".5 tsp"),
        (["(", "14", "oz", ")"], "(14oz)"),
        (["all-purpose"], "all-purpose"),
        (["za'atar", ",", "baker's"], "za'atar, baker's"),
        (["two", "-", "inch"], "two-inch"),
        (["half-and-half"], "half-and-half"),
        (["ham", "-"], "ham-"),
        (["b&b's", "and", "s&p"], "b&b's and s&p"),
        (["10", "°", "C"], "10°C"),
    ],
)
def test_a_text_is_cut_where_a_cook_would(tokens: list[str], text: str) -> None:
    assert tokens == [token.text for token in doc(text)]


@pytest.mark.parametrize(
    "text", ["2 cups (480 ml) river water, boiled", "a", "", "350°F / 180°C", "half-and-half"]
)
def test_a_clean_text_comes_back_whole(text: str) -> None:
    assert text == doc(text).text


def test_a_finder_marks_phrases_whatever_their_capitals() -> None:
    finder = Finder({"size": ["large", "extra large"], "food": ["sweet corn"]})
    text = doc("Extra Large ears of Sweet Corn")
    assert finder.all(text) == [Mark("size", 0, 2), Mark("size", 1, 2), Mark("food", 4, 6)]
    assert finder.longest(text) == [Mark("size", 0, 2), Mark("food", 4, 6)]


@pytest.mark.parametrize("sign", ["(", "1", "a", "1/", "a-", "'", "½"])
def test_half_a_megabyte_of_one_sign_is_cut_in_time(sign: str) -> None:
    """Pins linear time."""
    started = time.perf_counter()
    doc(sign * (500_000 // len(sign)))
    assert time.perf_counter() - started < 20
