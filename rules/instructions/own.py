"""The recipe's own sentences: what is left for camp is told in the words of whoever wrote it.

A sentence rebuilt from its deeds may lose what made it right. So a camp step keeps the recipe's sentence, with the
oven and its preheating taken out; packs and coals are told beside it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from rules.method.follow import actions_of
from rules.recipe import Action, Recipe

#: The kitchen's oven in a sentence that is told at camp, and what stands for it there.
OVEN = (
    (re.compile(r"\b(?:in|into) (?:the|a|your) (?:(?:preheated|pre-heated|hot|warm|moderate) )?oven\b", re.IGNORECASE), "in the pot"),
    (re.compile(r"\bfrom the oven\b", re.IGNORECASE), "from the coals"),
    (re.compile(r"\bout of the oven\b", re.IGNORECASE), "off the coals"),
)  # fmt: skip


#: A step of more sentences than this is told sentence by sentence.
LONGEST_STEP = 4


class Sentence(NamedTuple):
    """A sentence of the method with its actions, each with its number; `says` is None where the words are not known."""

    says: str | None
    actions: tuple[tuple[int, Action], ...]


def paragraphs(recipe: Recipe) -> Iterator[list[Sentence]]:
    """The method step by step, each a list of its sentences; a line that goes on belongs to the step above it."""
    found: list[Sentence] = []
    last: int | None = None
    for at, step, action in actions_of(recipe):
        new = last is None or (step != last and not recipe.steps[step].goes_on)
        if new and found:
            yield found
            found = []
        last = step
        if found and action.says is not None and found[-1].says == action.says:
            found[-1] = found[-1]._replace(actions=(*found[-1].actions, (at, action)))
        else:
            found.append(Sentence(action.says, ((at, action),)))
    if found:
        yield found


def in_steps(sentences: list[str]) -> list[str]:
    """The sentences of a paragraph as steps: one step, or one a sentence where the paragraph is a whole method."""
    if len(sentences) > LONGEST_STEP:
        return sentences
    return [" ".join(sentences)] if sentences else []


def at_camp(says: str) -> str:
    """A sentence of the recipe with the pot over coals in place of the oven."""
    for oven, pot in OVEN:
        says = oven.sub(pot, says)
    return says
