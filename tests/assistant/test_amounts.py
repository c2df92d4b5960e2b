"""The amount grammar: alternates, sums, implied ones; whole lines are held in the corpus."""

from __future__ import annotations

import pytest

from assistant.reader.amounts import amounts
from assistant.reader.tokens import doc
from rules.recipe import Amount


def words(text: str) -> list[str]:
    return [token.text if len(token) == 1 else token.lower_ for token in doc(text)]


@pytest.mark.parametrize(
    ("main", "others", "rest", "text"),
    [
        ((1, "cup"), [(240, "milliliter")], "milk", "1 cup (240 ml) milk"),
        ((1, "cup"), [(240, "milliliter")], "milk", "1 (240 ml) cup milk"),
        ((250, "gram"), [(9, "ounce")], "salt pork", "250g/9oz salt pork"),
        ((1, "sprig"), [(1, "teaspoon")], "", "1 sprig/teaspoon"),
        ((1, "kilogram"), [(2.25, "pound")], "potatoes", "1kg/2lb 4oz potatoes"),
        ((1, "cup"), [(2, "tablespoon")], "flour", "1 cup plus 2 tbsp flour"),
        ((1, "teaspoon"), [(1, "pinch")], "of salt", "1 tsp plus a pinch of salt"),
        ((2, "cup"), [], "or 3 of milk", "2 cups or 3 of milk"),
        ((1.5, "cup"), [], "of milk", "a cup and a half of milk"),
        ((1, "stick"), [], "butter", "(stick) butter"),
        ((2, "cup"), [], "flour", "(2 cups) flour"),
        ((2, None), [], "onions", "2x onions"),
    ],
)
def test_amounts_are_read_up_to_the_name(
    main: tuple[float, str | None], others: list[tuple[float, str]], rest: str, text: str
) -> None:
    said = words(text)
    found = amounts(said, 0)
    assert found is not None
    assert [main, *others] == [(amount.low, amount.unit) for amount in found.amounts]
    assert rest == " ".join(said[found.end :])


def test_a_unit_without_a_number_is_one_only_where_asked_for() -> None:
    said = words("pinch of salt")
    assert amounts(said, 0) is None
    found = amounts(said, 0, implied=True)
    assert found is not None
    assert found.amounts == (Amount(low=1, high=1, unit="pinch"),)
    assert not found.stated


@pytest.mark.parametrize("text", ["cups of flour", "leaf lettuce", "can openers", "stalk"])
def test_a_plural_or_a_part_alone_implies_nothing(text: str) -> None:
    assert amounts(words(text), 0, implied=True) is None


@pytest.mark.parametrize(
    "text", ["5-spice powder", "2% milk", "110 degrees", "40 C", "110F", "21-25 count", "80/20 beef"]
)
def test_figures_of_another_kind_are_no_amount(text: str) -> None:
    assert amounts(words(text), 0) is None


def test_two_measures_of_different_things_do_not_add_up() -> None:
    found = amounts(words("1 cup plus 100 g flour"), 0)
    assert found is not None
    assert [(amount.low, amount.unit) for amount in found.amounts] == [(1, "cup"), (100, "gram")]


def test_each_and_total_are_told() -> None:
    each = amounts(words("1 tsp each salt"), 0)
    total = amounts(words("2 lb total of beef"), 0)
    assert each is not None
    assert total is not None
    assert each.each
    assert total.notes == ("total of",)


def test_brackets_inside_one_another_are_no_amounts_beyond_two() -> None:
    """Pins the bound: read at every depth anew, a line of brackets would take the square of its length."""
    two, three = (tuple(f"1 cup {'( 240 ml ' * depth}{') ' * depth}".split()) for depth in (2, 3))
    assert amounts(two, 0).end == len(two)
    assert amounts(three, 0).end == 2
