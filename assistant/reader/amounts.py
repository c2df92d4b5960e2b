"""The amount grammar over the words of a line: units, containers, alternates, sums.

Every function takes words and a place, and gives what starts there or None; its docstring is its line of the
grammar. Units keep the cook's choice; only "2 lb 4 oz", one measure in two words, turns one into another. What the amount is of
is left to `lines.py`.
"""

from __future__ import annotations

from typing import NamedTuple

import msgspec

from assistant.reader.containers import after_other_container, contained
from assistant.reader.figures import Figure, amount, figure, past_or_more, phrase, tidy
from assistant.reader.holding import is_size_of, packed
from assistant.reader.measures import Found as FoundUnit
from assistant.reader.measures import misspelt, unit
from assistant.reader.numbers import Words, number, word
from rules import units
from rules.recipe import Amount

#: A figure before one of these counts nothing.
NOT_COUNTED = frozenset({"-", "%", "x", "°", "/", "percent", "degrees", "degree", "deg", "count", "ct", "as"})
#: "1 can (2 cups (480 ml))": brackets of amounts stand this deep in one another at most.
DEEPEST = 2
#: From here on C and F are temperatures, not cups.
HOT = 30


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


def amounts(words: Words, at: int, *, implied: bool = False) -> Found | None:
    """`amounts := (measured | implied | bracket) (bracket | same | sum)*`; `implied` only where asked for.

    "1 cup (240 ml)", "250 g / 9 oz", "1 cup plus 2 tablespoons", "2 (14 oz) cans", "pinch of".
    """
    found = measured(words, at) or (_implied(words, at) if implied else None) or _bracket(words, at)
    while found:
        further = _bracket_after(words, found) or _same(words, found) or _sum(words, found)
        if further is None:
            break
        found = further
    return found


def measured(words: Words, at: int) -> Found | None:
    """`measured := figure (contained | inserted | [modifier] unit | nothing) ["each"] ["total"]`."""
    found = figure(words, at)
    if found is None:
        return None
    counted = contained(words, found)
    got = (
        Found(counted.amounts, counted.end, counted.notes, counted.size)
        if counted
        else _inserted(words, found) or _with_unit(words, found) or _bare(words, found)
    )
    if got is None:
        return None
    got = _compound(words, got)
    after = phrase(words, got.end, "each")
    total = phrase(words, after, "total")
    notes = [*got.notes]
    if found.bound not in (None, "between", "from"):
        notes.append(str(found.bound))
    if total > after:
        notes.append(" ".join(words[after:total]))
    return got._replace(end=total, each=got.each or after > got.end, notes=tuple(notes))


def _inserted(words: Words, found: Figure) -> Found | None:
    """`inserted := figure bracket measure`; the bracket tells the same amount another way: "1 (240 ml) cup"."""
    inside = _bracket(words, found.end)
    own = unit(words, inside.end) if inside else None
    if inside is None or own is None or not own.unit.is_measure:
        return None
    others = (other for other in inside.amounts if other.unit)
    return Found((amount(found, own.unit.id), *others), own.end)


def _with_unit(words: Words, found: Figure) -> Found | None:
    """`["-"] [modifier] unit ["and" part] [range unit]`; "14-ounce", "a cup and a half", "1 kg to 2 kg", "1 teasopon"."""
    start = found.end + (word(words, found.end) == "-")
    place = phrase(words, start, "modifier")
    own = unit(words, place) or misspelt(words, place)
    if own is None or (words[place] in ("c", "C") and found.low >= HOT):
        return None
    notes = (" ".join(words[start:place]),) if place > start else ()
    end = after_other_container(words, own)
    more = (
        number(words, end + 1) if word(words, end) == "and" and word(words, end + 1) in ("a", "one") else None
    )
    if more and more.value < 1:
        found, end = found._replace(low=found.low + more.value, high=found.high + more.value), more.end
    upper = _repeated(words, own, end)
    if upper and upper.low > found.low:
        found, end = found._replace(high=upper.high, approx=found.approx or upper.approx), upper.end
    end = past_or_more(words, end)
    after = phrase(words, end, "approx_after")
    return Found((amount(found._replace(approx=found.approx or after > end), own.unit.id),), after, notes)


def _repeated(words: Words, own: FoundUnit, at: int) -> Figure | None:
    """`("-" | "to") figure unit` with the unit again: the upper end of "1 kg - 1.5 kg"."""
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
        return Found((amount(found, "%"),), found.end + 1)
    if after == "x" and not word(words, found.end + 1)[:1].isdigit():
        return Found((amount(found, None),), found.end + 1)
    if after in NOT_COUNTED or (after in ("f", "F", "c", "C") and found.low >= HOT):
        return None
    return Found((amount(found, None),), phrase(words, found.end, "numbered"))


