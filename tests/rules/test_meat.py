"""Which meat is a joint, and which comes in pieces. The words are common practice, no source."""

from __future__ import annotations

import msgspec
import pytest

from rules.foods import Item
from rules.meat import are_pieces, is_joint
from tests.build import amount, items, line, recipe


def item(name: str, count: float, unit: str | None = None, prep: str | None = None) -> Item:
    return items(recipe(msgspec.structs.replace(line(name, amount(count, unit)), prep=prep)))[0]


@pytest.mark.parametrize(
    ("name", "prep", "joint"),
    [
        ("chuck roast", None, True),
        ("pork shoulder", "trimmed", True),
        ("brisket", None, True),
        ("pork shoulder", "cut into 2-inch cubes", False),
        ("leg of lamb", "diced", False),
        ("stewing beef", None, False),
        ("hamburger", None, False),
    ],
)
def test_a_joint_is_named_as_one_and_left_whole(name: str, prep: str | None, joint: bool) -> None:
    assert is_joint(item(name, 3, "pound", prep)) is joint


@pytest.mark.parametrize(
    ("count", "unit", "pieces"), [(4, None, True), (2, None, False), (4, "pound", False)]
)
def test_meat_that_is_counted_comes_in_pieces(count: float, unit: str | None, pieces: bool) -> None:
    assert are_pieces(item("lamb shanks", count, unit)) is pieces
