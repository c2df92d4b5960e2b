"""Deeds that a sentence tells without a verb for them."""

from __future__ import annotations

import pytest

from assistant.reader.read import read

TEXT = "Pot\n\nIngredients\n\n2 onions\n1 tbsp fish sauce\n1 lime\n1 cup grated cheese\n\nMethod\n\n1. {}\n"


@pytest.mark.parametrize(
    ("step", "deeds"),
    [
        ("Oven at 450F.", ["preheat"]),
        ("Oven at 450F, 25 minutes.", ["preheat", "bake"]),
        ("Into the oven it goes for 45 minutes.", ["bake"]),
        ("Into a greased skillet, 450 F, 14 min.", ["bake"]),
        ("Onions in.", ["add"]),
        ("Cheese on top.", ["top"]),
        ("Fish sauce, lime.", ["add"]),
        ("The onions are ready.", []),
        ("This is a good soup with cheese.", []),
        ("After 20 minutes in the oven it smells of cheese.", []),
    ],
)
def test_a_sentence_without_a_verb_may_ask_all_the_same(step: str, deeds: list[str]) -> None:
    steps = read(TEXT.format(step)).steps
    assert [action.does for told in steps for action in told.actions] == deeds
