"""Quantities in free prose: times, temperatures and amounts in the method and in the chat.

The one door to quantulum3. It is asked for nothing but a unit after a number that our table of spellings lacks, and
knows our kitchen units alone: with its own table "350F" is a farad and "30 mins." an angle. Numbers, ranges and what
joins them are read here.
A number without a unit is no quantity, except an oven's bare "350".
"""

from __future__ import annotations

import re
import sys
import types
import warnings
from collections.abc import Iterator
from functools import cache, lru_cache
from typing import Any, Literal, NamedTuple

import msgspec

from assistant.reader import words
from assistant.reader.spoken import NUMBER, kitchen_units, rewritten, value
from rules import units
from rules.problem import Problem

Sort = Literal["time", "temperature", "amount", "length"]

FIGURE = re.compile(
    rf"(?<![A-GI-Z_.,\d])(?:about |approx(?:imately|\.)? |around |roughly |~ ?|ca\.? )?({NUMBER})",
    re.IGNORECASE,
)
PLURAL = re.compile(r"([a-z]{3,14}?)(?:e?s)(?![a-z])")
UNIT_AFTER = re.compile(r"\s?-?\s?((?:°\s?|º\s?)?[A-Za-z]{0,14}\.?(?:\s[A-Za-z]{1,12})?)")
#: "10+ minutes", "20-ish minutes".
LOOSE = re.compile(r"\+|-?ish\b", re.IGNORECASE)
SPARE = re.compile(
    r"\s(?:(?:more|additional|extra|full|good|further|whole|generous|heaping|level|scant|rounded|large|small|heaped)\s)"
)
#: "2 to 3 hours", "12 - 24 hours", "between 2 and 3", "one or two": what joins the ends of a range.
JOIN = re.compile(r"\s{0,20}(?:-|-?to-?|or|,? ?(?:and |or )?up to|/)\s{0,20}", re.IGNORECASE)
AND = re.compile(r"\.?\s{0,20}(?:and|,|&)?\s{0,20}", re.IGNORECASE)
BETWEEN = re.compile(r"\bbetween\s{0,10}(?:about )?$", re.IGNORECASE)
#: Units written as one letter on cards: "2 T. butter", "1 c. of the cheese"; of the letters only the T tells by its size.
LETTER = re.compile(r"(T|t|c|C|Tb|Tbl)\b\.?(?!\w)")
LETTERS = {
    "T": "tablespoon",
    "Tb": "tablespoon",
    "Tbl": "tablespoon",
    "t": "teaspoon",
    "c": "cup",
    "C": "cup",
}
#: A single C or F behind a smaller figure is a cup or nothing.
LEAST_DEGREES = 30
MINUTES = {"second": 1 / 60, "minute": 1.0, "hour": 60.0, "day": 1440.0, "week": 10080.0, "month": 43200.0}


class Quantity(NamedTuple):
    """A figure with its unit, where it stands in the text (characters `start` up to `end`).

    `low` and `high` are in `unit`: minutes for a time, fahrenheit or celsius for a temperature, our unit else.
    """

    sort: Sort
    low: float
    high: float
    unit: str
    start: int
    end: int
    approx: bool = False


