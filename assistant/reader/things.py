"""Intermediate things that a clause names or makes: the batter, the sauce, "until a dough forms"."""

from __future__ import annotations

from collections.abc import Set
from functools import cache

from spacy.tokens import Doc

from assistant.reader import words
from assistant.reader.clauses import Clause
from assistant.reader.mentions import Mention
from assistant.reader.tokens import Finder, Mark, lower
from rules.foods.names import plain, singulars

#: Before "a dough": what shows that the dough is made here.
GIVES = frozenset(
    [
        "to",
        "into",
        "form",
        "forms",
        "makes",
        "make",
        "becomes",
        "get",
        "until",
        "for",
        "as",
        "like",
        "have",
        "create",
        "creates",
    ]
)
MAKES = frozenset({"make", "prepare", "create", "form", "shape", "make into", "roll", "roll into"})
LOOK_BACK = 4
#: Behind "pastry" or "pizza" these make it a tool.
TOOLS = frozenset({"blender", "cutter", "brush", "bag", "board", "wheel", "scraper", "cloth", "stone"})


@cache
def _finder() -> Finder:
    return Finder({word: [word] for group in words.groups("things.toml").values() for word in group})


def marks(text: Doc) -> list[Mark]:
    """Every word for an intermediate thing in a text."""
    return _finder().longest(text)


def things_of(
    text: Doc, clause: Clause, found: list[Mark], mentions: list[Mention], asides: Set[int] = frozenset()
) -> tuple[str | None, list[tuple[int, str]]]:
    """What a clause makes, and the things that it names, each with its place.

    `asides` are the tokens that tell when or how far: in "until the mixture looks like crumbs" nothing is named.
    """
    foods = {
        index
        for mention in mentions
        if mention.who or mention.end - mention.start > 1
        for index in range(mention.start, mention.end)
    }
    made: str | None = None
    named: list[tuple[int, str]] = []
    for mark in found:
        start, end = mark.start, mark.end
        inside = clause.start <= start < clause.end and not clause.verb_start <= start < clause.verb_end
        if lower(text)[end : end + 1] and lower(text)[end] in TOOLS:
            continue
        if not inside or (start in foods and end - start == 1) or (start in foods and end - 1 in foods):
            continue
        name = singulars(plain(text[start:end].text)).removeprefix("the ").removeprefix("into ")
        lead = lower(text)[max(clause.start, start - LOOK_BACK) : start]
        stands = name in ("dry", "wet") or (lead[-1:] == ["into"] and name.endswith(" mixture"))
        if _is_made(lead, clause) and not stands:
            made = made or name
        elif start not in asides:
            named.append((start, name))
    return made, named


def _is_made(lead: list[str], clause: Clause) -> bool:
    if clause.verb.words in MAKES and not set(lead) & {"of", "with", "from", "for"}:
        return clause.verb.words != "roll" or "into" in lead
    for article in ("a", "an"):
        if article in lead:
            before = lead[: lead.index(article)]
            return bool(before) and before[-1] in GIVES
    return bool(lead) and lead[-1] in ("into", "form")
