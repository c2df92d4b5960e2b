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
from assistant.reader.deeds import lexicon
from assistant.reader.tokens import Finder, nlp
from rules.foods import Food, catalogue
from rules.foods.names import plain, singular, singulars
from rules.recipe import Ingredient
from rules.roles import DRY, Role, role_of

GROUPS = ("dry", "wet", "spice", "herb", "vegetable", "meat", "bean", "fruit", "nut", "cheese", "green")
Sort = Literal["food", "group", "all", "rest", "unlisted"]
#: How well words fit a name: the same, by their food, by the head, by what sets it apart, as a part of it.
SAME, BY_FOOD, LONGER, BY_HEAD, TELLING, OF_IT, AKIN = 100, 90, 75, 80, 60, 50, 40
#: Below this a name and a mention are different foods.
ENOUGH = AKIN
#: A second name counts a little less than the first.
SECOND = 5
LIQUID: frozenset[Role] = frozenset({"water", "stock", "milk", "shelf milk", "juice", "drink", "spirits"})
WET: frozenset[Role] = LIQUID | {"cultured", "extract", "egg", "fat", "syrup", "acid", "sauce"}
#: Amounts in these units wet no pan.
SMALL_UNITS = frozenset(
    {"teaspoon", "tablespoon", "pinch", "dash", "drop", "splash", "drizzle", "knob", "squeeze"}
)
#: Foods of these roles are only meant by their own name: "pepper" is no cayenne pepper.
STRICT: frozenset[Role] = frozenset({"salt", "pepper", "water", "leavener", "fat"})


class Mention(NamedTuple):
    """Tokens `start` up to `end` that speak of food: `who` in the list; an `unlisted` food has only its words."""

    sort: Sort
    start: int
    end: int
    who: tuple[int, ...]
    words: str


class Known(NamedTuple):
    """An ingredient as the method may call it; all words singular."""

    #: its place in the list
    at: int
    name: tuple[str, ...]
    head: str
    others: tuple[tuple[str, ...], ...]
    food: Food | None
    role: Role
    #: it makes a pan wet
    pours: bool

    def is_called(self, said: frozenset[str]) -> bool:
        """Whether some words are a whole name of it."""
        return any(frozenset(name) == said for name in (self.name, *self.others))