def _implied(words: Words, at: int) -> Found | None:
    """`implied := [modifier] unit` in the singular; "pinch of salt" is one, "heaping teaspoon cumin" too."""
    place = phrase(words, at, "modifier")
    own = unit(words, place)
    if own is None or own.plural or len(words[place]) < 3 or own.end >= len(words):
        return None
    sized = (
        place > at and words[at] != "whole" and own.unit.kind in ("part", "container")
    )  # "small bunch parsley"
    if (
        own.unit.kind in ("part", "shape", "container", "length")
        and word(words, own.end) != "of"
        and not sized
    ):
        return None
    notes = (" ".join(words[at:place]),) if place > at else ()
    return Found((Amount(low=1, high=1, unit=own.unit.id),), own.end, notes, stated=False)


def _bracket(words: Words, at: int) -> Found | None:
    """`bracket := "(" (amounts [tail] ["each"] | unit) ")"`; it holds amounts and nothing else, "(stick)" is one."""
    if word(words, at) != "(" or _nests_deeply(words, at + 1):
        return None
    alone = unit(words, at + 1)
    if alone and not alone.plural and word(words, alone.end) == ")":
        return Found((Amount(low=1, high=1, unit=alone.unit.id),), alone.end + 1)
    found = amounts(words, at + 1)
    if found is None or found.size:
        return None
    end = phrase(words, phrase(words, found.end, "tail"), "each")
    if word(words, end) != ")":
        return None
    return found._replace(end=end + 1, each=found.each or (end > found.end and words[end - 1] == "each"))


def _nests_deeply(words: Words, at: int) -> bool:
    """Whether more brackets open inside one another than any cook writes: each would be read as often as it is deep."""
    depth = 1
    for place in range(at, len(words)):
        depth += (words[place] == "(") - (words[place] == ")")
        if not 0 < depth <= DEEPEST:
            return depth > DEEPEST
    return False


def _bracket_after(words: Words, found: Found) -> Found | None:
    """`amounts bracket`: after a container or with "each" it is a size, else the same amount another way."""
    inside = _bracket(words, found.end)
    if inside is None or inside.main.unit is None:
        return None
    if len(found.amounts) == 1 and is_size_of(found.main, inside.main, each=inside.each, sure=True):
        return found._replace(amounts=(packed(found.main, inside.main), *inside.amounts[1:]), end=inside.end)
    return found._replace(amounts=found.amounts + inside.amounts, end=inside.end)


def _same(words: Words, found: Found) -> Found | None:
    """`same := ("/" | "or" | "=" | ",") measured` with a unit, or `"/" unit`; "1 kg / 2 lb", "1 sprig/teaspoon"."""
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
    if word(words, found.end) == "," and (
        found.main.unit is None or units.kind(other_way.main.unit) == "length"
    ):
        return None
    return found._replace(amounts=found.amounts + other_way.amounts, end=other_way.end)


def _compound(words: Words, found: Found) -> Found:
    """`compound := measured ["and"] measured` of a smaller unit of mass: "1 lb 4 oz" is 1.25 pound."""
    place = found.end + (word(words, found.end) in ("and", "&"))
    if units.kind(found.main.unit) != "mass" or not word(words, place)[:1].isdigit():
        return found
    return _added(found, measured(words, place)) or found


def _sum(words: Words, found: Found) -> Found | None:
    """`sum := ("plus" | "+" | "and") measured`; in "1 cup plus 2 tbsp" the spoons come on top of the cup."""
    joined = phrase(words, found.end, "sum")
    more = measured(words, joined) if joined > found.end else None
    if more is None or more.main.unit is None:
        return None
    return found._replace(amounts=found.amounts + on_top(more.amounts), end=more.end)


def on_top(more: tuple[Amount, ...]) -> tuple[Amount, ...]:
    """Amounts that come on top of the first; further ones say the same another way."""
    return (msgspec.structs.replace(more[0], plus=True), *more[1:])


def _added(found: Found, more: Found | None) -> Found | None:
    """Two masses as one in the first unit; None where they are no such thing."""
    if more is None or len(found.amounts) != 1 or more.main.package or found.main.package:
        return None
    first, second = found.main, more.main
    if not units.is_mass(second.unit) or first.unit == second.unit:
        return None
    low, high = (units.to(value, str(second.unit), str(first.unit)) for value in (second.low, second.high))
    if low >= 1:
        return None
    total = Amount(
        low=tidy(first.low + low), high=tidy(first.high + high), unit=first.unit, approx=first.approx
    )
    return found._replace(amounts=(total,), end=more.end)
