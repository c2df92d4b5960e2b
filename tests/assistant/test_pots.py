"""The pots that a sentence names."""

from __future__ import annotations

import pytest

from assistant.chat.beyond.hearing import hear
from assistant.chat.beyond.pots import joined, pots
from rules.circumstances import PotOwned

POTS = [
    ("two 12s", [(12, "shallow", 2)]),
    ("two 12s and a deep 10", [(12, "shallow", 2), (10, "deep", 1)]),
    ("a 12 and a 10", [(12, "shallow", 1), (10, "shallow", 1)]),
    ("a 12 and a deep 10", [(12, "shallow", 1), (10, "deep", 1)]),
    ("a 12 inch and a 14-inch dutch oven", [(12, "shallow", 1), (14, "shallow", 1)]),
    ("one deep twelve inch pot", [(12, "deep", 1)]),
    ("three tens", [(10, "shallow", 3)]),
    ("12 inch deep", [(12, "deep", 1)]),
    ('a 10" oven', [(10, "shallow", 1)]),
]


@pytest.mark.parametrize(("said", "wanted"), POTS, ids=[said for said, _ in POTS])
def test_pots_of_several_kinds_are_named_at_once(said: str, wanted: list[tuple[int, str, int]]) -> None:
    found = [one.pot for one in pots(hear(said, "choose.toml"))]
    assert [(one.diameter_in, one.depth, one.count) for one in found] == wanted


@pytest.mark.parametrize(
    "said", ["12 people", "nine of us", "dinner at 12", "a 48 quart cooler", "13 inch pot", "12"]
)
def test_a_figure_alone_is_no_pot(said: str) -> None:
    assert list(pots(hear(said, "choose.toml"))) == []


def test_the_same_kind_named_twice_is_one_kind_of_two() -> None:
    found = [one.pot for one in pots(hear("a 12 inch, and another 12 inch", "choose.toml"))]
    assert joined(found) == (PotOwned(diameter_in=12, count=2),)
