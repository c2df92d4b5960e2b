"""What a cook tells after the meal: minutes, a reading, how dark the faces came out, what burned.

"took 35 minutes, bottom a bit dark, 45 out and windy, pot read 340" is two acts: the log, and the weather, which is
left for the plan's own ears.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cache
from typing import NamedTuple

from assistant.chat.beyond.hearing import EDGES, Hearing, Span, degrees, hear, left_over, phrases, stretch
from assistant.chat.values import number
from rules.habit.figures import bound

TABLE = "log.toml"
#: How dark each word is, and what "a bit" and "very" make of it.
SHADES = {"burnt": 3, "dark": 2, "right": 0, "pale": -2}
MOST_BETWEEN = 3
MOST_SUBJECT_WORDS = 4
#: No dish is over coals for longer [min].
LONGEST_MIN = 720


class Piece(NamedTuple):
    """A piece of a log: its slot and value, its tokens; only a sure one makes a log of what else is said."""

    slot: str
    value: float | str
    span: Span
    sure: bool = True


class ToldOf(NamedTuple):
    """What a sentence tells for the log, and what else it says."""

    slots: dict[str, float | str]
    rest: str


@cache
def _light() -> frozenset[str]:
    return phrases(TABLE).words("light")


def told(utterance: str) -> ToldOf | None:
    """The pieces of a log in a sentence; None where there is none, or where it asks."""
    hearing = hear(utterance, TABLE)
    begins = any(hearing.phrase(place, "log") for place in range(min(2, len(hearing.words))))
    if _asks(hearing) and not begins:
        return None
    pieces = list(_pieces(hearing, is_log=begins))
    if not any(piece.sure for piece in pieces):
        return None
    slots: dict[str, float | str] = {}
    for piece in pieces:
        slots.setdefault(piece.slot, piece.value)
    taken = [piece.span for piece in pieces]
    return ToldOf(slots, left_over(hearing, [*taken, *_subjects(hearing, taken)], _light()))


def _subjects(hearing: Hearing, taken: Sequence[Span]) -> Iterator[Span]:
    """The "biscuits" of "biscuits were done in 17 minutes": what the log speaks of, and nothing for the plan."""
    for start, _ in taken:
        first = start
        while first and hearing.words[first - 1] not in EDGES and start - first < MOST_SUBJECT_WORDS:
            first -= 1
        is_whole = not first or hearing.words[first - 1] in EDGES
        if is_whole and not any(word[:1].isdigit() for word in hearing.words[first:start]):
            yield first, start


def _asks(hearing: Hearing) -> bool:
    if not hearing.words:
        return True
    return hearing.words[-1] == "?" or hearing.phrase(0, "asks") is not None


def _pieces(hearing: Hearing, *, is_log: bool) -> Iterator[Piece]:
    at = 0
    while at < len(hearing.words):
        found = (
            _minutes(hearing, at, is_log=is_log)
            or _reading(hearing, at)
            or _coals(hearing, at)
            or _face(hearing, at)
            or _shade_alone(hearing, at)
            or _charcoal(hearing, at)
        )
        if found:
            yield from found
            at = max(at + 1, *(piece.span[1] for piece in found))
        else:
            at += 1


def _minutes(hearing: Hearing, at: int, *, is_log: bool) -> list[Piece]:
    """Minutes := took stretch [longer | shorter] | stretch (longer | shorter) ["than planned"]."""
    start = at
    cue = hearing.phrase(at, "took", "cooked") or hearing.phrase(at, "ended")
    if (
        cue is not None
        and cue.group == "cooked"
        and at
        and hearing.words[at - 1] in ("is", "are", "be", "get", "gets")
    ):
        return []
    places = range(cue.end, cue.end + MOST_BETWEEN + 1) if cue else (at,)
    said = next((found for place in places if (found := _stretch(hearing, place))), None)
    if said is None or (cue and not _light().issuperset(hearing.words[cue.end : said.start])):
        return []
    if said.value > LONGEST_MIN or hearing.phrase(said.end, "elsewhere") is not None:
        return []
    told_more = bool({"more", "extra"} & set(hearing.words[cue.end if cue else said.start : said.end]))
    relative = hearing.phrase(said.end, "longer", "shorter")
    end = relative.end if relative else said.end
    sign = 1 if told_more or (relative and relative.group == "longer") else -1 if relative else 0
    if cue is not None and cue.group == "ended" and not sign:
        return []
    is_against = relative is not None and hearing.words[end : end + 1] == ("than",)
    is_alone = _is_alone(hearing, start, end)
    if cue is None and not is_log and not is_against and not is_alone:
        return []
    slot = "minutes_more" if sign else "minutes"
    is_sure = cue is not None or is_log or is_against
    return [Piece(slot, round(said.value * (sign or 1), 1), (start, end), sure=is_sure)]


def _is_alone(hearing: Hearing, start: int, end: int) -> bool:
    """Whether a stretch of time is all that a part of the sentence says: beside a surer piece it is the log's."""
    before = not start or hearing.words[start - 1] in EDGES
    return before and (end == len(hearing.words) or hearing.words[end] in EDGES)


