"""The actions of a method in one row, numbered from 0 over all steps."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from rules.method.graph import STOVE
from rules.recipe import Action, Deed, Recipe, Step, Use

#: Verbs that never fry or simmer.
ONE_MEANING: dict[str, Deed] = {
    "bake": "bake",
    "baking": "bake",
    "wait": "rest",
    "stand": "rest",
    "sit": "rest",
}


def actions_of(recipe: Recipe) -> Iterator[tuple[int, int, Action]]:
    """Every action with its number in the whole method and the number of its step."""
    at = 0
    for number, step in enumerate(recipe.steps):
        for action in step.actions or _as_one(step):
            yield at, number, _by_word(action)
            at += 1


def _by_word(action: Action) -> Action:
    """A verb that can mean one thing only means it, whatever stands before it on the fire."""
    if action.does in STOVE and action.word in ONE_MEANING:
        return replace(action, does=ONE_MEANING[action.word])
    return action


def _as_one(step: Step) -> tuple[Action, ...]:
    """A step whose deeds could not be read: everything that it uses is added."""
    if not step.uses:
        return ()
    return (Action(does="add", word="add", uses=tuple(Use(ingredient=index) for index in step.uses)),)
