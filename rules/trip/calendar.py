"""One calendar for the whole trip: the evenings at home, the road, and every dish's moments at camp, joined.

Shopping, packing and leaving happen once. Lightings are those of the shared chimneys, with what each is for; what two
dishes do at the same minute in the same words stands there once. A dish that waits says so instead of serving.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime

from rules.plan import Moment
from rules.recipe import Struct
from rules.trip import times
from rules.trip.model import Dish, HomeTask, Lighting, TripFuel, TripMoment, TripMomentKind
from rules.trip.waiting import waits


class _Line(Struct, frozen=True, kw_only=True):
    """One moment before those alike are joined."""

    at: datetime
    kind: TripMomentKind
    do: str
    dish: str | None = None


def calendar(
    dishes: Sequence[Dish],
    home: Sequence[HomeTask],
    fuel: TripFuel | None,
    names: dict[str, str],
    *,
    leave: datetime,
    arrive: datetime,
    zone: str | None,
) -> tuple[TripMoment, ...]:
    """Every moment that needs hands, in order."""
    lines = [
        *(
            _Line(at=times.moment(task.at, zone), kind="road" if task.kind == "leave" else "home", do=task.do)
            for task in home
        ),
        *_arrival(leave, arrive),
        *(line for dish in dishes for line in _of_dish(dish, leave, zone)),
        *_lightings(fuel, names, zone),
    ]
    joined: dict[tuple[str, str], TripMoment] = {}
    for line in sorted(lines, key=lambda line: times.key(line.at)):
        at = times.written(line.at)
        other = joined.get((at, line.do))
        dishes_of = (*(other.dishes if other else ()), *([line.dish] if line.dish else []))
        joined[at, line.do] = TripMoment(
            at=at, kind=line.kind, do=line.do, dishes=tuple(dict.fromkeys(dishes_of))
        )
    return tuple(joined.values())


def _arrival(leave: datetime, arrive: datetime) -> Iterator[_Line]:
    if times.minutes_between(leave, arrive) > 0:
        yield _Line(
            at=arrive,
            kind="road",
            do="Arrive: coolers into the shade, a look at the ice, the fire place chosen and cleared.",
        )


def _of_dish(dish: Dish, leave: datetime, zone: str | None) -> Iterator[_Line]:
    """The dish's own moments on the road and at camp; home and lightings are the trip's."""
    ready = times.moment(dish.ready, zone)
    for moment in dish.plan.timeline:
        if moment.kind in ("home", "light"):
            continue
        at = times.later(ready, moment.at_min)
        if times.minutes_between(leave, at) < 0:
            at = leave
        if moment.kind == "meal":
            yield from _meal(dish, moment, ready, zone)
        else:
            do = moment.do if moment.kind == "after" else f"{dish.title}: {moment.do}"
            yield _Line(at=at, kind=moment.kind or "fire", do=do, dish=dish.id)


def _meal(dish: Dish, moment: Moment, ready: datetime, zone: str | None) -> Iterator[_Line]:
    """Served as it is done; or first set aside, and served with the rest; or after the rest."""
    eat = times.moment(dish.eat, zone)
    if times.minutes_between(ready, eat) > 0:
        row = waits(dish)
        how = f": {row.how}" if row and row.how else ""
        yield _Line(at=ready, kind="fire", do=f"{dish.title} is done and waits{how}.", dish=dish.id)
    at = eat if times.minutes_between(ready, eat) > 0 else times.later(ready, moment.at_min)
    yield _Line(at=at, kind="meal", do=f"{dish.meal}: serve and eat {dish.title}.", dish=dish.id)


def _lightings(fuel: TripFuel | None, names: dict[str, str], zone: str | None) -> Iterator[_Line]:
    for lighting in fuel.lightings if fuel else ():
        for part in lighting.for_:
            yield _Line(
                at=times.moment(lighting.at, zone), kind="light", do=_lit(lighting, names), dish=part.dish
            )


def _lit(lighting: Lighting, names: dict[str, str]) -> str:
    briquettes = "briquette" if lighting.count == 1 else "briquettes"
    if len(lighting.for_) == 1:
        return f"Light {lighting.count} {briquettes} for {names[lighting.for_[0].dish]}."
    parts = ", ".join(f"{part.count} for {names[part.dish]}" for part in lighting.for_)
    return f"Light {lighting.count} {briquettes} in one chimney: {parts}."
