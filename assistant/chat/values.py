"""Values in an utterance: numbers, clock times, temperatures, heights, pot sizes, hours, quarts, factors.

A value keeps how it was said; which slot it fills is decided by the act that takes it (`fits`, `filled`). Words are
lower case, cut by the reader's tokenizer.
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

METER_FT = 1 / 0.3048
QUARTS_PER_LITER = 1.056688
_MINUTES = re.compile(r"[0-5]\d")
_CLOCK_POINT = re.compile(r"\d{1,2}\.[0-5]\d")
#: What stands before "half four" when it is a time, and behind it where it begins the sentence.
_AT = ("at", "by", "for", "is", "around", "about")
_MEALS = ("", "for", "dinner", "supper", "tea", "lunch", "please")
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


def values(words: Words) -> list[Value]:
    """The values from left to right, the longest reading at each place, none overlapping another."""
    found: list[Value] = []
    at = 0
    while at < len(words):
        here = _value(words, at)
        if here is not None and here.end > at:
            found.append(here)
            at = here.end
        else:
            at += 1
    return found


def _value(words: Words, at: int) -> Value | None:
    if word(words, at) in table().sizes:
        return Value("inches", table().sizes[words[at]], at, at + 1, "s")
    return _clock(words, at) or _fixed(words, at) or _factor(words, at) or _measured(words, at)


def _phrase(words: Words, at: int, phrases: Sequence[str]) -> int | None:
    """Where the longest of the phrases that stands at a place ends."""
    ends = [
        at + len(parts)
        for parts in (phrase.split() for phrase in phrases)
        if list(words[at : at + len(parts)]) == parts
    ]
    return max(ends, default=None)


def _fixed(words: Words, at: int) -> Value | None:
    """Sayings that are a figure: "overnight", "sea level", "a mile high"."""
    for kind, sayings in (("hours", table().fixed_hours), ("feet", table().fixed_feet)):
        end = _phrase(words, at, tuple(sayings))
        if end is not None:
            return Value(kind, sayings[" ".join(words[at:end])], at, end)  # type: ignore[arg-type]
    return None


class Counted(NamedTuple):
    """A number and the place after it; `article` where it was only "a" or "an"."""

    value: float
    end: int
    article: bool = False


def number(words: Words, at: int) -> Counted | None:
    """A number as people say it: 7,000; 7k; seven thousand two hundred; three seventy five; half a dozen; a hundred."""
    minus_end = _phrase(words, at, table().minus)
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
    return _spoken(words, counted) if found.spoken or found.article else counted


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


def _measured(words: Words, at: int) -> Value | None:
    """A number with the unit behind it, or alone."""
    found = number(words, at)
    if found is None:
        return None
    names = table()
    unit_at = found.end + 1 if word(words, found.end) == "-" else found.end
    bare = Value("number", found.value, at, found.end)
    half_end = _phrase(words, unit_at, ("and a half",))
    for kind, units in (("hours", names.hours), ("quarts", names.quarts)):
        end = _phrase(words, unit_at, tuple(units))
        if end is not None:
            size = units[" ".join(words[unit_at:end])]
            more = _phrase(words, end, ("and a half",))
            return Value(kind, (found.value + (0.5 if more else 0)) * size, at, more or end)  # type: ignore[arg-type]
    if found.article or half_end:
        return None
    for kind, spoken, size in (
        ("feet", names.feet, 1.0),
        ("feet", names.meters, METER_FT),
        ("inches", names.inches, 1.0),
    ):
        end = _phrase(words, unit_at, spoken)
        if end is not None and not (kind == "inches" and word(words, unit_at) == "in" and word(words, end)):
            return Value(kind, found.value * size, at, end)  # type: ignore[arg-type]
    warm = _degrees(words, at, found.value, unit_at)
    if warm is not None:
        return warm
    if word(words, found.end) == "s" and found.value in (5, 8, 10, 12, 14, 16):
        return Value("inches", found.value, at, found.end + 1, "s")
    return bare


def _degrees(words: Words, at: int, value: float, unit_at: int) -> Value | None:
    names = table()
    marked = _phrase(words, unit_at, names.degrees)
    after = marked if marked is not None else unit_at
    for letter, spoken in (("F", names.fahrenheit), ("C", names.celsius)):
        end = _phrase(words, after, spoken)
        if end is not None:
            return Value("degrees", value, at, end, letter)
    return Value("degrees", value, at, marked) if marked is not None else None


def _factor(words: Words, at: int) -> Value | None:
    """A factor: "double", "twice", "one and a half times", "3x", "150 %"."""
    names = table()
    end = _phrase(words, at, tuple(names.factors))
    if end is not None:
        return Value("factor", names.factors[" ".join(words[at:end])], at, end)
    if word(words, at) in ("x", "×"):
        times = number(words, at + 1)
        return Value("factor", times.value, at, times.end) if times and not times.article else None
    found = number(words, at)
    if found is None or found.article:
        return None
    end = _phrase(words, found.end, names.times)
    if end is not None:
        return Value("factor", found.value, at, end)
    percent_end = _phrase(words, found.end, ("%", "percent", "per cent"))
    return Value("factor", found.value / 100, at, percent_end) if percent_end is not None else None


def _clock(words: Words, at: int) -> Value | None:
    """A time of day; `unit` is "am", "pm", "24" for a plain 24-hour time, or empty where both halves fit."""
    names = table()
    end = _phrase(words, at, tuple(names.clocks))
    if end is not None:
        return Value("clock", _minutes_of(names.clocks[" ".join(words[at:end])]), at, end, "24")
    said = _to_or_past(words, at) or _hour_and_minute(words, at)
    if said is None:
        return None
    minutes, end, is_sure = said
    half, half_end = _half(words, end)
    if half is not None and (is_sure or minutes <= 12 * 60 + 59):
        return Value("clock", float(minutes), at, half_end, half)
    oclock = _phrase(words, end, names.oclock)
    if oclock is not None:
        half, half_end = _half(words, oclock)
        return Value("clock", float(minutes), at, half_end if half else oclock, half or "")
    if not is_sure:
        return None
    is_24 = minutes >= 13 * 60 or word(words, at).startswith("0")
    return Value("clock", float(minutes), at, end, "24" if is_24 else "")


def _minutes_of(clock: str) -> float:
    hour, _, minute = clock.partition(":")
    return int(hour) * 60.0 + int(minute)


def _half(words: Words, at: int) -> tuple[str | None, int]:
    """The half of the day behind a time ("am", "in the morning", "tonight"), and the place after."""
    for half, phrases in (("am", table().morning), ("pm", table().evening)):
        end = _phrase(words, at, phrases)
        if end is not None:
            return half, end
    return None, at


def _hour(words: Words, at: int) -> tuple[int, int] | None:
    found = numbers.number(words, at)
    if found is None or found.article or found.value != int(found.value) or not 0 <= found.value <= 24:
        return None
    return int(found.value) % 24, found.end


def _to_or_past(words: Words, at: int) -> tuple[int, int, bool] | None:
    """Times such as "quarter to seven" or "ten past six": minutes of the day, the place after, and that it is sure."""
    start = at + 1 if word(words, at) == "a" else at
    first = word(words, start)
    found = numbers.number(words, start)
    if first == "half" and start == at:
        hour = _hour(words, at + 1) if word(words, at + 1) not in numbers.ARTICLES else None
        if (
            hour is not None
            and hour[0] >= 1
            and word(words, at - 1) in ("at", "by", "for", "is", "around", "about")
        ):
            return hour[0] * 60 + 30, hour[1], True  # "at half four"
    if first in ("half", "quarter"):
        count, place = (30 if first == "half" else 15), start + 1
    elif found is not None and found.value in (5, 10, 15, 20, 25):
        count, place = int(found.value), found.end
        place = place + 1 if word(words, place) in ("minutes", "min", "mins") else place
    else:
        return None
    for sign, phrases in ((1, table().past), (-1, table().to)):
        end = _phrase(words, place, phrases)
        hour = _hour(words, end) if end is not None else None
        if hour is not None and 1 <= hour[0] <= 24:
            return (hour[0] * 60 + sign * count) % (24 * 60), hour[1], True
    return None


def _hour_and_minute(words: Words, at: int) -> tuple[int, int, bool] | None:
    """Times such as "18:30", "6.30", "six thirty", "6"; the last flag tells whether it can only be a time."""
    if _CLOCK_POINT.fullmatch(word(words, at)):
        hour, _, minute = words[at].partition(".")
        if int(hour) < 24:
            return int(hour) * 60 + int(minute), at + 1, False
    found = _hour(words, at)
    if found is None:
        return None
    hour_of_day, end = found
    if word(words, end) == ":" and _MINUTES.fullmatch(word(words, end + 1)):
        return hour_of_day * 60 + int(words[end + 1]), end + 2, True
    if word(words, end) == "h" and _MINUTES.fullmatch(word(words, end + 1)):
        return hour_of_day * 60 + int(words[end + 1]), end + 2, True
    more = numbers.number(words, end)
    if (
        more is not None
        and more.spoken
        and not more.article
        and more.value in (10, 15, 20, 30, 40, 45, 50)
        and 1 <= hour_of_day <= 12
    ):
        return hour_of_day * 60 + int(more.value), more.end, False
    return hour_of_day * 60, end, False


def _minutes_of_figure(figure: float) -> int:
    """A bare figure as minutes of the day: 7, 7.30, 730; -1 when it can be no time."""
    hour, minute = divmod(round(figure), 100) if figure >= 100 else (int(figure), round(figure % 1 * 100))
    return hour * 60 + minute if minute < 60 else -1


def clock_of(value: Value, *, meal: str | None = None) -> str | None:
    """A clock or a bare number as "18:30"; without am or pm a meal's usual half of the day decides, else the evening."""
    if not isinstance(value.value, float | int):
        return None
    minutes = int(value.value) if value.kind == "clock" else _minutes_of_figure(value.value)
    if not 0 <= minutes < 24 * 60:
        return None
    if value.unit == "pm" and minutes < 12 * 60:
        minutes += 12 * 60
    elif value.unit == "am" and minutes >= 12 * 60:
        minutes -= 12 * 60
    elif value.unit == "" and minutes < 12 * 60:
        earliest = {"breakfast": 5 * 60, "brunch": 9 * 60, "lunch": 10 * 60}.get(meal or "", 12 * 60)
        minutes += 12 * 60 if minutes < earliest else 0
    return f"{minutes // 60:02d}:{minutes % 60:02d}"


def allergens_of(said: str) -> tuple[str, ...]:
    """The allergens of the nine that a word means: "dairy" is milk, "nuts" are tree nuts and peanuts."""
    words = said.lower().removesuffix(" free").strip()
    return tuple(name for name, phrases in table().allergens.items() if words in phrases)
