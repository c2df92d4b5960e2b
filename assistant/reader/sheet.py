"""One step of the method with everything that was found in it: foods, vessels, figures, fires, lids, clauses."""

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from collections.abc import Iterable
from typing import NamedTuple, TypeVar

from spacy.tokens import Doc

from assistant.reader import words
from assistant.reader.clauses import Clause, cut
from assistant.reader.deeds import finder, lexicon
from assistant.reader.frame import frame
from assistant.reader.mentions import Foods, Mention
from assistant.reader.places import Place, Sign, fires, lids, places
from assistant.reader.prose import Quantity, quantities
from assistant.reader.sections import Line
from assistant.reader.things import marks
from assistant.reader.tokens import Mark, doc, lower, offsets
from assistant.reader.warmth import Temperature, temperatures

S = TypeVar("S", Mention, Place, Mark)
#: A label before a step is no longer than this [characters].
LABEL = 40
#: Behind a label that is a sentence so many signs may follow: its full stop, a blank.
PAST_A_LABEL = 3
#: A sentence in bold that opens a step, its words at most, and by how many letters a word is known again.
LABELLED = re.compile(r"\W{0,8}(?:\d{1,2}[.)]\s{0,3})?\*\*([^*]{2,60})\*\*\s")
LONGEST_LABEL, STEM = 5, 4
MEASURES = frozenset(
    {
        "cup",
        "cups",
        "glass",
        "bowl",
        "bowls",
        "jar",
        "bottle",
        "bag",
        "container",
        "jars",
        "bottles",
        "spoon",
        "mug",
        "sheet",
        "tin",
    }
)


class Paragraph(NamedTuple):
    """The lines of one step, joined: text, and for each line where it begins in it."""

    lines: tuple[Line, ...]
    text: str
    starts: tuple[int, ...]

    def line_at(self, offset: int) -> int:
        """The place in `lines` of the line that holds a character of the text."""
        return max(0, bisect_right(self.starts, offset) - 1)


def paragraphs(lines: Iterable[Line]) -> list[Paragraph]:
    """The lines of the method by step: a line that goes on with the one above joins it."""
    groups: list[list[Line]] = []
    for line in lines:
        if line.fresh or not groups:
            groups.append([])
        groups[-1].append(line)
    return [_joined(group) for group in groups]


def _joined(lines: list[Line]) -> Paragraph:
    starts: list[int] = []
    offset = 0
    for line in lines:
        starts.append(offset)
        offset += len(line.body) + 1
    return Paragraph(tuple(lines), " ".join(line.body for line in lines), tuple(starts))


