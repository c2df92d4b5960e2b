"""Figures of a line: a number or a range with its doubt, and sizes (a figure with a measure).

Every function takes words and a place, and gives what starts there or None; its docstring is its line of the grammar.
"""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

from assistant.reader import words as tables
from assistant.reader.measures import unit
from assistant.reader.numbers import Number, Words, number, word
from rules.recipe import Amount, Package

LONGEST_PHRASE = 5
#: Before a unit these say one: "plus another cup".
ONE_MORE = frozenset({"another", "an extra", "an additional", "a further"})
#: A count of more than this many is none.
MOST = 1e7


class Figure(NamedTuple):
    """A number or a range with its doubt."""

    low: float
    high: float
    end: int
    approx: bool = False
    #: said with "a" or "an"
    article: bool = False
    #: "at least", "up to"
    bound: str | None = None
    #: a range written with a hyphen
    dashed: bool = False


class Size(NamedTuple):
    """A figure with a measure: the 14 ounces of a can, the 9 inches of a crust; `again` is the same said another way."""

    package: Package
    end: int
    kind: str
    again: tuple[Package, ...] = ()


@cache
def group(name: str) -> frozenset[str]:
    """The phrases of a group of `amounts.toml`."""
    return frozenset(tables.groups("amounts.toml")[name])


@cache
def _openers(name: str) -> frozenset[str]:
    return frozenset(known.split()[0] for known in group(name))


def phrase(words: Words, at: int, name: str) -> int:
    """The place after the longest phrase of a group that starts here; the place itself if none does."""
    first = word(words, at)
    if name == "modifier" and first.endswith(("-sized", "-size")):
        return at + 1
    if first not in _openers(name):
        return at
    known = group(name)
    for end in range(min(at + LONGEST_PHRASE, len(words)), at, -1):
        if " ".join(words[at:end]) in known:
            return end + 1 if name == "approx" and word(words, end) == "." else end
    return at


def figure(words: Words, at: int) -> Figure | None:
    """`figure := (approx | bound)* (number | "(" number ")") [range] [approx]`; "about 2 to 3", "at least 4", "between 1 and 2"."""
    place, approx, bound = at, False, None
    while True:
        after = phrase(words, place, "approx")
        if after > place:
            place, approx = after, True
            continue
        after = phrase(words, place, "bound")
        if after == place:
            break
        bound, place = " ".join(words[place:after]), after
    low = _in_brackets(words, place) or number(words, place)
    if low is None and bound in ONE_MORE and unit(words, place):
        low, bound = Number(1.0, place, article=True), None
    if low is None or low.value > MOST:
        return None
    high, end, dashed = low.value, low.end, False
    upper = _range(words, low, between=bound == "between")
    if upper:
        high, end, dashed = upper.value, upper.end, word(words, low.end) == "-"
    end = past_or_more(words, end)
    after = phrase(words, end, "approx_after")
    return Figure(low.value, high, after, approx or after > end, low.article and not upper, bound, dashed)


def past_or_more(words: Words, at: int) -> int:
    """The place after `"+" | "or more" | "or less"`: "2+ cups", "1 cup or more of"; a plus before a number is a sum."""
    if word(words, at) == "+" and number(words, at + 1) is None:
        return at + 1
    return phrase(words, at, "or_more")


def _in_brackets(words: Words, at: int) -> Number | None:
    """`"(" number ")"` before more words: the count of "(2) 15 oz cans"."""
    inside = number(words, at + 1) if word(words, at) == "(" else None
    if inside is None or word(words, inside.end) != ")" or inside.end + 1 >= len(words):
        return None
    return inside._replace(end=inside.end + 1)


def _range(words: Words, low: Number, *, between: bool) -> Number | None:
    """`range := ("-" | "to" | "or" | "and" after "between") [approx] number`; the second number is the greater one."""
    joined = phrase(words, low.end, "range")
    if joined == low.end and between and word(words, low.end) == "and":
        joined += 1
    if joined == low.end or low.article:
        return None
    high = number(words, phrase(words, joined, "approx"))
    return high if high and low.value < high.value <= MOST and not high.article else None


def size(words: Words, at: int) -> Size | None:
    """`size := figure ["-"] measure ("/" size)*`; "14.5 oz", "8-ounce", "400g/14oz"."""
    found = figure(words, at)
    if found is None or found.article:
        return None
    measured = unit(words, found.end + (word(words, found.end) == "-"))
    if measured is None or not measured.unit.is_measure:
        return None
    package = Package(low=tidy(found.low), high=tidy(found.high), unit=measured.unit.id)
    again = size(words, measured.end + 1) if word(words, measured.end) in ("/", "or") else None
    if again is None or again.kind == "length":
        return Size(package, measured.end, measured.unit.kind)
    return Size(package, again.end, measured.unit.kind, (again.package, *again.again))


def amount(found: Figure, unit_id: str | None, package: Package | None = None) -> Amount:
    """A figure as an amount of the recipe."""
    return Amount(
        low=tidy(found.low), high=tidy(found.high), unit=unit_id, approx=found.approx, package=package
    )


def tidy(value: float) -> float:
    """Six digits after the point keep thirds exact enough and hide the noise of binary fractions."""
    return round(value, 6)
