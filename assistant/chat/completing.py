"""What may follow in a sentence that is being typed: whole examples at its beginning, then foods, names of kept meals.

Knows no terminal: it is given the text before the cursor and gives the words that may stand there.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from assistant.chat.context import names_of
from assistant.chat.patterns import acts
from rules.recipe import Recipe

#: So many words at once are a help; more are a list.
MOST = 12
#: Before a name: what is opened, forgotten or kept anew.
NAMING = ("open", "forget", "delete", "load")


class Completion(NamedTuple):
    """Words that may stand in the place of the last ones; `start` counts back from the cursor."""

    text: str
    start: int


def completions(before: str, *, recipe: Recipe | None, kept: Iterable[str] = ()) -> list[Completion]:
    """What may follow the text before the cursor, the surest first."""
    found = dict.fromkeys(
        (*_names(before, kept), *_examples(before), *_foods(before, recipe))
        if before.strip()
        else _examples("")
    )
    return list(found)[:MOST]


def _examples(before: str) -> Iterator[Completion]:
    """The examples of the acts that begin as the sentence does."""
    typed = before.lstrip().lower()
    for act in acts().values():
        if act.name != "again" and act.example.lower().startswith(typed) and len(typed) < len(act.example):
            yield Completion(act.example, -len(before.lstrip()))


def _foods(before: str, recipe: Recipe | None) -> Iterator[Completion]:
    """The recipe's foods of which the last word, or the last two, are the beginning."""
    listed = dict.fromkeys(item.name for item in recipe.ingredients) if recipe is not None else {}
    words = before.split(" ")
    for count in (2, 1):
        typed = " ".join(words[-count:]).lower()
        if len(words) < count or len(typed.strip()) < 2:
            continue
        for name in listed:
            starts = [part for part in names_of(name) if part.startswith(typed) and part != typed]
            if starts:
                yield Completion(name, -len(typed))


def _names(before: str, kept: Iterable[str]) -> Iterator[Completion]:
    """The kept meals behind a word that takes a name."""
    verb, _, typed = before.lstrip().partition(" ")
    if verb.lower() in NAMING:
        for name in kept:
            if name.lower().startswith(typed.lower()) and name.lower() != typed.lower():
                yield Completion(name, -len(typed))
