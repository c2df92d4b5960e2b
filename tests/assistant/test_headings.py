"""Which words open which part of a recipe, and what a sub-heading calls its part."""

from __future__ import annotations

import pytest

from assistant.reader import headings


@pytest.mark.parametrize(
    ("heading", "part"),
    [
        ("Ingredients", "ingredients"),
        ("INGREDIENTS (9 people)", "ingredients"),
        ("What you'll need", "ingredients"),
        ("what u need", "ingredients"),
        ("Zutaten / Ingredients", "ingredients"),
        ("My Method", "method"),
        ("How to make it:", "method"),
        ("Notes", "notes"),
        ("Equipment", "tools"),
        ("For the sauce", None),
        ("Sandbar squares", None),
    ],
)
def test_the_words_of_a_heading_open_a_part(heading: str, part: str | None) -> None:
    assert headings.part_of(heading) == part


@pytest.mark.parametrize(
    ("line", "found"),
    [
        ("Method: Mix all.", ("method", "Mix all.")),
        ("METHOD. - Wash the barley.", ("method", "Wash the barley.")),
        ("INGREDIENTS: 2 eggs", ("ingredients", "2 eggs")),
        ("Prep: 10 min", None),
        ("Sauce: 2 eggs", None),
    ],
)
def test_a_line_may_hold_its_own_heading(line: str, found: tuple[str, str] | None) -> None:
    assert headings.inline_part(line) == found


@pytest.mark.parametrize(
    ("heading", "name"),
    [
        ("For the Sauce:", "sauce"),
        ("To make the dough", "dough"),
        ("Crust ingredients", "crust"),
        ("Filling (optional)", "filling"),
        ("Step 2: Topping", "topping"),
        ("Ingredients for 4 people", None),
        ("Shopping/ingredients", None),
    ],
)
def test_a_sub_heading_names_the_part_that_it_opens(heading: str, name: str | None) -> None:
    assert headings.component_name(heading) == name


@pytest.mark.parametrize(("heading", "optional"), [("Toppings (all optional):", True), ("Topping", False)])
def test_a_sub_heading_may_leave_its_lines_out(heading: str, optional: bool) -> None:
    assert headings.is_optional(heading) is optional
