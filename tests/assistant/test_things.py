"""Intermediate things that a clause names or makes."""

from __future__ import annotations

import pytest

from assistant.reader.read import read
from rules.recipe import Action

TEXT = "Pot\n\nIngredients\n\n2 cups flour\n1 cup milk\n1 cup tomato sauce\n\nMethod\n\n1. {}\n"


def last(step: str) -> Action:
    return read(TEXT.format(step)).steps[-1].actions[-1]


@pytest.mark.parametrize(
    ("step", "made"),
    [
        ("Mix the flour and milk to a smooth batter.", "batter"),
        ("Mix the flour and milk until a dough forms.", "dough"),
        ("Make the dough.", "dough"),
        ("Shape into balls.", "ball"),
        ("Pour the batter into the pan.", None),
        ("Chop the flour in a pastry blender.", None),
    ],
)
def test_what_a_deed_gives_is_its_making(step: str, made: str | None) -> None:
    assert last(step).makes == made


@pytest.mark.parametrize(
    ("step", "named"),
    [
        ("Pour the batter into the pan.", "batter"),
        ("Roll out the dough.", "dough"),
        ("Spoon the filling over it.", "filling"),
    ],
)
def test_what_was_made_before_is_named(step: str, named: str) -> None:
    assert named in last(step).things


def test_a_food_of_the_list_is_no_thing() -> None:
    assert "sauce" not in last("Stir in the tomato sauce.").things
