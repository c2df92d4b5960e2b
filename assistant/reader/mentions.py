"""Foods in the method: which words name which ingredient of the list, or a food that only the method names."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import cache, lru_cache
from typing import Literal, NamedTuple

from spacy.tokens import Doc

from assistant.reader import words
from assistant.reader.deeds import lexicon
from assistant.reader.known import (
    BY_HEAD,
    ENOUGH,
    LIQUID,
    Known,
    Name,
    food_of,
    is_food,
    known_as,
    without_states,
    word_set,
)
from assistant.reader.tokens import Finder, lower, nlp, with_words, written
from rules.foods import catalogue
from rules.foods.names import MOST_KEPT, plain, singular, singulars
from rules.recipe import Ingredient
from rules.roles import DRY, Role, role_of

GROUPS = ("dry", "wet", "spice", "herb", "vegetable", "meat", "bean", "fruit", "nut", "cheese", "green")
Sort = Literal["food", "group", "all", "rest", "unlisted"]
WET: frozenset[Role] = LIQUID | {"cultured", "extract", "egg", "fat", "syrup", "acid", "sauce"}
GROUP_ROLES: dict[str, tuple[Role, ...]] = {
    "spice": ("spice", "salt", "pepper", "herb"), "herb": ("herb",), "vegetable": ("vegetable", "greens"),
    "meat": ("meat", "cured meat"), "fruit": ("fruit",), "cheese": ("cheese",),
}  # fmt: skip
#: Beside "pepper" these make it a vegetable, where the list has one and no salt stands there.
GARDEN = frozenset({"onion", "onions", "celery", "mushrooms", "zucchini", "eggplant", "corn"})
#: Before "pepper" these make it one of several vegetables.
EACH = frozenset({"each", "every", "bell"})
#: Before "pepper" these make it the spice, whatever other pepper the list has.
SPICE_PEPPER = frozenset({"salt", "black", "white", "ground", "cracked"})


class Mention(NamedTuple):
    """Tokens `start` up to `end` that speak of food: `who` in the list; an `unlisted` food has only its words."""

    sort: Sort
    start: int
    end: int
    who: tuple[int, ...]
    words: str


class Foods:
    """The foods of one recipe: those listed, and those the method adds while it is read."""

    def __init__(self, ingredients: Sequence[Ingredient]) -> None:
        self.ingredients = list(ingredients)
        self.known = [known_as(at, ingredient) for at, ingredient in enumerate(ingredients)]
        self._found: dict[Name, tuple[int, ...]] = {}
        self._finder = Finder({name: [name] for name in self._names()})

    def add(self, ingredient: Ingredient) -> int:
        """A food that only the method names; gives its place in the list."""
        self.ingredients.append(ingredient)
        self.known.append(known_as(len(self.known), ingredient))
        self._found.clear()
        return len(self.known) - 1

    def _names(self) -> set[str]:
        """The names of the list, whole and by each telling word."""
        names: set[str] = set()
        for known in self.known:
            for name in filter(None, (known.name, *known.others)):
                names.add(" ".join(name))
                names.update(word for word in name[:-1] if _tells(word) and not _is_verb(word))
                names.update(word for word in name[-1:] if _tells(word))
        return names

    def mentions(self, text: Doc) -> list[Mention]:
        """Everything in a text that speaks of food, in order, none overlapping another."""
        singles = single(text)
        marks = [(mark.start, mark.end, mark.label) for mark in _group_finder().longest(text)]
        marks += [(mark.start, mark.end, "") for mark in self._finder.all(singles)]
        marks += [(mark.start, mark.end, "") for mark in _catalogue_finder().all(singles)]
        marks += [(at, at + 1, "") for at, word in enumerate(written(text)) if len(word) > 3 and "-" in word]
        found = (self._mention(singles, text, *mark) for mark in _longest(marks))
        return [mention for mention in found if mention is not None]

    def _mention(self, singles: Doc, text: Doc, start: int, end: int, group: str) -> Mention | None:
        said = tuple(written(singles)[start:end])
        phrase = text[start:end].text.lower()
        if group in ("all", "rest"):
            of = lower(text)[end : end + 1] == ["of"] and "ingredient" not in phrase
            return None if of else Mention("all" if group == "all" else "rest", start, end, (), phrase)
        if group:
            return self._group(said, start, end, group, phrase)
        found = self.find(said) or self._by_hyphen(said)
        if said[-1] == "pepper":
            before = set(lower(text)[max(0, start - 3) : start])
            near = set(lower(text)[max(0, start - 4) : end + 4])
            several = (
                phrase.endswith("s") or bool(before & EACH) or (bool(near & GARDEN) and "salt" not in near)
            )
            found = self._pepper(found, said, several=several, spice=bool(before & SPICE_PEPPER))
        if not found and not is_food(phrase):
            return None
        return Mention("food" if found else "unlisted", start, end, found, phrase)

    def _group(self, said: Name, start: int, end: int, group: str, written: str) -> Mention:
        called = () if group in ("dry", "wet") else self._called(said)
        who = called if group in ("spice", "herb") and called else self.members(group)
        if len(who) == 1 or (len(called) == 1 and self.known[called[0]].name == said):
            return Mention("food", start, end, called if len(called) == 1 else who, written)
        return Mention("group", start, end, who, group)

    def _called(self, said: Name) -> tuple[int, ...]:
        """The ingredients whose names end with the words of a group: taco seasoning for "the seasoning"."""
        return tuple(known.at for known in self.known if known.name[-len(said) :] == said)

    def _pepper(self, found: tuple[int, ...], said: Name, *, several: bool, spice: bool) -> tuple[int, ...]:
        """Several peppers are vegetables; so is one, where the list has no other and the text no salt beside it."""
        vegetables = tuple(k.at for k in self.known if said[-1] in k.name and k.role == "vegetable")
        if several or (not found and len(said) == 1 and not spice):
            return vegetables or found
        return found

    def _by_hyphen(self, said: Name) -> tuple[int, ...]:
        """Foods joined by hyphens: the ginger and the garlic of "ginger-garlic"."""
        if len(said) > 1 or " " not in said[0]:
            return ()
        parts = [self.find((singular(part),)) for part in said[0].split(" ")]
        return tuple(dict.fromkeys(at for part in parts for at in part)) if all(parts) else ()

    def members(self, group: str) -> tuple[int, ...]:
        """The ingredients that a group word means; "the meat" is the bacon only where there is no other."""
        found = tuple(known.at for known in self.known if _belongs(known, group))
        if group == "meat":
            return tuple(at for at in found if self.known[at].role == "meat") or found
        return found

    def role_of(self, at: int, mention: Mention) -> Role:
        """The role of an ingredient, or of an unlisted food by its words."""
        if at >= 0:
            return self.known[at].role
        return role_of(Ingredient(line=0, text="", name=mention.words), catalogue().find(mention.words).food)

    def find(self, said: Name) -> tuple[int, ...]:
        """The ingredients that some singular words mean; several where the words fit them alike."""
        found = self._found.get(said)
        if found is None:
            found = self._best(said)
            plainer = without_states(said)
            if not found and plainer != said:
                found = self._best(plainer)
            if not found and len(said) == 1 and len(said[0]) > 3:
                found = self._ending_in(said[0])
            self._found[said] = found
        return found

    def _ending_in(self, word: str) -> tuple[int, ...]:
        """The one food whose word ends so: "the milk" of a list that has buttermilk alone."""
        found = tuple(
            known.at
            for known in self.known
            if known.name[-1:] != (word,) and known.name[-1:] and known.name[-1].endswith(word)
        )
        return found if len(found) == 1 else ()

    def _best(self, said: Name) -> tuple[int, ...]:
        food = food_of(" ".join(said))
        scores = [(known.fit(said, food), known.at) for known in self.known if known.may_be(said, food)]
        best = max(scores, default=(0, -1))[0]
        return tuple(at for score, at in scores if score == best) if best >= ENOUGH else ()

    def namesakes(self, said: Name, others: tuple[int, ...]) -> tuple[int, ...]:
        """Further ingredients that the same words fit by the head: the white onions beside the onion."""
        food = food_of(" ".join(said))
        return tuple(k.at for k in self.known if k.at not in others and k.fit(said, food) >= BY_HEAD)


def _tells(word: str) -> bool:
    """Whether one word of a name can stand for the whole."""
    return word.isalpha() and len(word) > 2 and word not in word_set("small")


def _is_verb(word: str) -> bool:
    verb = lexicon().get(word)
    return verb is not None and verb.form == "plain" and not verb.food


def single(text: Doc) -> Doc:
    """The same tokens in lower case and singular, so that one spelling of a name finds all."""
    singles = [_spelling(word) for word in written(text)]
    return with_words(Doc(nlp().vocab, words=singles, spaces=[True] * len(singles)), singles)


@lru_cache(maxsize=MOST_KEPT)
def _spelling(word: str) -> str:
    """A word in lower case and singular; a sign stays as it is."""
    return "and" if word == "&" else singular(plain(word) or word)


@cache
def _catalogue_finder() -> Finder:
    names = {singulars(name) for name in catalogue().names()}
    return Finder({name: [name] for name in names if len(name) > 1})


@cache
def _group_finder() -> Finder:
    table = words.groups("refer.toml")
    return Finder({label: table[label] for label in (*GROUPS, "all", "rest")})


@cache
def thing_words() -> frozenset[str]:
    """The words for intermediate things, singular."""
    return frozenset(
        singulars(plain(word)) for group in words.groups("things.toml").values() for word in group
    )


def _belongs(known: Known, group: str) -> bool:
    """Whether an ingredient is one of "the spices", "the dry ingredients"."""
    role, last = known.role, known.name[-1] if known.name else ""
    food = known.food
    if group == "dry":
        return role in DRY or role == "yeast"
    if group == "wet":
        return role in WET or last == "honey"
    if group == "bean":
        return "bean" in known.name
    if group == "nut":
        return food is not None and food.group == "nut"
    if group == "fruit" and food is not None and food.group == "fruit":
        return True
    if group == "green":
        return role == "greens" or (food is not None and food.form == "leafy" and role != "herb")
    if group == "spice" and role == "herb" and food is not None and food.form == "leafy":
        # Fresh leaves are herbs; dried ones go with the spices.
        return False
    return role in GROUP_ROLES[group]


def _longest(marks: Iterable[tuple[int, int, str]]) -> list[tuple[int, int, str]]:
    """Marks from left to right, the longest at each place; of two alike the group's."""
    kept: list[tuple[int, int, str]] = []
    for mark in sorted(set(marks), key=lambda mark: (mark[0], -mark[1], not mark[2])):
        if not kept or mark[0] >= kept[-1][1]:
            kept.append(mark)
    return kept
