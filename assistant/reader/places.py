"""Where and over what a deed happens: the vessel as written and its kind, the fire, the lid."""

from __future__ import annotations

import re
from functools import cache
from typing import Literal, NamedTuple, cast

from spacy.tokens import Doc

from assistant.reader import words
from assistant.reader.deeds import lexicon
from assistant.reader.tokens import Finder, Mark, lower

Kind = Literal["oven", "fridge", "freezer", "pan", "pot", "pressure", "grill", "bowl", "tin"]
Heat = Literal["low", "medium", "high"]


SIZED = re.compile(r"\d{1,2}\s?-?\s?(?:\"|'|in\b|inch|qt|quart)", re.IGNORECASE)


class Place(NamedTuple):
    """A vessel or place: what it is called, its kind, whether the food goes in or out of it, and its tokens."""

    name: str
    kind: Kind
    out: bool
    start: int
    end: int
    #: named with a word that makes it another one ("another pan", "a separate bowl")
    another: bool
    after_preposition: bool


@cache
def _set(group: str) -> frozenset[str]:
    return frozenset(words.groups("places.toml")[group])


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
    return [
        _place(text, mark)
        for mark in _vessels().longest(text)
        if mark.label != "none" and not _is_order(text, mark.start, mark.end)
    ]


def _place(text: Doc, mark: Mark) -> Place:
    start = mark.start
    while start > 0 and _describes(text, start - 1):
        start -= 1
    article = start > 0 and lower(text)[start - 1] in _set("article")
    before = start - 1 - article
    lead = lower(text)[before] if before >= 0 else ""
    name = text[start : mark.end].text
    # A 12-inch oven is one of iron, that stands on coals.
    kind = "pot" if mark.label == "oven" and SIZED.search(name) else mark.label
    return Place(
        name,
        cast(Kind, kind),
        (lead in _set("out") and lead != "of") or (lead == "of" and _out_of(text, before)),
        start,
        mark.end,
        bool(_set("another") & set(name.lower().split())),
        lead in _set("into") | _set("out"),
    )


def _describes(text: Doc, index: int) -> bool:
    """Whether a word before a vessel is part of its name: "large", "9 x 13", "12-inch"."""
    word = lower(text)[index]
    if word in _set("before") or text[index].like_num:
        return True
    # "9x13 in pan": inches.
    return word in ('"', "-", "in") and index > 0 and text[index - 1].like_num


def _is_order(text: Doc, start: int, end: int) -> bool:
    """Whether a vessel's word is a verb where it stands: "Grill the squash"."""
    verb = lexicon().get(lower(text)[start]) if end - start == 1 else None
    if verb is None or verb.form != "plain":
        return False
    before = lower(text)[start - 1] if start else "."
    following = text[end].text if end < len(text) else "."
    return before in _set("order_after") and following not in _set("no_order_before")


def _out_of(text: Doc, index: int) -> bool:
    return index > 0 and lower(text)[index - 1] in _set("out_part")


class Sign(NamedTuple):
    """A word about fire or lid at a token."""

    at: int
    says: str


def fires(text: Doc) -> list[Sign]:
    """How strong the fire is, wherever the text says so: low, medium, high."""
    found = []
    for mark in _fires().longest(text):
        first, last = mark.start, mark.end
        near = set(lower(text)[max(0, first - 2) : first])
        follows = lower(text)[last] if last < len(text) else ""
        if last - first == 1:
            if not (follows in _set("fire") or near & _set("at")):
                continue
            if follows.endswith("sized") or follows in _set("no_fire"):
                continue
        found.append(Sign(first, mark.label))
    return found


def lids(text: Doc) -> list[Sign]:
    """Whether the lid is on or off, wherever the text says so: covered, uncovered."""
    return [Sign(mark.start, mark.label) for mark in _lids().longest(text)]
