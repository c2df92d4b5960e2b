"""What a sentence is understood against: the foods of the recipe, the day so far, the sentence before."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from typing import Protocol

import msgspec

from assistant.reader.tokens import Doc, Finder, Mark
from rules.circumstances import Day
from rules.foods import catalogue
from rules.recipe import Recipe

#: The longest names come first; a name of more words is no name that people say.
MOST_NAME_WORDS = 5


class Done(Protocol):
    """An act that was understood."""

    @property
    def act(self) -> str:
        """Its name."""
        ...

    @property
    def slots(self) -> Mapping[str, object]:
        """Its slots."""
        ...


class Context(msgspec.Struct, frozen=True, kw_only=True):
    """What was said and planned before."""

    recipe: Recipe = Recipe()
    day: Day = Day()
    #: the baking temperature of the plan [°F], and for how many it is
    temp_f: float | None = None
    people: int | None = None
    #: the diameter of the pot that is planned with [in]
    pot_in: int | None = None
    #: the act before this one, and its slots
    last: str | None = None
    last_slots: Mapping[str, object] = {}
    #: names of meals that are kept
    kept: tuple[str, ...] = ()

    def after(self, done: Sequence[Done]) -> Context:
        """The context behind acts of the same sentence."""
        if not done:
            return self
        return msgspec.structs.replace(self, last=done[-1].act, last_slots=done[-1].slots)

    def food_marks(self, line: Doc) -> list[Mark]:
        """Every food that an utterance may name: those of the recipe and those of the catalogue."""
        names = {name for item in self.recipe.ingredients for name in names_of(item.name)}
        return [*_catalogue_finder().all(line), *_finder(tuple(sorted(names))).all(line)]

    @property
    def known(self) -> frozenset[str]:
        """Words of foods: they are no slips of the pen."""
        return _food_words().union(*(item.name.split() for item in self.recipe.ingredients))


def names_of(name: str) -> tuple[str, ...]:
    """A food's name, and its last words that may stand for it: "ground beef", "beef"."""
    words = name.split()[-MOST_NAME_WORDS:]
    return tuple(" ".join(words[start:]) for start in range(len(words)))


@cache
def _finder(names: tuple[str, ...]) -> Finder:
    forms = {form for name in names for form in _forms(name)}
    return Finder({"food": sorted(forms - _NO_FOODS)})


@cache
def _catalogue_finder() -> Finder:
    return _finder(tuple(name for name in catalogue().names() if len(name.split()) <= MOST_NAME_WORDS))


@cache
def _food_words() -> frozenset[str]:
    return frozenset(word for name in catalogue().names() for word in name.split())


#: Names in the catalogue that are other things in a talk.
_NO_FOODS = frozenset(["ice", "coals", "roast", "mix", "dry mix", "fresh", "stick", "sticks"])


def _forms(name: str) -> tuple[str, ...]:
    """The name, and its plural or singular by the rules of spelling."""
    if name.endswith("ies"):
        return name, f"{name[:-3]}y"
    if name.endswith(("oes", "shes", "ches")):
        return name, name[:-2]
    if name.endswith("s"):
        return name, name[:-1]
    if name.endswith("y") and name[-2:-1] not in "aeiou":
        return name, f"{name[:-1]}ies"
    if name.endswith(("o", "sh", "ch", "x")):
        return name, f"{name}es", f"{name}s"
    return name, f"{name}s"
