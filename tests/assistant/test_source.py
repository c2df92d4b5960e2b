"""A recipe written out is read back as the same recipe."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.reader.read import read
from assistant.show.source import recipe_source
from rules.recipe import Recipe
from tests.talks import CORPUS

FILES = sorted((CORPUS / "recipes").glob("*.txt"))


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_every_recipe_of_the_corpus_comes_back(path: Path) -> None:
    recipe = read(path.read_text(encoding="utf-8"))
    again = read(recipe_source(recipe))
    assert (again.title, again.family) == (recipe.title, recipe.family)
    assert [step.text for step in again.steps] == [step.text for step in recipe.steps]
    listed = [
        [
            (item.name, item.amounts, item.component, item.prep, item.food)
            for item in one.ingredients
            if item.from_ == "list"
        ]
        for one in (recipe, again)
    ]
    assert listed[0] == listed[1]


def test_a_recipe_without_anything_is_still_a_text() -> None:
    assert recipe_source(Recipe()).startswith("A recipe\n")


def test_what_a_stranger_hides_in_a_line_stays_out_of_the_terminal() -> None:
    assert "\x1b" not in recipe_source(Recipe(title="Stew\x1b[31m"))
