"""A step with everything found in it: lines joined, measures that are no vessels, labels, times told once."""

from __future__ import annotations

import pytest

from assistant.reader.lines import read_line
from assistant.reader.mentions import Foods
from assistant.reader.sections import Line
from assistant.reader.sheet import Sheet, paragraphs

FOODS = Foods(
    [item for text in ("2 cups flour", "1 cup water", "1 onion") for item in read_line(text, line=0)]
)


def line(number: int, body: str, *, fresh: bool = True, text: str = "") -> Line:
    return Line(number=number, text=text or body, body=body, kind="step", fresh=fresh)


def sheet(body: str, text: str = "") -> Sheet:
    return Sheet(paragraphs([line(0, body, text=text)])[0], FOODS)


def test_a_wrapped_line_joins_its_step_and_keeps_its_number() -> None:
    first, second = paragraphs([line(3, "Mix the"), line(4, "flour.", fresh=False), line(5, "Bake.")])
    assert (first.text, second.text) == ("Mix the flour.", "Bake.")
    assert [first.line_at(offset) for offset in (0, 7, 8, 13)] == [0, 0, 1, 1]


@pytest.mark.parametrize(
    ("body", "vessels"),
    [
        ("Add a glass of water.", []),
        ("Beat in the flour a cup at a time.", []),
        ("Add 1/3 cup water.", []),
        ("Pour it into a glass.", ["glass"]),
        ("Mix in a bowl.", ["bowl"]),
    ],
)
def test_a_measure_is_no_vessel(body: str, vessels: list[str]) -> None:
    assert [place.name for place in sheet(body).places] == vessels


def test_a_time_is_told_once() -> None:
    found = sheet("Fry the onion for 5 minutes and rest 10 minutes.")
    (first, second) = found.times_in(0, len(found.text))
    found.told.add(first.start)
    assert found.times_in(0, len(found.text)) == [second]


@pytest.mark.parametrize(
    ("text", "label"),
    [
        ("1. **Fry the onion.** Heat a pan and fry the onion until it is golden.", 4),
        ("1. **Heat the oven to 350.** Heat a pan and fry the onion until golden.", 0),
        ("1. **Wait.** Heat a pan and fry the onion until it is golden.", 0),
        ("1. Fry the onion. Heat a pan and fry the onion until it is golden.", 0),
    ],
)
def test_a_label_in_bold_says_again_what_is_told_behind_it(text: str, label: int) -> None:
    assert sheet(text.replace("*", "").removeprefix("1. "), text).label == label


def test_a_step_may_be_done_the_night_before() -> None:
    assert sheet("The night before: mix the flour.").ahead
    assert not sheet("Mix the flour.").ahead
