"""The pots of a trip as things that are in use: which one, for which dish, from when until it is washed.

A pot is taken from its first minute over coals until the dish was eaten out of it; a dish that was lifted out to wait
frees it as it is done. Nothing is decided here.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime

from rules.circumstances import PotOwned
from rules.plan import Depth, PotPlan
from rules.recipe import Struct
from rules.trip import times
from rules.trip.model import Dish, PotUse, Trip

Kind = tuple[int, Depth]


class Iron(Struct, frozen=True, kw_only=True):
    """One pot that comes along; `number` tells alike ones apart."""

    diameter_in: int
    depth: Depth
    number: int = 1
    of: int = 1

    @property
    def kind(self) -> Kind:
        """Its size."""
        return self.diameter_in, self.depth

    @property
    def name(self) -> str:
        """What it is called: "12-inch pot", "deep 12-inch pot 2"."""
        return f"{kind_name(self.kind)}{f' {self.number}' if self.of > 1 else ''}"


class Span(Struct, frozen=True, kw_only=True):
    """When a dish has its pots: over coals from `start` to `ready`, and taken until `end`."""

    start: datetime
    ready: datetime
    end: datetime

    def meets(self, other: Span) -> bool:
        """Whether both want a pot at the same time."""
        return times.key(self.start) < times.key(other.end) and times.key(other.start) < times.key(self.end)

    def burns_with(self, other: Span) -> bool:
        """Whether both stand over coals at the same time."""
        return times.key(self.start) < times.key(other.ready) and times.key(other.start) < times.key(
            self.ready
        )


class Booked(Struct, frozen=True, kw_only=True):
    """One dish in its pots."""

    dish: Dish
    irons: tuple[Iron, ...]
    span: Span
    #: the dish whose lid carries this one's coals
    on: str | None = None


def kind_name(kind: Kind) -> str:
    """A size in words."""
    diameter_in, depth = kind
    return f"{'deep ' if depth == 'deep' else ''}{diameter_in}-inch pot"


def owned(trip: Trip) -> tuple[Iron, ...]:
    """Every pot that comes along, the trip's and those that a meal brings for itself."""
    counts: dict[Kind, int] = {}
    for pot in trip.pots or (PotOwned(),):
        counts[pot.diameter_in, pot.depth] = counts.get((pot.diameter_in, pot.depth), 0) + pot.count
    for meal in trip.meals:
        for pot in meal.pots:
            kind = (pot.diameter_in, pot.depth)
            counts[kind] = max(counts.get(kind, 0), pot.count)
    return tuple(
        Iron(diameter_in=diameter, depth=depth, number=number, of=count)
        for (diameter, depth), count in counts.items()
        for number in range(1, count + 1)
    )


def as_owned(irons: Iterable[Iron]) -> tuple[PotOwned, ...]:
    """Those pots as a day's pots."""
    counts: dict[Kind, int] = {}
    for iron in irons:
        counts[iron.kind] = counts.get(iron.kind, 0) + 1
    return tuple(
        PotOwned(diameter_in=diameter, depth=depth, count=count)
        for (diameter, depth), count in counts.items()
    )


def kind_of(pot: PotPlan) -> Kind:
    """The size of a planned pot."""
    return pot.diameter_in, pot.depth


def span_of(dish: Dish, zone: str | None) -> Span | None:
    """When the dish has its pots; None where it needs none."""
    heat = dish.plan.heat
    if heat is None or dish.plan.pot is None:
        return None
    starts = [
        stage.starts_at_min
        for stage in heat.stages
        if stage.kind != "light" and stage.starts_at_min is not None
    ]
    ready, eat = times.moment(dish.ready, zone), times.moment(dish.eat, zone)
    wash = times.figure("wash_min").value
    waited = times.minutes_between(ready, eat) > 0
    busy = wash if waited else wash + times.figure("serve_min").value
    return Span(start=times.later(ready, min(starts, default=0.0)), ready=ready, end=times.later(ready, busy))


def free(irons: Sequence[Iron], booked: Sequence[Booked], span: Span) -> tuple[Iron, ...]:
    """The pots that nobody has in that span."""
    taken = {iron for one in booked if one.span.meets(span) for iron in one.irons}
    return tuple(iron for iron in irons if iron not in taken)


def uses(booked: Iterable[Booked]) -> tuple[PotUse, ...]:
    """All uses of pots, in order of time."""
    rows = [
        PotUse(
            pot=iron.name,
            dish=one.dish.id,
            from_=times.written(one.span.start),
            until=times.written(one.span.end),
        )
        for one in sorted(booked, key=lambda one: times.key(one.span.start))
        for iron in one.irons
    ]
    return tuple(rows)
