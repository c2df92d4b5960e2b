"""The amount grammar over the words of a line: figures, ranges, units, containers with a size, alternates, sums.

Every function takes the words and a place, and gives what starts there or None; its docstring is its line of the
grammar. Units keep the cook's choice; only a sum turns one measure into another. What the amount is of is left to
`lines.py`.
"""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

from assistant.reader import words as tables
from assistant.reader.measures import Found as FoundUnit
from assistant.reader.measures import misspelt, unit
from assistant.reader.numbers import Number, Words, number, word
from rules import units
from rules.recipe import Amount, Package

#: A range this wide before a container is a count and a size: "2-14 oz cans".
WIDE_RANGE = 4.0
LONGEST_PHRASE = 5
#: A count of more than this many is none.
MOST = 1e7


class Figure(NamedTuple):
    """A number or a range with its doubt."""

    low: float
    high: float
    end: int
    approx: bool = False
    article: bool = False
    bound: str | None = None
    dashed: bool = False


class Size(NamedTuple):
    """A figure with a measure: the 14 ounces of a can, the 9 inches of a crust."""

    package: Package
    end: int
    kind: str


class Found(NamedTuple):
    """Amounts found, the main one first; the place after them; what else they say."""

    amounts: tuple[Amount, ...]
    end: int
    notes: tuple[str, ...] = ()
    #: a size that belongs to the food and not to a container: "9-inch"
    size: str | None = None
    each: bool = False
    #: false where no figure is written: "pinch of salt"
    stated: bool = True

    @property
    def main(self) -> Amount:
        """The first amount."""
        return self.amounts[0]


@cache
def _group(name: str) -> frozenset[str]:
    return frozenset(tables.groups("amounts.toml")[name])


def phrase(words: Words, at: int, group: str) -> int:
    """The place after the longest phrase of a group of `amounts.toml` that starts here; the place itself if none does."""
    known = _group(group)
    for end in range(min(at + LONGEST_PHRASE, len(words)), at, -1):
        if " ".join(words[at:end]) in known:
            return end + 1 if group == "approx" and word(words, end) == "." else end
    return at


def figure(words: Words, at: int) -> Figure | None:
    """Figure := [approx | bound]* number [range number] [approx]; "about 2 to 3", "at least 4", "between 1 and 2"."""
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
    low = number(words, place)
    if low is None or low.value > MOST:
        return None
    high, end, dashed = low.value, low.end, False
    upper = _upper_end(words, low, between=bound == "between")
    if upper:
        high, end, dashed = upper.value, upper.end, word(words, low.end) == "-"
    after = phrase(words, end, "approx_after")
    return Figure(low.value, high, after, approx or after > end, low.article and not upper, bound, dashed)


def _upper_end(words: Words, low: Number, *, between: bool) -> Number | None:
    """Range := "-" | "to" | "or" | "and" (after "between"); its second number is the greater one."""
    joined = phrase(words, low.end, "range")
    if joined == low.end and between and word(words, low.end) == "and":
        joined += 1
    if joined == low.end or low.article:
        return None
    high = number(words, joined)
    return high if high and low.value < high.value <= MOST and not high.article else None


def size(words: Words, at: int) -> Size | None:
    """Size := figure ["-"] measure; "14.5 oz", "8-ounce", "400 to 425 g"."""
    found = figure(words, at)
    if found is None or found.article:
        return None
    measured = unit(words, found.end + (word(words, found.end) == "-"))
    if measured is None or not measured.unit.is_measure:
        return None
    package = Package(low=_tidy(found.low), high=_tidy(found.high), unit=measured.unit.id)
    return Size(package, measured.end, measured.unit.kind)


def amounts(words: Words, at: int, *, implied: bool = False) -> Found | None:
    """Amounts := measured (same measured | "(" measured ")" | sum measured)*; with `implied`, "pinch of salt" is one.

    Found in labels such as "1 cup (240 ml)", "250 g / 9 oz", "1 cup plus 2 tablespoons", "2 (14 oz) cans".
    """
    found = measured(words, at) or (_implied(words, at) if implied else None)
    if found is None:
        return _in_brackets(words, at)
    while True:
        further = _further(words, found)
        if further is None:
            return found
        found = further


def measured(words: Words, at: int) -> Found | None:
    """Measured := figure (contained | sized | bracketed | [modifier] unit ["and a half"] | nothing) ["each"]."""
    found = figure(words, at)
    if found is None:
        return None
    got = (
        _contained(words, found)
        or _bracketed(words, found)
        or _with_unit(words, found)
        or _bare(words, found)
    )
    if got is None:
        return None
    after = phrase(words, got.end, "each")
    total = phrase(words, after, "total")
    notes = got.notes + ((found.bound,) if found.bound not in (None, "between", "from") else ())
    if total > after:
        notes += (" ".join(words[after:total]),)
    return got._replace(
        end=total, each=got.each or after > got.end, notes=tuple(note for note in notes if note)
    )


