"""A recipe without a list: the foods that its telling names together with their amounts.

"Melt 3 tablespoons of butter and sweat 4 large leeks" holds two ingredients. Each is read as a line of a list would be
(`lines.py`); a food told without any amount is left to the reading of the steps (`added.py`).
"""

from __future__ import annotations

import re
from collections.abc import Iterable

import msgspec

from assistant.reader.guess import AMOUNT, COUNTS_NO_FOOD
from assistant.reader.lines import read_line
from assistant.reader.sections import Line
from rules.recipe import Ingredient

#: Where the words for a food end, in telling.
ENDS = re.compile(
    r"[,;:()]|[.!?](?=\s|$)|\s(?:and|in|into|to|until|till|for|with|over|on|at|by|from|if|when|which|that|while|bring|is|are|was|it|them)\b",
    re.IGNORECASE,
)
#: "Butter the size of an egg" holds no egg.
COMPARED = re.compile(r"\b(?:the )?size of an? \w{1,20}", re.IGNORECASE)
#: "A pound and a half of beef" is told in one breath.
AND_A_HALF = re.compile(r"\b(an?|one|two|three|\d{1,2}) (\w{1,12}) and a half\b", re.IGNORECASE)
STARTS = re.compile(r"(?<![\w/.])(?=(?:\d|\.\d|[½¼¾⅓⅔⅛]|[a-z]{1,7}[\s-]))", re.IGNORECASE)
NOT_TAKEN = re.compile(r"\b(?:no|not|never|without|don't|another|every)\b", re.IGNORECASE)
#: A text is untrusted; a paragraph longer than this is read up to here.
LONGEST = 20_000


def told(lines: Iterable[Line]) -> tuple[Ingredient, ...]:
    """The ingredients of the steps of a recipe that has no list, in the order in which they are told."""
    found: dict[tuple[int, str], Ingredient] = {}
    for paragraph in _paragraphs(lines):
        text = COMPARED.sub(lambda words: " " * len(words[0]), " ".join(line.body for line in paragraph))
        text = AND_A_HALF.sub(lambda found: f"{_half_more(found[1])} {found[2]}".ljust(len(found[0])), text)
        place = 0
        for fragment in ENDS.split(text[:LONGEST]):
            place = text.index(fragment, place)
            line = _line_at(paragraph, place + len(fragment) - len(fragment.lstrip()))
            for ingredient in _in_fragment(fragment, line):
                found.setdefault((line.number, ingredient.name), ingredient)
            place += len(fragment)
    return tuple(found.values())


def _half_more(whole: str) -> str:
    """A whole number and a half, in figures."""
    return f"{({'a': '1', 'an': '1', 'one': '1', 'two': '2', 'three': '3'}).get(whole.lower(), whole)} 1/2"


def _paragraphs(lines: Iterable[Line]) -> list[list[Line]]:
    """Lines that go on with the sentence above them belong together."""
    paragraphs: list[list[Line]] = []
    for line in lines:
        if line.fresh or not paragraphs or paragraphs[-1][-1].number + 1 != line.number:
            paragraphs.append([])
        paragraphs[-1].append(line)
    return paragraphs


def _line_at(paragraph: list[Line], place: int) -> Line:
    for line in paragraph:
        if place <= len(line.body):
            return line
        place -= len(line.body) + 1
    return paragraph[-1]


def _in_fragment(fragment: str, line: Line) -> tuple[Ingredient, ...]:
    if NOT_TAKEN.search(fragment):
        return ()
    for start in STARTS.finditer(fragment):
        words = fragment[start.start() :]
        if not AMOUNT.match(words):
            continue
        if COUNTS_NO_FOOD.match(words):
            return ()
        return tuple(
            msgspec.structs.replace(ingredient, text=line.body, from_="method")
            for ingredient in read_line(words, line=line.number, component=line.component)
            if ingredient.food is not None or any(amount.unit for amount in ingredient.amounts)
        )
    return ()
