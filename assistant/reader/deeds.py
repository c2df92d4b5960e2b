"""The verbs of a method and what they do: `words/verbs.toml` as a lexicon of forms.

A plain form ("stir in") asks for the deed; a form in -ing goes along with another deed; a past form tells what has
been done. Which of them counts at its place in a sentence is decided by `clauses.py`.
"""

from __future__ import annotations

from functools import cache, lru_cache
from typing import Literal, NamedTuple

import msgspec

from assistant.reader import words
from assistant.reader.tokens import Finder, opening
from rules.foods.names import MOST_KEPT
from rules.recipe import Deed

VOWELS = "aeiou"
#: How far an order is looked for [tokens]; how many adverbs may stand before it ("Then very gently fold"); a line of so
#: few words behind a verb that is an adjective as well names food ("Dry oregano").
LOOK_AHEAD, MOST_ADVERBS, FEW = 24, 3, 2
Form = Literal["plain", "ing", "past", "s"]


class DeedWords(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """The verbs of one deed."""

    words: tuple[str, ...]


class VerbTable(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """`verbs.toml`."""

    foods: tuple[str, ...]
    deeds: dict[Deed, DeedWords]
    forms: dict[str, tuple[str, ...]]


class Verb(NamedTuple):
    """One form of a verb: what it does, its plain words, which form this is, whether it is a food as well."""

    deed: Deed
    words: str
    form: Form
    food: bool


@cache
def lexicon() -> dict[str, Verb]:
    """Every form of every verb, by its words in lower case."""
    table = words.load("verbs.toml", VerbTable)
    found: dict[str, Verb] = {}
    for deed, group in table.deeds.items():
        for phrase in group.words:
            first, _, rest = phrase.partition(" ")
            particle = f" {rest}" if rest else ""
            forms: list[tuple[str, Form]] = [(first, "plain"), (ing(first), "ing"), (third(first), "s")]
            forms += [(past, "past") for past in table.forms.get(first, (ed(first),))]
            for written, form in forms:
                found.setdefault(written + particle, Verb(deed, phrase, form, phrase in table.foods))
    return found


def doubles(word: str) -> bool:
    """Whether the last letter is doubled before an ending: chop, stir, but not heat or fold."""
    if len(word) < 3 or word[-1] in f"{VOWELS}wxy" or word[-2] not in VOWELS or word[-3] in VOWELS:
        return False
    return len(word) <= 4 or word in {"refrig", "emulsif"}


def ing(word: str) -> str:
    """The form in -ing: chopping, bringing, baking."""
    if word.endswith("e") and not word.endswith(("ee", "oe", "ye")):
        return word[:-1] + "ing"
    return word + (word[-1] if doubles(word) else "") + "ing"


def ed(word: str) -> str:
    """The regular past form: chopped, baked, fried."""
    if word.endswith("e"):
        return word + "d"
    if word.endswith("y") and word[-2] not in VOWELS:
        return word[:-1] + "ied"
    return word + (word[-1] if doubles(word) else "") + "ed"


def third(word: str) -> str:
    """The form of the third person: chops, mixes, fries."""
    if word.endswith(("s", "x", "z", "ch", "sh")):
        return word + "es"
    if word.endswith("y") and word[-2] not in VOWELS:
        return word[:-1] + "ies"
    return word + "s"


@cache
def finder() -> Finder:
    """Finds every form of every verb in a Doc; the label is the form's words."""
    return Finder({form: [form] for form in lexicon()})


@lru_cache(maxsize=MOST_KEPT)
def starts_with_order(text: str) -> bool:
    """Whether a sentence opens with a plain verb: "Add the flour", "In a bowl, beat the eggs", not "Salt to taste"."""
    return _is_order(_from_the_verb(opening(text, LOOK_AHEAD)))


def _from_the_verb(tokens: list[str]) -> list[str]:
    """The tokens without what may stand before an order: "finely", "then", "in a large bowl,"."""
    orders = words.groups("orders.toml")
    if tokens[:1] and tokens[0] in (*orders["leads"], *orders["forward"]) and "," in tokens:
        tokens = tokens[tokens.index(",") + 1 :]
    first = 0
    while first < min(len(tokens) - 1, MOST_ADVERBS) and (
        tokens[first] in (*orders["soft"], "then")
        or (tokens[first].endswith("ly") and tokens[first] not in lexicon())
    ):
        first += 1
    return tokens[first:]


def _is_order(tokens: list[str]) -> bool:
    """Whether some tokens begin with a plain verb that is no food and no adjective where it stands."""
    orders, small = words.groups("orders.toml"), words.groups("clauses.toml")
    for length in (3, 2, 1):
        verb = lexicon().get(" ".join(tokens[:length]))
        if verb and verb.form == "plain":
            following = tokens[length] if len(tokens) > length else ""
            if verb.food or (verb.words in orders["adjective"] and len(tokens) <= length + FEW):
                return following in (*small["article"], *small["pronoun"])
            # "Zest of one lemon", "zest and juice of a lime" are parts of a food.
            return following != "of" and not (
                following == "and" and tokens[length + 2 : length + 3] == ["of"]
            )
    return False
