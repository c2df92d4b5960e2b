"""What a sentence is understood against."""

from __future__ import annotations

import pytest

from assistant.chat.acts import Meant
from assistant.chat.context import Context, names_of
from assistant.reader.tokens import doc
from rules.recipe import Ingredient, Recipe


def named(said: str, *names: str) -> set[str]:
    recipe = Recipe(ingredients=tuple(Ingredient(line=0, text=name, name=name) for name in names))
    line = doc(said)
    return {line[mark.start : mark.end].text for mark in Context(recipe=recipe).food_marks(line)}


def test_a_food_of_the_recipe_is_known_though_no_catalogue_has_it() -> None:
    assert named("leave out the zorbel paste", "zorbel paste") == {"zorbel paste", "paste"}
    assert named("leave out the zorbel paste") == set()


@pytest.mark.parametrize("said", ["peaches", "peach", "sweet potatoes", "sweet potato", "cherries", "cherry"])
def test_foods_are_known_in_one_and_in_many(said: str) -> None:
    assert said in named(f"no {said} please")


def test_coals_and_ice_are_no_foods() -> None:
    assert named("coals and ice") == set()


def test_a_long_name_is_also_called_by_its_last_words() -> None:
    assert names_of("freshly ground black pepper") == (
        "freshly ground black pepper",
        "ground black pepper",
        "black pepper",
        "pepper",
    )


def test_within_a_sentence_the_act_before_is_the_last_one() -> None:
    context = Context(last="coals")
    assert context.after([]).last == "coals"
    assert context.after([Meant(act="leave out", slots={"food": "salt"})]).last == "leave out"
