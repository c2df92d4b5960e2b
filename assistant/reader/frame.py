"""The bones of a text: its sentences, the asides in them ("until soft"), what stands in brackets."""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

from spacy.tokens import Doc

from assistant.reader import words
from assistant.reader.deeds import lexicon
from assistant.reader.tokens import lower, written

ENDS = frozenset(".!?;")
#: A dot after these ends no sentence, unless a capital follows.
ABBREVIATED = frozenset(
    [
        "tsp",
        "tbsp",
        "tbs",
        "oz",
        "lb",
        "lbs",
        "min",
        "mins",
        "approx",
        "in",
        "c",
        "f",
        "hr",
        "hrs",
        "pkg",
        "qt",
        "pt",
        "ca",
        "eg",
        "e.g",
        "ie",
        "no",
        "vs",
        "med",
        "sec",
        "secs",
        "ea",
        "temp",
        "deg",
    ]
)
CLOSES = frozenset({",", ";", ":", "then", ".", ")", "!"})


class Frame(NamedTuple):
    """The bones of a text: its sentences in tokens, the tokens inside asides ("until soft") and inside brackets."""

    doc: Doc
    #: every token in lower case: asking a Doc for each is slow
    low: tuple[str, ...]
    sentences: tuple[tuple[int, int], ...]
    asides: frozenset[int]
    brackets: frozenset[int]


def frame(text: Doc) -> Frame:
    """Find the sentences, asides and brackets of a text."""
    low = tuple(lower(text))
    found = tuple(_sentences(text, low))
    asides: set[int] = set()
    brackets: set[int] = set()
    for start, end in found:
        asides |= _asides(low, start, end)
        brackets |= _brackets(low, start, end)
    return Frame(text, low, found, frozenset(asides), frozenset(brackets))


@cache
def clause_words(group: str) -> frozenset[str]:
    """A group of `clauses.toml`."""
    return frozenset(words.groups("clauses.toml")[group])


def _sentences(text: Doc, low: tuple[str, ...]) -> list[tuple[int, int]]:
    """The bounds of every sentence; a semicolon ends one, an abbreviation's dot or one in brackets does not."""
    found: list[tuple[int, int]] = []
    start = depth = 0
    for index, sign in enumerate(low):
        depth = max(0, depth + (sign == "(") - (sign == ")"))
        if sign in ENDS and depth == 0 and _ends(text, low, index):
            found.append((start, index + 1))
            start = index + 1
    if start < len(low):
        found.append((start, len(low)))
    return found


def _ends(text: Doc, low: tuple[str, ...], index: int) -> bool:
    if low[index] != "." or index + 1 >= len(low):
        return True
    capital = written(text)[index + 1][:1].isupper()
    if index and low[index - 1] in ABBREVIATED and not capital:
        return False
    if not capital and low[index + 1][:1].isalpha():
        verb = lexicon().get(low[index + 1])
        return bool(verb and verb.form == "plain" and not verb.food)
    return True


def _asides(low: tuple[str, ...], start: int, end: int) -> set[int]:
    """Tokens that tell when, why or how far: from "until" to the next comma or "then"."""
    openers = clause_words("aside")
    inside: set[int] = set()
    open_ = False
    whole = -1
    for index in range(start, end):
        if low[index] in CLOSES or index == whole:
            open_ = False
        elif low[index] in openers and index >= whole and _opens(low, index, start, end):
            open_ = True
            whole = _whole_aside(low, index, end)
        if open_:
            inside.add(index)
    return inside


def _opens(low: tuple[str, ...], index: int, start: int, end: int) -> bool:
    word = low[index]
    following = low[index + 1] if index + 1 < end else ""
    if word in ("so", "as") and following in ("follows", "well", ",", "needed", "desired", "directed"):
        return False
    if word == "as" and low[max(start, index - 2) : index] == ("as", "well"):
        return False
    if word == "once" and index > start and low[index - 1].endswith("ing"):
        return False
    return not (word == "that" and index == start)


def _whole_aside(low: tuple[str, ...], index: int, end: int) -> int:
    """Where a short aside ends that is whole by itself: "if you have it the syrup"; -1 for any other."""
    if low[index] == "as" and low[index + 2 : index + 3] == ("as",):
        # "As low as possible".
        return index + 4
    for length in (4, 3, 2):
        if " ".join(low[index : min(end, index + length)]) in clause_words("if_wanted"):
            return index + length
    return -1


def _brackets(low: tuple[str, ...], start: int, end: int) -> set[int]:
    inside: set[int] = set()
    depth = 0
    for index in range(start, end):
        depth = max(0, depth - (low[index] == ")"))
        if depth:
            inside.add(index)
        depth += low[index] == "("
    return inside if len(inside) < end - start - 3 else set()
