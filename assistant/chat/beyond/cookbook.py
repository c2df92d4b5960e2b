"""Which recipe a dish's name means: one that is kept, one that ships, the one that is talked about, or a file."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import NamedTuple

from assistant.chat.beyond.chooser import Meals
from assistant.chat.slips import likeness, nearest
from rules.circumstances import Day
from rules.problem import Problem
from rules.recipe import Recipe

#: A name shares so many of its words with the recipe's, of a hundred.
LEAST_ALIKE = 85.0

#: Recipes that come with coalside, by their names; each is read when it is asked for.
Shipped = Mapping[str, Callable[[], Recipe]]


class Dish(NamedTuple):
    """A recipe under its name, with what the cook had settled about it where it is kept."""

    name: str
    recipe: Recipe
    day: Day = Day()


class Cookbook:
    """Every recipe that can be named. `open_file` reads a file, None where files cannot be read."""

    def __init__(
        self,
        meals: Meals | None,
        shipped: Shipped | None = None,
        open_file: Callable[[str], Recipe] | None = None,
    ) -> None:
        self._meals = meals
        self._shipped = shipped or {}
        self._open_file = open_file
        #: Titles of kept recipes by their names, so that a sentence does not open every one of them.
        self._titles: dict[str, str | None] = {}

    def find(self, said: str) -> Dish | None:
        """The recipe whose name is most like what was said; a kept one before one that ships, of equals the shorter."""
        if self._open_file is not None and "." in said.strip(".") and " " not in said:
            try:
                return Dish(said, self._open_file(said))
            except Problem:
                return None
        said = self._spelled(said)
        scored = [(self._alike(said, names), key) for key, names in self._names()]
        best = max(scored, key=lambda one: (one[0], one[1][0] == "kept", -len(one[1][1])), default=None)
        return self._opened(best[1]) if best and best[0] >= LEAST_ALIKE else None

    def names(self) -> tuple[str, ...]:
        """What can be named, the kept ones first."""
        return (*self._kept(), *self._shipped)

    def _kept(self) -> tuple[str, ...]:
        """The names of what is kept; a store that cannot be opened keeps nothing."""
        try:
            return self._meals.names() if self._meals else ()
        except Problem:
            return ()

    def _names(self) -> Iterator[tuple[tuple[str, str], tuple[str, ...]]]:
        """Each recipe's key with the names that it goes by."""
        for name in self._kept():
            title = self._title(name)
            yield ("kept", name), tuple(one for one in (name, title) if one)
        for name in self._shipped:
            yield ("shipped", name), (name,)

    def _title(self, name: str) -> str | None:
        if name not in self._titles and self._meals is not None:
            try:
                self._titles[name] = self._meals.get(name).recipe.title
            except Problem:  # kept by a later version: its name is all that can be read
                self._titles[name] = None
        return self._titles.get(name)

    def _alike(self, said: str, names: tuple[str, ...]) -> float:
        """How much of what was said is in one of the names, 0 to 100."""
        words = set(_words(said))
        return max(
            (likeness(" ".join(_words(said)), " ".join(_words(name))) if words & set(_words(name)) else 0.0)
            for name in names
        )

    def _spelled(self, said: str) -> str:
        """The words of a name with their slips put right, where they are slips of words in known names."""
        known = frozenset(word for name in self._all_names() for word in _words(name))
        return " ".join(word if word in known else nearest(word, known) or word for word in _words(said))

    def _all_names(self) -> Iterator[str]:
        for _, names in self._names():
            yield from names

    def _opened(self, key: tuple[str, str]) -> Dish:
        where, name = key
        if where == "kept" and self._meals is not None:
            kept = self._meals.get(name)
            return Dish(kept.name, kept.recipe, kept.day)
        return Dish(name, self._shipped[name]())


def _words(name: str) -> list[str]:
    """The words of a name, plain and in the singular: "Buttermilk Biscuits", "a biscuit"."""
    plain = "".join(sign if sign.isalnum() else " " for sign in name.lower())
    return [word.removesuffix("s") if len(word) > 3 else word for word in plain.split() if word not in _SMALL]


_SMALL = frozenset(
    ["the", "a", "an", "some", "of", "my", "our", "for", "with", "and", "good", "usual", "that"]
)
