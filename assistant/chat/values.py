"""Numbers and the words that stand with them: what every kind of value in an utterance is made of.

A value keeps how it was said; which slot it fills is decided by the act that takes it (`slots.fits`). Words are lower
case, cut by the reader's tokenizer.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache
from typing import Literal, NamedTuple

import msgspec

from assistant.chat import tables
from assistant.reader import numbers
from assistant.reader.numbers import word

Words = Sequence[str]
Kind = Literal[
    "number", "clock", "degrees", "feet", "inches", "hours", "quarts", "factor", "food", "wind", "air", "ground", "sky",
    "form", "path", "quoted", "units", "allergen", "day",
]  # fmt: skip

_THOUSANDS = re.compile(r"(\d{1,3}(?:\.\d)?)k")


class Value(NamedTuple):
    """A value at the words `start` up to, not including, `end`; `unit` is the letter or word it was said with."""

    kind: Kind
    value: float | str
    start: int
    end: int
    unit: str = ""


class ValueWords(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """The tables of `values.toml`: words behind or before a number, by what they make of it."""

    fahrenheit: tuple[str, ...]
    celsius: tuple[str, ...]
    degrees: tuple[str, ...]
    feet: tuple[str, ...]
    meters: tuple[str, ...]
    inches: tuple[str, ...]
    centimeters: tuple[str, ...]
    speeds: dict[str, float]
    tens: dict[str, float]
    sizes: dict[str, float]
    hours: dict[str, float]
    quarts: dict[str, float]
    times: tuple[str, ...]
    factors: dict[str, float]
    minus: tuple[str, ...]
    morning: tuple[str, ...]
    evening: tuple[str, ...]
    oclock: tuple[str, ...]
    past: tuple[str, ...]
    to: tuple[str, ...]
    clocks: dict[str, str]
    fixed_hours: dict[str, float]
    fixed_feet: dict[str, float]
    wind: dict[str, tuple[str, ...]]
    air: dict[str, float]
    ground: dict[str, tuple[str, ...]]
    sky: dict[str, tuple[str, ...]]
    units: dict[str, tuple[str, ...]]
    forms: dict[str, tuple[str, ...]]
    days: dict[str, tuple[str, ...]]
    allergens: dict[str, tuple[str, ...]]


@cache
def table() -> ValueWords:
    """The value words."""
    return tables.load("values.toml", ValueWords)


def phrase(words: Words, at: int, phrases: Sequence[str]) -> int | None:
    """Where the longest of the phrases that stands at a place ends."""
    ends = [
        at + len(parts)
        for parts in (phrase.split() for phrase in phrases)
        if list(words[at : at + len(parts)]) == parts
    ]
    return max(ends, default=None)


class Counted(NamedTuple):
    """A number and the place after it; `article` where it was only "a" or "an"."""

    value: float
    end: int
    article: bool = False


def number(words: Words, at: int) -> Counted | None:
    """A number as people say it: 7,000; 7k; seven thousand two hundred; three seventy five; half a dozen; a hundred."""
    minus_end = phrase(words, at, table().minus)
    if minus_end is not None:
        below = number(words, minus_end)
        return below._replace(value=-below.value) if below and not below.article else None
    short = (
        _THOUSANDS.fullmatch(word(words, at) + word(words, at + 1)) if word(words, at + 1) == "k" else None
    )
    if short:
        return Counted(float(short[1]) * 1000, at + 2)
    found = numbers.number(words, at)
    if found is None:
        return None
    counted = Counted(found.value, found.end, found.article)
    is_said = found.spoken or found.article or word(words, found.end) in ("thousand", "hundred")
    return _spoken(words, counted) if is_said else counted


def _spoken(words: Words, first: Counted) -> Counted:
    """Said in words: "seven thousand two hundred", "three hundred and fifty", "three fifty", "a hundred and ten"."""
    total, end, last = 0.0, first.end, first.value
    grew = False
    while True:
        following = word(words, end)
        if following in ("thousand", "hundred"):
            last *= 1000 if following == "thousand" else 100
            end += 1
            grew = True
            if following == "thousand":
                total, last = total + last, 0.0
        step = end + 1 if grew and word(words, end) == "and" else end
        more = numbers.number(words, step)
        if (
            not grew
            and more
            and more.spoken
            and 1 <= first.value <= 9
            and 10 <= more.value <= 95
            and not first.article
        ):
            if word(words, more.end) in ("thousand", "hundred", *table().inches) or first.end != end:
                break
            return Counted(first.value * 100 + more.value, more.end)  # "three seventy five"
        if not grew or more is None or not more.spoken or more.article or more.value >= 100 or more.value < 1:
            break
        if word(words, more.end) == "hundred":
            total, last, end = total + last, more.value, more.end
            continue
        return Counted(total + last + more.value, more.end)
    return Counted(total + last, end, first.article and not grew)


def allergens_of(said: str) -> tuple[str, ...]:
    """The allergens of the nine that a word means: "dairy" is milk, "nuts" are tree nuts and peanuts."""
    words = said.lower().removesuffix(" free").strip()
    return tuple(name for name, phrases in table().allergens.items() if words in phrases)
