"""Which line of a recipe is what: the first look over the text, before any line is read closely.

Headings decide where they stand; where they are missing, `guess.py` weighs the lines. Every line ends as one of
`Kind`; a line that holds its own heading ("Method: Mix all") keeps only what follows it.
"""

from __future__ import annotations

import re
from typing import Literal

from assistant.reader import clean, headings, prose, words
from assistant.reader.deeds import starts_with_order
from assistant.reader.guess import AMOUNT, COUNTS_NO_FOOD, guess
from assistant.reader.headings import Part
from assistant.reader.marks import Marked, mark
from rules.recipe import Struct

Kind = Literal[
    "blank", "sign", "title", "fact", "heading", "ingredient", "more", "component", "step", "note", "other"
]

CHATTER = re.compile(
    r"(?:notes?|tips?|hints?|nb|n\.b|p\.?s|fyi|warning|caution|disclaimer|photo|image|source|credit|recipe by|adapted from|copyright|enjoy|bon app|happy (?:cooking|baking|camping))\b[\s:.!,]?",
    re.IGNORECASE,
)
#: "Serves about 8", "for 9 people", "9 servings".
SERVES = re.compile(
    r"(?:serves|servings?|makes|yields?|feeds)\b.{0,30}\d"
    r"|(?:enough )?for (?:about |up to )?\d[\d\s–-]{0,6}(?:(?:to|or) \d{1,3} )?(?:$|[,.()]|as |at |people|persons|guests|of us|hungry)"
    r"|\d[\d\s–-]{0,6}(?:servings?|portions?|people|persons|helpings)\b.{0,20}$",
)
SENTENCE = re.compile(r"(?<=[.!?])\s+(?=[A-Z(])")
FRONT_MATTER = 60


class Line(Struct, frozen=True, kw_only=True):
    """One line of the source and what it is. `text` is as written (made safe), `body` its plain words without marks.

    `component` is the sub-heading it stands under. `fresh` is false for a step's line that goes on with the sentence
    or the item above it.
    """

    number: int
    text: str
    body: str
    kind: Kind
    component: str | None = None
    fresh: bool = True
    bullet: str = ""


class Layout(Struct, frozen=True, kw_only=True):
    """The whole text, line by line, with its title and the titles of further recipes in it."""

    lines: tuple[Line, ...]
    title: str | None = None
    others: tuple[str, ...] = ()


def layout(text: str) -> Layout:
    """Say of every line of a text what it is."""
    return _Sorter(clean.lines(text)).sorted()


