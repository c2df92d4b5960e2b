"""The unit words of a line: which unit stands at a place, whatever its spelling; slips of long unit words are read as meant."""

from __future__ import annotations

from functools import cache
from typing import Literal, NamedTuple

import msgspec

from assistant.reader import words as tables
from assistant.reader.numbers import Words, word

Kind = Literal["volume", "mass", "length", "rough", "container", "part", "shape"]
#: Shorter words are too near to other words to be read as a slip of the pen.
SLIP_LETTERS = 6


class Unit(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """A unit, its kind and its spellings; see `units.toml`."""

    id: str
    kind: Kind
    words: tuple[str, ...] = ()
    letters: tuple[str, ...] = ()
    trails: bool = False

    @property
    def is_measure(self) -> bool:
        """Whether it tells a size: volume, mass or length."""
        return self.kind in ("volume", "mass", "length")


class Found(NamedTuple):
    """The unit found, the place after it, and whether it was written in the plural."""

    unit: Unit
    end: int
    plural: bool


class UnitTable(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """The rows of `units.toml`."""

    unit: tuple[Unit, ...]


@cache
def spellings() -> dict[str, Unit]:
    """Every spelling in lower case (one-letter ones as written), with its unit."""
    rows = tables.load("units.toml", UnitTable).unit
    found = {spelling: unit for unit in rows for spelling in unit.words}
    return found | {letter: unit for unit in rows for letter in unit.letters}


def unit(words: Words, at: int) -> Found | None:
    """Unit := spelling ["."]; the longest spelling wins, points inside one ("fl. oz.") count for nothing."""
    first = word(words, at)
    if not first:
        return None
    known = spellings()
    second_at = at + 2 if word(words, at + 1) == "." else at + 1
    pair = f"{first} {word(words, second_at)}"
    if pair in known:
        return Found(known[pair], _after_point(words, second_at + 1), pair.endswith("s"))
    if first in known:
        return Found(known[first], _after_point(words, at + 1), _is_plural(first))
    if first.endswith(("ful", "fuls")) and len(first) > 5:
        return Found(Unit(id=first.removesuffix("s"), kind="rough"), at + 1, first.endswith("s"))
    return None


def misspelt(words: Words, at: int) -> Found | None:
    """A measure's name with one letter wrong, missing, too much, or two swapped: "teasopon"."""
    written = word(words, at)
    if len(written) < SLIP_LETTERS or not written.isalpha():
        return None
    meant = {found.id: found for less in _shortened(written) for found in [_slips().get(less)] if found}
    if len(meant) != 1:
        return None
    return Found(meant.popitem()[1], _after_point(words, at + 1), written.endswith("s"))


def _after_point(words: Words, at: int) -> int:
    """The place after an abbreviation's point; a point that ends the line is skipped too."""
    return at + 1 if word(words, at) == "." else at


def _is_plural(spelling: str) -> bool:
    return spelling.endswith("s") and spelling not in ("glass", "ozs", "lbs", "ccs", "tbs")


@cache
def _slips() -> dict[str, Unit]:
    """Long names of measures with any one letter left out: two words that share such a form are one slip apart."""
    found: dict[str, Unit] = {}
    for spelling, unit in spellings().items():
        if unit.kind in ("volume", "mass") and len(spelling) >= SLIP_LETTERS and spelling.isalpha():
            found.update(dict.fromkeys(_shortened(spelling), unit))
    return found


def _shortened(spelling: str) -> set[str]:
    return {spelling} | {spelling[:place] + spelling[place + 1 :] for place in range(len(spelling))}
