"""Words of size, state and preparation taken off a name."""

from __future__ import annotations

import pytest

from assistant.reader.names import Taken, bare, core_end, known, lead, trail
from assistant.reader.pieces import Line


def name(text: str) -> tuple[str, list[str], list[str]]:
    line, taken = Line(text), Taken()
    start = lead(line, 0, len(line), taken)
    end = trail(line, start, len(line), taken)
    return bare(line, start, end, taken), taken.states, taken.preps


@pytest.mark.parametrize(
    ("food", "states", "preps", "text"),
    [
        ("onion", ["large"], [], "large onion"),
        ("onion", ["large"], ["finely chopped"], "large finely chopped onion"),
        ("onions", [], ["chopped"], "onions chopped"),
        ("onions", [], ["chopped fine"], "onions chopped fine"),
        ("chicken thighs", ["boneless", "skinless"], [], "boneless, skinless chicken thighs"),
        ("brown bread", [], ["sliced"], "brown sliced bread"),
        ("blueberries", ["fresh", "frozen"], [], "fresh or frozen blueberries"),
        ("smooth or wholegrain mustard", [], [], "smooth or wholegrain mustard"),
        ("water", ["hot", "salted"], [], "hot, salted water"),
        ("beef stock", ["hot"], [], "hot beef stock"),
        ("hot sauce", [], [], "hot sauce"),
        ("hot pepper jelly", [], [], "hot pepper jelly"),
        ("whole milk", [], [], "whole milk"),
        ("milk", ["2%"], [], "2% milk"),
        ("ground beef", ["80/20"], [], "80/20 ground beef"),
        ("ground beef", ["90% lean"], [], "90% lean ground beef"),
        ("pie crust", ["9-inch", "unbaked"], [], "9-inch unbaked pie crust"),
        ("black pepper", [], ["freshly ground"], "freshly ground black pepper"),
        ("ground pepper", [], [], "ground pepper"),
        ("butter", ["very cold"], [], "very cold butter"),
        ("potatoes", ["walnut-sized"], [], "walnut-sized potatoes"),
        ("rolled oats", [], [], "rolled oats"),
    ],
)
def test_a_name_is_freed_of_what_is_no_name(
    food: str, states: list[str], preps: list[str], text: str
) -> None:
    assert (food, states, preps) == name(text)


@pytest.mark.parametrize(
    ("food", "text"),
    [
        ("carrots", "carrots cut into coins"),
        ("carrots", "carrots roughly chopped"),
        ("oil", "oil for the pot"),
        ("yolk", "yolk whisked with milk"),
        ("tuna", "tuna in oil"),
        ("cream of tartar", "cream of tartar"),
        ("salsa", "salsa of your choice"),
    ],
)
def test_a_name_ends_before_a_remark_or_a_clause_of_preparation(food: str, text: str) -> None:
    line = Line(text)
    assert food == line.text(0, core_end(line, 0, len(line)))


def test_known_asks_the_catalogue_and_guesses_nothing() -> None:
    assert known("white rice")
    assert known("tomatoes")
    assert not known("moonbeam flakes")
