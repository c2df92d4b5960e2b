"""Meals in a sentence: a day, the meal's name, an hour and a dish in any order; moved, dropped, replaced, opened."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from assistant.chat.beyond.hearing import EDGES, Found, Hearing, Span
from assistant.chat.beyond.parts import Head, Knows, Piece, head_of, light, place_of, segments
from assistant.chat.beyond.party import leaving_segments
from assistant.chat.values import number


def meals(hearing: Hearing, knows: Knows, *, is_active: bool, last_day: str | None) -> Iterator[Piece]:
    """Meal := [day] [meal] [hour] dish in any order; what one part of the sentence leaves out the part before says."""
    day, meal, found_any, taken_to = last_day, None, False, 0
    waiting: list[Span] = []
    leaving = leaving_segments(hearing)
    for start, end in segments(hearing):
        verb = hearing.phrase(start, "move", "drop") if is_active else None
        head = head_of(hearing, verb.end if verb else start, end, is_moved=verb is not None)
        if start in leaving:
            continue
        if verb is not None and (head.day or head.meal):
            yield from _changed(verb, head)
            continue
        is_new = head.day is not None or head.meal is not None
        is_whole = head.day is not None and head.meal is not None
        day, meal = head.day or day, head.meal or (meal if not is_new else None)
        said_end, is_instead = _instead(hearing, start, end)
        dish = _dish(hearing, start, said_end, head, knows)
        if dish is None:
            if is_active and is_whole and head.clock is not None:
                yield Piece("move", place_of(head) | {"clock": head.clock}, tuple(head.spans))
            elif is_new:
                waiting += head.spans
            continue
        dish = _over_and(hearing, dish, knows)
        name = hearing.said(*dish)
        is_at_hand = is_active or found_any or is_whole
        if day is None or not (is_new or found_any or waiting) or not is_at_hand or dish[0] < taken_to:
            continue
        if not knows(name) and not (is_active and is_whole):
            continue
        word, usual = meal or ("supper", "18:30")
        meal, found_any, taken_to = (word, head.clock or usual), True, dish[1]
        says = {"day": day, "meal": word, "clock": meal[1], "dish": name}
        rest = ((said_end, end),) if is_instead else ()
        yield Piece(
            "meal", says | ({"instead": True} if is_instead else {}), (*waiting, *head.spans, dish, *rest)
        )
        waiting = []


def _instead(hearing: Hearing, start: int, end: int) -> tuple[int, bool]:
    """Where the dish that comes ends, and whether it comes "instead" of what stood there."""
    place = next((at for at in range(start, end) if hearing.words[at] == "instead"), None)
    return (end, False) if place is None else (place, True)


def _over_and(hearing: Hearing, dish: Span, knows: Knows) -> Span:
    """A dish that goes on behind an "and": chicken and dumplings, where that is one recipe."""
    if hearing.words[dish[1] : dish[1] + 1] != ("and",):
        return dish
    for end in range(min(dish[1] + 4, len(hearing.words)), dish[1] + 1, -1):
        if not EDGES & set(hearing.words[dish[1] + 1 : end]) and knows(hearing.said(dish[0], end)):
            return dish[0], end
    return dish


def _changed(verb: Found, head: Head) -> Iterator[Piece]:
    """A meal that is dropped, or moved to another hour."""
    spans = ((verb.start, verb.end), *head.spans)
    if verb.group == "drop":
        yield Piece("drop", place_of(head), spans)
    elif head.clock is not None:
        yield Piece("move", place_of(head) | {"clock": head.clock}, spans)


def opened(hearing: Hearing, knows: Knows) -> dict[str, Any] | None:
    """A meal of the trip that is to be talked about by itself: "open Friday supper", "show me Saturday's cornbread"."""
    verb = hearing.phrase(0, "open")
    if verb is None:
        return None
    head = head_of(hearing, verb.end, len(hearing.words))
    if head.day is None:
        return None
    dish = _dish(hearing, verb.end, len(hearing.words), head, knows)
    named = {"dish": hearing.said(*dish)} if dish is not None and knows(hearing.said(*dish)) else {}
    is_told = head.meal is not None or bool(named)
    return place_of(head) | named if is_told and (named or dish is None) else None


def _dish(hearing: Hearing, start: int, end: int, head: Head, knows: Knows) -> Span | None:
    """The words that name the dish: of the runs between day, meal and hour a known one, else the longest."""
    own = {place for first, last in head.spans for place in range(first, last)}
    runs: list[list[int]] = [[]]
    counting = False
    for place in range(start, end):
        is_on = counting and hearing.words[place] != ":"
        counting = place not in own and (is_on or _counts_people(hearing, place))
        if place in own or counting:
            runs.append([])
        else:
            runs[-1].append(place)
    trimmed = [run for run in (_without_small(run, hearing) for run in runs) if run]
    spans = [
        (run[0], run[-1] + 1) for run in trimmed if number(hearing.words, run[0]) is None or len(run) > 1
    ]
    return max(spans, key=lambda span: (knows(hearing.said(*span)), span[1] - span[0]), default=None)


def _counts_people(hearing: Hearing, place: int) -> bool:
    """Whether "for nine" begins here: those who eat, and no part of a dish's name."""
    return hearing.words[place] == "for" and number(hearing.words, place + 1) is not None


def _without_small(run: list[int], hearing: Hearing) -> list[int]:
    while run and (hearing.words[run[0]] in light() or hearing.words[run[0]] in EDGES):
        run = run[1:]
    while run and (hearing.words[run[-1]] in light() or hearing.words[run[-1]] in EDGES):
        run = run[:-1]
    return run
