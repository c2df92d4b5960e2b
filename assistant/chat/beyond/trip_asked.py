"""What is asked of the whole trip: its plan, its shopping and other lists, its file; and a new one to begin."""

from __future__ import annotations

from typing import NamedTuple

from assistant.chat.beyond.asked import form_and_path
from assistant.chat.beyond.hearing import Hearing, Span

ABOUT = ("shopping", "packing", "cold", "coals", "home", "calendar", "diets", "pots")


class TripAsked(NamedTuple):
    """An act about the trip, its slots, and the tokens that it takes."""

    act: str
    slots: dict[str, str]
    spans: tuple[Span, ...]


def begun(hearing: Hearing) -> TripAsked | None:
    """A new trip, with its name where it has one: "plan a trip called River Weekend"."""
    for place in range(min(4, len(hearing.words))):
        found = hearing.phrase(place, "start")
        if found is None:
            continue
        named = next(
            (one for at in range(found.end, len(hearing.words)) if (one := hearing.phrase(at, "named"))), None
        )
        if named is None:
            return TripAsked("trip new", {}, ((place, found.end),))
        end = _until_an_edge(hearing, named.end)
        return TripAsked("trip new", {"name": _name(hearing, named.end, end)}, ((place, end),))
    return None


def of_the_trip(hearing: Hearing) -> TripAsked | None:
    """What a sentence asks of the trip at hand; None where it does not speak of it."""
    places = range(len(hearing.words))
    trip = next((one for place in places if (one := hearing.phrase(place, "trip"))), None)
    if trip is None:
        return None
    whole = ((0, len(hearing.words)),)
    if hearing.phrase(0, "forget") is not None:
        return TripAsked("trip forget", {}, whole)
    named = hearing.phrase(0, "named")
    if named is not None and "trip" in hearing.words[: named.end + 2]:
        start = named.end if named.end > trip.end else trip.end
        return TripAsked("trip name", {"name": _name(hearing, start, len(hearing.words))}, whole)
    groups = {one.value for place in places for one in hearing.marks.get(place, ()) if one.group == "about"}
    first = next(
        (one for place in range(min(3, len(hearing.words))) for one in [_verb(hearing, place)] if one), None
    )
    if first == "save":
        return TripAsked("trip save", form_and_path(hearing), whole)
    about = next((one for one in ABOUT if one in groups), None)
    if about is not None:
        return TripAsked("trip show", {"about": about}, whole)
    is_alone = trip.end - trip.start == len(hearing.words)
    return TripAsked("trip show", {"about": "plan"}, whole) if is_alone or first == "plan" else None


def _verb(hearing: Hearing, place: int) -> str | None:
    found = [one.value for one in hearing.marks.get(place, ()) if one.group == "about"]
    return next((one for one in ("plan", "save") if one in found), None)


def _until_an_edge(hearing: Hearing, start: int) -> int:
    return next(
        (at for at in range(start, len(hearing.words)) if hearing.words[at] in (",", ";", ".", ":")),
        len(hearing.words),
    )


def _name(hearing: Hearing, start: int, end: int) -> str:
    return hearing.said(start, end).strip("\"'“” .,") or "Trip"
