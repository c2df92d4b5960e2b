"""Ingredients made of what was understood."""

from __future__ import annotations

import pytest

from assistant.reader.draft import Draft, food_key
from assistant.reader.pieces import Line
from rules.recipe import Amount

CUP = Amount(low=1, high=1, unit="cup")


def draft(**fields: object) -> Draft:
    line = Line("river line")
    return Draft(line, 0, len(line), **fields)  # type: ignore[arg-type]


def test_the_first_food_has_the_amount_unless_each_has_it() -> None:
    one = draft(names=["salt", "sugar"], amounts=[CUP]).ingredients(text="t", number=3, component=None)
    assert [item.amounts for item in one] == [(CUP,), ()]
    each = draft(names=["salt", "sugar"], amounts=[CUP], each=True).ingredients(
        text="t", number=3, component=None
    )
    assert [item.amounts for item in each] == [(CUP,), (CUP,)]


def test_words_that_say_nothing_are_no_note() -> None:
    read = draft(names=["salt"])
    for text in ("of", "(", " , ", "your", "for the table"):
        read.note(text)
    assert read.notes == ["for the table"]


@pytest.mark.parametrize(
    ("key", "name", "preps"),
    [
        ("ground beef", "beef", ["minced"]),
        ("potato", "potatoes", ["shredded"]),
        ("shredded coconut", "coconut", ["shredded"]),
        (None, "moonbeam flakes", []),
    ],
)
def test_a_preparation_counts_where_it_makes_another_food(
    key: str | None, name: str, preps: list[str]
) -> None:
    assert key == food_key(name, (CUP,), (), ", ".join(preps) or None, preps)
