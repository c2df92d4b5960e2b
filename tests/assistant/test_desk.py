"""Facts, titles and orders, told from a line's own words."""

from __future__ import annotations

import pytest

from assistant.reader.desk import asks, is_fact, title_of


@pytest.mark.parametrize(
    "line",
    ["Prep time: 10 min", "Serves 4", "For 9 people", "9 servings", "Yield: 2 loaves", "Author: Rowan"],
)
def test_a_fact_of_the_head_is_known(line: str) -> None:
    assert is_fact(line)


@pytest.mark.parametrize("line", ["4 eggs", "For the sauce", "Bake for 40 minutes", "1 cup milk"])
def test_a_food_and_an_order_are_no_facts(line: str) -> None:
    assert not is_fact(line)


def test_a_line_may_say_that_it_is_the_title() -> None:
    assert title_of("Title: Bean Skillet") == "Bean Skillet"
    assert title_of("Subject: biscuits") == "biscuits"
    assert title_of("Sauce: two cups") is None


@pytest.mark.parametrize(
    ("line", "asked"),
    [
        ("Mix it.", True),
        ("Optional: Stir in the nuts.", True),
        ("It smells good. Stir it now.", True),
        ("Don't stir.", True),
        ("It smells good.", False),
        ("Two cups of flour.", False),
    ],
)
def test_some_sentence_of_a_line_may_ask(line: str, asked: bool) -> None:
    assert asks(line) is asked
