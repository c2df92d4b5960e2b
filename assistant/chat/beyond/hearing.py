"""An utterance as tokens with the phrases of one table found in it; numbers, stretches of time and degrees read."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Mapping, Sequence
from functools import cache
from importlib import resources
from typing import Any, NamedTuple

import msgspec

from assistant.chat.lexicon import MOST_CHARACTERS
from assistant.chat.values import number
from assistant.chat.values import table as value_words
from assistant.reader import clean
from assistant.reader.tokens import Doc, Finder, doc, lower, offsets, written

EDGES = frozenset(
    [",", ";", ".", "!", "?", ":", "(", ")", "-", "--", "–", "—", "and", "but", "then", "also", "plus", "&"]
)
Span = tuple[int, int]
#: The name of a file that a talk reads or writes.
PATH = re.compile(r"[^\s\"']{0,240}\w\.(?:jsonl?|md|csv|txt|toml|html?|ics)\b", re.IGNORECASE)
_GLUED = re.compile(r"(?<=[a-z])-(?=[a-z])", re.IGNORECASE)


class Phrases:
    """The phrases of one table of words: `group` or `group:value` as the label of each list."""

    def __init__(self, name: str) -> None:
        text = resources.files("assistant.chat.beyond").joinpath(name).read_text(encoding="utf-8")
        loaded: dict[str, Any] = msgspec.toml.decode(text)
        self.lists: dict[str, tuple[str, ...]] = {}
        for group, words in loaded.items():
            if isinstance(words, list):
                self.lists[group] = tuple(words)
            else:
                self.lists |= {f"{group}:{value}": tuple(phrases) for value, phrases in words.items()}
        self._finder = Finder(self.lists)

    def words(self, group: str) -> frozenset[str]:
        """The words of a list without values."""
        return frozenset(self.lists[group])

    def found(self, line: Doc) -> dict[int, list[Found]]:
        """Every phrase by the place where it begins, the longest first."""
        here: dict[int, list[Found]] = {}
        for mark in self._finder.all(line):
            group, _, value = mark.label.partition(":")
            here.setdefault(mark.start, []).append(Found(group, value, mark.start, mark.end))
        return here


class Found(NamedTuple):
    """A phrase: its group, its value where the group has several, its tokens."""

    group: str
    value: str
    start: int
    end: int


@cache
def phrases(name: str) -> Phrases:
    """The phrases of a table, read once."""
    return Phrases(name)


class Hearing(NamedTuple):
    """An utterance: its text, its tokens as written and in lower case, where each begins, the phrases found."""

    text: str
    tokens: tuple[str, ...]
    words: tuple[str, ...]
    starts: tuple[int, ...]
    marks: Mapping[int, Sequence[Found]]

    def phrase(self, at: int, *groups: str) -> Found | None:
        """The longest phrase of one of the groups that begins at a place."""
        return next((found for found in self.marks.get(at, ()) if found.group in groups), None)

    def after(self, at: int, small: Collection[str], most: int = 3) -> int:
        """The place behind at most so many small words."""
        end = at
        while end < len(self.words) and end - at < most and self.words[end] in small:
            end += 1
        return end

    def said(self, start: int, end: int) -> str:
        """The text of tokens as typed."""
        if start >= end:
            return ""
        return self.text[self.starts[start] : self.starts[end - 1] + len(self.tokens[end - 1])]


def hear(utterance: str, table: str) -> Hearing:
    """The utterance against the phrases of a table."""
    words = clean.characters(utterance[:MOST_CHARACTERS]).split()
    text = " ".join(word if PATH.search(word) else _GLUED.sub(" ", word) for word in words)
    line = doc(text)
    return Hearing(
        text=text,
        tokens=tuple(written(line)),
        words=tuple(lower(line)),
        starts=tuple(offsets(line)),
        marks=phrases(table).found(line),
    )


def left_over(hearing: Hearing, taken: Iterable[Span], light: Collection[str]) -> str:
    """What is said besides the pieces that were taken; small words alone are nothing."""
    own = {place for start, end in taken for place in range(start, end)}
    runs: list[list[int]] = [[]]
    for place in range(len(hearing.words)):
        if place in own:
            runs.append([])
        else:
            runs[-1].append(place)
    kept = (_trimmed(run, hearing.words, light) for run in runs)
    return ", ".join(hearing.said(run[0], run[-1] + 1) for run in kept if run)


def _trimmed(run: list[int], words: Sequence[str], light: Collection[str]) -> list[int]:
    """A run without the edges at its ends; empty where it holds nothing but small words."""
    if all(words[place] in light or words[place] in EDGES for place in run):
        return []
    while run and words[run[0]] in EDGES:
        run = run[1:]
    while run and words[run[-1]] in EDGES - {"?"}:
        run = run[:-1]
    return run


class Measured(NamedTuple):
    """A figure and the place behind it; `unit` as the reader of it says."""

    value: float
    end: int
    unit: str = ""


def stretch(hearing: Hearing, at: int, minutes: Collection[str], hours: Collection[str]) -> Measured | None:
    """A stretch of time [min] := hours ["and"] minutes | hours "and a half" | minutes; "an hour and ten", "1h20"."""
    words = hearing.words
    half = words[at : at + 3] in (("half", "an", "hour"), ("half", "a", "hour"))
    if half:
        return Measured(30, at + 3)
    if words[at : at + 4] == ("three", "quarters", "of", "an") and words[at + 4 : at + 5] == ("hour",):
        return Measured(45, at + 5)
    first = number(words, at)
    if first is None:
        return None
    unit_at = (
        first.end + 1
        if words[first.end : first.end + 1] in (("more",), ("extra",), ("fewer",), ("-",))
        else first.end
    )
    unit = words[unit_at] if unit_at < len(words) else ""
    if unit in minutes and not first.article:
        return Measured(first.value, unit_at + 1)
    if unit not in hours:
        return None
    return _with_minutes(words, Measured(first.value * 60, unit_at + 1), minutes)


def _with_minutes(words: Sequence[str], hours: Measured, minutes: Collection[str]) -> Measured:
    """Hours with what follows: "and a half", "and a quarter", "and ten", "20"."""
    at = hours.end + 1 if words[hours.end : hours.end + 1] == ("and",) else hours.end
    for said, more in ((("a", "half"), 30), (("a", "quarter"), 15), (("half",), 30)):
        if at > hours.end and words[at : at + len(said)] == said:
            return Measured(hours.value + more, at + len(said))
    extra = number(words, at)
    if extra is None or extra.article or not 1 <= extra.value < 60:
        return hours
    if words[extra.end : extra.end + 1] and words[extra.end] in minutes:
        return Measured(hours.value + extra.value, extra.end + 1)
    is_last = extra.end == len(words) or words[extra.end] in EDGES
    return Measured(hours.value + extra.value, extra.end) if is_last else hours


def degrees(hearing: Hearing, at: int) -> Measured | None:
    """A temperature: a number with or without its unit ("F", "C" or nothing)."""
    words = hearing.words
    found = number(words, at)
    if found is None or found.article:
        return None
    names = value_words()
    end = found.end
    if end < len(words) and words[end] in names.degrees:
        end += 1
    for unit, spoken in (("F", names.fahrenheit), ("C", names.celsius)):
        if end < len(words) and words[end] in spoken:
            return Measured(found.value, end + 1, unit)
    return Measured(found.value, end)
