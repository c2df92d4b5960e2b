"""What a method may call an ingredient, and how well some words fit: the whole name, the head, what sets it apart."""

from __future__ import annotations

from functools import cache, lru_cache
from typing import NamedTuple

from assistant.reader import words
from assistant.reader.deeds import lexicon
from rules.foods import Food, catalogue
from rules.foods.names import MOST_KEPT, plain, singulars
from rules.recipe import Ingredient
from rules.roles import Role, role_of

Name = tuple[str, ...]
#: How well words fit a name: the same, by their food, by the head, as a longer name, by what sets it apart, as made of
#: it, as akin to it.
SAME, BY_FOOD, BY_HEAD, LONGER, TELLING, OF_IT, AKIN = 100, 90, 80, 75, 60, 50, 40
#: The food's other name counts less than a word of another's own: dripping is the beef dripping and not the suet.
ANOTHER_NAME = 79
#: Below this a name and a mention are different foods.
ENOUGH = AKIN
#: A second name counts a little less than the first.
SECOND = 5
LIQUID: frozenset[Role] = frozenset({"water", "stock", "milk", "shelf milk", "juice", "drink", "spirits"})
#: Amounts in these units wet no pan.
SMALL_UNITS = frozenset(
    {"teaspoon", "tablespoon", "pinch", "dash", "drop", "splash", "drizzle", "knob", "squeeze"}
)
#: Foods of these roles are only meant by their own name: "pepper" is no cayenne pepper.
STRICT: frozenset[Role] = frozenset({"salt", "pepper", "water", "leavener", "fat"})
FLESH = frozenset({"red meat", "ground meat", "poultry", "cured meat", "fish", "shellfish"})


class Known(NamedTuple):
    """An ingredient as the method may call it; all words singular."""

    #: its place in the list
    at: int
    name: Name
    head: str
    others: tuple[Name, ...]
    food: Food | None
    role: Role
    #: it makes a pan wet
    pours: bool
    #: every word by which it can be meant
    words: frozenset[str]

    def may_be(self, said: Name, food: Food | None) -> bool:
        """Whether some words can speak of it at all: quicker than how well."""
        if not self.words.isdisjoint(said):
            return True
        return food is not None and self.food is not None and food.name == self.food.name

    def fit(self, said: Name, food: Food | None) -> int:
        """How well singular words speak of it; `food` is the catalogue's food for those words."""
        score = max((self._fit_of_second(other, said) for other in self.others), default=0)
        score = max(score, fit(self.name, self.head, said))
        if food is None or self.food is None:
            return score
        by_last_word = len(said) == 1 and said == self.name[-1:]
        if food.name == self.food.name and not by_last_word:
            return max(score, ANOTHER_NAME if self.words.isdisjoint(said) else BY_FOOD)
        if score < ENOUGH and len(said) == 1 and said[0] in kinds_of(self.food):
            # "The beef" is the chuck roast.
            return OF_IT
        if score == LONGER and said[-1] in word_set("distinct"):
            # Confectioners' sugar is not the sugar.
            return 0
        if score in (AKIN, AKIN + 2):
            # Two known foods with the same last word are two foods: sweet potato and potato.
            return 0
        if said[-1] == "peppercorn" and said[-1] == self.name[-1]:
            return score
        strict = role_of(Ingredient(line=0, text="", name=food.name), food)
        return 0 if score < SAME and strict in STRICT and strict != self.role else score

    def _fit_of_second(self, other: Name, said: Name) -> int:
        score = fit(other, head_of(other), said)
        by_a_product = len(said) == 1 and said[0] in word_set("product") and score != SAME
        return score - SECOND if score >= LONGER and not by_a_product else 0


def known_as(at: int, ingredient: Ingredient) -> Known:
    """How the method may call an ingredient."""
    name = singular_words(ingredient.name)
    food = catalogue().find(ingredient.name).food
    if ingredient.food is not None and (food is None or food.name != ingredient.food):
        food = catalogue().get(ingredient.food)
    role = role_of(ingredient, food)
    others = tuple(singular_words(other) for other in ingredient.alternatives)
    said = frozenset(name).union(*others, kinds_of(food) if food else ())
    return Known(at, name, head_of(name), others, food, role, _pours(ingredient, role, food), said)


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


def singular_words(name: str) -> Name:
    """The plain singular words of a name."""
    return tuple(singulars(plain(name.replace("&", " and "))).split())


@cache
def word_set(label: str) -> frozenset[str]:
    """A group of `refer.toml`."""
    return frozenset(words.groups("refer.toml")[label])


@lru_cache(maxsize=MOST_KEPT)
def without_states(said: Name) -> Name:
    """The words without those that tell what was done with the food: melted, frying, marinated."""
    kept = tuple(word for word in said if word not in word_set("state") and not _is_done(word))
    return kept or said


def _is_done(word: str) -> bool:
    verb = lexicon().get(word)
    return verb is not None and verb.form in ("past", "ing")


@lru_cache(maxsize=MOST_KEPT)
def food_of(name: str) -> Food | None:
    """The food that the catalogue has under this very name."""
    match = catalogue().find(name)
    return match.food if match.how in ("name", "alias") else None


@lru_cache(maxsize=MOST_KEPT)
def is_food(written: str) -> bool:
    """Whether unlisted words can be food at all: "sprinkle" is a verb, "mixture" a thing."""
    verb = lexicon().get(written)
    if verb is not None and verb.form == "plain" and not verb.food:
        return False
    return catalogue().find(written).food is not None


@cache
def kinds_of(food: Food) -> frozenset[str]:
    """The words for the kind that a food is of: beef for chuck roast, pasta for macaroni, stock for broth."""
    if food.group == "pasta":
        return frozenset({"pasta", "noodle"})
    if food.group == "stock":
        return frozenset({"stock", "broth", "bouillon"})
    if food.group not in FLESH:
        return frozenset()
    every = {"poultry": {"bird"}, "fish": {"fish"}, "shellfish": {"seafood"}}.get(food.group, set())
    written = {word for name in (food.name, *food.aliases) for word in singular_words(name)}
    return frozenset(written & word_set("animal") | every)


def head_of(name: Name) -> str:
    """The word that names the food: the last one, or the one before a word for a part."""
    if "of" in name:
        name = name[: name.index("of")] or name
    for word in reversed(name):
        if word not in word_set("part"):
            return word
    return name[-1] if name else ""


def fit(name: Name, head: str, said: Name) -> int:
    """How well some words speak of a name: `SAME` down to 0, not at all."""
    if not name or not said:
        return 0
    ours, theirs = set(name), set(said)
    if ours == theirs:
        return SAME
    if theirs < ours:
        if said[-1] == name[-1] or head in theirs:
            return BY_HEAD + len(theirs)
        product = name[-1] in word_set("product") or head in word_set("product")
        return TELLING if theirs - word_set("small") and not product else 0
    if ours < theirs:
        if said[-1] == name[-1]:
            return LONGER
        return OF_IT if name[-1] in theirs and said[-1] in word_set("made") else 0
    if said[-1] == name[-1] and said[-1] == head:
        return AKIN
    if head in theirs and head != said[-1] and said[-1] in word_set("made") | word_set("part"):
        return AKIN + 2
    return 0
