"""Quantities in free prose: times, temperatures and amounts in the method and in the chat.

The one door to quantulum3. It is asked for nothing but the unit after a number, and knows our kitchen units alone:
with its own table "350F" is a farad and "30 mins." an angle. Numbers, ranges and what joins them are read here.
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
from rules import units
from rules.problem import Problem

Sort = Literal["time", "temperature", "amount", "length"]

NUMBER = r"(?:\d{1,6}\s\d{1,2}/\d{1,2}|\d{1,6}-\d{1,2}/\d{1,2}(?!\d)|\d{1,2}/\d{1,3}|\d{1,6}(?:[.,]\d{1,3})?|\.\d{1,3})"
FIGURE = re.compile(
    rf"(?<![A-GI-Z_.,\d])(?:about |approx(?:imately|\.)? |around |roughly |~ ?|ca\.? )?({NUMBER})",
    re.IGNORECASE,
)
UNIT_AFTER = re.compile(r"\s?-?\s?((?:°\s?|º\s?)?[A-Za-z]{0,14}\.?(?:\s[A-Za-z]{1,12})?)")
SPARE = re.compile(
    r"\s(?:(?:more|additional|extra|full|good|further|whole|generous|heaping|level|scant|rounded|large|small|heaped)\s)"
)
#: "2 to 3 hours", "12 - 24 hours", "between 2 and 3", "one or two": what joins the ends of a range.
JOIN = re.compile(r"\s{0,20}(?:-|to|or|,? ?(?:and |or )?up to|/)\s{0,20}", re.IGNORECASE)
MINUTES = {"second": 1 / 60, "minute": 1.0, "hour": 60.0, "day": 1440.0, "week": 10080.0, "month": 43200.0}
TIME_WORD = r"(?:minutes?|mins?|hours?|hrs?|seconds?|secs?|days?|weeks?)"
#: "Two hours and a half".
HOURS_AND_HALF = re.compile(
    r"\b(\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten) hours? and (?:a|one)[- ]half\b",
    re.IGNORECASE,
)
#: Kitchen times in words, rewritten in figures of the same length or shorter, set to the right so that offsets stand.
SAYINGS: tuple[tuple[re.Pattern[str], str], ...] = tuple(
    (re.compile(pattern, re.IGNORECASE), figure)
    for pattern, figure in (
        (r"\bhalf an hour\b", "30 minutes"),
        (r"\b(?:a )?half[- ]hour\b", "30 min"),
        (r"\bthree[- ]quarters of an hour\b", "45 minutes"),
        (r"\b(?:a )?quarter of an hour\b", "15 minutes"),
        (r"\ban? hour and a half\b", "90 minutes"),
        (r"\ban? hour or two\b", "1-2 hours"),
        (r"\ban? minute or two\b", "1-2 minutes"),
        (r"\ban? day or two\b", "1-2 days"),
        (r"\bhalf a minute\b", "30 sec"),
        (r"\bone and (?:a|one)[- ]half\b", "1.5"),
        (r"\btwo and (?:a|one)[- ]half\b", "2.5"),
        (r"\bthree and (?:a|one)[- ]half\b", "3.5"),
        (r"(?<=\d)\sand (?:a|one)[- ]half\b", ".5"),
        (rf"\ba couple (?:of )?(?:more )?(?={TIME_WORD}\b)", "2 "),
        (
            r"\ban?\s(?=(?:good |full |further |extra |additional )?(?:minute|hour|second|day|week|month)\b)",
            "1 ",
        ),
        (r"\banother\s(?=(?:minute|hour|second)\b)", "1 "),
    )
)


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


class _KitchenUnit(msgspec.Struct, frozen=True):
    id: str
    kind: str
    words: tuple[str, ...] = ()


class _KitchenUnits(msgspec.Struct, frozen=True):
    unit: tuple[_KitchenUnit, ...]


@cache
def _sorts() -> dict[str, Sort]:
    """What each unit that the prose reader knows measures."""
    sorts: dict[str, Sort] = {
        name: unit.kind for name, unit in words.load("prose.toml", dict[str, ProseUnit]).items()
    }
    for unit in words.load("units.toml", _KitchenUnits).unit:
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
    for unit in words.load("units.toml", _KitchenUnits).unit:
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
            # The library is asked what the words mean; ours is only where they end.
            found = _library().parse(f"2 {head[:length]}")
            name = found[0].unit.name if len(found) == 1 else None
            if name in _sorts():
                return name, length
            return known[head[:length]], length
    return None


@cache
def _spellings() -> dict[str, str]:
    found = {
        form: unit.id
        for unit in words.load("units.toml", _KitchenUnits).unit
        for form in unit.words
        if len(form) > 1
    }
    for name, unit in words.load("prose.toml", dict[str, ProseUnit]).items():
        found |= dict.fromkeys(unit.words, name)
    return found


@cache
def _number_words() -> re.Pattern[str]:
    numbers = words.load("numbers.toml", dict[str, dict[str, int]])["cardinals"]
    return re.compile(rf"(?<!-)\b({'|'.join(sorted(numbers, key=len, reverse=True))})\b", re.IGNORECASE)


@cache
def _a_unit() -> re.Pattern[str]:
    """The "a" before a kitchen unit: "a pinch", "a cup"."""
    known = {
        form for unit in words.load("units.toml", _KitchenUnits).unit for form in unit.words if len(form) > 2
    }
    return re.compile(
        rf"\ban?\s(?=(?:{'|'.join(sorted(map(re.escape, known), key=len, reverse=True))})\b)", re.IGNORECASE
    )


def in_figures(text: str) -> str:
    """The text with its number words in figures, each set to the right in its place, so that offsets stand."""
    return _rewritten(text)[0]


def _rewritten(text: str) -> tuple[str, dict[int, int]]:
    """The text in figures, and for every figure written anew where its words began."""
    begins: dict[int, int] = {}

    def write(found: re.Match[str], figure: str) -> str:
        if len(figure) > len(found[0]):
            return found[0]
        begins[found.end() - len(figure)] = found.start()
        return figure.rjust(len(found[0]))

    text = HOURS_AND_HALF.sub(lambda found: write(found, f"{_half_hours(found[1])} minutes"), text)
    text = _a_unit().sub(lambda found: write(found, "1 "), text)
    for pattern, figure in SAYINGS:
        text = pattern.sub(lambda found, figure=figure: write(found, figure), text)  # type: ignore[misc]
    numbers = words.load("numbers.toml", dict[str, dict[str, int]])["cardinals"]
    return _number_words().sub(lambda found: write(found, str(numbers[found[0].lower()])), text), begins


def _half_hours(hours: str) -> int:
    """The minutes of some hours and a half."""
    numbers = words.load("numbers.toml", dict[str, dict[str, int]])["cardinals"]
    return round(60 * (numbers.get(hours.lower()) or int(hours)) + 30)


def value(written: str) -> float | None:
    """A number as written: 2, 1/2, 1 1/2, 1-1/2, 2.5, 2,5."""
    total = 0.0
    for part in re.split(r"[\s-]", written.strip()):
        above, slash, below = part.partition("/")
        try:
            total += float(above.replace(",", ".")) / (float(below) if slash else 1.0)
        except (ValueError, ZeroDivisionError):
            return None
    return total


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
    figures, begins = _rewritten(text)
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
        spare = SPARE.match(text, end)
        after = spare.end() - 1 if spare else end
        unit = None
        gap = UNIT_AFTER.match(text, after)
        if gap and gap[1].strip() and not gap[1].startswith("."):
            known = unit_of(gap[1])
            if known and _fits(known[0], number, gap[1][: known[1]], text[found.start(1) : after]):
                unit, length = known
                end = gap.start(1) + length
        yield _Bare(number, number, unit, found.start(1), end, bool(found[0].strip()[:1] in "~acrACR"))


def _fits(unit: str, number: float, written: str, before: str) -> bool:
    """Whether a short spelling can be what it seems: C and F are temperatures from 60 on, "a" and "m" nothing else."""
    if unit in ("celsius", "fahrenheit") and len(written.strip(".")) == 1:
        return number >= 30
    if written.lower() in ("m", "s", "h"):
        return before[-1:].isdigit()
    return True


def _joined(text: str, bare: list[_Bare]) -> Iterator[Quantity]:
    """Ranges and compound times made whole: "30 minutes to 1 hour", "2-3 hours", "1 h 30 min"."""
    index = 0
    while index < len(bare):
        here = bare[index]
        following = bare[index + 1] if index + 1 < len(bare) else None
        sort = _sorts().get(here.unit or "")
        if following:
            between = text[here.end : following.start]
            other = _sorts().get(following.unit or "")
            if sort == "time" and other == "time" and _compound(here, following, between):
                minutes = here.low * MINUTES[here.unit or ""] + following.low * MINUTES[following.unit or ""]
                bare[index + 1] = _Bare(minutes, minutes, "minute", here.start, following.end, here.approx)
                index += 1
                continue
            if (
                JOIN.fullmatch(between)
                and following.unit
                and (here.unit is None or sort == other)
                and not (between.strip() == "/" and here.unit)
            ):
                low, unit = _as(here, here.unit or following.unit, following.unit)
                ready = sort != "temperature" or here.unit in (following.unit, "degree")
                if ready and (low <= following.low or (here.unit is None and low < following.low)):
                    bare[index + 1] = following._replace(
                        low=low, start=here.start, approx=here.approx, unit=unit
                    )
                    index += 1
                    continue
        if sort:
            factor = MINUTES.get(here.unit or "", 1.0) if sort == "time" else 1.0
            unit = "minute" if sort == "time" else here.unit or ""
            yield Quantity(
                sort,
                _neat(here.low * factor),
                _neat(here.high * factor),
                unit,
                here.start,
                here.end,
                here.approx,
            )
        index += 1


def _as(here: _Bare, unit: str, target: str) -> tuple[float, str]:
    if unit == target or unit == "degree":
        return here.low, target
    if unit in MINUTES and target in MINUTES:
        return here.low * MINUTES[unit] / MINUTES[target], target
    try:
        return units.to(here.low, unit, target), target
    except Problem:
        return here.low, target


def _compound(here: _Bare, following: _Bare, between: str) -> bool:
    order = list(MINUTES)
    smaller = order.index(following.unit or "second") < order.index(here.unit or "second")
    return smaller and here.low == here.high and bool(re.fullmatch(r"\s{0,2}(?:and|,|&)?\s{0,2}", between))


def _neat(number: float) -> float:
    return round(number, 4)
