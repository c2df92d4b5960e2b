"""The look-up of foods by the words of a recipe line (handbook chapter 2, "guess that says so").

From sure to doubtful: the name as written, an alias, a singular; the same without words of state; the longest known
phrase that the name ends with; a spelling slip; the last word alone. What is not found stays unknown.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cache, lru_cache
from typing import Literal

from rules import table, units
from rules.foods.food import Food
from rules.foods.names import MOST_KEPT, plain, singular, singulars, words_of
from rules.foods.slips import SLIP_LETTERS, is_slip
from rules.foods.spellings import Asked, Spelling, before_join, makes_another, spellings, without_states
from rules.recipe import Struct

How = Literal["name", "alias", "phrase", "slip", "head", "none"]

#: Names less alike than this are not looked at for spelling slips; `is_slip` then judges word by word.
LOOK_AT_RATIO = 78.0
#: In these groups a word in front names a variety ("kalamata olives"), not another food.
_VARIETY_GROUPS = frozenset(
    [
        *(
            "alcohol",
            "bread",
            "cured meat",
            "fish",
            "fruit",
            "grain",
            "herb",
            "legume",
            "nut",
            "pasta",
            "poultry",
        ),
        *("red meat", "shellfish", "vegetable"),
    ]
)

#: In these a food in front makes another food of it ("cashew cream", "teff flour"): nothing is guessed.
_MADE_GROUPS = frozenset(["dairy", "fat", "flour", "egg", "sweet", "canned", "sauce"])


class Match(Struct, frozen=True, kw_only=True):
    """A food found, and how surely; `none` where the name stays unknown."""

    food: Food | None = None
    how: How = "none"


NONE = Match()


class Catalogue:
    """All foods, and the ways to find one."""

    def __init__(self, foods: Iterable[Food]) -> None:
        self._foods = {food.name: food for food in foods}
        self._written: dict[str, tuple[Food, How]] = {}
        self._single: dict[str, tuple[Food, How]] = {}
        for food in self._foods.values():
            self._index(food.name, food, "name")
        for food in self._foods.values():
            for alias in food.aliases:
                self._index(alias, food, "alias")
        self._found = lru_cache(maxsize=MOST_KEPT)(self._find)

    def _index(self, name: str, food: Food, how: How) -> None:
        written = plain(name)
        self._written.setdefault(written, (food, how))
        self._single.setdefault(singulars(written), (food, how))

    def __iter__(self) -> Iterator[Food]:
        return iter(self._foods.values())

    def __len__(self) -> int:
        return len(self._foods)

    def get(self, key: str) -> Food:
        """The food with this very name.

        Raises:
            KeyError: when there is none.
        """
        return self._foods[key]

    def names(self) -> tuple[str, ...]:
        """Every name and alias, plain."""
        return tuple(self._written)

    def knows(self, name: str) -> bool:
        """Whether this very name, an alias or its singular is here; no guess."""
        written = plain(name)
        return written in self._written or singulars(written) in self._single

    def find(
        self, name: str, *, unit: str | None = None, state: Iterable[str] = (), prep: str | None = None
    ) -> Match:
        """The food that a recipe line means.

        `unit`, `state` and `prep` are the other words of the line: they decide between two foods with one name ("1
        can corn", "1 tsp thyme", "ginger, grated").
        """
        return self._found(name, Asked(unit=unit, state=tuple(state), prep=prep))

    def _find(self, name: str, asked: Asked) -> Match:
        for spelling in spellings(name, asked):
            found = self._exact(spelling.name)
            if found.food and _fits(spelling, found.food):
                return found
        words = without_states(plain(name).split())
        if makes_another(plain(name).split()):
            return self._slip(name, words) or NONE
        return self._phrase(words) or self._slip(name, words) or self._head(words) or NONE

    def _exact(self, name: str) -> Match:
        found = self._written.get(name) or self._single.get(singulars(name))
        return Match(food=found[0], how=found[1]) if found else NONE

    def _phrase(self, words: list[str]) -> Match | None:
        """The name without the words of a part behind it, or the longest known phrase that ends it."""
        ended = before_join(words)
        shorter = list(ended)
        while len(shorter) > 1 and singular(shorter[-1]) in words_of("part"):
            part = singular(shorter.pop())
            found = self._exact(" ".join(shorter))
            # The leaf of a root or a fruit is another food than the root.
            if found.food and (part != "leaf" or found.food.form == "leafy"):
                return Match(food=found.food, how="phrase")
        for tail in (ended, shorter):
            for start in range(len(tail) - 1):
                found = self._exact(" ".join(tail[start:]))
                if found.food:
                    return Match(food=found.food, how="phrase")
        return None

    def _slip(self, name: str, words: list[str]) -> Match | None:
        """The one name that the letters nearly spell."""
        for spelled in dict.fromkeys((singulars(plain(name)), singulars(" ".join(words)))):
            food = self._nearest(spelled)
            if food:
                return Match(food=food, how="slip")
        return None

    def _nearest(self, asked: str) -> Food | None:
        if len(asked) < SLIP_LETTERS:
            return None
        from rapidfuzz import fuzz, process  # costs 20 ms to load, and most names never need it

        near = process.extract(
            asked, self._single.keys(), scorer=fuzz.ratio, score_cutoff=LOOK_AT_RATIO, limit=8
        )
        meant = {self._single[key][0].name for key, _, _ in near if is_slip(asked, key)}
        if len(meant) == 1:
            return self._foods[meant.pop()]
        return None

    def _head(self, words: list[str]) -> Match | None:
        """The last word alone, where a modifier does not make another food of it."""
        ended = before_join(words)
        while len(ended) > 1 and singular(ended[-1]) in words_of("part") - {"leaf"}:
            ended = ended[:-1]
        if len(ended) < 2:
            found = self._exact(" ".join(ended)) if ended != words else NONE
            return Match(food=found.food, how="head") if found.food else None
        head = singular(ended[-1])
        if head in _heads():
            key = _heads()[head]
            food = self._foods[key] if key else None
            if food is None or (
                food.group in _MADE_GROUPS and any(self._exact(word).food for word in ended[:-1])
            ):
                return None
            return Match(food=food, how="head")
        found = self._exact(head)
        if found.food and found.food.group in _VARIETY_GROUPS:
            return Match(food=found.food, how="head")
        return None


def _fits(spelling: Spelling, food: Food) -> bool:
    if spelling.only_herbs:
        return food.group == "herb"
    return not (units.is_volume(spelling.part) or units.is_mass(spelling.part))


class Head(table.Row, frozen=True, kw_only=True):
    """A last word that tells the food whatever stands before it ("strong flour"), and which food to take.

    Without a food: the word alone tells nothing, though it is a food by itself ("crab cake").
    """

    word: str
    food: str | None = None


@cache
def _heads() -> dict[str, str | None]:
    return {row.word: row.food for row in table.read("food_heads.csv", Head)}


@cache
def catalogue() -> Catalogue:
    """The catalogue of `tables/foods.csv`, read once."""
    return Catalogue(table.read("foods.csv", Food))
