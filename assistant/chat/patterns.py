"""Patterns of the talk: the rows of `acts/*.toml` made into spaCy patterns, found in an utterance and weighed.

The signs of a pattern stand at the top of `acts/words.toml`. A match weighs what it explains: words of a group and
values count double, single words once, small words nothing, and every word that a gap jumps over costs a little.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from functools import cache
from typing import Any, NamedTuple

import msgspec
from spacy.matcher import Matcher
from spacy.tokens import Doc, Token

from assistant.chat import tables
from assistant.chat.lexicon import EDGE, GAP, LIGHT, Heard, Word, lexicon
from assistant.chat.slots import KINDS, fits
from assistant.reader.tokens import nlp

_ELEMENT = re.compile(r"\.\.|[\^$]|\([\w',|{}]+\)|[\w',|{}]+\??")
_GAP_WORDS = 4
_SMALL_WORDS = 2
#: What a matched word adds to a match's weight, and what a word in a gap takes from it.
WEIGHT_VALUE, WEIGHT_GROUP, WEIGHT_WORD, WEIGHT_SMALL = 2.0, 2.0, 1.0, 0.2
GAP_COST, STRANGE_GAP_COST = 0.25, 0.6
#: What decides between two that explain the same: "we own a 14" tells of a pot, a figure alone of what was said last.
TIES = {"pot": 0.01, "camp": 0.02, "cold": 0.01, "eat at": 0.01, "again": -0.01}
#: A saying that sets something by itself tells more than one that does not.
SETS_MORE = 0.005
#: A phrase of several words is surer than a word.
PER_MORE_WORD = 0.5
#: Slots that take everything up to the next comma; a rest of foods has to name one.
RESTS = ("{rest}", "{rest_food}", "{name}", "{whole}")


class Saying(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """A pattern that sets slots by itself: "half of it" sets the factor to 0.5."""

    say: str
    set: dict[str, str] = {}


class Act(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """One thing that can be said or asked: its name, what it does in words, an example, and the ways to say it."""

    name: str
    says: str
    example: str
    patterns: tuple[str, ...] = ()
    relative: tuple[Saying, ...] = ()
    #: questions about the circumstance, which change nothing
    asked: tuple[str, ...] = ()
    #: words that a question about it is known by where no pattern fits
    cues: tuple[str, ...] = ()

    def sayings(self) -> tuple[Saying, ...]:
        """All ways to say it."""
        asked = tuple(Saying(say=say, set={"asked": "yes"}) for say in self.asked)
        return (*(Saying(say=say) for say in self.patterns), *self.relative, *asked)


class ActFile(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """A file of acts."""

    act: tuple[Act, ...]


@cache
def acts() -> dict[str, Act]:
    """Every act by its name, in the order of the files."""
    return {act.name: act for name in tables.files() for act in tables.load(name, ActFile).act}


class Found(NamedTuple):
    """A pattern found: the act, the words it explains (first, behind the last), the slots, the weight."""

    act: str
    start: int
    end: int
    slots: Mapping[str, object]
    weight: float
    own: frozenset[int]


class _Compiled(NamedTuple):
    """A saying with its matcher; an element for each token pattern: a slot in braces, "..", "~", "^", or the words.

    `needs` are the groups of each word that may not be missing.
    """

    act: str
    saying: Saying
    elements: tuple[str, ...]
    needs: tuple[frozenset[str], ...]
    matcher: Matcher

    def may_stand_in(self, groups: frozenset[str]) -> bool:
        """Whether words of these groups could hold the saying at all: a quick look before the matcher's."""
        return not any(need.isdisjoint(groups) for need in self.needs)


class Patterns:
    """All patterns of all acts, each in a matcher of its own: most are known to fail before any is asked."""

    def __init__(self, known: Iterable[Act]) -> None:
        if not Token.has_extension("groups"):
            Token.set_extension("groups", default=())
        self._compiled = [_compiled(saying, act.name) for act in known for saying in act.sayings()]
        #: the places of the patterns that need a word of a group, by their most particular need
        self._needing: dict[str, list[int]] = {}
        for place, compiled in enumerate(self._compiled):
            for group in min(compiled.needs, key=len, default=frozenset([EDGE])):
                self._needing.setdefault(group, []).append(place)

    def find(self, heard: Heard) -> list[Found]:
        """Every match in an utterance, overlapping ones included."""
        row = Doc(nlp().vocab, words=[word.text or "|" for word in heard.words])
        for token, word in zip(row, heard.words, strict=True):
            token._.groups = word.groups
        there = frozenset().union(*(word.groups for word in heard.words))
        found = []
        for place in sorted({place for group in there for place in self._needing.get(group, ())}):
            compiled = self._compiled[place]
            if compiled.may_stand_in(there):
                for _, start, end, alignments in compiled.matcher(row, with_alignments=True):
                    match = _weighed(compiled, heard, start, end, alignments)
                    if match is not None:
                        found.append(match)
        return found


@cache
def patterns() -> Patterns:
    """All patterns, once in this process."""
    return Patterns(acts().values())


def _compiled(saying: Saying, act: str) -> _Compiled:
    elements, rows = _compile(saying.say, act)
    needs = tuple(frozenset(row["_"]["groups"]["INTERSECTS"]) for row in rows if row and "OP" not in row)
    needs = tuple(need for need in needs if EDGE not in need)
    matcher = Matcher(nlp().vocab, validate=False)
    matcher.add(act, [rows])
    return _Compiled(act, saying, elements, needs, matcher)