class Foods:
    """The foods of one recipe: those listed, and those the method adds while it is read."""

    def __init__(self, ingredients: Sequence[Ingredient]) -> None:
        self.ingredients = list(ingredients)
        self.known = [known_as(index, ingredient) for index, ingredient in enumerate(ingredients)]
        self._found: dict[tuple[str, ...], tuple[int, ...]] = {}
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
                names.update(
                    word for word in name if word.isalpha() and len(word) > 2 and word not in _set("small")
                )
        return names

    def mentions(self, text: Doc) -> list[Mention]:
        """Everything in a text that speaks of food, in order, none overlapping another."""
        singles = single(text)
        marks = [(mark.start, mark.end, mark.label) for mark in _group_finder().longest(text)]
        marks += [(mark.start, mark.end, "") for mark in self._finder.all(singles)]
        marks += [(mark.start, mark.end, "") for mark in _catalogue_finder().all(singles)]
        marks += [(token.i, token.i + 1, "") for token in text if "-" in token.text and len(token.text) > 3]
        found = (self._mention(singles, text, *mark) for mark in _longest(marks))
        return [mention for mention in found if mention is not None]

    def _mention(self, singles: Doc, text: Doc, start: int, end: int, group: str) -> Mention | None:
        said = tuple(singles[index].text for index in range(start, end))
        written = text[start:end].text.lower()
        if group in ("all", "rest"):
            of = end < len(text) and text[end].lower_ == "of" and "ingredient" not in written
            return None if of else Mention("all" if group == "all" else "rest", start, end, (), written)
        if group:
            called = () if group in ("dry", "wet") else self._called(said)
            who = called if group in ("spice", "herb") and called else self.members(group)
            if len(who) == 1 or (len(called) == 1 and self.known[called[0]].name == said):
                return Mention("food", start, end, called if len(called) == 1 else who, written)
            return Mention("group", start, end, who, group)
        found = self.find(said) or self._by_hyphen(said)
        if written.endswith("peppers"):
            # Several peppers are vegetables, whatever else the list calls pepper.
            found = tuple(k.at for k in self.known if said[-1] in k.name and k.role != "pepper") or found
        if not found and not is_food(written):
            return None
        return Mention("food" if found else "unlisted", start, end, found, written)

    def _called(self, said: tuple[str, ...]) -> tuple[int, ...]:
        """The ingredients whose names end with the words of a group: taco seasoning for "the seasoning"."""
        return tuple(known.at for known in self.known if known.name[-len(said) :] == said)

    def _by_hyphen(self, said: tuple[str, ...]) -> tuple[int, ...]:
        """Foods joined by hyphens: the ginger and the garlic of "ginger-garlic"."""
        parts = [self.find(tuple(singular(part) for part in word.split())) for word in said[0].split(" ")]
        joined = len(said) == 1 and len(parts) > 1 and all(parts)
        return tuple(dict.fromkeys(index for part in parts for index in part)) if joined else ()

    def members(self, group: str) -> tuple[int, ...]:
        """The ingredients that a group word means."""
        return tuple(known.at for known in self.known if _belongs(known, group))

    def role_of(self, index: int, mention: Mention) -> Role:
        """The role of an ingredient, or of an unlisted food by its words."""
        if index >= 0:
            return self.known[index].role
        return role_of(Ingredient(line=0, text="", name=mention.words), catalogue().find(mention.words).food)

    def find(self, said: tuple[str, ...]) -> tuple[int, ...]:
        """The ingredients that some singular words mean; several where the words fit them alike."""
        found = self._found.get(said)
        if found is None:
            found = self._found[said] = self._best(said)
        return found

    def _best(self, said: tuple[str, ...]) -> tuple[int, ...]:
        food = food_of(" ".join(said))
        scores = [(_score(known, said, food), known.at) for known in self.known]
        best = max(scores, default=(0, -1))[0]
        return tuple(index for score, index in scores if score == best) if best >= ENOUGH else ()


def known_as(index: int, ingredient: Ingredient) -> Known:
    """How the method may call an ingredient."""
    name = tuple(singulars(plain(ingredient.name)).split())
    others = tuple(tuple(singulars(plain(other)).split()) for other in ingredient.alternatives)
    food = catalogue().find(ingredient.name).food
    if ingredient.food is not None:
        food = next(
            (known for known in (food,) if known and known.name == ingredient.food), None
        ) or catalogue().get(ingredient.food)
    role = role_of(ingredient, food)
    return Known(index, name, head_of(name), others, food, role, _pours(ingredient, role, food))


def _pours(ingredient: Ingredient, role: Role, food: Food | None) -> bool:
    if ingredient.amounts and ingredient.amounts[0].unit in SMALL_UNITS:
        return False
    if role in ("fat", "extract", "syrup", "egg"):
        return False
    name = set(ingredient.name.lower().split())
    tomato = bool(name & {"tomatoes", "tomato", "passata", "salsa"}) and role in ("can", "sauce")
    thick = bool(name & {"paste", "concentrate"})
    return (
        role in LIQUID
        or (tomato and not thick)
        or bool(food and food.is_liquid and role not in ("acid", "sauce"))
    )


def single(text: Doc) -> Doc:
    """The same tokens in lower case and singular, so that one spelling of a name finds all."""
    written = [singular(plain(token.text) or token.text) for token in text]
    return Doc(nlp().vocab, words=written, spaces=[True] * len(written))


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
def thing_words() -> frozenset[str]:
    """The words for intermediate things, singular."""
    return frozenset(
        singulars(plain(word)) for group in words.groups("things.toml").values() for word in group
    )


@cache
def is_food(written: str) -> bool:
    """Whether unlisted words can be food at all: "sprinkle" is a verb, "mixture" a thing."""
    verb = lexicon().get(written)
    if verb is not None and verb.form == "plain" and not verb.food:
        return False
    return catalogue().find(written).food is not None