def _contained(words: Words, found: Figure) -> Found | None:
    """Contained := [count ["-" | "x"]] size [modifier] container | count "(" size ["each"] ")" [modifier] container."""
    counted = _sized_container(words, found)
    if counted:
        return counted
    own = unit(words, found.end + (word(words, found.end) == "-"))
    if own is None or not own.unit.is_measure or found.article:
        return None
    holder, notes = _holder(words, own.end, own.unit.kind)
    if holder is None:
        return None
    count, low, high = 1.0, found.low, found.high
    if found.dashed and high / max(low, 0.01) >= WIDE_RANGE and low == int(low):
        count, low = low, high
    package = Package(low=_tidy(low), high=_tidy(high), unit=own.unit.id)
    return Found(
        (_amount(found._replace(low=count, high=count), holder.unit.id, package),), holder.end, notes
    )


def _sized_container(words: Words, found: Figure) -> Found | None:
    """A count, then the size of each: "2 14-oz cans", "2 (14 oz) cans", "2 x 400 g tins", "2 large (28 oz) cans"."""
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
        return _sized_pieces(found, inner, end, opened, notes, words)
    return Found((_amount(found, holder.unit.id, inner.package),), holder.end, notes + more)


def _sized_pieces(
    found: Figure, inner: Size, end: int, opened: bool, notes: tuple[str, ...], words: Words
) -> Found | None:
    """A count and a size with no container: the food itself comes so big ("2 9-inch crusts", "4 (6 oz) fillets")."""
    if notes or end >= len(words) or (unit(words, end) and opened):
        return None
    if inner.kind == "length":
        return Found((_amount(found, None),), end, size=" ".join(words[found.end : end]).strip("() "))
    if word(words, end) in (",", ")", "of") or inner.kind == "volume":
        return None
    if found.article:
        return Found(
            (_amount(found._replace(low=inner.package.low, high=inner.package.high), inner.package.unit),),
            end,
        )
    if found.high == 1 and opened:
        total = Amount(low=inner.package.low, high=inner.package.high, unit=inner.package.unit)
        return Found((_amount(found, None), total), end)
    return Found((_amount(found, None, inner.package),), end)


def _holder(words: Words, at: int, measure: str) -> tuple[FoundUnit | None, tuple[str, ...]]:
    """The container that a size belongs to, modifiers before it passed; a length may also size a piece."""
    place = phrase(words, at, "modifier")
    holder = unit(words, place)
    if holder is None or not (
        holder.unit.kind == "container" or (holder.unit.kind == "shape" and measure == "length")
    ):
        return None, ()
    return holder, (" ".join(words[at:place]),) if place > at else ()


def _bracketed(words: Words, found: Figure) -> Found | None:
    """Bracketed := figure "(" amounts ")" unit; the bracket tells the same amount another way: "1 (240 ml) cup"."""
    if word(words, found.end) != "(":
        return None
    inside = _in_brackets(words, found.end)
    own = unit(words, inside.end) if inside else None
    if inside is None or own is None or not own.unit.is_measure:
        return None
    return Found((_amount(found, own.unit.id), *inside.amounts), own.end)


def _with_unit(words: Words, found: Figure) -> Found | None:
    """[modifier] unit ["and a half"]; "2 heaping tsp", "14-ounce", "a cup and a half", and slips ("1/4 teapsoon")."""
    dashed = word(words, found.end) == "-"
    place = phrase(words, found.end + dashed, "modifier")
    own = unit(words, place) or misspelt(words, place)
    if own is None:
        return None
    notes = (" ".join(words[found.end + dashed : place]),) if place > found.end + dashed else ()
    end = own.end
    more = (
        number(words, end + 1) if word(words, end) == "and" and word(words, end + 1) in ("a", "one") else None
    )
    if more and more.value < 1:
        found, end = found._replace(low=found.low + more.value, high=found.high + more.value), more.end
    upper = _repeated(words, own, end)
    if upper and upper.low > found.low:
        found, end = found._replace(high=upper.high, approx=found.approx or upper.approx), upper.end
    after = phrase(words, end, "approx_after")
    return Found((_amount(found._replace(approx=found.approx or after > end), own.unit.id),), after, notes)


def _repeated(words: Words, own: FoundUnit, at: int) -> Figure | None:
    """The upper end of a range that repeats its unit: "1 kg - 1.5 kg", "2 cups to 3 cups"."""
    joined = phrase(words, at, "range")
    if joined == at or word(words, at) == "or":
        return None
    upper = figure(words, joined)
    again = unit(words, upper.end) if upper else None
    if upper is None or again is None or again.unit.id != own.unit.id:
        return None
    return upper._replace(end=again.end)


def _bare(words: Words, found: Figure) -> Found | None:
    """A count without a unit, or a share by weight; "5-spice", "2% milk" and "9x13" are none."""
    after = word(words, found.end)
    if after == "%" and "weight" in words[found.end :]:
        return Found((_amount(found, "%"),), found.end + 1)
    if after in ("-", "%", "x", "°", "/", "-inch") or after == "percent":
        return None
    return Found((_amount(found, None),), found.end)


