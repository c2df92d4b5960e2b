"""A recipe with ingredients changed, taken out or added, every step still pointing at the right ones."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

import msgspec

from rules.recipe import Action, Ingredient, Recipe, Step, Use


def changed(
    recipe: Recipe,
    *,
    instead: Mapping[int, Ingredient | None],
    beside: Iterable[tuple[int, Ingredient]] = (),
) -> Recipe:
    """The recipe with some ingredients replaced (None takes one out) and others added beside one that was there.

    What is added stands at the end of the list and is used wherever the one beside it is, with the same share.
    """
    kept: list[Ingredient] = []
    now: dict[int, list[int]] = {}
    for index, ingredient in enumerate(recipe.ingredients):
        new = instead.get(index, ingredient)
        if new is not None:
            now[index] = [len(kept)]
            kept.append(new)
    for index, ingredient in beside:
        now.setdefault(index, []).append(len(kept))
        kept.append(ingredient)
    steps = tuple(_step(step, now) for step in recipe.steps)
    return msgspec.structs.replace(recipe, ingredients=tuple(kept), steps=steps)


def _step(step: Step, now: Mapping[int, list[int]]) -> Step:
    uses = tuple(index for old in step.uses for index in now.get(old, ()))
    return msgspec.structs.replace(
        step, uses=uses, actions=tuple(_action(action, now) for action in step.actions)
    )


def _action(action: Action, now: Mapping[int, list[int]]) -> Action:
    uses = tuple(
        Use(ingredient=index, share=use.share) for use in action.uses for index in now.get(use.ingredient, ())
    )
    return msgspec.structs.replace(action, uses=uses)
