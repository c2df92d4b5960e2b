"""Unit words, whatever their spelling."""

from __future__ import annotations

import pytest

from assistant.reader.measures import misspelt, spellings, unit
from assistant.reader.tokens import doc
from rules import units

#: The units that the published JSON promises.
PROMISED = [
    "teaspoon",
    "tablespoon",
    "cup",
    "pint",
    "quart",
    "gallon",
    "milliliter",
    "centiliter",
    "deciliter",
    "liter",
    "gram",
    "kilogram",
    "ounce",
    "pound",
    "stick",
    "pinch",
    "dash",
    "drop",
    "handful",
    "clove",
    "slice",
    "piece",
    "can",
    "jar",
    "package",
    "bag",
    "box",
    "bottle",
    "bunch",
    "sprig",
    "stalk",
    "head",
    "leaf",
    "cube",
    "sheet",
    "knob",
    "splash",
    "drizzle",
    "inch",
    "centimeter",
]


def words(text: str) -> list[str]:
    return [token.text if len(token) == 1 else token.lower_ for token in doc(text)]


@pytest.mark.parametrize(
    ("name", "read", "text"),
    [
        ("tablespoon", 1, "T butter"),
        ("teaspoon", 1, "t salt"),
        ("teaspoon", 2, "tsp. salt"),
        ("cup", 1, "C flour"),
        ("fluid ounce", 4, "fl. oz. rum"),
        ("fluid ounce", 2, "fluid ounces rum"),
        ("can", 1, "tins beans"),
        ("pound", 1, "# potatoes"),
        ("inch", 1, '" ginger'),
        ("tablespoon", 2, "table spoons oil"),
        ("salt-spoonful", 1, "salt-spoonfuls of mace"),
    ],
)
def test_a_unit_is_found_with_the_place_after_it(name: str, read: int, text: str) -> None:
    found = unit(words(text), 0)
    assert found is not None
    assert (name, read) == (found.unit.id, found.end)


@pytest.mark.parametrize("text", ["flour", "", "canned beans", "D flour", "coal"])
def test_other_words_are_no_units(text: str) -> None:
    assert unit(words(text), 0) is None


@pytest.mark.parametrize(
    "written", ["teasopon", "tabelspoon", "tablspoons", "tablespooon", "mililiters", "kilogrm"]
)
def test_a_slip_in_the_name_of_a_measure_is_read_as_meant(written: str) -> None:
    assert misspelt([written], 0) is not None


@pytest.mark.parametrize(
    "written", ["spices", "peaches", "steaks", "olives", "grains", "pounded", "tomatoes", "cupcake"]
)
def test_a_food_is_no_slip_of_a_unit(written: str) -> None:
    assert misspelt([written], 0) is None


@pytest.mark.parametrize("name", PROMISED)
def test_every_promised_unit_has_a_row(name: str) -> None:
    assert name in {known.id for known in spellings().values()}


def test_no_spelling_stands_for_two_units() -> None:
    rows = {known.id: known for known in spellings().values()}.values()
    written = [spelling for row in rows for spelling in (*row.words, *row.letters)]
    assert len(written) == len(set(written))


@pytest.mark.parametrize(
    "name",
    [known.id for known in {row.id: row for row in spellings().values()}.values() if known.kind == "mass"],
)
def test_the_reader_and_the_rules_agree_on_what_weighs(name: str) -> None:
    assert units.kind(name) == "mass"
