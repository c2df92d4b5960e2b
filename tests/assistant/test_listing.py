"""Sub-headings of a list and what they say of the lines under them."""

from __future__ import annotations

import pytest

from assistant.reader.headings import is_optional
from assistant.reader.read import read

LOAF = """# River loaf

## Ingredients

*Cake*

- 225 g butter
- 3 eggs
- Toppings (all optional):
  - chopped walnuts
  - raisins
- 50 g sugar

_Drizzle_

- juice of 2 lemons

**To serve (optional)**

- cream

## Method

1. Mix the butter, sugar and eggs and bake for 40 minutes.
"""


def test_italic_sub_headings_are_components_and_no_ingredients() -> None:
    found = read(LOAF).ingredients
    assert [(item.name, item.component) for item in found if item.from_ == "list"] == [
        ("butter", "cake"),
        ("eggs", "cake"),
        ("walnuts", "toppings"),
        ("raisins", "toppings"),
        ("sugar", "cake"),
        ("lemons", "drizzle"),
        ("cream", "to serve"),
    ]


def test_a_sub_heading_makes_the_lines_under_it_optional_and_no_others() -> None:
    assert [item.name for item in read(LOAF).ingredients if item.optional] == ["walnuts", "raisins", "cream"]


@pytest.mark.parametrize("line", ["*Best with fresh milk.*", "*1 large onion*", "_about 2 cups, chopped_"])
def test_a_sentence_or_an_amount_in_italics_is_no_sub_heading(line: str) -> None:
    text = f"Ingredients\n\n- 2 leeks\n\n{line}\n\n- 3 eggs\n\nMethod\n\n1. Fry the leeks with the eggs."
    assert {item.component for item in read(text).ingredients} == {None}


@pytest.mark.parametrize(
    ("heading", "optional"),
    [
        ("Toppings (all optional):", True),
        ("Optional extras", True),
        ("For the filling", False),
        ("To serve", False),
    ],
)
def test_a_heading_says_by_its_words_that_its_lines_may_be_left_out(heading: str, optional: bool) -> None:
    assert is_optional(heading) is optional


def test_a_food_and_what_it_is_for_is_no_sub_heading() -> None:
    found = read(
        "Squares\n\nIngredients\n\nButter for the dish\n3 eggs\n2 cups milk\n\nMethod\n\n1. Mix and bake it.\n"
    )
    assert [(item.name, item.component) for item in found.ingredients][:3] == [
        ("butter", None),
        ("eggs", None),
        ("milk", None),
    ]


@pytest.mark.parametrize(
    "facts",
    [
        "Total time: 1 hr \u00b7 Serves: 4 to 6 as a side",
        "Prep: 10 min | Serves 4 to 6",
        "Serves: 4-6 / Ready in 30 min",
    ],
)
def test_a_line_of_several_facts_tells_how_many_it_feeds(facts: str) -> None:
    found = read(f"Squares\n\n{facts}\n\nIngredients\n\n3 eggs\n\nMethod\n\n1. Bake it.\n").servings
    assert found is not None
    assert (found.low, found.high) == (4, 6)


def test_what_u_need_and_how_are_headings() -> None:
    found = read("Squares\n\nwhat u need:\n- 3 eggs\n- 1 cup oats\n\nhow:\n1. mix and bake it\n")
    assert [(item.name, item.component) for item in found.ingredients] == [("eggs", None), ("oats", None)]
    assert [step.component for step in found.steps] == [None]
