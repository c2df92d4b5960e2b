"""Numbers and times in words, written anew in figures: "half an hour", "two and a half", "forty-five"."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache, lru_cache

import msgspec

from assistant.reader import words

NUMBER = r"(?:\d{1,6}\s{1,6}\d{1,2}/\d{1,2}|\d{1,6}-\d{1,2}/\d{1,2}(?!\d)|\d{1,2}/\d{1,3}|\d{1,6}(?:[.,]\d{1,3})?|\.\d{1,3})"
TEN, HUNDRED = 10, 100
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
        (r"\b(?:an? )?hour and a half\b", "90 min"),
        (r"\ban? hour and a quarter\b", "75 min"),
        (r"\ban? hour and three[- ]quarters\b", "105 min"),
        (r"\ban? hour or two\b", "1-2 hours"),
        (r"\ban? minute or two\b", "1-2 minutes"),
        (r"\ban? day or two\b", "1-2 days"),
        (r"\bhalf a minute\b", "30 sec"),
        (r"\bone and (?:a|one)[- ]half\b", "1.5"),
        (r"\btwo and (?:a|one)[- ]half\b", "2.5"),
        (r"\bthree and (?:a|one)[- ]half\b", "3.5"),
        (r"(?<=\d)\sand (?:a|one)[- ]half\b", ".5"),
        (r"(?<=\d)\sand\s(?=[1-9]/[2-9]\b)", " "),
        (rf"\ba couple (?:of )?(?:more )?(?={TIME_WORD}\b)", "2 "),
        (
            r"\ban?\s(?=(?:good |full |further |extra |additional )?(?:minute|hour|day|week|month)\b)",
            "1 ",
        ),
        # "A second bowl" is no time, and neither is "wait a second".
        (r"\ban(?:other)?\s(?=hour\b)|\b(?:a|another)\s(?=minute\b)", "1 "),
    )
)


#: A text is first looked over for the words without which nothing in it is said another way: that is quicker.
WORD = re.compile(r"[a-z]+")
ARTICLES = frozenset({"a", "an"})
TELLING = frozenset(
    {"half", "quarter", "quarters", "couple", "another"}
    | {"second", "seconds", "minute", "minutes", "hour", "hours", "day", "days", "week", "month"}
)


class KitchenUnit(msgspec.Struct, frozen=True):
    """A unit of `units.toml`, as far as prose needs it."""

    id: str
    kind: str
    words: tuple[str, ...] = ()


class _KitchenUnits(msgspec.Struct, frozen=True):
    unit: tuple[KitchenUnit, ...]


@cache
def kitchen_units() -> tuple[KitchenUnit, ...]:
    """The units of amounts."""
    return words.load("units.toml", _KitchenUnits).unit


@cache
def _cardinals() -> dict[str, int]:
    return words.load("numbers.toml", dict[str, dict[str, int]])["cardinals"]


@cache
def _number_words() -> re.Pattern[str]:
    ones = "|".join(word for word, number in _cardinals().items() if 0 < number < TEN)
    tens = "|".join(
        word for word, number in _cardinals().items() if TEN < number < HUNDRED and number % TEN == 0
    )
    every = "|".join(sorted(_cardinals(), key=len, reverse=True))
    return re.compile(rf"(?<!-)\b(?:({tens})[- ]({ones})|({every}))\b", re.IGNORECASE)


def _worth(found: re.Match[str]) -> int:
    """What number words are worth: "forty-five"."""
    return sum(_cardinals()[word.lower()] for word in found.groups() if word)


@cache
def _a_unit() -> re.Pattern[str]:
    """The "a" before a kitchen unit: "a pinch", "a cup"."""
    known = {form for unit in kitchen_units() for form in unit.words if len(form) > 2}
    return re.compile(
        rf"\ban?\s(?=(?:{'|'.join(sorted(map(re.escape, known), key=len, reverse=True))})\b)", re.IGNORECASE
    )


def in_figures(text: str) -> str:
    """The text with its number words in figures, each set to the right in its place, so that offsets stand."""
    return rewritten(text)[0]


@lru_cache(maxsize=256)  # a line is looked at for its kind, for servings and for times
def rewritten(text: str) -> tuple[str, Mapping[int, int]]:
    """The text in figures, and for every figure written anew where its words began."""
    begins: dict[int, int] = {}

    def write(found: re.Match[str], figure: str) -> str:
        if len(figure) > len(found[0]):
            return found[0]
        begins[found.end() - len(figure)] = found.start()
        return figure.rjust(len(found[0]))

    told = frozenset(WORD.findall(text.lower()))
    if "half" in told:
        text = HOURS_AND_HALF.sub(lambda found: write(found, f"{_half_hours(found[1])} minutes"), text)
    if told & ARTICLES:
        text = _a_unit().sub(lambda found: write(found, "1 "), text)
    if told & TELLING or ("/" in text and "and" in told):
        for pattern, figure in SAYINGS:
            text = pattern.sub(lambda found, figure=figure: write(found, figure), text)  # type: ignore[misc]
    if told & _cardinals().keys():
        text = _number_words().sub(lambda found: write(found, str(_worth(found))), text)
    return text, begins


def _half_hours(hours: str) -> int:
    """The minutes of some hours and a half."""
    return 60 * (_cardinals().get(hours.lower()) or int(hours)) + 30


def value(written: str) -> float | None:
    """A number as written: 2, 1/2, 1 1/2, 1-1/2, 2.5, 2,5."""
    total = 0.0
    for part in re.split(r"[\s-]+", written.strip()):
        above, slash, below = part.partition("/")
        try:
            total += float(above.replace(",", ".")) / (float(below) if slash else 1.0)
        except (ValueError, ZeroDivisionError):
            return None
    return total