class _Sorter:
    """One pass over the lines; `kinds` fills from top to bottom."""

    def __init__(self, raw: list[str]) -> None:
        self.lines = [mark(number, line) for number, line in enumerate(raw)]
        self.kinds: list[Kind] = ["note"] * len(raw)
        self.component: list[str | None] = [None] * len(raw)
        self.fresh = [True] * len(raw)
        self.body = [line.body for line in self.lines]
        self.title: str | None = None
        self.others: list[str] = []

    def sorted(self) -> Layout:
        start = self._front_matter()
        parts, start_of = self._parts(start)
        for part, first, last, component in self._stretches(parts, start_of, start):
            if part == "ingredients":
                self._ingredients(first, last, component)
            elif part == "method":
                self._method(first, last, component)
            elif part == "head":
                self._head(first, last)
            else:
                self._aside(first, last)
        return Layout(
            lines=tuple(
                Line(
                    number=line.number,
                    text=line.raw,
                    body=self.body[line.number],
                    kind=self.kinds[line.number],
                    component=self.component[line.number],
                    fresh=self.fresh[line.number],
                    bullet=line.bullet,
                )
                for line in self.lines
            ),
            title=self.title,
            others=tuple(self.others),
        )

    def _front_matter(self) -> int:
        """Pass a head between two lines of dashes; its title counts."""
        first = next((line.number for line in self.lines if line.raw.strip()), None)
        if first is None or self.lines[first].raw.strip() != "---":
            return 0
        for line in self.lines[first + 1 : first + FRONT_MATTER]:
            if line.raw.strip() in ("---", "..."):
                for inner in self.lines[first : line.number + 1]:
                    self.kinds[inner.number] = "fact" if inner.raw.strip() else "blank"
                return line.number + 1
            key, _, value = line.raw.partition(":")
            if key.strip().lower() == "title":
                self.title = clean.plain(value.strip().strip("\"'")) or None
        self.title = None
        return 0

    def _parts(self, start: int) -> tuple[list[Part], list[int]]:
        """The part of every line, by headings where there are any, else by weighing; and the lines that are headings."""
        part: Part = "head"
        parts: list[Part] = ["head"] * len(self.lines)
        headed: list[int] = []
        for line in self.lines[start:]:
            number = line.number
            opened = self._opens(line)
            if opened:
                part = opened
                headed.append(number)
                self.kinds[number] = "heading"
            elif (inline := headings.inline_part(line.body)) and not (part == "method" and line.bullet):
                part, self.body[number] = inline
                headed.append(number)
            parts[number] = part
        guess(self.lines, parts, self.kinds, start)
        return parts, headed

    def _opens(self, line: Marked) -> Part | None:
        if not line.body or (line.bullet == "-" and not line.colon):
            return None
        if line.bullet and not (line.level or line.colon):
            return None
        part = headings.part_of(line.body)
        if part:
            return part
        return headings.strong_part_of(line.body) if headings.standing(line) and not line.bullet else None

    def _stretches(self, parts: list[Part], headed: list[int], start: int):  # type: ignore[no-untyped-def]
        """Runs of lines of one part, each from its heading (left out) to the next."""
        heads = set(headed)
        first = start
        component: str | None = None
        for number in range(start, len(parts) + 1):
            ends = (
                number == len(parts)
                or number in heads
                or (number > start and parts[number] != parts[number - 1])
            )
            if ends and number > first:
                yield parts[first], first, number, component
            if ends:
                first = number
                component = None
                if number < len(parts) and self.kinds[number] == "heading":
                    if headings.part_of(self.body[number]) is None:
                        component = headings.component_name(self.body[number])
                    first = number + 1
        return

    def _blank(self, line: Marked) -> bool:
        if line.body:
            return False
        self.kinds[line.number] = "sign" if line.raw.strip() else "blank"
        return True

    def _head(self, first: int, last: int) -> None:
        for line in self.lines[first:last]:
            if self._blank(line):
                continue
            if is_fact(line.body):
                self.kinds[line.number] = "fact"
            elif self.title is None and (
                line.level or line.shouted or (line.words <= 12 and not line.body.endswith((".", "!")))
            ):
                self.kinds[line.number] = "title"
                self.title = line.body.rstrip(":.") or None

    def _aside(self, first: int, last: int) -> None:
        for line in self.lines[first:last]:
            if not self._blank(line) and is_fact(line.body):
                self.kinds[line.number] = "fact"

    def _ingredients(self, first: int, last: int, component: str | None) -> None:
        filled = [line for line in self.lines[first:last] if line.body]
        bulleted = sum(bool(line.bullet) for line in filled) * 2 > len(filled)
        outer: tuple[int, str | None] | None = None
        seen = False
        for line in self.lines[first:last]:
            if self._blank(line):
                continue
            number = line.number
            if outer and line.indent <= outer[0] and not (line.bullet == "" and line.indent):
                component, outer = outer[1], None
            kind: Kind = "ingredient"
            if seen and self._goes_on(line, bulleted):
                kind = "more"
            elif self._nests(line, last):
                outer, kind = (line.indent, component), "component"
            elif self._is_component(line, bulleted, last):
                kind = "component"
                outer = None
            elif is_fact(line.body) and (not AMOUNT.match(line.body) or COUNTS_NO_FOOD.match(line.body)):
                kind = "fact"
            elif not line.bullet and (line.body.startswith("(") or _talks(line)):
                kind = "note"
            if kind == "component":
                component = headings.component_name(line.body)
                seen = False
            seen = seen or kind == "ingredient"
            self.kinds[number] = kind
            self.component[number] = component

    def _goes_on(self, line: Marked, bulleted: bool) -> bool:
        """Whether a line is the wrapped end of the ingredient above it."""
        above = self.kinds[line.number - 1]
        if line.bullet or line.level or above not in ("ingredient", "more") or AMOUNT.match(line.body):
            return False
        wrapped = line.body[:1].islower() or line.body.startswith(("(", "&", ","))
        return wrapped and (
            bulleted or bool(line.indent) or self.body[line.number - 1].endswith((",", "(", " or", " and"))
        )

    def _next(self, line: Marked, last: int) -> Marked | None:
        following = line.number + 1
        return self.lines[following] if following < last and self.lines[following].body else None

    def _nests(self, line: Marked, last: int) -> bool:
        """Whether an item opens items of its own, set in more deeply."""
        following = self._next(line, last)
        return bool(
            line.bullet
            and following
            and following.bullet
            and following.indent > line.indent
            and not AMOUNT.match(line.body)
        )

    def _is_component(self, line: Marked, bulleted: bool, last: int) -> bool:
        """Whether a line among the ingredients is a sub-heading."""
        if AMOUNT.match(line.body) or line.words > 10:
            return False
        if line.level or (line.colon and (not line.bullet or line.words <= 6)):
            return True
        if line.bullet:
            return False
        if bulleted:
            following = self._next(line, last)
            return line.words <= 6 and bool(following and following.bullet) and not line.body.endswith(".")
        before = self.lines[line.number - 1].body if line.number else ""
        following = self._next(line, last)
        alone = not before and following is not None and bool(AMOUNT.match(following.body))
        return (
            line.words <= 5
            and alone
            and (line.shouted or "," not in line.body)
            and not line.body.endswith(".")
        )

    def _method(self, first: int, last: int, component: str | None) -> None:
        filled = [line for line in self.lines[first:last] if line.body]
        numbered = any(line.bullet == "1" for line in filled)
        listed = numbered or any(line.bullet for line in filled)
        gap = True
        inside = False
        for line in self.lines[first:last]:
            if self._blank(line):
                gap = gap or self.kinds[line.number] == "blank"
                continue
            number = line.number
            kind: Kind = "step"
            ordered = asks(line.body)
            if not line.bullet and headings.standing(line) and not (ordered and line.words > 4):
                kind = "component"
                component = headings.component_name(line.body)
                inside = not line.body.endswith("?")
                gap = True
            elif line.bullet == "1" or (line.bullet and not numbered):
                inside = True
            elif not gap and inside:
                self.fresh[number] = bool(line.bullet)
            elif CHATTER.match(line.body) or (listed and not ordered) or not (ordered or tells(line.body)):
                kind, inside = "note", False
            else:
                inside = True
            self.kinds[number] = kind
            self.component[number] = component
            gap = False


def is_fact(body: str) -> bool:
    """Whether a line is a fact of the head: "Prep time: 10 min", "Serves 4"."""
    table = words.groups("head.toml")
    low = body.lower().lstrip("~ ")
    key, colon, _ = low.partition(":")
    if colon and (key.strip() in table["facts"] or key.strip() in table["servings"]):
        return True
    return bool(SERVES.match(prose.in_figures(low[:80]).strip(" (")))


def asks(body: str) -> bool:
    """Whether some sentence of a line asks for something to be done."""
    return any(starts_with_order(sentence) for sentence in SENTENCE.split(body)[:40])


def tells(body: str) -> bool:
    """Whether a line without a plain order still tells what is done: "In a bowl, whisk the eggs"."""
    from assistant.reader.clauses import clauses

    return any(clause.told for clause in clauses(body[:600]))


def _talks(line: Marked) -> bool:
    return line.words > 12 and not AMOUNT.match(line.body)
