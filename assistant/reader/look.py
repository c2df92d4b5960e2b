"""A clause as the rules of the deeds see it: its words, places, foods, fire, and what went before."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache

from assistant.reader import words
from assistant.reader.places import Heat, Place
from assistant.reader.scene import Scene
from rules.recipe import Deed


@dataclass(frozen=True)
class Look:
    """A clause as the rules see it: `said` are its words outside of asides, `all` those inside as well."""

    verb: str
    deed: Deed
    said: str
    all: str
    #: the words right after the verb
    after: str
    place: Place | None
    places: tuple[Place, ...]
    roles: frozenset[str]
    heat: Heat | None
    #: a temperature stands in the clause
    warm: bool
    scene: Scene

    def into(self, *kinds: str) -> bool:
        """Whether something goes into a place of these kinds."""
        return any(place.kind in kinds and not place.out for place in self.places)

    def one_of(self, group: str) -> bool:
        """Whether the verb is one of a group."""
        return self.verb in words.groups("doing.toml")[group]

    def says(self, group: str) -> bool:
        """Whether the clause itself says one of a group."""
        return bool(pattern(group).search(self.said))

    def tells(self, group: str) -> bool:
        """Whether the clause says one of a group, its asides included."""
        return bool(pattern(group).search(self.all))


@cache
def pattern(group: str) -> re.Pattern[str]:
    """Finds the phrases of a group of `doing.toml`; one that ends with * is the beginning of a word."""
    phrases = words.groups("doing.toml")[group]
    forms = [
        re.escape(phrase.removesuffix("*")) + (r"\w{0,12}" if phrase.endswith("*") else r"\b")
        for phrase in phrases
    ]
    return re.compile(rf"(?<![\w-])(?:{'|'.join(sorted(forms, key=len, reverse=True))})")
