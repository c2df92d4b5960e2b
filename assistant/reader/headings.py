"""Headings: which part of a recipe a heading opens, and what a sub-heading calls its component."""

from __future__ import annotations

import re
from functools import cache
from typing import Literal

from assistant.reader import words
from assistant.reader.marks import Marked

Part = Literal["head", "ingredients", "method", "notes", "tools"]
PARTS: tuple[Part, ...] = ("ingredients", "method", "notes", "tools")
BRACKETS = re.compile(r"\([^()]{0,200}\)|\[[^\[\]]{0,200}\]")
SPACES = re.compile(r"[^a-z0-9']+")
#: A part's name at the head of its own line, with more after it: "Method: Mix all".
INLINE = re.compile(r"([A-Za-z][A-Za-z' ]{2,40}?)\.?\s?[:\-]\s+(?=\S)|([A-Z][A-Z' ]{3,40}):\s*(?=\S)")
#: "Prep: 10 min" opens no method.
TIME = re.compile(
    r"(?:about |approx\.? |~ ?)?\d[\d\s/.,-]{0,10}(?:m|mins?|minutes?|h|hrs?|hours?)\b", re.IGNORECASE
)
STRONG: dict[Part, frozenset[str]] = {
    "ingredients": frozenset({"ingredients", "ingredient"}),
    "method": frozenset({"directions", "instructions", "method", "procedure", "steps"}),
    "notes": frozenset({"notes", "nutrition", "variations", "storage", "substitutions"}),
    "tools": frozenset({"utensils", "equipment", "tools"}),
}
#: A standing line with an order in it is a heading only up to this many words: "Make the dough:".
SHORT_ORDER = 4
OPENERS = re.compile(
    r"(?:ingredients? )?(?:for|to make|make|making) (?:the |your |a )?|(?:the|your) |pick and choose |choose (?:from )?|ingredients? (?:for|of) (?:the )?"
)
CLOSERS = re.compile(r"(?:\s(?:ingredients|directions|instructions|method|steps|preparation))$")


@cache
def _known() -> dict[str, Part]:
    return {
        word: part for part in reversed(PARTS) for word in map(_bare, words.groups("headings.toml")[part])
    }


def _bare(text: str) -> str:
    said = SPACES.sub(" ", BRACKETS.sub(" ", text.lower())).strip()
    return re.sub(r"\bu\b", "you", said) if " u " in said else said


def part_of(heading: str) -> Part | None:
    """The part that a heading's words open, None for words of its own ("For the sauce")."""
    bare = _bare(heading)
    if len(bare) > 60 or not bare:
        return None
    known = _known()
    filler = words.groups("headings.toml")["filler"]
    spare = " ".join(word for word in bare.split() if word not in filler)
    for form in (bare, spare):
        if form in known:
            return known[form]
    # "Zutaten / Ingredients": a heading in two languages.
    both = re.split(r"\s[/|]\s", BRACKETS.sub(" ", heading))
    return next((known[form] for form in map(_bare, both) if form in known), None) if len(both) == 2 else None


def strong_part_of(heading: str) -> Part | None:
    """The part by a single telling word in it ("Dough ingredients"); only for what is marked as a heading."""
    said = set(_bare(heading).split())
    return next((part for part in PARTS if said & STRONG[part]), None)


def inline_part(body: str) -> tuple[Part, str] | None:
    """The part and the rest of a line that begins with its own heading: "Method: Mix all."."""
    found = INLINE.match(body)
    if found and not TIME.match(body, found.end()):
        part = part_of(found[1] or found[2])
        if part in ("ingredients", "method", "tools"):
            return part, body[found.end() :]
    return None


def is_optional(heading: str) -> bool:
    """Whether a sub-heading says that what stands under it may be left out: "Toppings (all optional):"."""
    said = heading.lower()
    return any(word in said for word in words.groups("asides.toml")["component"])


NUMBERED = re.compile(r"(?:step|part|stage) (?:\d{1,2}|one|two|three|four|five|six)\b[\s.:)-]{0,4}")
PEOPLE = re.compile(r"(?:\d{1,3}|one|two|three|four|five|six|eight|ten|twelve)\b.{0,30}$")


def component_name(heading: str) -> str | None:
    """What a sub-heading calls the part of the dish it opens: "For the Sauce:" is "sauce"."""
    name = BRACKETS.sub(" ", heading.lower()).strip(" :.-*_#")
    name = " ".join(name.split())
    if name[:1].isdigit() or NUMBERED.match(name):
        name = NUMBERED.sub("", name) if NUMBERED.match(name) else ""
    # "Shopping/ingredients" says nothing but that the list begins.
    if all(part_of(word) == "ingredients" for word in name.replace("/", " ").split()):
        return None
    name = OPENERS.sub("", name, count=1) if OPENERS.match(name) else name
    if PEOPLE.match(name):
        # "Ingredients for 4 people" is no part of the dish.
        return None
    shorter = (
        CLOSERS.sub("", name)
        if not name.startswith(("additional", "optional", "remaining", "other"))
        else name
    )
    return shorter or None


def standing(line: Marked) -> bool:
    """Whether a line's form is that of a heading: signs, bold, capitals, or a short line with a colon."""
    if not line.body or line.words > 12:
        return False
    return bool(line.level) or (not line.bullet and (line.shouted or (line.colon and line.words <= 9)))
