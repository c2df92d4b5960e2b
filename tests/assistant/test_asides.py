"""What a line says beside its amount and its name."""

from __future__ import annotations

import pytest

from assistant.reader.asides import aside
from assistant.reader.draft import Draft
from assistant.reader.pieces import Line
from rules.recipe import Amount, Package


def read(text: str, *, bracket: bool = False, main: Amount | None = None) -> Draft:
    line = Line(text)
    draft = Draft(line, 0, len(line), names=["river trout"], amounts=[main] if main else [])
    aside(draft, 0, len(line), bracket=bracket)
    return draft


@pytest.mark.parametrize(
    "text", ["chopped", "peeled and diced", "cut into strips", "casings removed", "zest only", "and sliced"]
)
def test_work_is_a_preparation(text: str) -> None:
    assert read(text).taken.preps == [text.removeprefix("and ")]


@pytest.mark.parametrize("text", ["softened", "at room temperature", "frozen", "bone-in"])
def test_a_condition_is_a_state(text: str) -> None:
    assert read(text).taken.states == [text]


def test_remarks_of_option_and_taste_are_flags_and_the_rest_is_read_on() -> None:
    draft = read("optional, to taste, chopped", bracket=True)
    assert (draft.optional, draft.to_taste, draft.taken.preps) == (True, True, ["chopped"])
    assert not read("plus more to serve, if desired").optional


@pytest.mark.parametrize("text", ["or pike", "or pike if there is none"])
def test_or_names_a_substitute(text: str) -> None:
    assert read(text).alternatives == ["pike"]


def test_a_substitute_brings_its_amount() -> None:
    draft = read("or 2 lb pike", main=Amount(low=3, high=3))
    assert [(amount.low, amount.unit) for amount in draft.amounts] == [(3, None), (2, "pound")]


def test_an_amount_in_a_bracket_is_the_size_of_a_container() -> None:
    draft = read("15 oz", bracket=True, main=Amount(low=2, high=2, unit="can"))
    assert draft.amounts == [
        Amount(low=2, high=2, unit="can", package=Package(low=15, high=15, unit="ounce")),
        Amount(low=15, high=15, unit="ounce", each=True),
    ]


def test_an_amount_without_a_container_is_the_same_said_anew() -> None:
    draft = read("about 300 g", bracket=True, main=Amount(low=3, high=3))
    assert draft.amounts[1:] == [Amount(low=300, high=300, unit="gram", approx=True)]


def test_a_bare_count_behind_a_comma_is_no_amount_where_one_is_stated() -> None:
    draft = read("2 of them peeled", main=Amount(low=3, high=3))
    assert draft.amounts == [Amount(low=3, high=3)]
    assert draft.notes == ["2 of them peeled"] or draft.taken.preps == ["2 of them peeled"]


def test_juice_from_fruit_counts_the_fruit() -> None:
    assert read("from 2 limes").amounts == [Amount(low=2, high=2, unit="lime")]


def test_a_bracket_with_a_known_food_is_another_name() -> None:
    assert read("aubergine", bracket=True).alternatives == ["aubergine"]
    assert read("our own", bracket=True).notes == ["our own"]


def test_the_size_of_pieces_is_no_amount() -> None:
    draft = read("cut into 1-inch pieces (about)", main=Amount(low=1, high=1))
    assert draft.amounts == [Amount(low=1, high=1)]
