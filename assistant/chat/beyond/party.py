"""Who and what comes along: those who avoid something, pots, coolers, the drive, the leaving."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.chat.beyond.chooser import JOINS, MOST_FOOD_WORDS, is_avoidable
from assistant.chat.beyond.hearing import Hearing, Span
from assistant.chat.beyond.parts import Piece, head_of, segments
from assistant.chat.beyond.pots import pots
from assistant.chat.values import number
from rules.trip.model import Cooler
from rules.units import to

#: People who eat no kind of food, in a word.
KINDS = frozenset(["vegetarian", "vegan", "celiac", "coeliac"])
MOST_SUBJECT_WORDS = 4


def persons(hearing: Hearing) -> Iterator[Piece]:
    """Person := subject without food | subject is kind."""
    for start, end in segments(hearing):
        for place in range(start, end):
            found = _avoids(hearing, place, end)
            if found is None:
                continue
            foods, behind = found
            first = max(start, place - MOST_SUBJECT_WORDS)
            if place == start or hearing.phrase(start, "drop") is not None:
                break
            name = hearing.said(first, place).strip() or "somebody"
            name = name.removeprefix("and ").removesuffix(" who").strip()
            yield Piece("person", {"name": name, "avoids": foods}, ((first, behind),))
            break


def _avoids(hearing: Hearing, place: int, end: int) -> tuple[list[str], int] | None:
    """The foods that are avoided from a place on, over "or" and "and", and the place behind them."""
    without = hearing.phrase(place, "without")
    if without is None:
        return _kind(hearing, place, end)
    foods: list[str] = []
    at = without.end
    while at < len(hearing.words):
        at = hearing.after(at, ("any", "the", "a"), 1)
        longest = min(at + MOST_FOOD_WORDS, len(hearing.words))
        behind = next(
            (one for one in range(longest, at, -1) if is_avoidable(" ".join(hearing.words[at:one]))), None
        )
        if behind is None:
            break
        foods.append(" ".join(hearing.words[at:behind]))
        at = behind
        if at >= len(hearing.words) or hearing.words[at] not in JOINS:
            break
        at += 1
    return (foods, at) if foods else None


def _kind(hearing: Hearing, place: int, end: int) -> tuple[list[str], int] | None:
    """Kind := is (vegetarian | vegan | food "free")."""
    verb = hearing.phrase(place, "is")
    if verb is None or verb.end >= end:
        return None
    word = hearing.words[verb.end]
    if word in KINDS:
        return [word], verb.end + 1
    is_free = verb.end + 1 < end and hearing.words[verb.end + 1] == "free"
    return ([word], verb.end + 2) if is_free and is_avoidable(word) else None


def drives(hearing: Hearing) -> Iterator[Piece]:
    """Drive := number hours ["of"] drive | drive number hours."""
    hours = ("hour", "hours", "hr", "hrs", "h")
    for place in range(len(hearing.words)):
        said = number(hearing.words, place)
        if said is None or not hearing.words[said.end : said.end + 1] or hearing.words[said.end] not in hours:
            continue
        places = range(said.end + 1, min(said.end + 5, len(hearing.words)))
        behind = next((one for at in places if (one := hearing.phrase(at, "drive"))), None)
        half = 0.5 if hearing.words[said.end + 1 : said.end + 4] == ("and", "a", "half") else 0.0
        after = said.end + 1
        before = next(
            (one for back in range(1, 5) if place >= back and (one := hearing.phrase(place - back, "drive"))),
            None,
        )
        if behind is not None or before is not None:
            start = before.start if before else place
            yield Piece(
                "drive", {"drive_hours": said.value + half}, ((start, behind.end if behind else after),)
            )
            return


def leaving_segments(hearing: Hearing) -> set[int]:
    """Where the parts begin that tell when the car leaves, and so hold no meal."""
    return {
        start
        for start, end in segments(hearing)
        for place in range(start, end)
        if hearing.phrase(place, "leave")
    }


def leavings(hearing: Hearing, taken: set[int]) -> Iterator[Piece]:
    """Leaving := leave [day] [hour]."""
    for start, end in segments(hearing):
        verb = next((one for place in range(start, end) if (one := hearing.phrase(place, "leave"))), None)
        if verb is None or verb.start in taken:
            continue
        head = head_of(hearing, verb.end, end)
        if head.day is None and head.clock is None:
            continue
        hour = head.clock or (head.meal[1] if head.meal else None)
        says = {key: value for key, value in (("leave_day", head.day), ("leave_clock", hour)) if value}
        yield Piece("leave", says, ((verb.start, verb.end), *head.spans))


def irons(hearing: Hearing) -> Iterator[Piece]:
    """Pots := the kinds of pots that are named, each with its number."""
    for one in pots(hearing):
        yield Piece("pots", {"pot": one.pot}, (one.span,))


def coolers(hearing: Hearing) -> Iterator[Piece]:
    """Coolers := [count] number quarts [cooler]; one alone is left to the plan, which knows it too."""
    found: list[tuple[int, float, Span]] = []
    for place in range(len(hearing.words)):
        size = number(hearing.words, place)
        unit = hearing.phrase(size.end, "quarts", "liters") if size and not size.article else None
        if size is None or unit is None or any(first <= place < last for _, _, (first, last) in found):
            continue
        before = number(hearing.words, place - 1) if place else None
        count = int(before.value) if before and before.end == place and not before.article else 1
        noun = hearing.phrase(unit.end, "cooler")
        quarts = to(size.value, "liter", "quart") if unit.group == "liters" else size.value
        if 4 <= quarts <= 400 and 1 <= count <= 6:
            found += _joined_cooler(hearing, place, unit.group)
            first = place - 1 if count > 1 else place
            found.append((count, round(quarts, 1), (first, noun.end if noun else unit.end)))
    if sum(count for count, _, _ in found) > 1:
        for count, quarts, span in found:
            yield Piece("coolers", {"coolers": [Cooler(quarts=quarts)] * count}, (span,))


def _joined_cooler(hearing: Hearing, place: int, unit: str) -> list[tuple[int, float, Span]]:
    """The 48 of "48 and 25 quarts", with its "two coolers"."""
    if place < 2 or hearing.words[place - 1] not in ("and", ",", "&"):
        return []
    size = number(hearing.words, place - 2)
    if size is None or size.end != place - 1 or size.article or not 4 <= size.value <= 400:
        return []
    noun = next((at for at in range(place - 3, -1, -1) if hearing.phrase(at, "cooler")), None)
    counted = number(hearing.words, noun - 1) if noun else None
    start = noun - 1 if noun and counted and counted.end == noun else place - 2
    return [(1, to(size.value, "liter", "quart") if unit == "liters" else size.value, (start, place))]
