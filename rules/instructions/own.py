"""The recipe's own sentences: what is left for camp is told in the words of whoever wrote it.

A sentence rebuilt from its deeds may lose what made it right. So a camp step keeps the recipe's sentence, without what
of it was done at home and with camp's words for the kitchen's (`translate.py`); packs and coals are told beside it.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from typing import NamedTuple

from rules.method.actions import actions_of
from rules.recipe import Action, Recipe

#: What stands between two deeds of a sentence.
PARTS = re.compile(r"(?:[,;:]|\band|\bthen)\s*(?:then |and )?$", re.IGNORECASE)
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


def what_is_left(found: Sentence, over: Collection[int]) -> str:
    """A sentence from its first deed on that is left for camp; `over` are the actions that were done at home.

    "Cream the butter and sugar, then beat in the egg" is told from "beat" on.
    """
    says = found.says or ""
    place = 0
    for at, action in found.actions:
        word = re.search(rf"\b{re.escape(action.word)}\b", says[place:], re.IGNORECASE)
        if word is None:
            return says
        if at not in over:
            before = says[: place + word.start()]
            cut = place > 0 and PARTS.search(before) is not None
            return says[place + word.start() :] if cut else says
        place += word.end()
    return says


def in_steps(sentences: list[str]) -> list[str]:
    """The sentences of a paragraph as steps: one step, or one a sentence where the paragraph is a whole method."""
    if len(sentences) > LONGEST_STEP:
        return sentences
    return [" ".join(sentences)] if sentences else []
