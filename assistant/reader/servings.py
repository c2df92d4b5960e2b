"""How many a recipe feeds or makes, from the lines of its head."""

from __future__ import annotations

import re

from assistant.reader import words
from assistant.reader.sections import Layout, Line
from assistant.reader.spoken import NUMBER, in_figures, value
from rules.recipe import Servings

FIGURES = re.compile(
    rf"(?:about |around |approx(?:imately|\.)? |roughly |up to |at least |~ ?|≈ ?)?({NUMBER})(?:\s{{0,24}}(?:-|to|or)\s{{0,24}}({NUMBER}))?(?:[\s-]{{1,24}}(dozen|doz))?\s{{0,24}}\(?([A-Za-z][A-Za-z' -]{{0,40}})?",
    re.IGNORECASE,
)
KEY = re.compile(
    r"(?:(?:number of|recipe|this|it|total)\s)?(?:recipe\s)?(servings?|serves|yields?|makes|portions?|feeds|people|quantity|serving size|persons)\b\s?(?:are|is|size)?\s?[:=-]?\s{0,3}(?:is |are |makes |serves |yields |for )?",
    re.IGNORECASE,
)
INSIDE = re.compile(
    r"\b(?:serves|feeds|makes|yields|(?:enough )?for)\s{1,12}(?=(?:about |around |approx(?:imately)? |roughly |up to )?\d)",
    re.IGNORECASE,
)
#: "9 servings", "9 people": the count before its word.
BEFORE = re.compile(
    rf"({NUMBER})(?:\s{{0,12}}(?:-|to|or)\s{{0,12}}{NUMBER})?\s(?:hungry )?(?:servings|portions|people|persons)\b"
)
#: A sentence of the method that tells how many it feeds: "Serves nine."
TOLD = re.compile(
    r"(?:^|[.!?]\s{1,12})(?:(?:that|this|it) )?(?:(?:serves|feeds|slices for)|yields?:?|(?:makes|yields?:?) (?:about |around )?(?=\d[^.]{1,30}(?:\.|$)))\s{0,12}(?=\d)",
    re.IGNORECASE,
)
DOZEN = re.compile(r"\ba dozen\b", re.IGNORECASE)
#: What stands between the facts on one line: "Prep: 10 min | Serves: 4".
PARTS = re.compile(r"\s[|\u00b7\u2022/]\s")
SIZE = re.compile(r"\s?(?:\d{1,2}(?:\s?x\s?\d{1,2})?)?\s?-?(?:inch|in\b|\"|cm\b|quart)", re.IGNORECASE)
MOST = 2000.0
HEAD_COUNT = frozenset({"serving", "servings", "people", "persons", "person", "portion", "portions"})


def servings_of(layout: Layout) -> Servings | None:
    """The servings or the yield that the head states; what is told in passing elsewhere does not count."""
    seen_step = False
    passing: Servings | None = None
    for line in layout.lines:
        seen_step = seen_step or line.kind == "step"
        if line.kind == "step" and passing is None:
            passing = _told(line)
        if line.kind not in ("fact", "title", "note", "component", "heading") or not line.body:
            continue
        found = next(filter(None, map(_stated, PARTS.split(line.body))), None)
        if found:
            return found
        if not seen_step and passing is None:
            passing = _in_passing(line)
    return passing


def _stated(part: str) -> Servings | None:
    body = in_figures(part.strip(" ~*"))
    key = KEY.match(body)
    if (key and key[1].lower() not in ("people", "persons")) or (key and ":" in key[0]):
        return _count(body[key.end() :], key[1].lower())
    return None


def _in_passing(line: Line) -> Servings | None:
    """A count inside a sentence of the head ("Serves 6"), or in brackets under the list's heading."""
    body = in_figures(line.body)
    # "Makes one 9 inch pan, serves about 8": people count before pieces.
    stated = sorted(
        INSIDE.finditer(body), key=lambda found: not found[0].lower().startswith(("serves", "feeds"))
    )
    for found in stated:
        count = _count(body[found.end() :], found[0].strip().lower())
        if found[0].lower().strip().endswith("for"):
            told = count.of.split()[-1] if count else ""
            people = told in words.groups("head.toml")["people"]
            bracketed = body[found.start() - 1 : found.start()] == "("
            if not people and not bracketed and not (line.kind == "fact" and found.start() <= 1):
                continue
        if count:
            return count
    bare = BEFORE.search(body)
    return _count(body[bare.start() :], "people") if bare else None


def _told(line: Line) -> Servings | None:
    """A sentence of the method that says how many it feeds: "Serves nine"."""
    body = in_figures(line.body)
    found = TOLD.search(body)
    return _count(body[found.end() :], "serves") if found else None


def _count(rest: str, key: str) -> Servings | None:
    found = FIGURES.match(DOZEN.sub("12 ", rest).strip())
    if not found:
        return None
    low = value(found[1])
    high = value(found[2]) if found[2] else low
    if low is None or high is None or not 0 < low <= MOST or not 0 < high <= MOST:
        return None
    if SIZE.match(DOZEN.sub("12 ", rest).strip(), found.end(1)):
        # "One 9 inch pan" feeds nobody by itself.
        return None
    if found[3]:
        low, high = low * 12, high * 12
    if high < low:
        low, high = high, low
    return Servings(low=low, high=high, of=_unit(found[4] or "", key))


def _unit(written: str, key: str) -> str:
    name = " ".join(
        re.split(r"\b(?:and|with|of|in|for|as|depending|or|per|at|each|if|when)\b|[,.;(]", written.lower())[
            0
        ].split()
    )
    if not name and key.strip().lower() == "makes":
        # "Makes 18" counts pieces, not people.
        return "pieces"
    if (
        key.strip().lower() in ("serves", "feeds")
        or not name
        or name in ("servings", "serving", "portions", "portion")
    ):
        return "servings"
    if name in words.groups("head.toml")["people"] or name in HEAD_COUNT:
        return "people"
    return name.removeprefix("individual ").removeprefix("large ") if key != "x" else name
