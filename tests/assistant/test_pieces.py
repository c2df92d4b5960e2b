"""A line taken apart at commas, dashes, points and brackets."""

from __future__ import annotations

import pytest

from assistant.reader.pieces import Line, pieces


@pytest.mark.parametrize(
    ("parts", "text"),
    [
        (["2 onions", "chopped"], "2 onions, chopped"),
        (["2 onions", "chopped"], "2 onions - chopped"),
        (["2 onions", "chopped"], "2 onions (chopped)"),
        (["2 onions", "chopped", "and fried"], "2 onions (chopped) and fried"),
        (["2 - 3 onions"], "2 - 3 onions"),
        (["flour", "2 cups"], "flour - 2 cups"),
        (["flour", "2 cups (240 g)", "sifted"], "flour, 2 cups (240 g), sifted"),
        (["2 tsp. salt"], "2 tsp. salt"),
        (["oats", "Any will do"], "oats. Any will do."),
        (["all-purpose flour"], "all-purpose flour"),
        (["onions", "white and green apart"], "onions, white and green apart)"),
        (["onions", "peeled (or not"], "onions (peeled (or not"),
        (["1 lemon", "juiced (2 tbsp)"], "1 lemon (juiced (2 tbsp))"),
    ],
)
def test_a_line_is_parted_where_its_signs_part_it(parts: list[str], text: str) -> None:
    line = Line(text)
    assert parts == [line.doc[piece.start : piece.end].text for piece in pieces(line, 0, len(line))]


def test_a_piece_knows_the_sign_before_it() -> None:
    line = Line("cream: 1 cup (cold), whipped - optional")
    assert [piece.before for piece in pieces(line, 0, len(line))] == ["", ":", "(", ",", "-"]


def test_words_inside_a_whole_name_are_no_states() -> None:
    line = Line("1 cup whole milk and 1 whole onion")
    assert line.after("size", 2) == 2
    assert line.after("size", 6) == 7
    assert line.text(2, 4) == "whole milk"


def test_amounts_see_letters_with_their_capitals_and_round_brackets() -> None:
    assert Line("1 T [15 ml] Oil").words == ["1", "T", "(", "15", "ml", ")", "oil"]


def test_a_unit_word_that_opens_a_name_is_hidden_from_amounts() -> None:
    assert Line("1 rib roast").words != ["1", "rib", "roast"]
    assert Line("1 rib roast").lower == ["1", "rib", "roast"]
