"""Which words of a method speak of which foods of the list."""

from __future__ import annotations

import itertools

import pytest

from assistant.reader.lines import read_line
from assistant.reader.mentions import Foods
from assistant.reader.tokens import doc

LIST = (
    "2 cups flour", "1 tsp salt", "1 tsp cumin", "1 bunch parsley", "1 lb beef shin", "4 slices bacon",
    "1 cup buttermilk", "2 onions", "1 can black beans", "1 red bell pepper", "1 tsp black pepper", "1 cup half & half",
)  # fmt: skip


def meant(text: str) -> list[tuple[str, set[str]]]:
    foods = Foods([item for number, line in enumerate(LIST) for item in read_line(line, line=number)])
    return [
        (found.sort, {foods.ingredients[at].name for at in found.who}) for found in foods.mentions(doc(text))
    ]


@pytest.mark.parametrize(
    ("text", "sort", "names"),
    [
        ("the onion", "food", {"onions"}),
        ("the milk", "food", {"buttermilk"}),
        ("the half and half", "food", {"half & half"}),
        ("the meat", "food", {"beef shin"}),
        ("the dry ingredients", "group", {"flour", "salt", "cumin", "black pepper"}),
        ("the spices", "group", {"salt", "cumin", "black pepper"}),
        ("the peppers", "food", {"red bell pepper"}),
        ("salt and pepper", "food", {"salt"}),
        ("everything", "all", set()),
        ("the remaining ingredients", "rest", set()),
        ("the cinnamon", "unlisted", set()),
    ],
)
def test_words_speak_of_foods(text: str, sort: str, names: set[str]) -> None:
    assert meant(text)[0] == (sort, names)


def test_the_pepper_beside_salt_is_the_spice() -> None:
    assert meant("salt and pepper")[1] == ("food", {"black pepper"})


def test_no_mention_overlaps_another() -> None:
    foods = Foods([item for line in LIST for item in read_line(line, line=0)])
    found = foods.mentions(doc("Add the black beans, black pepper and red bell pepper with half and half."))
    assert all(first.end <= second.start for first, second in itertools.pairwise(found))
    assert len(found) == 4
