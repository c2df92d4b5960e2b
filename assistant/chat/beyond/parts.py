"""The parts of a sentence about a trip: where they begin and end, and the day, the meal and the hour that each names."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cache
from typing import Any, NamedTuple

from assistant.chat.beyond.hearing import EDGES, Hearing, Span, phrases
from assistant.chat.clocks import clock
from assistant.chat.values import number

TABLE = "trip.toml"
#: Whether a recipe of that name is known.
Knows = Callable[[str], bool]


class Piece(NamedTuple):
    """A piece of a trip: what it is, what it says, its tokens."""

    what: str
    says: dict[str, Any]
    spans: tuple[Span, ...]


@cache
def light() -> frozenset[str]:
    """Small words, which are no part of anything else."""
    return phrases(TABLE).words("light")


def segments(hearing: Hearing) -> Iterator[Span]:
    """The parts of a sentence between its edges."""
    start = 0
    for place, word in enumerate(hearing.words):
        if word in EDGES and word not in ("-", ":"):
            if place > start:
                yield start, place
            start = place + 1
    if start < len(hearing.words):
        yield start, len(hearing.words)


class Head(NamedTuple):
    """What a part names besides its dish: day, meal with its usual hour, hour; and their tokens."""

    day: str | None
    meal: tuple[str, str] | None
    clock: str | None
    spans: list[Span]


def head_of(hearing: Hearing, start: int, end: int, *, is_moved: bool = False) -> Head:
    """The day, the meal with its usual hour, and the hour that a part of a sentence names."""
    day, meal, said_clock, spans = None, None, None, []
    place = start
    while place < end:
        found = hearing.phrase(place, "day", "meal")
        if found is not None and found.end <= end and (day if found.group == "day" else meal) is None:
            if found.group == "day":
                day = found.value
            else:
                meal = (hearing.words[found.start], found.value.partition("@")[2])
            spans.append((found.start, found.end))
            place = found.end
            continue
        time = _clock(
            hearing, place, end, before=("at", "by", "around", "to") if is_moved else ("at", "by", "around")
        )
        if time is not None and said_clock is None:
            said_clock, behind = time
            spans.append((place, behind))
            place = behind
            continue
        place += 1
    return Head(day, meal, _in_its_half(said_clock, meal), spans)


def _in_its_half(said: str | None, meal: tuple[str, str] | None) -> str | None:
    """An hour in the half of the day in which its meal is eaten: supper at 7 is at 19:00."""
    if said is None or meal is None:
        return said
    hour, usual = int(said[:2]), int(meal[1][:2])
    return f"{hour + 12:02d}{said[2:]}" if hour < 12 and abs(hour + 12 - usual) < abs(hour - usual) else said


def _clock(hearing: Hearing, place: int, end: int, *, before: tuple[str, ...]) -> tuple[str, int] | None:
    """An hour behind "at", or one that can only be an hour ("18:30", "6 pm")."""
    at = place + 1 if hearing.words[place] in before else place
    found = clock(hearing.words, at)
    if found is None and at > place:
        bare = number(hearing.words, at)
        if bare is not None and not bare.article and 0 < bare.value < 24 and bare.value == int(bare.value):
            return f"{int(bare.value):02d}:00", bare.end
    if found is None or found.end > end:
        return None
    return _as_said(found.value, found.unit), found.end


def _as_said(minutes: float | str, unit: str) -> str:
    """The hour as it was said; the meal decides its half of the day where nobody did."""
    total = int(float(minutes))
    if unit == "pm" and total < 12 * 60:
        total += 12 * 60
    elif unit == "am" and total >= 12 * 60:
        total -= 12 * 60
    return f"{total // 60:02d}:{total % 60:02d}"


def place_of(head: Head) -> dict[str, Any]:
    """The day and the meal that a part of a sentence names."""
    said = {"day": head.day, "meal": head.meal[0] if head.meal else None}
    return {key: value for key, value in said.items() if value is not None}
