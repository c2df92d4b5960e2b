"""A place: the pack that one portion goes into, and why.

Portions with the same `key` share a pack. The first element of a key says what kind of bundle it is; a bundle's label
is written from it.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable

from rules.packs.kitchen import Kitchen, Portion
from rules.plan import PackKind, Reason, Travels
from rules.recipe import Struct

BOOK = "handbook of the trade, chapter 2"

#: A trip this long or shorter leaves the freezer out of it [h].
SHORT_TRIP_H = 4.0


class Place(Struct, frozen=True, kw_only=True):
    """Kind, company (`key`) and travel of a portion's pack, with the reason for it."""

    kind: PackKind
    key: tuple[Hashable, ...]
    travels: Travels
    because: Reason
    part: str | None = None


PlaceRule = Callable[[Portion, Kitchen], Place | None]


def frozen_or_cool(kitchen: Kitchen) -> Travels:
    """Frozen when there is a freezer and the trip is longer than a few hours."""
    hours = kitchen.day.trip_hours
    return "frozen" if kitchen.day.freezer and (hours is None or hours > SHORT_TRIP_H) else "cool"


def alone(portion: Portion) -> tuple[Hashable, ...]:
    """The key of a pack that holds this food alone, at all its moments."""
    return ("alone", portion.item.index)
