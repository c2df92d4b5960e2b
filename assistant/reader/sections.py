"""Which line of a recipe is what: the first look over the text, before any line is read closely.

Headings decide where they stand; where they are missing, `guess.py` weighs the lines. Every line ends as one of
`Kind`; a line that holds its own heading ("Method: Mix all") keeps only what follows it. Of several recipes in one
text the first is read, the others are named.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from assistant.reader import clean, headings
from assistant.reader.desk import Desk, Kind, is_fact, title_of
from assistant.reader.guess import AMOUNT, guess
from assistant.reader.headings import Part
from assistant.reader.listing import is_part, sort_list
from assistant.reader.marks import POSTED, Marked, mark
from assistant.reader.telling import sort_method
from rules.recipe import Struct

#: A head between two lines of dashes is no longer than this [lines].
FRONT_MATTER = 60
LONGEST_TITLE = 12
#: A letter around a quoted recipe: at least this many quoted lines, and this share of all.
QUOTED_LINES, QUOTED_SHARE = 6, 0.6
#: "Doughnuts - Grandma K." ends no sentence; blanks or a tab that set facts apart from a title.
INITIAL = re.compile(r"\b[A-Z]\.$|\b(?:Mrs|Mr|Ms|Dr|Jr|Sr)\.$")
APART = re.compile(r"\s{3,80}|\t")
QUOTE = re.compile(r"\s{0,8}>")
#: No recipe is longer; what comes after is left unread, so that any text is read in a moment [lines, characters].
MOST_LINES, MOST_CHARACTERS, LONGEST_LINE = 1_000, 80_000, 12_000


class Line(Struct, frozen=True, kw_only=True):
    """One line of the source and what it is. `text` is as written (made safe), `body` its plain words without marks.

    `component` is the sub-heading it stands under, `optional` whether that says its lines may be left out. `fresh` is false for a step's line that goes on with the sentence
    or the item above it.
    """

    number: int
    text: str
    body: str
    kind: Kind
    component: str | None = None
    optional: bool = False
    fresh: bool = True
    bullet: str = ""


class Layout(Struct, frozen=True, kw_only=True):
    """The whole text, line by line, with its title and the titles of further recipes in it.

    `beyond` are the lines that were not looked at, because the text is longer than any recipe or holds another one.
    """

    lines: tuple[Line, ...]
    title: str | None = None
    others: tuple[str, ...] = ()
    #: no heading says where the list is
    guessed: bool = False
    beyond: tuple[Line, ...] = ()


class _Stretch(NamedTuple):
    """A run of lines of one part: lines `first` up to, not including, `last`."""

    part: Part
    first: int
    last: int
    component: str | None


def layout(text: str) -> Layout:
    """Say of every line of a text what it is."""
    raw = clean.lines(text)
    end = _readable(raw)
    marked = [mark(number, line[:LONGEST_LINE]) for number, line in enumerate(raw[:end])]
    sorter = _Sorter(_letter_taken_off(marked))
    sorter.sort()
    lines = tuple(sorter.line(line) for line in sorter.desk.lines[: sorter.end])
    return Layout(
        lines=lines,
        title=sorter.title,
        others=tuple(sorter.others),
        guessed=sorter.guessed,
        beyond=tuple(_beyond(raw, min(sorter.end, end))),
    )


def _beyond(raw: list[str], end: int) -> Iterator[Line]:
    """What was not looked at: the rest of overlong lines, and every line from `end` on."""
    for number, line in enumerate(raw):
        rest = line[LONGEST_LINE:] if number < end else line
        if rest.strip():
            yield Line(number=number, text=rest, body=rest, kind="other")


def _readable(raw: list[str]) -> int:
    """The number of lines from the top that are read."""
    characters = 0
    for number, line in enumerate(raw[:MOST_LINES]):
        characters += min(len(line), LONGEST_LINE)
        if characters > MOST_CHARACTERS:
            return number
    return min(len(raw), MOST_LINES)


def _letter_taken_off(lines: list[Marked]) -> list[Marked]:
    """In a letter that quotes a recipe, what is not quoted says nothing of it."""
    filled = [line for line in lines if line.raw.strip()]
    quoted = sum(1 for line in filled if QUOTE.match(line.raw))
    if quoted < QUOTED_LINES or quoted == len(filled) or quoted < QUOTED_SHARE * len(filled):
        return lines
    return [line if QUOTE.match(line.raw) else line._replace(body="") for line in lines]


class _Sorter:
    """One pass over the lines: parts, then the lines of each part."""

    def __init__(self, lines: list[Marked]) -> None:
        self.desk = Desk(lines)
        self.title: str | None = None
        #: how the title is marked: the level of its heading, 0 for none
        self.title_level = 0
        self.others: list[str] = []
        self.end = len(lines)
        self.guessed = False

    def line(self, line: Marked) -> Line:
        """The line as it was sorted."""
        number = line.number
        letter = not line.body and self.desk.kinds[number] == "sign" and line.raw.strip(" >") != ""
        return Line(
            number=number,
            text=line.raw,
            body=self.desk.body[number],
            kind="note" if letter and any(c.isalnum() for c in line.raw) else self.desk.kinds[number],
            component=self.desk.component[number],
            optional=self.desk.optional[number],
            fresh=self.desk.fresh[number],
            bullet=line.bullet,
        )

    def sort(self) -> None:
        """File every line."""
        start = self._front_matter()
        parts, headed = self._parts(start)
        for stretch in self._stretches(parts, headed, start):
            if stretch.part == "ingredients":
                sort_list(self.desk, stretch.first, stretch.last, stretch.component)
            elif stretch.part == "method":
                sort_method(self.desk, stretch.first, stretch.last, stretch.component)
            else:
                self._facts(stretch.first, stretch.last, stretch.part)

    def _front_matter(self) -> int:
        """Pass a head between two lines of dashes; its title counts."""
        lines = self.desk.lines
        first = next((line.number for line in lines if line.raw.strip()), None)
        if first is None or lines[first].raw.strip() != "---":
            return 0
        title = None
        for line in lines[first + 1 : first + FRONT_MATTER]:
            if line.raw.strip() in ("---", "..."):
                for inner in lines[first : line.number + 1]:
                    self.desk.kinds[inner.number] = "fact" if inner.raw.strip() else "blank"
                self.title, self.title_level = title, 1
                return line.number + 1
            key, _, value = line.raw.partition(":")
            if key.strip().lower() == "title":
                title = clean.plain(value.strip().strip("\"'")) or None
        return 0

    def _parts(self, start: int) -> tuple[list[Part], set[int]]:
        """The part of every line, by headings where there are any, else by weighing; and the lines that are headings."""
        desk = self.desk
        part: Part = "head"
        parts: list[Part] = ["head"] * len(desk.lines)
        headed: set[int] = set()
        seen: set[Part] = set()
        level = 0
        for line in desk.lines[start:]:
            number = line.number
            # "### Baking" under "## Method" is a part of the dish.
            inner = part == "method" and 0 < level < line.level
            opened = _opens(line)
            if opened and part == "method" and not line.colon and self._goes_on(line):
                opened = None
            if opened == "method" and (inner or (part == "ingredients" and self._names_a_part(line, level))):
                opened = None
            if opened:
                if opened == "ingredients" and "method" in seen and self._another(line, start):
                    break
                part, level = opened, line.level
                headed.add(number)
                desk.kinds[number] = "heading"
            elif (inline := headings.inline_part(line.body)) and not (
                part == "method" and (line.bullet or self._goes_on(line))
            ):
                part, desk.body[number] = inline
                headed.add(number)
            elif part == "head" and line.level and not self.title_level:
                self.title_level = line.level
            seen.add(part)
            parts[number] = part
        del parts[self.end :]
        self.guessed = "ingredients" not in seen
        guess(desk.lines[: self.end], parts, desk.kinds, start)
        if self.guessed:
            self._end_before_another(parts, start)
        return parts, headed

    def _end_before_another(self, parts: list[Part], start: int) -> None:
        """Where nothing has headings, a title over a second list after a method opens a second recipe."""
        told = False
        for line in self.desk.lines[start : self.end]:
            if not line.body:
                continue
            if told and parts[line.number] == "ingredients" and self._is_recipe_title(line):
                self.others.append(line.body)
                self.end = line.number
                del parts[self.end :]
                return
            told = told or parts[line.number] == "method"

    def _is_recipe_title(self, line: Marked) -> bool:
        """Whether a line is set like a title, says no amount and names no part of the dish."""
        alone = line.number == 0 or not self.desk.lines[line.number - 1].body
        heads = not line.bullet and not line.colon and (line.shouted or line.level or alone)
        named = AMOUNT.match(line.body) or headings.OPENERS.match(line.body.lower()) or is_part(line)
        return bool(heads) and not named and 1 < line.words <= LONGEST_TITLE // 2

    def _goes_on(self, line: Marked) -> bool:
        """Whether a line is the wrapped end of a sentence: "combine the dry / ingredients: flour, salt"."""
        above = self.desk.lines[line.number - 1].body if line.number else ""
        return line.body[:1].islower() and bool(above) and not above.endswith((".", "!", "?", ":"))

    def _names_a_part(self, line: Marked, level: int) -> bool:
        """Whether a heading of the list that could open the method names a part: "Assembly:" over amounts."""
        if headings.strong_part_of(line.body) == "method":
            return False
        below = next(
            (other for other in self.desk.lines[line.number + 1 : line.number + 3] if other.body), None
        )
        return below is not None and bool(AMOUNT.match(below.body)) and not (below.bullet == "1" and level)

    def _another(self, heading: Marked, start: int) -> bool:
        """Whether a second list opens a second recipe: a title like the first one's stands over it."""
        for line in reversed(self.desk.lines[start : heading.number]):
            opens = _opens(line)
            if opens == "method":
                return False
            titled = (
                line.level in (1, self.title_level)
                if line.level
                else _is_title(self.desk, line) and not self.title_level
            )
            if (
                line.body
                and titled
                and opens is None
                and not is_fact(line.body)
                and not headings.OPENERS.match(line.body.lower())
            ):
                self.others.append(line.body.rstrip(":"))
                self.end = line.number
                self._further_titles(heading)
                return True
        return False

    def _further_titles(self, heading: Marked) -> None:
        for line in self.desk.lines[heading.number + 1 :]:
            if line.level and line.level in (1, self.title_level) and _opens(line) is None:
                self.others.append(line.body.rstrip(":"))

    def _stretches(self, parts: list[Part], headed: set[int], start: int) -> Iterator[_Stretch]:
        """Runs of lines of one part, each from its heading (left out) to the next."""
        desk = self.desk
        first = start
        component: str | None = None
        for number in range(start, len(parts) + 1):
            at_end = number == len(parts)
            if not (at_end or number in headed or (number > start and parts[number] != parts[number - 1])):
                continue
            if number > first:
                yield _Stretch(parts[first], first, number, component)
            first, component = number, None
            if not at_end and desk.kinds[number] == "heading":
                if headings.part_of(desk.body[number]) is None:
                    component = headings.component_name(desk.body[number])
                first = number + 1

    def _facts(self, first: int, last: int, part: Part) -> None:
        """File the facts among lines that are neither list nor method; in the head the title, else the tools."""
        desk = self.desk
        for line in desk.lines[first:last]:
            if desk.is_blank(line):
                continue
            if part == "head" and self.title is None and (named := title_of(line.body)):
                desk.kinds[line.number] = "title"
                self.title = named
            elif is_fact(line.body):
                desk.kinds[line.number] = "fact"
            elif part == "tools" and not line.level:
                desk.kinds[line.number] = "tool"
            elif (
                part == "head" and self.title is None and (line.level or line.shouted or _may_be_title(line))
            ):
                desk.kinds[line.number] = "title"
                self.title = _alone(line) or None


def _opens(line: Marked) -> Part | None:
    """The part that a line opens, if it is a heading of the known kinds."""
    if not line.body or (line.bullet == "-" and not line.colon):
        return None
    if line.bullet and not (line.level or line.colon):
        return None
    part = headings.part_of(line.body)
    if part:
        return part
    return headings.strong_part_of(line.body) if headings.standing(line) and not line.bullet else None


def _may_be_title(line: Marked) -> bool:
    ended = line.body.endswith((".", "!")) and not INITIAL.search(line.body)
    return line.words <= LONGEST_TITLE and not ended and not POSTED.match(line.body)


def _alone(line: Marked) -> str:
    """The title of a line, without facts that stand far behind it: "Lasagne     Serves 8"."""
    first = APART.split(line.raw.strip())[0]
    whole = line.body.rstrip(":" if INITIAL.search(line.body) else ":.")
    told = clean.plain(first)
    return told if told and told != whole and whole.startswith(told) else whole


def _is_title(desk: Desk, line: Marked) -> bool:
    """Whether an unmarked line stands alone like a title."""
    above = desk.lines[line.number - 1].body if line.number else ""
    below = desk.following(line, len(desk.lines))
    return bool(line.body) and not line.bullet and not above and below is None and _may_be_title(line)
