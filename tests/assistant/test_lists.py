"""Foods listed over several pieces."""

from __future__ import annotations

import pytest

from assistant.reader.draft import Draft
from assistant.reader.lists import listed
from assistant.reader.pieces import Line, pieces
from rules.recipe import Amount


def read(text: str, *, amount: bool = False) -> tuple[Draft, int]:
    """The draft after its list, and how many pieces are left to others."""
    line = Line(text)
    first, *left = pieces(line, 0, len(line))
    amounts = [Amount(low=1, high=1, unit="cup")] if amount else []
    draft = Draft(line, 0, len(line), names=[line.text(first.start, first.end)], amounts=amounts)
    listed(draft, left)
    return draft, len(left)


@pytest.mark.parametrize(
    ("wanted", "instead", "text"),
    [
        (["beef", "veal", "pork"], [], "beef, veal, and pork"),
        (["ground beef", "ground veal", "ground pork"], [], "ground beef, veal, and pork"),
        (["honey"], ["sorghum syrup", "molasses"], "honey, sorghum syrup, or molasses"),
        (["butter"], ["lard", "bacon fat"], "butter, lard or bacon fat"),
        (["red onions"], ["white onions", "yellow onions"], "red, white, or yellow onions"),
        (["salt", "pepper", "oregano"], [], "salt, pepper, oregano"),
        (["all-purpose flour"], [], "flour, all-purpose"),
    ],
)
def test_a_list_of_foods_is_read_whole(wanted: list[str], instead: list[str], text: str) -> None:
    draft, left = read(text)
    assert (wanted, instead, 0) == (draft.names, draft.alternatives, left)


@pytest.mark.parametrize(
    "text",
    [
        "onions, chopped",
        "onions, peeled and diced",
        "onions, 2 lb",
        "onions, for the pot",
        "oats, quick or old-fashioned",
    ],
)
def test_what_is_no_food_is_left_to_others(text: str) -> None:
    draft, left = read(text)
    assert (len(draft.names), left) == (1, 1)


def test_with_an_amount_a_bare_comma_does_not_add_foods() -> None:
    draft, left = read("salt, pepper", amount=True)
    assert (draft.names, left) == (["salt"], 1)


def test_a_remark_at_the_end_of_a_list_holds_for_it() -> None:
    draft, _ = read("salt, pepper, thyme to taste")
    assert draft.names == ["salt", "pepper", "thyme"]
    assert draft.to_taste
