"""How a line opens, before its amount."""

from __future__ import annotations

import pytest

from assistant.reader.draft import Draft
from assistant.reader.opening import opening, part_of
from assistant.reader.pieces import Line


def draft(text: str) -> Draft:
    line = Line(text)
    return Draft(line, 0, len(line))


@pytest.mark.parametrize(
    ("rest", "notes", "optional", "text"),
    [
        ("2 cups flour", [], False, "2 cups flour"),
        ("raisins", [], True, "(optional) raisins"),
        ("raisins", [], True, "Optional: raisins"),
        ("flour", ["some"], False, "some flour"),
        ("thyme", ["a few", "sprigs"], False, "a few sprigs of thyme"),
        ("hot sauce", ["a few", "dashes"], False, "a few dashes hot sauce"),
        ("lard", ["small amount of"], False, "small amount of lard"),
        ("oil", ["enough"], False, "- enough oil"),
        ("cloves", ["a few"], False, "a few cloves"),
    ],
)
def test_remarks_before_the_amount_are_passed(rest: str, notes: list[str], optional: bool, text: str) -> None:
    read = draft(text)
    place = opening(read)
    assert (rest, notes, optional) == (read.line.text(place, read.end), read.notes, read.optional)


@pytest.mark.parametrize(
    ("rest", "prep", "text"),
    [
        ("1 lemon", ["juice"], "juice of 1 lemon"),
        ("2 limes", ["zest and juice"], "zest and juice of 2 limes"),
        ("2 limes", ["juice and finely grated zest"], "juice and finely grated zest of 2 limes"),
        ("1 orange", ["finely grated zest"], "finely grated zest of 1 orange"),
        ("3 eggs", ["whites"], "whites of 3 eggs"),
        ("lemon juice", [], "lemon juice"),
        ("juice", [], "juice"),
    ],
)
def test_a_part_of_a_fruit_is_its_preparation(rest: str, prep: list[str], text: str) -> None:
    read = draft(text)
    place = part_of(read, 0)
    assert (rest, prep) == (read.line.text(place, read.end), read.taken.preps)
