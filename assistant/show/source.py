"""A recipe written out as a text that is read back as the same recipe: its own lines, under plain headings.

Nothing is worded anew: a line of the list stands as the cook wrote it, with the alternatives and notes in it.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.show.plain import printable
from rules.recipe import Recipe


def recipe_source(recipe: Recipe) -> str:
    """The text of a recipe: title, servings, the list with its parts, the method."""
    return printable("\n".join(_lines(recipe))).strip() + "\n"


def _lines(recipe: Recipe) -> Iterator[str]:
    yield recipe.title or "A recipe"
    yield ""
    if recipe.servings is not None:
        low, high = recipe.servings.low, recipe.servings.high
        yield f"Serves {low:g}" if low == high else f"Serves {low:g} to {high:g}"
        yield ""
    yield "Ingredients"
    component, line = None, -1
    for item in recipe.ingredients:
        if item.from_ != "list" or item.line == line:
            continue
        if item.component != component and item.component:
            yield ""
            yield f"For the {item.component}:"
        component, line = item.component, item.line
        yield f"- {item.text.strip()}"
    yield ""
    yield "Method"
    number = 0
    for step in recipe.steps:
        number += not step.goes_on
        yield step.text.strip() if step.goes_on else f"{number}. {step.text.strip()}"