class ProseUnit(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """A unit of `prose.toml`."""

    kind: Sort
    words: tuple[str, ...]


@cache
def _sorts() -> dict[str, Sort]:
    """What each unit that the prose reader knows measures."""
    sorts: dict[str, Sort] = {
        name: unit.kind for name, unit in words.load("prose.toml", dict[str, ProseUnit]).items()
    }
    for unit in kitchen_units():
        sorts[unit.id] = "length" if unit.kind == "length" else "amount"
    return sorts


@cache
def _library() -> Any:
    """quantulum3's parser, loaded once with the kitchen's units alone.

    Two of its imports are kept out meanwhile: typeguard, with which `inflect` spends a second on checks that
    nothing here needs, and joblib, with which it would unpickle a classifier that may not fit.
    """
    outside = {name: sys.modules.get(name) for name in ("typeguard", "joblib")}
    if outside["typeguard"] is None:
        stub = types.ModuleType("typeguard")
        stub.typechecked = lambda thing=None, **_: thing if thing is not None else (lambda inner: inner)  # type: ignore[attr-defined]
        sys.modules["typeguard"] = stub
    sys.modules["joblib"] = None  # type: ignore[assignment]
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            from quantulum3 import classifier, load, parser
            from quantulum3._lang.en_US import parser as _english  # noqa: F401  loads `inflect`
    finally:
        for name, module in outside.items():
            if module is None:
                sys.modules.pop(name, None)
            else:
                sys.modules[name] = module
    classifier.USE_CLF = False
    load.load_custom_units([_table()], use_general_units=False, use_language_units=False)
    load.clear_cache()
    return parser


def _table() -> dict[str, dict[str, Any]]:
    """The units as the library wants them: spellings of two letters or more are words, shorter ones symbols."""
    table: dict[str, dict[str, Any]] = {
        name: {"surfaces": [name], "entity": "dimensionless", "URI": name, "dimensions": [], "symbols": []}
        for name in ("unk", "dimensionless")
    }
    kinds = {"time": "time", "temperature": "temperature", "amount": "dimensionless", "length": "length"}
    spellings: dict[str, tuple[str, ...]] = {
        name: unit.words for name, unit in words.load("prose.toml", dict[str, ProseUnit]).items()
    }
    for unit in kitchen_units():
        spellings[unit.id] = unit.words
    for name, forms in spellings.items():
        table[name] = {
            "surfaces": [form for form in forms if len(form) > 2] or [name],
            "entity": kinds[_sorts()[name]],
            "URI": name.replace(" ", "_"),
            "dimensions": [],
            "symbols": [form for form in forms if len(form) <= 2],
        }
    return table


@lru_cache(maxsize=4096)
def unit_of(written: str) -> tuple[str, int] | None:
    """The unit at the head of some words, and how many characters it takes; None if there is none."""
    known = _spellings()
    head = written.lower()
    for length in range(min(len(head), 20), 0, -1):
        if head[:length] in known and not head[length : length + 1].isalpha():
            return known[head[:length]], length
    word = PLURAL.match(head)
    return _unlisted(word[0]) if word and not known.keys().isdisjoint((word[1], f"{word[1]}e")) else None


def _unlisted(word: str) -> tuple[str, int] | None:
    """The unit of a plural that the table lacks ("mugfuls"): the library forms plurals of its own."""
    found = _library().parse(f"2 {word}")
    name = found[0].unit.name if len(found) == 1 else None
    return (name, len(word)) if name in _sorts() else None


@cache
def _spellings() -> dict[str, str]:
    found = {form: unit.id for unit in kitchen_units() for form in unit.words if len(form) > 1}
    for name, unit in words.load("prose.toml", dict[str, ProseUnit]).items():
        found |= dict.fromkeys(unit.words, name)
    return found


class _Bare(NamedTuple):
    """A number and, if one follows, its unit."""

    low: float
    high: float
    unit: str | None
    start: int
    end: int
    approx: bool


def quantities(text: str) -> tuple[Quantity, ...]:
    """Every quantity of a piece of prose, in order; times in minutes."""
    figures, begins = rewritten(text)
    if not any(character.isdigit() for character in figures):
        return ()
    return tuple(
        quantity._replace(start=begins.get(quantity.start, quantity.start))
        for quantity in _joined(figures, list(_bare(figures)))
    )


def _bare(text: str) -> Iterator[_Bare]:
    for found in FIGURE.finditer(text):
        number = value(found[1])
        if number is None:
            continue
        end = found.end()
        loose = LOOSE.match(text, end)
        after = loose.end() if loose else end
        spare = SPARE.match(text, after)
        after = spare.end() - 1 if spare else after
        unit = None
        gap = UNIT_AFTER.match(text, after)
        if gap and gap[1].strip() and not gap[1].startswith("."):
            known = unit_of(gap[1])
            if known and _fits(known[0], number, gap[1][: known[1]], apart=gap[0][:1].isspace()):
                unit, length = known
                end = gap.start(1) + length
            elif letter := LETTER.match(gap[1]):
                unit, end = LETTERS[letter[1]], gap.start(1) + letter.end()
        yield _Bare(
            number, number, unit, found.start(1), end, bool(loose or found[0].strip()[:1] in "~acrACR")
        )


def _fits(unit: str, number: float, written: str, *, apart: bool) -> bool:
    """Whether a short spelling can be what it seems: C and F are temperatures from 30 on, "m" and "s" stick to it."""
    if unit in ("celsius", "fahrenheit") and len(written.strip(".")) == 1:
        return number >= LEAST_DEGREES
    return written.lower() not in ("m", "s") or not apart


def _joined(text: str, bare: list[_Bare]) -> Iterator[Quantity]:
    """Ranges and compound times made whole: "30 minutes to 1 hour", "2-3 hours", "1 h 30 min"."""
    index = 0
    while index < len(bare):
        here = bare[index]
        following = bare[index + 1] if index + 1 < len(bare) else None
        if following:
            between = text[here.end : following.start]
            whole = _compound(here, following, between) or _range(text, here, following, between)
            if whole:
                bare[index + 1] = whole
                index += 1
                continue
        if sort := _sorts().get(here.unit or ""):
            factor = MINUTES[here.unit or ""] if sort == "time" else 1.0
            unit = "minute" if sort == "time" else here.unit or ""
            yield Quantity(
                sort,
                round(here.low * factor, 4),
                round(here.high * factor, 4),
                unit,
                here.start,
                here.end,
                here.approx,
            )
        index += 1


def _compound(here: _Bare, following: _Bare, between: str) -> _Bare | None:
    """One time told in two units: "1 hour and 15 minutes", "1h15"."""
    if here.unit not in MINUTES or here.low != here.high:
        return None
    if (
        following.unit is None
        and here.unit == "hour"
        and following.low < MINUTES["hour"]
        and between.strip() == ""
    ):
        minutes = following.low
    elif (
        following.unit in MINUTES and MINUTES[following.unit] < MINUTES[here.unit] and AND.fullmatch(between)
    ):
        minutes = following.low * MINUTES[following.unit]
    else:
        return None
    total = here.low * MINUTES[here.unit] + minutes
    return _Bare(total, total, "minute", here.start, following.end, here.approx)


def _range(text: str, here: _Bare, following: _Bare, between: str) -> _Bare | None:
    """The ends of a range, in the unit of the second: "2 to 3 hours", "between 20 and 30 minutes"."""
    sort, other = _sorts().get(here.unit or ""), _sorts().get(following.unit or "")
    spoken = bool(BETWEEN.search(text[max(0, here.start - 12) : here.start]) and AND.fullmatch(between))
    if (
        following.unit is None
        or not (spoken or JOIN.fullmatch(between))
        or (here.unit is not None and sort != other)
    ):
        return None
    if between.strip() == "/" and here.unit:
        return None
    if sort == "temperature" and here.unit not in (following.unit, "degree"):
        return None
    if other == "temperature" and here.low * 2 < following.low:
        # "Mark 2 or 300 F" are two ways to say one heat.
        return None
    low, unit = _as(here, here.unit or following.unit, following.unit)
    if low > following.low or (here.unit is None and low == following.low):
        return None
    return following._replace(low=low, start=here.start, approx=here.approx, unit=unit)


def _as(here: _Bare, unit: str, target: str) -> tuple[float, str]:
    if unit == target or unit == "degree":
        return here.low, target
    if unit in MINUTES and target in MINUTES:
        return here.low * MINUTES[unit] / MINUTES[target], target
    try:
        return units.to(here.low, unit, target), target
    except Problem:
        return here.low, target
