"""More of the same food on top, or another food."""

from __future__ import annotations

from assistant.reader.lines import read_line
from rules.recipe import Amount


def stated(text: str) -> list[tuple[str, list[tuple[float, str | None, bool]]]]:
    return [
        (item.name, [(one.low, one.unit, one.plus) for one in item.amounts])
        for item in read_line(text, line=0)
    ]


def test_an_amount_behind_plus_comes_on_top_of_the_first() -> None:
    assert stated("1 1/4 cups buttermilk plus 1 tablespoon") == [
        ("buttermilk", [(1.25, "cup", False), (1, "tablespoon", True)])
    ]


def test_an_amount_behind_plus_with_another_food_is_that_foods() -> None:
    assert stated("4 eggs plus 1 egg yolk") == [
        ("eggs", [(4, None, False)]),
        ("egg yolk", [(1, None, False)]),
    ]


def test_a_vague_amount_on_top_of_another_food_keeps_both_foods() -> None:
    assert [name for name, _ in stated("1 tsp salt plus some pepper")] == ["salt", "pepper"]


def test_more_as_needed_is_no_amount() -> None:
    (found,) = read_line("2 cups stock, plus more as needed", line=0)
    assert found.amounts == (Amount(low=2, high=2, unit="cup"),)