def _any(names: Iterable[str], **more: str) -> dict[str, Any]:
    return {"_": {"groups": {"INTERSECTS": list(names)}}, **more}


def _compile(say: str, act: str) -> tuple[tuple[str, ...], list[dict[str, Any]]]:
    """A pattern's elements and their spaCy token patterns; small words are let in between any two."""
    elements: list[str] = []
    rows: list[dict[str, Any]] = []
    parts = _ELEMENT.findall(say)
    if " ".join(parts) != " ".join(say.split()):
        raise ValueError(f'the pattern "{say}" of {act} holds a sign that means nothing')
    for place, part in enumerate(parts):
        before = parts[place - 1] if place else ".."
        if part.startswith("("):
            elements.append("^")
            rows.append(_any(_groups(part.strip("()"), say, act)))
            continue
        if before not in ("..", "^") and part not in ("..", *RESTS):
            elements += ["~"] * _SMALL_WORDS
            rows += [_any([LIGHT], OP="?")] * _SMALL_WORDS
        if part == "..":
            elements += ["~"] * _SMALL_WORDS + [".."] * _GAP_WORDS
            rows += [_any([LIGHT], OP="?")] * _SMALL_WORDS + [_any([GAP], OP="?")] * _GAP_WORDS
        elif part in "^$":
            elements.append("^")
            rows.append(_any([EDGE]))
        elif part in RESTS:
            elements.append(part)
            rows.append({})
        else:
            more = {"OP": "?"} if part.endswith("?") else {}
            name = part.rstrip("?")
            elements.append(name)
            rows.append(_any(_groups(name, say, act), **more))
    return tuple(elements), rows


def _groups(element: str, say: str, act: str) -> list[str]:
    names: list[str] = []
    for word in element.split("|"):
        if word.startswith("{"):
            if word[1:-1] not in KINDS:
                raise ValueError(f'the pattern "{say}" of {act} has an unknown slot {word}')
            names += [f"{{{kind}}}" for kind in KINDS[word[1:-1]]]
        elif word.isupper() and word not in lexicon().names():
            raise ValueError(f'the pattern "{say}" of {act} names an unknown group {word}')
        else:
            names.append(word if word.isupper() else f"={word}")
    return names


def _slot(element: str, word: Word) -> str | None:
    """The slot of an element that a word's value fills, if the element has one for that kind of value."""
    for part in element.split("|"):
        if part.startswith("{") and word.value(KINDS[part[1:-1]]) is not None:
            return part[1:-1]
    return None


def _weighed(
    compiled: _Compiled, heard: Heard, start: int, end: int, alignments: Sequence[int]
) -> Found | None:
    """A match with its slots and its weight; None where a value does not fit its slot."""
    slots: dict[str, object] = dict(compiled.saying.set)
    weight = TIES.get(compiled.act, 0.0) + (SETS_MORE if compiled.saying.set else 0.0)
    own: set[int] = set()
    first, behind = end, start
    for place in range(start, end):
        element = compiled.elements[alignments[place - start]]
        word = heard.words[place]
        if element == ".." and "NOT" in word.groups:
            return None  # a gap may hold many a word, but none that turns the meaning
        if element in ("^", ".."):
            if element == ".." and LIGHT not in word.groups:
                weight -= GAP_COST if word.is_known else STRANGE_GAP_COST
            continue
        first, behind = min(first, place), max(behind, place + 1)
        own.add(place)
        if element in RESTS:
            behind = _rest(heard, place, over_and=element == "{whole}")
            said = heard.words[place:behind]
            if not said:
                return None  # nothing but a sign stands there
            if element == "{rest_food}" and not any(word.value(("food",)) for word in said):
                return None
            if element == "{name}" and (said[0].value(("form", "path")) or "ELSEWHERE" in said[0].groups):
                return None
            slots[element[1:-1]] = heard.said(place, behind)
            own |= set(range(place, behind))
            weight += WEIGHT_VALUE + _more_words(element, behind - place)
        elif slot := _slot(element, word):
            if not fits(slot, word):
                return None
            slots[slot] = word
            weight += WEIGHT_VALUE + PER_MORE_WORD * (word.size - 1)
        else:
            weight += _weight(element, word)
    if not own:
        return None
    return Found(compiled.act, first, behind, slots, weight, frozenset(own))


def _more_words(element: str, count: int) -> float:
    """What the words of a rest add to its weight: all of a question is its thing, a name is one thing."""
    return (
        float(count) if element == "{whole}" else PER_MORE_WORD * (count - 1) if element == "{name}" else 0.0
    )


def _weight(element: str, word: Word) -> float:
    if element == "~" or LIGHT in word.groups:
        return WEIGHT_SMALL
    more = PER_MORE_WORD * (word.size - 1)
    return (
        more + WEIGHT_GROUP
        if any(name.isupper() and name in word.groups for name in element.split("|"))
        else more + WEIGHT_WORD
    )


def _rest(heard: Heard, place: int, *, over_and: bool) -> int:
    """Where the rest of a part ends: before the next comma, full stop or, unless told otherwise, "and"."""
    edges = {"COMMA", "STOP"} if over_and else {"COMMA", "STOP", "AND"}
    behind = place
    while behind < len(heard.words) - 1 and not heard.words[behind].groups & edges:
        behind += 1
    return behind
