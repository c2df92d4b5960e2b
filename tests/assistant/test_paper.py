"""The size of the print."""

from __future__ import annotations

from typing import Any

import pytest

from assistant.show.card import chapters
from assistant.show.paper import LARGEST_PT, SMALLEST_PT, print_size
from tests.assistant.dishes import DAY, TEN, plan_of


def shown(dish: str = "peach-cobbler") -> dict[str, Any]:
    return chapters(plan_of(dish), DAY)


@pytest.mark.parametrize("dish", TEN)
def test_the_print_is_readable_and_no_larger_than_it_need_be(dish: str) -> None:
    assert SMALLEST_PT <= print_size(shown(dish)) <= LARGEST_PT


@pytest.mark.parametrize("chapter", ["camp_steps", "home_steps", "cold", "questions", "packs"])
def test_more_to_print_is_never_printed_larger(chapter: str) -> None:
    longer = shown()
    longer[chapter] = [*longer[chapter], *longer[chapter]]
    assert print_size(longer) < print_size(shown())


def test_little_is_printed_large_and_much_small() -> None:
    empty = {key: [] for key in shown()} | {"fire": None}
    assert print_size(empty) == LARGEST_PT
    assert print_size(empty | {"camp_steps": ["word " * 20_000]}) == SMALLEST_PT
