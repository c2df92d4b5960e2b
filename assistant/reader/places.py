"""Where and over what a deed happens: the vessel as written and its kind, the fire, the lid."""

from __future__ import annotations

from functools import cache
from typing import Literal, NamedTuple

from spacy.tokens import Doc

from assistant.reader import words
from assistant.reader.deeds import lexicon
from assistant.reader.tokens import Finder

Kind = Literal["oven", "fridge", "freezer", "pan", "pot", "pressure", "grill", "bowl", "tin"]
Heat = Literal["low", "medium", "high"]
INTO = frozenset(
    {"in", "into", "to", "onto", "on", "over", "inside", "at", "under", "with", "within", "upon"}
)
OUT = frozenset({"from", "off", "of", "out"})
BEFORE = frozenset(
    [
        "large",
        "small",
        "medium",
        "big",
        "another",
        "separate",
        "second",
        "other",
        "same",
        "heavy",
        "deep",
        "shallow",
        "wide",
        "greased",
        "prepared",
        "hot",
        "cold",
        "preheated",
        "clean",
        "buttered",
        "oiled",
        "non-stick",
        "nonstick",
        "cast",
        "iron",
        "cast-iron",
        "glass",
        "square",
        "round",
        "inch",
        "quart",
        "qt",
        "ungreased",
        "lightly",
        "heavy-bottomed",
        "lidded",
        "medium-large",
        "sized",
        "deepish",
        "dry",
        "empty",
        "saute",
        "baking",
        "oven-safe",
        "ovenproof",
        "tall",
        "stock",
        "mixing",
        "metal",
        "plastic",
        "floured",
        "well",
        "flat",
        "lined",
        "x",
        "by",
        "new",
        "frying",
        "oven",
        "roasting",
        "your",
        "first",
        "smaller",
        "bigger",
        "larger",
    ]
)
ARTICLES = frozenset({"a", "an", "the", "your", "each", "one", "two", "this", "that", "its"})


class Place(NamedTuple):
    """A vessel or place: what it is called, its kind, whether the food goes in or out of it, and its tokens."""

    words: str
    kind: Kind
    out: bool
    start: int
    end: int
    #: named with a word that makes it another one ("another pan", "a separate bowl")
    another: bool
    after_preposition: bool


@cache
def _vessels() -> Finder:
    table = words.groups("vessels.toml")
    return Finder({kind: table[kind] for kind in table})


@cache
def _fires() -> Finder:
    table = words.groups("clauses.toml")
    return Finder({level: table[level] for level in ("low", "medium", "high")})


@cache
def _lids() -> Finder:
    table = words.groups("clauses.toml")
    return Finder({state: table[state] for state in ("covered", "uncovered")})


def places(text: Doc) -> list[Place]:
    """Every vessel or place of a text, in order."""
    found = []
    for mark in _vessels().longest(text):
        if _is_order(text, mark.start, mark.end):
            continue
        start = mark.start
        while start > 0 and (
            text[start - 1].lower_ in BEFORE
            or text[start - 1].like_num
            or (text[start - 1].text in ('"', "-") and start > 1 and text[start - 2].like_num)
        ):
            start -= 1
        article = start > 0 and text[start - 1].lower_ in ARTICLES
        lead = text[start - 1 - article].lower_ if start - 1 - article >= 0 else ""
        name = text[start : mark.end].text
        another = bool({"another", "separate", "second", "other", "different"} & set(name.lower().split()))
        found.append(
            Place(
                name,
                mark.label,
                (lead in OUT and lead != "of") or (lead == "of" and _out_of(text, start - 1 - article)),
                start,
                mark.end,
                another,
                lead in INTO | OUT,
            )  # type: ignore[arg-type]
        )
    return found


def _is_order(text: Doc, start: int, end: int) -> bool:
    """Whether a vessel's word is a verb where it stands: "Grill the squash"."""
    verb = lexicon().get(text[start].lower_) if end - start == 1 else None
    if verb is None or verb.form != "plain":
        return False
    before = text[start - 1].lower_ if start else "."
    following = text[end].text if end < len(text) else "."
    return before in {".", ",", ";", "and", "then", ":", "!", "or"} and following not in {
        ".",
        ",",
        ";",
        "and",
    }


def _out_of(text: Doc, index: int) -> bool:
    return index > 0 and text[index - 1].lower_ in ("out", "side", "sides", "bottom")


class Sign(NamedTuple):
    """A word about fire or lid at a token."""

    at: int
    says: str


def fires(text: Doc) -> list[Sign]:
    """How strong the fire is, wherever the text says so: low, medium, high."""
    found = []
    for mark in _fires().longest(text):
        first, last = mark.start, mark.end
        near = {text[index].lower_ for index in range(max(0, first - 2), first)}
        follows = text[last].lower_ if last < len(text) else ""
        if last - first == 1:
            if not (follows in FIRE_WORDS or near & {"on", "over", "to", "at", "very"}):
                continue
            if follows.endswith("sized") or follows in NO_FIRE:
                continue
        found.append(Sign(first, mark.label))
    return found


def lids(text: Doc) -> list[Sign]:
    """Whether the lid is on or off, wherever the text says so: covered, uncovered."""
    return [Sign(mark.start, mark.label) for mark in _lids().longest(text)]


FIRE_WORDS = frozenset({"heat", "flame", "fire", "temperature", "temp", "power"})
NO_FIRE = frozenset({"bowl", "saucepan", "pan", "pot", "skillet", "fat", "speed", "onion", "sauce"})
