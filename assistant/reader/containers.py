"""Counts of things with a size: tins, packets, pieces by the inch, and foods that come so big.

Every function takes words and a place, and gives what starts there or None; its docstring is its line of the grammar.
"""

from __future__ import annotations

from typing import NamedTuple

from assistant.reader.figures import Figure, Size, amount, phrase, size, tidy
from assistant.reader.measures import Found as FoundUnit
from assistant.reader.measures import unit
from assistant.reader.numbers import Words, word
from rules.recipe import Amount, Package

#: A range this wide before a container is a count and a size: "2-14 oz cans".
WIDE_RANGE = 4.0
#: What a size by this measure may be the size of.
HELD_BY = {
    "volume": ("container",),
    "mass": ("container", "shape", "part"),
    "length": ("container", "shape", "part", "rough"),
}


class Counted(NamedTuple):
    """Amounts of things with a size, the place after them, and words that say how full or how big."""

    amounts: tuple[Amount, ...]
    end: int
    notes: tuple[str, ...] = ()
    #: a size that belongs to the food and not to a container: "9-inch"
    size: str | None = None


def contained(words: Words, found: Figure) -> Counted | None:
    """`contained := count ["x"] (size | "(" size ["each"] ")") holder | size holder | count size`.

    "2 14-oz cans", "2 (14 oz) cans", "2 x 400 g tins"; "400 ml can" is one; "2 9-inch crusts".
    """
    return _counted(words, found) or _one(words, found)


def _counted(words: Words, found: Figure) -> Counted | None:
    """`count [modifier] ["-" | "x"] (size | "(" size [tail] ["each"] ")") [modifier] holder`."""
    place = phrase(words, found.end, "modifier")
    notes = (" ".join(words[found.end : place]),) if place > found.end else ()
    if word(words, place) in ("-", "x", "of"):
        place += 1
    opened = word(words, place) == "("
    inner = size(words, place + opened)
    if inner is None:
        return None
    end = inner.end
    if opened:
        end = phrase(words, phrase(words, end, "tail"), "each")
        if word(words, end) != ")":
            return None
        end += 1
    holder, more = _holder(words, end, inner.kind)
    if holder is None:
        return None if notes else _sized_food(words, found, inner, end, opened=opened)
    return Counted(_all(found, holder.unit.id, inner), holder.end, notes + more)


def _one(words: Words, found: Figure) -> Counted | None:
    """`size [modifier] holder`, one of it; in "2-14 oz cans" the hyphen stands between count and size."""
    measured = unit(words, found.end + (word(words, found.end) == "-"))
    if measured is None or not measured.unit.is_measure or found.article:
        return None
    again = size(words, measured.end + 1) if word(words, measured.end) == "/" else None
    holder, notes = _holder(words, again.end if again else measured.end, measured.unit.kind)
    if holder is None:
        return None
    count, low, high = 1.0, found.low, found.high
    if found.dashed and high / max(low, 0.01) >= WIDE_RANGE and low == int(low):
        count, low = low, high
    package = Package(low=tidy(low), high=tidy(high), unit=measured.unit.id)
    inner = Size(package, holder.end, measured.unit.kind, (again.package, *again.again) if again else ())
    return Counted(_all(found._replace(low=count, high=count), holder.unit.id, inner), holder.end, notes)


def _sized_food(words: Words, found: Figure, inner: Size, end: int, *, opened: bool) -> Counted | None:
    """`count size` with no container: the food itself comes so big ("2 9-inch crusts", "4 (6 oz) fillets")."""
    if end >= len(words) or (unit(words, end) and opened):
        return None
    if inner.kind == "length":
        return Counted((amount(found, None),), end, size="".join(words[found.end : end]).strip("()"))
    if word(words, end) in (",", ")", "of") or inner.kind == "volume":
        return None
    package = inner.package
    total = Amount(low=package.low, high=package.high, unit=package.unit)
    if found.article:
        return Counted((total,), end)
    if found.high == 1 and opened:
        return Counted((amount(found, None), total), end)
    return Counted(_all(found, None, inner), end)


def _holder(words: Words, at: int, measure: str) -> tuple[FoundUnit | None, tuple[str, ...]]:
    """`[modifier] (container | shape | part)`: what a size belongs to."""
    place = phrase(words, at, "modifier")
    holder = unit(words, place)
    if holder is None or holder.unit.kind not in HELD_BY[measure]:
        return None, ()
    notes = (" ".join(words[at:place]),) if place > at else ()
    return holder._replace(end=after_other_container(words, holder)), notes


def after_other_container(words: Words, own: FoundUnit) -> int:
    """The place after `["or" container]`: "1 can or bottle"."""
    other = unit(words, own.end + 1) if word(words, own.end) == "or" else None
    return other.end if other and own.unit.kind == other.unit.kind == "container" else own.end


def _all(found: Figure, unit_id: str | None, inner: Size) -> tuple[Amount, ...]:
    """The count with its size, once for every way the size is told."""
    return tuple(amount(found, unit_id, package) for package in (inner.package, *inner.again))
