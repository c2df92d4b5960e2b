"""Numbers as recipes write them, read from words: digits, fractions, mixed numbers, number words.

Every function takes the words of a line and a place in it, and gives the number that starts there and the place
after it, or None. Its docstring is its line of the grammar.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache
from typing import NamedTuple

import msgspec

from assistant.reader import words as tables

Words = Sequence[str]

FRACTION = re.compile(r"(\d{1,9})/(\d{1,9})$")
DECIMAL = re.compile(r"(\d{0,9})([.,]\d{1,9}){0,3}$")
ARTICLES = frozenset({"a", "an"})
AND = frozenset({"and", "&"})
#: "80/20" tells the lean and the fat of a hundred parts of meat.
LEAN_AND_FAT = 100
#: Denominators that a measure has. "1/2" after a whole number is a mixed number, "9/13" is not.
DENOMINATORS = frozenset({2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 16})


class NumberWords(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """The tables of `numbers.toml`."""

    cardinals: dict[str, int]
    parts: dict[str, int]
    groups: dict[str, int]


class Number(NamedTuple):
    """A number, the place after it, and whether it was an article ("a bay leaf") or said in words."""

    value: float
    end: int
    article: bool = False
    spoken: bool = False


@cache
def table() -> NumberWords:
    """The number words."""
    return tables.load("numbers.toml", NumberWords)


def word(words: Words, at: int) -> str:
    """The word at a place; empty beyond the end."""
    return words[at] if at < len(words) else ""


def number(words: Words, at: int) -> Number | None:
    """Number := (mixed | decimal | parts | cardinal) [group] | article [group]; "half a dozen", "2 1/2", "a couple"."""
    found = _mixed(words, at) or _decimal(words, at) or _parts(words, at) or _cardinal(words, at)
    if found is None:
        return _article(words, at)
    return _grouped(words, found)


def fraction(words: Words, at: int) -> Number | None:
    """Fraction := digits "/" digits; "3/4", and "3 / 4" written apart."""
    written = FRACTION.match(word(words, at))
    end = at + 1
    if written is None and word(words, at + 1) == "/":
        written, end = FRACTION.match("".join(words[at : at + 3])), at + 3
        if written and int(written[1]) >= int(written[2]):
            return None
    if written is None or int(written[2]) == 0 or int(written[1]) + int(written[2]) == LEAN_AND_FAT:
        return None
    return Number(int(written[1]) / int(written[2]), end)


def _mixed(words: Words, at: int) -> Number | None:
    """Mixed := fraction | whole ["-" | "and" | "&"] fraction | whole "and" parts; "1 1/2", "1-1/2", "one and a half"."""
    alone = fraction(words, at)
    if alone:
        return _of_one(words, alone)
    whole = _decimal(words, at) or _cardinal(words, at)
    if whole is None or whole.value != int(whole.value):
        return None
    joined = word(words, whole.end)
    part = fraction(words, whole.end)
    if part is None and (joined in AND or joined == "-"):
        part = fraction(words, whole.end + 1) or (_parts(words, whole.end + 1) if joined in AND else None)
    if part is None or part.value >= 1 or not _is_measured(words, part):
        return None
    return Number(whole.value + part.value, part.end, spoken=whole.spoken)


def _is_measured(words: Words, part: Number) -> bool:
    """Whether a fraction has a denominator that measures have."""
    written = FRACTION.match(words[part.end - 1])
    return written is None or int(written[2]) in DENOMINATORS


def _decimal(words: Words, at: int) -> Number | None:
    """Decimal := digits [("." | ",") digits]; a comma before three digits marks thousands."""
    written = word(words, at)
    if not written or not written[-1].isdigit() or not DECIMAL.match(written):
        return None
    pieces = re.split("[.,]", written)
    if len(pieces) == 1:
        return Number(float(written), at + 1)
    if len(pieces) == 2 and not ("," in written and len(pieces[1]) == 3 and pieces[0].strip("0")):
        return Number(float(f"{pieces[0] or 0}.{pieces[1]}"), at + 1)
    if all(len(piece) == 3 for piece in pieces[1:]) and "." not in written:
        return Number(float("".join(pieces)), at + 1)
    return None


def _cardinal(words: Words, at: int) -> Number | None:
    """Cardinal := tens ["-"] ones | ones; "twenty-five", "two"."""
    cardinals = table().cardinals
    first = cardinals.get(word(words, at))
    if first is None:
        return None
    second_at = at + 2 if word(words, at + 1) == "-" else at + 1
    second = cardinals.get(word(words, second_at), 0)
    if 20 <= first < 100 and 1 <= second <= 9:
        return Number(float(first + second), second_at + 1, spoken=True)
    return Number(float(first), at + 1, spoken=True)


def _parts(words: Words, at: int) -> Number | None:
    """Parts := [cardinal ["-"] | article] part ["of"] [article]; "three quarters", "half an", "a third of a"."""
    names = table().parts
    count, place = 1.0, at
    if word(words, at) not in names:
        head = _cardinal(words, at)
        if head is None and word(words, at) not in ARTICLES:
            return None
        count, place = (head.value, head.end) if head else (1.0, at + 1)
        if head and word(words, place) == "-":
            place += 1
    part = word(words, place)
    if part not in names or (word(words, place + 1) in AND and word(words, place + 2) == "half"):
        return None
    return _of_one(words, Number(count / names[part], place + 1, spoken=True))


def _of_one(words: Words, found: Number) -> Number:
    """After a part of one, "a" and "of a" count for nothing: "half an onion", "1/2 of a lemon"."""
    after = found.end + 1 if word(words, found.end) == "of" else found.end
    if found.value < 1 and word(words, after) in ARTICLES and word(words, after + 1) not in ("few", "little"):
        return found._replace(end=after + 1)
    return found


def _grouped(words: Words, found: Number) -> Number:
    """Group := "dozen" | "couple" | "pair" ["of"]: it multiplies what stands before it."""
    groups = table().groups
    times = groups.get(word(words, found.end))
    if times is None or (times == 2 and found.value != 1):
        return found
    end = found.end + 1 + (word(words, found.end + 1) == ".")
    return Number(found.value * times, end + (word(words, end) == "of"), spoken=True)


def _article(words: Words, at: int) -> Number | None:
    """Article := "a" | "an" [group]; "a few" and "a little" are no number."""
    if word(words, at) in table().groups and word(words, at + 1) in ("of", "eggs", "egg"):
        return _grouped(words, Number(1.0, at, spoken=True))
    if word(words, at) not in ARTICLES or word(words, at + 1) in ("few", "little", "lot"):
        return None
    return _grouped(words, Number(1.0, at + 1, article=True))