def _implied(words: Words, at: int) -> Found | None:
    """Implied := [modifier] unit (singular); "pinch of salt" is one pinch, "heaping teaspoon cumin" one teaspoon."""
    place = phrase(words, at, "modifier")
    own = unit(words, place)
    if own is None or own.plural or len(words[place]) < 3 or own.end >= len(words):
        return None
    if own.unit.kind in ("part", "shape", "container", "length") and word(words, own.end) != "of":
        return None
    notes = (" ".join(words[at:place]),) if place > at else ()
    return Found((Amount(low=1, high=1, unit=own.unit.id),), own.end, notes, stated=False)


def _in_brackets(words: Words, at: int) -> Found | None:
    """ "(" amounts [tail] ")": a bracket that holds amounts and nothing else, or a lone unit ("(stick)" is one)."""
    if word(words, at) != "(":
        return None
    alone = unit(words, at + 1)
    if alone and not alone.plural and word(words, alone.end) == ")":
        return Found((Amount(low=1, high=1, unit=alone.unit.id),), alone.end + 1)
    found = amounts(words, at + 1)
    if found is None:
        return None
    end = phrase(words, phrase(words, found.end, "tail"), "each")
    if word(words, end) != ")" or found.size:
        return None
    return found._replace(end=end + 1, each=found.each or (end > found.end and words[end - 1] == "each"))


def _further(words: Words, found: Found) -> Found | None:
    """One more amount after those found: another way to say the same, the size of the container, or a sum."""
    return _bracket_after(words, found) or _same(words, found) or _sum(words, found)


def _bracket_after(words: Words, found: Found) -> Found | None:
    """After a container or a count for each, the bracket is a size; else it tells the same amount another way."""
    inside = _in_brackets(words, found.end)
    if inside is None or inside.main.unit is None:
        return None
    holds = found.main.unit in _containers() and found.main.package is None
    if len(found.amounts) == 1 and (holds or inside.each) and units.kind(inside.main.unit):
        return found._replace(amounts=(_packed(found.main, inside.main), *inside.amounts[1:]), end=inside.end)
    return found._replace(amounts=found.amounts + inside.amounts, end=inside.end)


def _same(words: Words, found: Found) -> Found | None:
    """Same := ("/" | "or" | "=" | ",") measured with a unit | "/" unit; "1 kg / 2 lb", "1 clove/teaspoon"."""
    joined = phrase(words, found.end, "same")
    if joined == found.end or not found.stated:
        return None
    shared = unit(words, joined) if word(words, found.end) == "/" else None
    if shared and found.main.unit is not None:
        other = Amount(low=found.main.low, high=found.main.high, unit=shared.unit.id)
        return found._replace(amounts=(*found.amounts, other), end=shared.end)
    other_way = measured(words, joined)
    if other_way is None or other_way.main.unit is None or other_way.size:
        return None
    if word(words, found.end) == "," and found.main.unit is None:
        return None
    return found._replace(amounts=found.amounts + other_way.amounts, end=other_way.end)


def _sum(words: Words, found: Found) -> Found | None:
    """Sum := ["plus" | "+" | "and"] measured of the same kind; "1 cup plus 2 tbsp" is 1.125 cup, "1 lb 4 oz" 1.25 pound."""
    joined = phrase(words, found.end, "sum")
    more = measured(words, joined)
    if more is None or len(found.amounts) != 1 or more.main.package or found.main.package:
        return None
    first, second = found.main, more.main
    kind = units.kind(first.unit)
    if kind not in ("mass", "volume") or kind != units.kind(second.unit) or first.unit == second.unit:
        return None
    low, high = (units.to(value, str(second.unit), str(first.unit)) for value in (second.low, second.high))
    if low >= 1 or (joined == found.end and kind != "mass"):
        return None
    total = Amount(
        low=_tidy(first.low + low), high=_tidy(first.high + high), unit=first.unit, approx=first.approx
    )
    return found._replace(amounts=(total,), end=more.end)


@cache
def _containers() -> frozenset[str]:
    from assistant.reader.measures import spellings

    return frozenset(known.id for known in spellings().values() if known.kind == "container")


def _packed(amount: Amount, size: Amount) -> Amount:
    package = Package(low=size.low, high=size.high, unit=str(size.unit))
    return Amount(low=amount.low, high=amount.high, unit=amount.unit, approx=amount.approx, package=package)


def _amount(found: Figure, unit_id: str | None, package: Package | None = None) -> Amount:
    return Amount(
        low=_tidy(found.low), high=_tidy(found.high), unit=unit_id, approx=found.approx, package=package
    )


def _tidy(value: float) -> float:
    """Six digits after the point keep thirds exact enough and hide the noise of binary fractions."""
    return round(value, 6)
