"""The lines of a method: steps, wrapped ends, sub-headings, remarks."""

from __future__ import annotations

import pytest

from assistant.reader.sections import layout

TEXT = "Squares\n\nIngredients\n\n3 eggs\n\nMethod\n\n{}\n"


def kinds(method: str) -> list[tuple[str, str]]:
    lines = layout(TEXT.format(method)).lines
    return [(line.kind, line.body) for line in lines[8:] if line.body]


def test_every_numbered_line_is_a_step_whatever_it_says() -> None:
    assert kinds("1. Mix it.\n2. Golden crumbs.") == [("step", "Mix it."), ("step", "Golden crumbs.")]


@pytest.mark.parametrize(
    ("line", "kind"),
    [
        ("Beat the eggs.", "step"),
        ("In a bowl, beat the eggs.", "step"),
        ("Tip the eggs into the pot.", "step"),
        ("Note the colour and stir the eggs.", "step"),
        ("Note: fresh eggs are best.", "note"),
        ("Tips", "heading"),
        ("Enjoy!", "note"),
        ("Photo by the river.", "note"),
    ],
)
def test_a_line_asks_for_something_or_only_remarks(line: str, kind: str) -> None:
    assert kinds(f"Mix it.\n\n{line}")[-1] == (kind, line)


def test_a_wrapped_line_goes_on_with_its_step() -> None:
    lines = [
        line for line in layout(TEXT.format("1. Mix the\n   eggs.\n2. Bake.")).lines if line.kind == "step"
    ]
    assert [(line.body, line.fresh) for line in lines] == [
        ("Mix the", True),
        ("eggs.", False),
        ("Bake.", True),
    ]


def test_a_sub_heading_names_what_follows() -> None:
    lines = layout(TEXT.format("Crumbs:\n1. Mix.\n\nGlaze:\n2. Stir.")).lines
    assert [(line.body, line.component) for line in lines if line.kind == "step"] == [
        ("Mix.", "crumbs"),
        ("Stir.", "glaze"),
    ]
