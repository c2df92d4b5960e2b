"""Foods in the method: which words name which ingredient of the list, or a food that only the method names.

A name is looked for whole, then by its head ("the chicken" for chicken breasts), then by what sets it apart
("cheddar" for cheddar cheese). Words that fit several ingredients alike mean all of them.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import cache
from typing import Literal, NamedTuple

from spacy.tokens import Doc

from assistant.reader import words
from assistant.reader.tokens import Finder, Mark, nlp
from rules.foods import catalogue
from rules.foods.names import plain, singular, singulars
from rules.recipe import Ingredient
from rules.roles import DRY, Role, role_of

GROUPS = ("dry", "wet", "spice", "herb", "vegetable", "meat", "bean", "fruit", "nut", "cheese", "green")
Sort = Literal["food", "group", "all", "rest", "unlisted"]
#: Below this a name and a mention are different foods.
ENOUGH = 40


class Mention(NamedTuple):
    """Tokens `start` up to `end` that speak of food: `who` in the list; an `unlisted` food has only its words."""

    sort: Sort
    start: int
    end: int
    who: tuple[int, ...]
    words: str


def single(text: Doc) -> Doc:
    """The same tokens in lower case and singular, so that one spelling of a name finds all."""
    return Doc(
        nlp().vocab,
        words=[singular(plain(token.text) or token.text) for token in text],
        spaces=[True] * len(text),
    )


@cache
def _catalogue_finder() -> Finder:
    names = {singulars(name) for name in catalogue().names()}
    return Finder({name: [name] for name in names if len(name) > 1})


@cache
def _group_finder() -> Finder:
    table = words.groups("refer.toml")
    return Finder({label: table[label] for label in (*GROUPS, "all", "rest")})


@cache
def _set(label: str) -> frozenset[str]:
    return frozenset(words.groups("refer.toml")[label])


@cache
def things() -> frozenset[str]:
    """The words for intermediate things, singular."""
    return frozenset(
        singulars(plain(word)) for group in words.groups("things.toml").values() for word in group
    )


class Known(NamedTuple):
    """An ingredient as the method may call it."""

    index: int
    name: tuple[str, ...]
    head: str
    others: tuple[tuple[str, ...], ...]
    food: str | None
    role: Role


class Foods:
    """The foods of one recipe: those listed, and those the method adds while it is read."""

    def __init__(self, ingredients: Sequence[Ingredient]) -> None:
        self.ingredients = list(ingredients)
        self.known = [self._known(index, ingredient) for index, ingredient in enumerate(ingredients)]
        self._finder: Finder | None = None

    def add(self, ingredient: Ingredient) -> int:
        """A food that only the method names; gives its place in the list."""
        self.ingredients.append(ingredient)
        self.known.append(self._known(len(self.known), ingredient))
        self._finder = None
        return len(self.known) - 1

    def _known(self, index: int, ingredient: Ingredient) -> Known:
        name = tuple(singulars(plain(ingredient.name)).split())
        others = tuple(tuple(singulars(plain(other)).split()) for other in ingredient.alternatives)
        food = ingredient.food or _food_of(ingredient.name)
        return Known(index, name, _head(name), others, food, role_of(ingredient))

    def names(self) -> Finder:
        """Finds the names of the list, whole or by a single telling word."""
        if self._finder is None:
            names: set[str] = set()
            for known in self.known:
                for name in (known.name, *known.others):
                    if name:
                        names.add(" ".join(name))
                        names.update(
                            word for word in name if word.isalpha() and len(word) > 2 and word not in SMALL
                        )
            self._finder = Finder({name: [name] for name in names})
        return self._finder

    def mentions(self, text: Doc) -> list[Mention]:
        """Everything in a text that speaks of food, in order, none overlapping another."""
        singles = single(text)
        marks: list[tuple[int, int, str]] = []
        marks += [(mark.start, mark.end, "group:" + mark.label) for mark in _group_finder().longest(text)]
        marks += [(mark.start, mark.end, "name") for mark in self.names().all(singles)]
        marks += [(mark.start, mark.end, "name") for mark in _catalogue_finder().all(singles)]
        return [self._mention(singles, text, *mark) for mark in _longest(marks)]

    def _mention(self, singles: Doc, text: Doc, start: int, end: int, label: str) -> Mention:
        said = tuple(singles[index].text for index in range(start, end))
        written = text[start:end].text.lower()
        if label.startswith("group:"):
            group = label.removeprefix("group:")
            exact = self.find(said) if group not in ("all", "rest", "dry", "wet") else ()
            if exact and len(exact) == 1 and self.known[exact[0]].name == said:
                return Mention("food", start, end, exact, written)
            if group in ("all", "rest"):
                return Mention("all" if group == "all" else "rest", start, end, (), written)
            return Mention("group", start, end, self.members(group), group)
        found = self.find(said)
        return Mention("food" if found else "unlisted", start, end, found, written)

    def members(self, group: str) -> tuple[int, ...]:
        """The ingredients that a group word means."""
        return tuple(known.index for known in self.known if _belongs(known, group))

    def find(self, said: tuple[str, ...]) -> tuple[int, ...]:
        """The ingredients that some singular words mean; several where the words fit them alike."""
        food = _food_of(" ".join(said))
        scores = [(self._score(known, said, food), known.index) for known in self.known]
        best = max(scores, default=(0, -1))[0]
        if best < ENOUGH:
            return ()
        return tuple(index for score, index in scores if score == best)

    def _score(self, known: Known, said: tuple[str, ...], food: str | None) -> int:
        score = _fit(known.name, known.head, said)
        for other in known.others:
            score = max(score, _fit(other, _head(other), said) - 5)
        if food and food == known.food:
            score = max(score, 90)
        elif food and known.food and score in (40, 42):
            # Two known foods with the same last word are two foods: sweet potato and potato.
            score = 0
        return score


SMALL = frozenset(
    "and or of the for with from your any kind fresh dry dried large small medium white red green black yellow hot cold warm whole raw sweet sour free range extra virgin pure plain all purpose new baby ground light dark half ready cut lean choice variety other more additional some like such good quality high low fat amount ample few taste well topping per cooking seasoned smoked food well-washed self rising not very really brown long thick thin finishing crunchy piece".split()
)


def _head(name: tuple[str, ...]) -> str:
    """The word that names the food: the last one, or the one before a word for a part."""
    if "of" in name:
        name = name[: name.index("of")] or name
    for word in reversed(name):
        if word not in _set("part"):
            return word
    return name[-1] if name else ""


def _fit(name: tuple[str, ...], head: str, said: tuple[str, ...]) -> int:
    """How well some words speak of a name: 100 the same, 0 not at all."""
    if not name or not said:
        return 0
    ours, theirs = set(name), set(said)
    if ours == theirs:
        return 100
    if theirs < ours:
        if said[-1] == name[-1] or head in theirs:
            return 80 + len(theirs)
        telling = theirs - SMALL
        return 60 if telling and name[-1] not in _set("product") and head not in _set("product") else 0
    if ours < theirs:
        if said[-1] == name[-1]:
            return 75
        return 50 if name[-1] in theirs and said[-1] in _set("made") else 0
    if said[-1] == name[-1] and said[-1] == head:
        return 40
    if head in theirs and said[-1] in _set("made") | _set("part") and head != said[-1]:
        return 42
    return 0


@cache
def _food_of(name: str) -> str | None:
    match = catalogue().find(name)
    return match.food.name if match.food and match.how in ("name", "alias") else None


def _belongs(known: Known, group: str) -> bool:
    """Whether an ingredient is one of "the spices", "the dry ingredients"."""
    role, last = known.role, known.name[-1] if known.name else ""
    if group == "dry":
        return role in DRY or role in ("yeast",)
    if group == "wet":
        liquid = role in (
            "milk",
            "cultured",
            "juice",
            "extract",
            "egg",
            "fat",
            "water",
            "syrup",
            "acid",
            "spirits",
            "stock",
            "sauce",
            "shelf milk",
            "drink",
        )
        return liquid or last == "honey"
    roles: dict[str, tuple[Role, ...]] = {
        "spice": ("spice", "salt", "pepper", "herb"), "herb": ("herb",), "vegetable": ("vegetable", "greens"),
        "meat": ("meat", "cured meat"), "fruit": ("fruit",), "cheese": ("cheese",), "green": ("greens", "herb"),
    }  # fmt: skip
    if group == "bean":
        return last == "bean" or "bean" in known.name
    if group == "nut":
        found = catalogue().find(" ".join(known.name)).food
        return bool(found and found.group == "nut")
    return role in roles[group]


def _longest(marks: Iterable[tuple[int, int, str]]) -> list[tuple[int, int, str]]:
    kept: list[tuple[int, int, str]] = []
    for mark in sorted(set(marks), key=lambda mark: (mark[0], -mark[1], mark[2] != "name")):
        if not kept or mark[0] >= kept[-1][1]:
            kept.append(mark)
    return kept


__all__ = ["Foods", "Mark", "Mention", "single", "things"]
