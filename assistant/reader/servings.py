"""How many a recipe feeds or makes, from the lines of its head."""

from __future__ import annotations

import re

from assistant.reader import words
from assistant.reader.prose import NUMBER, in_figures, value
from assistant.reader.sections import Layout, Line
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
    r"\b(?:serves|feeds|makes|yields|(?:enough )?for)\s(?=(?:about |around |approx(?:imately)? |roughly |up to )?\d)",
    re.IGNORECASE,
)
MOST = 2000.0
HEAD_COUNT = frozenset({"serving", "servings", "people", "persons", "person", "portion", "portions"})


def servings_of(layout: Layout) -> Servings | None:
    """The servings or the yield that the head states; what is told in passing elsewhere does not count."""
    seen_step = False
    passing: Servings | None = None
    for line in layout.lines:
        seen_step = seen_step or line.kind == "step"
        if line.kind not in ("fact", "title", "note", "component", "heading") or not line.body:
            continue
        found = _stated(line)
        if found:
            return found
        if not seen_step and passing is None:
            passing = _in_passing(line)
    return passing


def _stated(line: Line) -> Servings | None:
    body = in_figures(line.body.strip(" ~*"))
    key = KEY.match(body)
    if key and key[1].lower() not in ("people", "persons") or key and ":" in key[0]:
        return _count(body[key.end() :], key[1].lower())  # type: ignore[index, union-attr]
    return None


def _in_passing(line: Line) -> Servings | None:
    """ "Serves 6" inside a sentence of the head, "(for 13 cookies)" under the list's heading."""
    body = in_figures(line.body)
    for found in INSIDE.finditer(body):
        count = _count(body[found.end() :], found[0].strip().lower())
        if found[0].lower().strip().endswith("for"):
            told = count.of.split()[-1] if count else ""
            if not count or (
                told not in words.groups("head.toml")["people"]
                and not (line.body.startswith("(") and found.start() <= 1)
            ):
                continue
        if count:
            return count
    return None


def _count(rest: str, key: str) -> Servings | None:
    found = FIGURES.match(rest)
    if not found:
        return None
    low = value(found[1])
    high = value(found[2]) if found[2] else low
    if low is None or high is None or not 0 < low <= MOST or not 0 < high <= MOST:
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
    if not name or name in ("servings", "serving", "portions", "portion"):
        return "servings"
    if name in words.groups("head.toml")["people"] or name in HEAD_COUNT:
        return "people"
    return name.removeprefix("individual ").removeprefix("large ") if key != "x" else name
