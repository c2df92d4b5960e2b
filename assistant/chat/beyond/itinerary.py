"""What a sentence tells of a trip: meals on days, pots, coolers, the drive, the leaving, who avoids what.

"Friday supper chili, Saturday breakfast biscuits, nine of us, two 12s" holds two meals and two pots; the nine are left
for the plan's own ears. A sentence that tells nothing of a trip is left alone.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cache
from typing import Any, NamedTuple

from assistant.chat.beyond.chooser import JOINS, MOST_FOOD_WORDS, is_avoidable
from assistant.chat.beyond.hearing import EDGES, Found, Hearing, Span, phrases
from assistant.chat.beyond.pots import pots
from assistant.chat.clocks import clock
from assistant.chat.values import number
from rules.circumstances import PotOwned
from rules.trip.model import Cooler
from rules.units import to

TABLE = "trip.toml"
#: People who eat no kind of food, in a word.
KINDS = frozenset(["vegetarian", "vegan", "celiac", "coeliac"])
#: Behind "free" these are kinds of food: "gluten free".
MOST_SUBJECT_WORDS = 4


class Piece(NamedTuple):
    """A piece of a trip: what it is, what it says, its tokens."""

    what: str
    says: dict[str, Any]
    spans: tuple[Span, ...]


#: Whether a recipe of that name is known.
Knows = Callable[[str], bool]


@cache
def light() -> frozenset[str]:
    """Small words, which are no part of anything else."""
    return phrases(TABLE).words("light")


def pieces(hearing: Hearing, knows: Knows, *, is_active: bool, last_day: str | None = None) -> list[Piece]:
    """Every piece of a trip in a sentence, in order; what only a trip at hand makes sense of is left out without one."""
    if not is_active and not any(hearing.phrase(place, "day") for place in range(len(hearing.words))):
        return []
    meals = list(_meals(hearing, knows, is_active=is_active, last_day=last_day))
    if not is_active and not meals:
        return []
    taken = {place for piece in meals for start, end in piece.spans for place in range(start, end)}
    other = [
        *_persons(hearing),
        *_drives(hearing),
        *_leavings(hearing, taken),
        *_irons(hearing),
        *_coolers(hearing),
    ]
    return sorted([*meals, *other], key=lambda piece: piece.spans[0])


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


# Meals


def _meals(hearing: Hearing, knows: Knows, *, is_active: bool, last_day: str | None) -> Iterator[Piece]:
    """Meal := [day] [meal] [hour] dish in any order; what one part of the sentence leaves out the part before says."""
    day, meal, found_any, taken_to = last_day, None, False, 0
    waiting: list[Span] = []
    leaving = _leaving_segments(hearing)
    for start, end in segments(hearing):
        verb = hearing.phrase(start, "move", "drop") if is_active else None
        head = _head(hearing, verb.end if verb else start, end, is_moved=verb is not None)
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
                yield Piece("move", _place(head) | {"clock": head.clock}, tuple(head.spans))
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


def opened(hearing: Hearing, knows: Knows) -> dict[str, Any] | None:
    """A meal of the trip that is to be talked about by itself: "open Friday supper", "show me Saturday's cornbread"."""
    verb = hearing.phrase(0, "open")
    if verb is None:
        return None
    head = _head(hearing, verb.end, len(hearing.words))
    if head.day is None:
        return None
    dish = _dish(hearing, verb.end, len(hearing.words), head, knows)
    named = {"dish": hearing.said(*dish)} if dish is not None and knows(hearing.said(*dish)) else {}
    is_told = head.meal is not None or bool(named)
    return _place(head) | named if is_told and (named or dish is None) else None


def _changed(verb: Found, head: _Head) -> Iterator[Piece]:
    """A meal that is dropped, or moved to another hour."""
    spans = ((verb.start, verb.end), *head.spans)
    if verb.group == "drop":
        yield Piece("drop", _place(head), spans)
    elif head.clock is not None:
        yield Piece("move", _place(head) | {"clock": head.clock}, spans)


def _place(head: _Head) -> dict[str, Any]:
    """The day and the meal that a part of a sentence names."""
    said = {"day": head.day, "meal": head.meal[0] if head.meal else None}
    return {key: value for key, value in said.items() if value is not None}


class _Head(NamedTuple):
    day: str | None
    meal: tuple[str, str] | None
    clock: str | None
    spans: list[Span]


def _head(hearing: Hearing, start: int, end: int, *, is_moved: bool = False) -> _Head:
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
    if (
        said_clock is not None
        and meal is not None
        and meal[0] not in ("breakfast", "brunch", "noon", "morning")
    ):
        hour = int(said_clock[:2])
        said_clock = f"{hour + 12:02d}{said_clock[2:]}" if hour < 11 else said_clock
    return _Head(day, meal, said_clock, spans)


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


def _dish(hearing: Hearing, start: int, end: int, head: _Head, knows: Knows) -> Span | None:
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


# People, pots, the road


def _persons(hearing: Hearing) -> Iterator[Piece]:
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


def _drives(hearing: Hearing) -> Iterator[Piece]:
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


def _leaving_segments(hearing: Hearing) -> set[int]:
    return {
        start
        for start, end in segments(hearing)
        for place in range(start, end)
        if hearing.phrase(place, "leave")
    }


def _leavings(hearing: Hearing, taken: set[int]) -> Iterator[Piece]:
    """Leaving := leave [day] [hour]."""
    for start, end in segments(hearing):
        verb = next((one for place in range(start, end) if (one := hearing.phrase(place, "leave"))), None)
        if verb is None or verb.start in taken:
            continue
        head = _head(hearing, verb.end, end)
        if head.day is None and head.clock is None:
            continue
        hour = head.clock or (head.meal[1] if head.meal else None)
        says = {key: value for key, value in (("leave_day", head.day), ("leave_clock", hour)) if value}
        yield Piece("leave", says, ((verb.start, verb.end), *head.spans))


def _irons(hearing: Hearing) -> Iterator[Piece]:
    for one in pots(hearing):
        yield Piece("pots", {"pot": one.pot}, (one.span,))


def _coolers(hearing: Hearing) -> Iterator[Piece]:
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


def pots_of(piece: Piece) -> PotOwned:
    """The pot of a piece about pots."""
    pot = piece.says["pot"]
    assert isinstance(pot, PotOwned)
    return pot