class _Stretch(NamedTuple):
    value: float
    start: int
    end: int


def _stretch(hearing: Hearing, at: int) -> _Stretch | None:
    table = phrases(TABLE)
    said = stretch(hearing, at, table.words("minutes"), table.words("hours"))
    return _Stretch(said.value, at, said.end) if said else None


def _reading(hearing: Hearing, at: int) -> list[Piece]:
    """Reading := gauge reads figure | surely_reads figure; the figure one that a pot can have [°F]."""
    subject = hearing.phrase(at, "gauge")
    verb_at = hearing.after(subject.end, _light() - {"was"}, 2) if subject else at
    verb = hearing.phrase(verb_at, "reads") if subject else hearing.phrase(at, "surely_reads")
    if verb is None:
        return []
    figure_at = hearing.after(verb.end, _light(), 2)
    said = degrees(hearing, figure_at)
    if said is None:
        return []
    is_celsius = said.unit == "C"
    warm = said.value * 9 / 5 + 32 if is_celsius else said.value
    if not bound("reading").holds(warm):
        return []
    return [Piece("pot_f" if said.unit else "pot_bare", round(warm), (at, said.end))]


def _coals(hearing: Hearing, at: int) -> list[Piece]:
    """Coals := number ["coals"] place; only beside a sure piece."""
    said = number(hearing.words, at)
    if said is None or said.article or said.value != int(said.value):
        return []
    end = hearing.after(said.end, {"coals", "briquettes", "of", "them", "the"}, 3)
    place = hearing.phrase(end, "place")
    if place is None:
        return []
    return [Piece(f"{place.value}_coals", int(said.value), (at, place.end), sure=False)]


def _face(hearing: Hearing, at: int) -> list[Piece]:
    """Face := face [was] [a bit | very | not] shade | [a bit] shade (the | on the) face."""
    face = hearing.phrase(at, "face")
    if face is not None:
        shade = _shade(hearing, hearing.after(face.end, _past(), MOST_BETWEEN))
        return _sides(face.value, shade[0], (at, shade[1])) if shade else []
    shade = _shade(hearing, at)
    if shade is None:
        return []
    face = hearing.phrase(hearing.after(shade[1], {"the", "on", "at"}, 2), "face")
    return _sides(face.value, shade[0], (at, face.end)) if face else []


def _past() -> frozenset[str]:
    """Words between a face and its shade."""
    words = {word for phrase in phrases(TABLE).words("past") for word in phrase.split()}
    return frozenset(words | {"the", "side", "crust", "of", "it", "has", "looks", "had", "being", "still"})


def _sides(face: str, darkness: int, span: Span) -> list[Piece]:
    sides = ("top", "under") if face == "both" else (face,)
    return [Piece(side, darkness, span) for side in sides]


def _shade(hearing: Hearing, at: int) -> tuple[int, int] | None:
    """A shade with its "a bit", "very" or "not": how dark, and the place behind it."""
    place, by = at, ""
    while (word := hearing.phrase(place, "slightly", "much", "not")) is not None:
        # "not brown" is a shade of its own.
        if hearing.phrase(place, "shade") is not None:
            break
        by, place = "slightly" if by == "slightly" else word.group, word.end
    shade = hearing.phrase(place, "shade")
    if shade is None:
        return None
    level = SHADES[shade.value]
    after = hearing.phrase(shade.end, "slightly")
    if by == "not":
        is_brown = hearing.words[shade.start].startswith("brown")
        level = SHADES["pale"] if is_brown else -1 if shade.value == "right" else 0
    elif by == "slightly" or after is not None:
        level -= (level > 0) - (level < 0)
    elif by == "much" and shade.value == "dark":
        level += 1
    return level, after.end if after else shade.end


def _shade_alone(hearing: Hearing, at: int) -> list[Piece]:
    """Came out := "came out" [a bit] shade; both faces are meant."""
    verb = hearing.phrase(at, "past")
    if verb is None or verb.end - verb.start < 2:
        return []
    shade = _shade(hearing, verb.end)
    return _sides("both", shade[0], (at, shade[1])) if shade else []


def _charcoal(hearing: Hearing, at: int) -> list[Piece]:
    """Charcoal := kind | burn kind; said with its verb it stands for itself."""
    verb = hearing.phrase(at, "burn")
    kind = hearing.phrase(verb.end if verb else at, "charcoal")
    return [Piece("charcoal", kind.value, (at, kind.end), sure=verb is not None)] if kind else []
