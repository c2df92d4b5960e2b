"""The kitchen evenings before the trip: what is mixed, cut and frozen when, so that everything is ready to be packed.

Each pack has a last moment (frozen through, cold, or just dry before the cooler is shut) and a first one (how long it
keeps). Evenings are filled from the last backwards, two hours of work each; what has time moves to an earlier evening
before one runs over.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime, timedelta

from rules.because import Ledger, Rule
from rules.day import figure as day_figure
from rules.trip import times
from rules.trip.chores import Chore, bought_late, chores
from rules.trip.loading import Loaded
from rules.trip.model import Dish, HomeTask, TaskKind
from rules.wording import listed, mass

EVENINGS = Rule(
    id="home.evenings",
    because="{count} packs are made on {evenings}, about two hours each: what has to freeze comes first, cut and mixed"
    " food that only keeps cold comes last",
)
KINDS: dict[str, TaskKind] = {"dry mix": "mix", "wet mix": "mix", "prepped": "cut", "fresh": "freeze"}
VERBS: dict[str, str] = {"dry mix": "mix", "wet mix": "mix", "prepped": "prepare", "fresh": "seal"}
#: Openings of a pack's name that are the work itself.
OPENINGS = {"cut ": "cut", "measured ": "measure"}
LAST_DAY = Rule(
    id="home.last-day",
    because="{foods} travels unfrozen and keeps {days} at 40 °F: it is bought last",
    source="food tables, low end of the days in the refrigerator of USDA FSIS FoodKeeper",
)
#: No kitchen work is spread over more evenings than this.
MOST_EVENINGS = 4


def schedule(
    dishes: Sequence[Dish],
    loaded: Sequence[Loaded],
    ice_kg: float,
    zone: str | None,
    leave: datetime,
    ledger: Ledger,
) -> tuple[HomeTask, ...]:
    """Everything to do at home, in order, up to leaving."""
    shut = times.shut(leave)
    works = [work for dish in dishes for work in chores(dish, zone, shut, ledger)]
    evenings = _evenings(works)
    if works:
        named = " and ".join(times.date_said(evening) for evening in sorted(evenings))
        ledger.note(EVENINGS.says("home", day_figure("evening_h"), count=len(works), evenings=named))
    tasks = [task for evening, made in sorted(evenings.items()) for task in _evening(evening, made)]
    begins = min([*evenings, shut])
    shop = times.later(_morning(begins), 0.0)
    units = dishes[0].day.units if dishes else "us"
    ice = f", {mass(ice_kg, units)} of ice" if ice_kg else ""
    fire = " and fire box" if any(dish.plan.heat for dish in dishes) else ""
    cold = f"Pack the coolers, last meal lowest{ice}; shut them. " if loaded else ""
    return (
        HomeTask(
            at=times.written(shop),
            minutes=day_figure("shop_min").value,
            kind="shop",
            do="Shop for everything on the list; raw meat last, and straight into the cold.",
        ),
        *tasks,
        *_shop_again(dishes, shop, shut, zone, ledger),
        HomeTask(
            at=times.written(shut),
            minutes=day_figure("leave_min").value,
            kind="pack",
            do=f"{cold}Shelf box, kitchen box{fire} into the car{', fuel counted' if fire else ''}.",
        ),
        HomeTask(at=times.written(leave), minutes=0.0, kind="leave", do="Leave."),
    )


def _shop_again(
    dishes: Sequence[Dish], shop: datetime, shut: datetime, zone: str | None, ledger: Ledger
) -> Iterator[HomeTask]:
    """What would not keep from the shop to its meal is bought on the way out, or on the road."""
    late = bought_late(dishes, shop, zone)
    if not late:
        return
    names = listed(name for _, name, _ in late)
    days = min(keeps for _, _, keeps in late)
    ledger.note(LAST_DAY.says("home", foods=names, days=f"{days} day{'' if days == 1 else 's'}"))
    yield HomeTask(
        at=times.written(times.later(shut, -day_figure("fridge_min").value)),
        minutes=day_figure("fridge_min").value,
        kind="shop",
        do=f"Buy only now, or on the road: {names}; straight into the cooler.",
        dishes=tuple(dict.fromkeys(dish.id for dish, _, _ in late)),
    )


def _morning(begins: datetime) -> datetime:
    """Shopping ends well before the first kitchen work begins, in daylight."""
    at = times.later(begins, -day_figure("shop_min").value - day_figure("home_min").value)
    if at.hour < day_figure("night_to_h").value + 1:
        at = at.replace(hour=int(day_figure("evening_h").value) - 3, minute=0) - timedelta(days=1)
    return at


def _evenings(works: Sequence[Chore]) -> dict[datetime, list[Chore]]:
    """Work by evening: the latest that each allows, moved earlier where an evening is full and the food keeps."""
    budget = 60 * (day_figure("night_from_h").value - day_figure("evening_h").value)
    found: dict[datetime, list[Chore]] = {}
    first = _first_evening(works, budget)
    # Raw food goes into the freezer on the day it is bought. Of the rest, what keeps the shortest is placed first, on the
    # last evening; what keeps for weeks makes room.
    order = sorted(works, key=lambda work: (work.is_raw, times.key(work.first or work.last)), reverse=True)
    for work in order:
        last = _evening_before(work.last)
        choices = [last - timedelta(days=back) for back in range(MOST_EVENINGS)]
        if work.is_raw and first is not None:
            choices = [first, *choices]
        allowed = [
            one for one in choices if work.first is None or times.minutes_between(work.first, one) >= 0
        ]
        fits = [one for one in allowed if _minutes(found.get(one, ())) + work.minutes <= budget]
        found.setdefault(next(iter(fits or allowed or choices)), []).append(work)
    return found


def _first_evening(works: Sequence[Chore], budget: float) -> datetime | None:
    """The evening on which the work begins: early enough for the first thing to freeze, and for all of it."""
    lasts = [_evening_before(work.last) for work in works]
    if not lasts:
        return None
    an_evening = budget - day_figure("home_min").value
    many = math.ceil(sum(work.minutes for work in works) / an_evening)
    return min(min(lasts, key=times.key), max(lasts, key=times.key) - timedelta(days=many - 1), key=times.key)


def _minutes(works: Iterable[Chore]) -> float:
    return sum((work.minutes for work in works), day_figure("home_min").value)


def _evening_before(last: datetime) -> datetime:
    """The last evening on which work is done by that moment."""
    evening = last.replace(hour=int(day_figure("evening_h").value), minute=0, second=0, microsecond=0)
    return evening if times.minutes_between(evening, last) >= 0 else evening - timedelta(days=1)


def _evening(at: datetime, works: Sequence[Chore]) -> Iterator[HomeTask]:
    """One evening: laying out, one task per dish, then freezer and refrigerator."""
    at = times.later(at, day_figure("home_min").value)
    by_dish: dict[str, list[Chore]] = {}
    for work in sorted(works, key=lambda work: int(work.dish.id)):
        by_dish.setdefault(work.dish.id, []).append(work)
    for made in by_dish.values():
        minutes = sum(work.minutes for work in made)
        dish = made[0].dish
        yield HomeTask(
            at=times.written(at),
            minutes=minutes,
            kind=KINDS[made[0].pack.kind],
            do=f"{dish.title} ({dish.meal}): {'; '.join(_said(made))}.",
            dishes=(dish.id,),
        )
        at = times.later(at, minutes)
    for travels, kind, where in (
        ("frozen", "freeze", "Lay flat in the freezer"),
        ("cool", "chill", "Into the refrigerator"),
    ):
        packs = [work for made in by_dish.values() for work in made if work.pack.travels == travels]
        if packs:
            yield HomeTask(
                at=times.written(at),
                minutes=0.0,
                kind="freeze" if kind == "freeze" else "chill",
                do=f"{where}: {', '.join(f'{work.name} ({work.dish.title})' for work in packs)}.",
                dishes=tuple(dict.fromkeys(work.dish.id for work in packs)),
            )


def _said(made: Sequence[Chore]) -> Iterator[str]:
    by_verb: dict[str, list[str]] = {}
    for work in made:
        verb, name = VERBS[work.pack.kind], work.name
        for opening, own in OPENINGS.items():
            if name.startswith(opening):
                verb, name = own, name.removeprefix(opening)
        by_verb.setdefault(verb, []).append(f"{name} ({work.pack.id})")
    for verb, names in by_verb.items():
        yield f"{verb} {', '.join(names)}"
