"""Counts of things with a size."""

from __future__ import annotations

import pytest

from assistant.reader.containers import contained
from assistant.reader.figures import figure
from assistant.reader.tokens import doc


def read(text: str) -> object:
    words = [token.text if len(token) == 1 else token.lower_ for token in doc(text)]
    found = figure(words, 0)
    assert found is not None
    return contained(words, found)


@pytest.mark.parametrize(
    ("count", "name", "each", "text"),
    [
        (2, "can", (14, "ounce"), "2 (14 oz) cans beans"),
        (2, "can", (14, "ounce"), "2 14-oz cans beans"),
        (2, "can", (14, "ounce"), "2-14 oz cans beans"),
        (1, "can", (14, "ounce"), "14-ounce can beans"),
        (1, "can", (14, "ounce"), "a 14-ounce can beans"),
        (1, "can", (28, "ounce"), "1 28oz large can beans"),
        (2, "can", (400, "gram"), "2 x 400 g tins beans"),
        (1, "bottle", (12, "fluid ounce"), "1 (12 fluid ounce) bottle or can cider"),
        (1, "piece", (2, "inch"), "1 2-inch piece ginger"),
        (1, "head", (2, "pound"), "1 (2-lb) head cabbage"),
        (4, None, (6, "ounce"), "4 (6 oz) trout fillets"),
    ],
)
def test_a_container_has_a_count_and_a_size(
    count: float, name: str | None, each: tuple[float, str], text: str
) -> None:
    main = read(text).amounts[0]  # type: ignore[attr-defined]
    assert (count, name, each) == (main.low, main.unit, (main.package.low, main.package.unit))


def test_a_length_before_a_food_is_its_size() -> None:
    found = read("2 9-inch pie crusts")
    assert (found.amounts[0].low, found.size) == (2, "9-inch")  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    "text", ["2 cans beans", "2 cups beans", "2 (about) cans", "1 cup (240 ml) milk", "2 lb beans"]
)
def test_what_has_no_size_is_none(text: str) -> None:
    assert read(text) is None