class Sheet:
    """A paragraph read word by word; everything in it by token."""

    def __init__(self, paragraph: Paragraph, foods: Foods) -> None:
        self.paragraph = paragraph
        self.text: Doc = doc(paragraph.text)
        #: the number of the step that its first line is
        self.first = 0
        self.component = paragraph.lines[0].component
        self.frame = frame(self.text)
        self._offsets = offsets(self.text)
        vessels = places(self.text)
        mentions = foods.mentions(self.text)
        measured = {mention.start for mention in mentions}
        orders = _orders(self.text)
        self.places = [
            place
            for place in vessels
            if place.start not in orders
            and not _is_measure(self.text, place, measured)
            and self.frame.low[max(0, place.start - 1) : place.start] != ("pastry",)
        ]
        inside = {index for place in self.places for index in range(place.start, place.end)}
        self.things = [mark for mark in marks(self.text) if mark.start not in inside]
        self.mentions = [m for m in mentions if m.start not in inside and m.end - 1 not in inside]
        self.clauses = cut(self.frame, self._nouns())
        self.amounts = quantities(paragraph.text)
        self.temperatures: tuple[Temperature, ...] = temperatures(self.amounts)
        self.times = [quantity for quantity in self.amounts if quantity.sort == "time"]
        self.heat = fires(self.text)
        self.lid = lids(self.text)
        #: the tokens of a label in bold that only sums the step up: "**Brown the meat.** Heat the oil, brown ..."
        self.label = self._label()
        #: the whole step is done hours before: "The night before: soak the beans"
        self.ahead = self._is_ahead()
        #: times that were given to a deed, by where they begin
        self.told: set[int] = set()

    def _label(self) -> int:
        """How many tokens the label takes; it says again what is told behind it."""
        found = LABELLED.match(self.paragraph.lines[0].text)
        if found is None or len(found[1].split()) > LONGEST_LABEL or any(map(str.isdigit, found[1])):
            return 0
        end = next((end for _, end in self.frame.sentences[:1]), 0)
        if self.offset(end) > len(found[1]) + PAST_A_LABEL:
            # "**Dough:** knead everything": the label is no sentence of its own.
            return 0
        said = {word[:STEM] for word in self.frame.low[:end] if len(word) >= STEM}
        behind = {word[:STEM] for word in self.frame.low[end:] if len(word) >= STEM}
        return end if said & behind and len(self.frame.low) - end >= LONGEST_LABEL else 0

    def _nouns(self) -> frozenset[int]:
        """Tokens inside the name of a food or a vessel, where no verb can stand."""
        spans: tuple[Mention | Place, ...] = (*self.mentions, *self.places)
        later = {index for span in spans for index in range(span.start + 1, span.end)}
        alone = {span.start for span in spans if span.end - span.start == 1 and not self._is_order(span.end)}
        alone -= {at for at in alone if self._orders_food(at)}
        heads = {m.start for m in self.mentions if m.end - m.start > 1 and m.who}
        heads |= {place.start for place in self.places if place.end - place.start > 1}
        first = {start for start, _ in self.frame.sentences if not self._is_fat_first(start)}
        return frozenset(later | (alone - first) | (heads - first))

    def _orders_food(self, at: int) -> bool:
        """Whether a food that is a verb as well stands behind a comma and before a food: "for the sauce, cream butter"."""
        before_food = words.groups("orders.toml")["before_food"]
        return (
            self.low(at - 1) in (",", "then", ":")
            and self.low(at) in before_food
            and bool(self.mentions_in(at + 1, at + 2))
        )

    def _is_fat_first(self, start: int) -> bool:
        """Whether a sentence opens with a listed food that is a verb as well: "Grease in the pan"."""
        verb = lexicon().get(self.low(start))
        listed = any(m.end == start + 1 and m.who for m in self.mentions_in(start, start + 1))
        return (
            listed
            and verb is not None
            and verb.deed == "grease"
            and self.low(start + 1) in ("in", "into", "on")
        )

    def _is_order(self, after: int) -> bool:
        """Whether what follows a single word shows it to be a verb: "butter the tin", "rub in the fat"."""
        clause_words = words.groups("clauses.toml")
        if f"{self.low(after - 1)} {self.low(after)}" in lexicon():
            if self.low(after) == "out":  # "fish out the bay leaves"
                return True
            after += 1
        return self.low(after) in clause_words["article"] or self.low(after) in clause_words["pronoun"]

    def _is_ahead(self) -> bool:
        label, colon, _ = self.paragraph.text.partition(":")
        labels = (label.lower() if colon and len(label) < LABEL else "", (self.component or "").lower())
        return any(phrase in label for phrase in words.groups("clauses.toml")["ahead"] for label in labels)

    def mentions_in(self, start: int, end: int) -> list[Mention]:
        """The foods between two tokens."""
        return _between(self.mentions, start, end)

    def places_in(self, start: int, end: int) -> list[Place]:
        """The vessels between two tokens."""
        return _between(self.places, start, end)

    def things_in(self, start: int, end: int) -> list[Mark]:
        """The intermediate things between two tokens."""
        return _between(self.things, start, end)

    def times_in(self, start: int, end: int) -> list[Quantity]:
        """The times between two tokens that were not given to a deed before."""
        low, high = self.offset(start), self.offset(end)
        first = bisect_left(self.times, low, key=lambda quantity: quantity.end - 1)
        found = []
        for quantity in self.times[first:]:
            if quantity.start >= high:
                break
            if quantity.start >= low and quantity.start not in self.told:
                found.append(quantity)
        return found

    def temperature_in(self, start: int, end: int) -> float | None:
        """The first temperature between two tokens [°F]."""
        low, high = self.offset(start), self.offset(end)
        first = bisect_left(self.temperatures, low, key=lambda temperature: temperature.start)
        found = self.temperatures[first : first + 1]
        return found[0].fahrenheit if found and found[0].start < high else None

    def signs_in(self, signs: list[Sign], start: int, end: int) -> list[str]:
        """What signs of fire or lid say between two tokens."""
        first = bisect_left(signs, start, key=lambda sign: sign.at)
        last = bisect_left(signs, end, key=lambda sign: sign.at)
        return [sign.says for sign in signs[first:last]]

    def said(self, start: int, end: int) -> str:
        """The words between two tokens, lower case."""
        return self.paragraph.text[self.offset(start) : self.offset(end)].strip().lower()

    def written(self, start: int, end: int) -> str:
        """The words between two tokens as written."""
        return self.paragraph.text[self.offset(start) : self.offset(end)].strip()

    def low(self, index: int) -> str:
        """One token in lower case, empty outside of the text."""
        return self.frame.low[index] if 0 <= index < len(self.frame.low) else ""

    def offset(self, token: int) -> int:
        """Where a token begins in the text [characters]."""
        return self._offsets[token] if token < len(self._offsets) else len(self.paragraph.text)

    def step_at(self, token: int) -> int:
        """The number of the step whose line holds a token."""
        return self.first + self.paragraph.line_at(self.offset(token))

    def aside(self, token: int, clause: Clause | None) -> bool:
        """Whether a token stands where the text tells when or how far: "until the onions are soft"."""
        if token not in self.frame.asides:
            return False
        return not (clause and clause.verb_start <= token and clause.verb_start in self.frame.asides)


def _between(spans: list[S], start: int, end: int) -> list[S]:
    first = bisect_left(spans, start, key=lambda span: span.start)
    last = bisect_left(spans, end, key=lambda span: span.start)
    return spans[first:last]


def _orders(text: Doc) -> set[int]:
    """Where verbs of several words begin, which are no vessels: "pan fry"."""
    return {
        mark.start
        for mark in finder().longest(text)
        if mark.end - mark.start > 1 and lexicon()[mark.label].form == "plain"
    }


def _is_measure(text: Doc, place: Place, foods: set[int]) -> bool:
    """Whether a vessel only measures: "a glass of water", "1/3 cup water"."""
    if lower(text)[place.end - 1] not in MEASURES:
        return False
    following = lower(text)[place.end] if place.end < len(text) else ""
    numbered = text[place.start].like_num or (place.start > 0 and text[place.start - 1].like_num)
    if following == "at" and lower(text)[place.end - 1] == "cup":
        return True  # "beat in the flour a cup at a time"
    return following == "of" or (place.end in foods and (numbered or place.end - place.start == 1))
