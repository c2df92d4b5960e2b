"""The lines of a text on their way through the sorting: what each is, under which sub-heading, what remains of it."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Literal

from assistant.reader import spoken, words
from assistant.reader.deeds import starts_with_order
from assistant.reader.marks import Marked

Kind = Literal[
    "blank",
    "sign",
    "title",
    "fact",
    "heading",
    "ingredient",
    "more",
    "component",
    "step",
    "tool",
    "note",
    "other",
]
#: "Serves about 8", "for 9 people", "9 servings".
SERVES = re.compile(
    r"(?:serves|servings?|makes|yields?|feeds)\b.{0,30}\d"
    r"|(?:enough )?for (?:about |up to )?\d[\d\s–-]{0,6}(?:(?:to|or) \d{1,3} )?(?:$|[,.()]|as |at |people|persons|guests|of us|hungry)"
    r"|\d[\d\s–-]{0,6}(?:servings?|portions?|people|persons|helpings)\b.{0,20}$",
)
SENTENCE = re.compile(r"(?<=[.!?])\s+(?=[A-Z(])")
FORBIDS = re.compile(r"(?:do not|don't|never|avoid|be careful|make sure|be sure)\b", re.IGNORECASE)
#: A label before the order: "Optional:", "The next day:".
LABEL = re.compile(r"[A-Za-z][\w' ]{1,30}:\s+(?=[A-Z])")
SENTENCES, HEAD, TITLE = 40, 80, 160


@dataclass
class Desk:
    """Every line taken apart, and the piles that it was put on; all lists run over the line numbers."""

    lines: list[Marked]
    kinds: list[Kind] = field(default_factory=list)
    component: list[str | None] = field(default_factory=list)
    #: whether that sub-heading says that its lines may be left out
    optional: list[bool] = field(default_factory=list)
    #: false for a line that goes on with the step above it
    fresh: list[bool] = field(default_factory=list)
    #: the words that count, without a heading on the same line
    body: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        """Every line is a note until something better is found."""
        self.kinds = ["note"] * len(self.lines)
        self.component = [None] * len(self.lines)
        self.optional = [False] * len(self.lines)
        self.fresh = [True] * len(self.lines)
        self.body = [line.body for line in self.lines]

    def is_blank(self, line: Marked) -> bool:
        """Whether a line says nothing; files it as blank or as a mere sign."""
        if self.body[line.number]:
            return False
        self.kinds[line.number] = "sign" if line.raw.strip(" >") else "blank"
        return True

    def following(self, line: Marked, last: int) -> Marked | None:
        """The line straight below, if it says something and stands before `last`."""
        below = line.number + 1
        return self.lines[below] if below < last and self.lines[below].body else None


def is_fact(body: str) -> bool:
    """Whether a line is a fact of the head: "Prep time: 10 min", "Serves 4"."""
    table = words.groups("head.toml")
    low = body[:HEAD].lower().lstrip("~ ")
    key, colon, _ = low.partition(":")
    if colon and (key.strip() in table["facts"] or key.strip() in table["servings"]):
        return True
    return bool(SERVES.match(spoken.in_figures(low).strip(" (")))


def title_of(body: str) -> str | None:
    """The title in a line that says so: "Title: Bean Skillet", "Subject: biscuits"."""
    key, colon, value = body[:TITLE].partition(":")
    named = colon and key.strip().lower() in words.groups("head.toml")["title"]
    return value.strip() or None if named else None


def asks(body: str) -> bool:
    """Whether some sentence of a line asks for something to be done, or not to be done."""
    return any(
        starts_with_order(LABEL.sub("", sentence, count=1)) or FORBIDS.match(sentence)
        for sentence in SENTENCE.split(body)[:SENTENCES]
    )
