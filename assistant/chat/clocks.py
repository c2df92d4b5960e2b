"""Clock times in an utterance: "half past six", "quarter to seven", "18:30", "1730 hours", a bare "at seven"."""

from __future__ import annotations

import re

from assistant.chat.values import Value, Words, phrase, table
from assistant.reader import numbers
from assistant.reader.numbers import word

_MINUTES = re.compile(r"[0-5]\d")
_CLOCK_POINT = re.compile(r"\d{1,2}\.[0-5]\d")


def clock(words: Words, at: int) -> Value | None:
    """A time of day; `unit` is "am", "pm", "24" for a plain 24-hour time, or empty where both halves fit."""
    names = table()
    end = phrase(words, at, tuple(names.clocks))
    if end is not None:
        return Value("clock", _minutes_of(names.clocks[" ".join(words[at:end])]), at, end, "24")
    military = _in_four_digits(words, at)
    if military is not None:
        return military
    said = _to_or_past(words, at) or _hour_and_minute(words, at)
    if said is None:
        return None
    minutes, end, is_sure = said
    half, half_end = _half(words, end)
    if half is not None and (is_sure or minutes <= 12 * 60 + 59):
        return Value("clock", float(minutes), at, half_end, half)
    oclock = phrase(words, end, names.oclock)
    if oclock is not None:
        half, half_end = _half(words, oclock)
        return Value("clock", float(minutes), at, half_end if half else oclock, half or "")
    if not is_sure:
        return None
    is_24 = minutes >= 13 * 60 or word(words, at).startswith("0")
    return Value("clock", float(minutes), at, end, "24" if is_24 else "")


def _in_four_digits(words: Words, at: int) -> Value | None:
    """A time in four digits: "1730 hours", "0730"."""
    figure = word(words, at)
    if len(figure) != 4 or not figure.isdigit() or int(figure[:2]) > 23 or int(figure[2:]) > 59:
        return None
    is_said = word(words, at + 1) in ("hours", "hrs", "h")
    if not is_said and figure[0] != "0":
        return None
    return Value("clock", int(figure[:2]) * 60.0 + int(figure[2:]), at, at + 1 + is_said, "24")


def _minutes_of(clock: str) -> float:
    hour, _, minute = clock.partition(":")
    return int(hour) * 60.0 + int(minute)


def _half(words: Words, at: int) -> tuple[str | None, int]:
    """The half of the day behind a time ("am", "in the morning", "tonight"), and the place after."""
    for half, phrases in (("am", table().morning), ("pm", table().evening)):
        end = phrase(words, at, phrases)
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
        end = phrase(words, place, phrases)
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