@cache
def food_of(name: str) -> Food | None:
    """The food that the catalogue has under this very name."""
    match = catalogue().find(name)
    return match.food if match.how in ("name", "alias") else None


def head_of(name: tuple[str, ...]) -> str:
    """The word that names the food: the last one, or the one before a word for a part."""
    if "of" in name:
        name = name[: name.index("of")] or name
    for word in reversed(name):
        if word not in _set("part"):
            return word
    return name[-1] if name else ""


def _score(known: Known, said: tuple[str, ...], food: Food | None) -> int:
    score = _fit(known.name, known.head, said)
    for other in known.others:
        second = _fit(other, head_of(other), said)
        by_a_product = len(said) == 1 and said[0] in _set("product") and second != SAME
        score = max(score, second - SECOND if second >= LONGER and not by_a_product else 0)
    if food is None or known.food is None:
        return score
    if food.name == known.food.name:
        return max(score, BY_FOOD)
    if score < ENOUGH and len(said) == 1 and said[0] in _kinds(known.food):
        # "The beef" is the chuck roast.
        return OF_IT
    if score in (AKIN, AKIN + 2):
        # Two known foods with the same last word are two foods: sweet potato and potato.
        return 0
    strict = role_of(known_ingredient(food.name), food)
    return 0 if score < SAME and strict in STRICT and strict != known.role else score


@cache
def _kinds(food: Food) -> frozenset[str]:
    """The words for the animal that a food comes from: beef for chuck roast."""
    if food.group not in ("red meat", "ground meat", "poultry", "cured meat", "fish", "shellfish"):
        return frozenset()
    written = {word for name in (food.name, *food.aliases) for word in singulars(plain(name)).split()}
    return frozenset(written & _set("animal"))


@cache
def known_ingredient(name: str) -> Ingredient:
    """A bare ingredient of this name, to ask for its role."""
    return Ingredient(line=0, text="", name=name)


def _fit(name: tuple[str, ...], head: str, said: tuple[str, ...]) -> int:
    """How well some words speak of a name: `SAME` down to 0, not at all."""
    if not name or not said:
        return 0
    ours, theirs = set(name), set(said)
    if ours == theirs:
        return SAME
    if theirs < ours:
        if said[-1] == name[-1] or head in theirs:
            return BY_HEAD + len(theirs)
        product = name[-1] in _set("product") or head in _set("product")
        return TELLING if theirs - _set("small") and not product else 0
    if ours < theirs:
        if said[-1] == name[-1]:
            return LONGER
        return OF_IT if name[-1] in theirs and said[-1] in _set("made") else 0
    if said[-1] == name[-1] and said[-1] == head:
        return AKIN
    if head in theirs and head != said[-1] and said[-1] in _set("made") | _set("part"):
        return AKIN + 2
    return 0


def _belongs(known: Known, group: str) -> bool:
    """Whether an ingredient is one of "the spices", "the dry ingredients"."""
    role, last = known.role, known.name[-1] if known.name else ""
    if group == "dry":
        return role in DRY or role == "yeast"
    if group == "wet":
        return role in WET or last == "honey"
    if group == "bean":
        return "bean" in known.name
    if group == "nut":
        return known.food is not None and known.food.group == "nut"
    if group == "green":
        return role == "greens" or (known.food is not None and known.food.form == "leafy" and role != "herb")
    roles: dict[str, tuple[Role, ...]] = {
        "spice": ("spice", "salt", "pepper", "herb"), "herb": ("herb",), "vegetable": ("vegetable", "greens"),
        "meat": ("meat", "cured meat"), "fruit": ("fruit",), "cheese": ("cheese",),
    }  # fmt: skip
    return role in roles[group]


def _longest(marks: Iterable[tuple[int, int, str]]) -> list[tuple[int, int, str]]:
    """Marks from left to right, the longest at each place; of two alike the group's."""
    kept: list[tuple[int, int, str]] = []
    for mark in sorted(set(marks), key=lambda mark: (mark[0], -mark[1], not mark[2])):
        if not kept or mark[0] >= kept[-1][1]:
            kept.append(mark)
    return kept
