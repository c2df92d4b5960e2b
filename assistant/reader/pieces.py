"""An ingredient line taken apart: its tokens, the known words in it, and its pieces between commas, dashes and brackets."""

from __future__ import annotations

from functools import cache
from typing import Literal, NamedTuple

from assistant.reader import words as tables
from assistant.reader.amounts import amounts
from assistant.reader.measures import unit
from assistant.reader.tokens import Finder, Mark, doc, lower, written

#: Labels whose marks count for nothing inside a name that must stay whole ("whole milk").
YIELDS = frozenset(
    {
        "size",
        "state",
        "before_liquid",
        "done",
        "verb",
        "adverb",
        "shape",
        "tail",
        "vague",
        "part_taken",
        "egg_part",
    }
)
TABLES = ("states.toml", "preparations.toml", "asides.toml", "names.toml")
#: Groups of those tables that are only looked up by word, never searched for.
LOOKED_UP = frozenset(
    {"goes_on", "flavour", "component", "pair", "kind", "herdwide", "product", "alone", "part", "seed"}
)
SEPARATORS = frozenset({",", ";", "|", ":"})
#: For amounts every bracket is a round one.
ROUND = {"[": "(", "{": "(", "]": ")", "}": ")"}
CLOSES = {"(": ")", "[": "]", "{": "}"}


@cache
def finder() -> Finder:
    """Finds every word and phrase of the line tables."""
    groups = {label: words for name in TABLES for label, words in tables.groups(name).items()}
    groups["size"] = tuple(word for words in tables.groups("sizes.toml").values() for word in words)
    return Finder({label: words for label, words in groups.items() if label not in LOOKED_UP})


class Piece(NamedTuple):
    """Tokens `start` to `end` (not included); `before` is the sign that the piece follows: "" for the first, "(" inside a bracket."""

    start: int
    end: int
    before: str


class Line:
    """A cleaned line. Places are token numbers."""

    def __init__(self, text: str) -> None:
        self.doc = doc(text)
        self.lower: list[str] = lower(self.doc)
        self.starts = {label: {} for label in finder().labels.values()}  # type: dict[str, dict[int, int]]
        self.ends = {label: {} for label in finder().labels.values()}  # type: dict[str, dict[int, int]]
        marks = finder().all(self.doc)
        self.whole = _whole(marks)
        for label, start, end in marks:
            if label in YIELDS and any(place in self.whole for place in range(start, end)):
                continue
            self.starts[label].setdefault(start, end)
            self.ends[label].setdefault(end, start)
        #: the words as the amount grammar wants them: one-letter units keep their capitals, units in names are hidden
        self.words = [
            ROUND.get(word, word) if len(word) == 1 and word != "A" else low
            for word, low in zip(written(self.doc), self.lower, strict=True)
        ]
        for start in self.starts["whole"]:
            if unit(self.lower, start):
                self.words[start] += "\0"

    def __len__(self) -> int:
        return len(self.lower)

    def after(self, label: str, at: int) -> int:
        """The place after the longest phrase of a label that starts here; the place itself if there is none."""
        return self.starts[label].get(at, at)

    def before(self, label: str, end: int) -> int:
        """Where the longest phrase of a label that ends here starts; the end itself if there is none."""
        return self.ends[label].get(end, end)

    def has(self, label: str, start: int, end: int) -> bool:
        """Whether a phrase of a label lies within."""
        return any(start <= first and last <= end for first, last in self.starts[label].items())

    def text(self, start: int, end: int) -> str:
        """The words of a stretch, lower case, as written."""
        return self.doc[start:end].text.lower() if start < end else ""

    def word(self, at: int) -> str:
        """One word, lower case; empty beyond the end."""
        return self.lower[at] if 0 <= at < len(self.lower) else ""


def _whole(marks: list[Mark]) -> dict[int, int]:
    """Places inside a name that stays whole, each with the end of that name."""
    found: dict[int, int] = {}
    for label, start, end in marks:
        if label == "whole" and start not in found:
            found.update(dict.fromkeys(range(start, end), end))
    return found


def pieces(line: Line, start: int, end: int) -> list[Piece]:
    """The pieces of a stretch in reading order; a bracket is a piece of its own, what it interrupts goes on behind it."""
    found: list[Piece] = []
    first, before = start, ""
    place = start
    while place < end:
        sign = line.word(place)
        if place == first and sign[0].isdigit():
            place = _past_amounts(line, place, end)
            continue
        closes = CLOSES.get(sign)
        if closes:
            close = _closing(line, place, end, sign, closes)
            _keep(found, first, place, before)
            _keep(found, place + 1, close, "(")
            first, before = close + 1, ")"
            place = close + 1
            continue
        sort = separator(line, place)
        if sort:
            _keep(found, first, place, before)
            first, before = place + 1, sort
        elif sign in CLOSES.values():
            _keep(found, first, place, before)
            first, before = place + 1, ")"
        place += 1
    _keep(found, first, end, before)
    return found


def _past_amounts(line: Line, place: int, end: int) -> int:
    """The place after the amounts that a piece opens with: their commas and brackets part nothing."""
    found = amounts(line.words[:end], place)
    return found.end if found else place + 1


def _keep(found: list[Piece], first: int, end: int, before: str) -> None:
    if first < end:
        found.append(Piece(first, end, before))


def _closing(line: Line, place: int, end: int, opens: str, closes: str) -> int:
    """Where the bracket opened at `place` closes, inner ones passed; the end if it never does."""
    depth = 0
    for at in range(place, end):
        if line.word(at) == opens:
            depth += 1
        elif line.word(at) == closes:
            depth -= 1
            if depth == 0:
                return at
    return end


def separator(line: Line, at: int) -> Literal["", ",", ";", "|", ":", "-", "."]:
    """The sign that parts two pieces here: a comma, a dash between blanks, the point of a sentence; else empty."""
    sign = line.word(at)
    if sign in SEPARATORS:
        return sign  # type: ignore[return-value]
    if sign == "-" and _is_dash(line, at):
        return "-"
    if sign == "." and _ends_sentence(line, at):
        return "."
    return ""


def _is_dash(line: Line, at: int) -> bool:
    """Whether a hyphen stands between blanks and not between two figures."""
    if at == 0 or at + 1 >= len(line):
        return True
    if line.word(at - 1) == "-" or line.word(at + 1) == "-":
        return True
    spaced = bool(line.doc[at - 1].whitespace_) and bool(line.doc[at].whitespace_)
    return spaced and not (line.word(at - 1)[-1].isdigit() and line.word(at + 1)[0].isdigit())


def _ends_sentence(line: Line, at: int) -> bool:
    """Whether a point ends a sentence: the last of the line, or before a capital and not after an abbreviation."""
    if at + 1 >= len(line):
        return True
    before = line.word(at - 1)
    if not line.doc[at].whitespace_ or len(before) < 3 or unit(line.lower, at - 1):
        return False
    return line.doc[at + 1].text[0].isupper() or before in ("etc",)
