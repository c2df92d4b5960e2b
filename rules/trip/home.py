"""The kitchen evenings before the trip: what is mixed, cut and frozen when, so that everything is ready to be packed.

Each pack has a last moment (frozen through, cold, or just dry before the cooler is shut) and a first one (how long it
keeps). Evenings are filled from the last backwards, two hours of work each; what has time moves to an earlier evening
before one runs over.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime, timedelta

from rules.because import Ledger, Rule
from rules.day import figure as day_figure
from rules.day import longest_wait
from rules.labels import days_row
from rules.plan import Pack
from rules.recipe import Struct
from rules.trip import times
from rules.trip.loading import Loaded
from rules.trip.model import Dish, HomeTask, TaskKind
from rules.wording import mass, short_names

EVENINGS = Rule(
    id="home.evenings",
    because="{count} packs are made on {evenings}, about two hours each: what has to freeze comes first, cut and mixed"
    " food that only keeps cold comes last",
)
FREEZE_FIRST = Rule(
    id="home.freeze-first",
    because="{label} takes up to {hours:.0f} hours to freeze through: it goes into the freezer by {by}",
)
TOO_EARLY = Rule(
    id="home.too-early",
    because="{label} keeps {days} days and is wanted {hours:.0f} hours after the cooler is shut: it is prepared at camp,"
    " or cut on the last evening and used first",
)
MADE = frozenset({"dry mix", "wet mix", "prepped"})
KINDS: dict[str, TaskKind] = {"dry mix": "mix", "wet mix": "mix", "prepped": "cut", "fresh": "freeze"}
VERBS: dict[str, str] = {"dry mix": "mix", "wet mix": "mix", "prepped": "prepare", "fresh": "seal"}
#: Openings of a pack's name that are the work itself.
OPENINGS = {"cut ": "cut", "measured ": "measure"}
#: No kitchen work is spread over more evenings than this.
MOST_EVENINGS = 4


class _Work(Struct, frozen=True, kw_only=True):
    """One pack to be made: the moments between which that is, and the minutes it takes."""

    dish: Dish
    pack: Pack
    name: str
    first: datetime | None
    last: datetime
    minutes: float


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
    works = [work for dish in dishes for work in _works(dish, zone, shut, ledger)]
    evenings = _evenings(works)
    if works:
        named = " and ".join(times.date_said(evening) for evening in sorted(evenings))
        ledger.note(EVENINGS.says("home", day_figure("evening_h"), count=len(works), evenings=named))
    tasks = [task for evening, made in sorted(evenings.items()) for task in _evening(evening, made)]
    begins = min([*evenings, shut])
    shop = times.later(_morning(begins), 0.0)
    units = dishes[0].day.units if dishes else "us"
    ice = f", {mass(ice_kg, units)} of ice" if ice_kg else ""
    cold = f"Pack the coolers, last meal lowest{ice}; shut them. " if loaded else ""
    return (
        HomeTask(
            at=times.written(shop),
            minutes=day_figure("shop_min").value,
            kind="shop",
            do="Shop for everything on the list; raw meat last, and straight into the cold.",
        ),
        *tasks,
        HomeTask(
            at=times.written(shut),
            minutes=day_figure("leave_min").value,
            kind="pack",
            do=f"{cold}Shelf box, kitchen box and fire box into the car, fuel counted.",
        ),
        HomeTask(at=times.written(leave), minutes=0.0, kind="leave", do="Leave."),
    )


def _morning(begins: datetime) -> datetime:
    """Shopping ends well before the first kitchen work begins, in daylight."""
    at = times.later(begins, -day_figure("shop_min").value - day_figure("home_min").value)
    if at.hour < day_figure("night_to_h").value + 1:
        at = at.replace(hour=int(day_figure("evening_h").value) - 3, minute=0) - timedelta(days=1)
    return at


# What has to be made


def _works(dish: Dish, zone: str | None, shut: datetime, ledger: Ledger) -> Iterator[_Work]:
    names = short_names(dish.plan.packs)
    freeze = {
        bag.pack: bag.freeze_hours.high
        for bag in (dish.plan.cold.bags if dish.plan.cold else ())
        if bag.freeze_hours and not bag.bought_frozen
    }
    eat = times.moment(dish.eat, zone)
    wait = (
        longest_wait(dish.plan.recipe, dish.plan.packs)
        if any(p.kind == "prepped" for p in dish.plan.packs)
        else 0.0
    )
    for pack in dish.plan.packs:
        if pack.kind not in MADE and not (pack.kind == "fresh" and pack.id in freeze):
            continue
        before = 60 * freeze.get(pack.id, 0.0)
        if pack.travels == "cool":
            before = day_figure("fridge_min").value
        if pack.kind == "prepped":
            before += wait
        last = times.later(shut, -before)
        if pack.id in freeze:
            ledger.note(
                FREEZE_FIRST.says(pack.label, label=pack.label, hours=freeze[pack.id], by=times.said(last))
            )
        row = days_row(pack.kind, pack.travels)
        days = row.days if row else None
        first = times.later(eat, -24 * 60 * days) if days else None
        if first is not None and days and times.minutes_between(last, first) > 0:
            hours = times.minutes_between(shut, eat) / 60
            ledger.note(TOO_EARLY.says(pack.label, label=pack.label, days=days, hours=hours))
        yield _Work(
            dish=dish,
            pack=pack,
            name=names[pack.id],
            first=first,
            last=last,
            minutes=day_figure("home_pack_min").value,
        )


def _evenings(works: Sequence[_Work]) -> dict[datetime, list[_Work]]:
    """Work by evening: the latest that each allows, moved earlier where an evening is full and the food keeps."""
    budget = 60 * (day_figure("night_from_h").value - day_figure("evening_h").value)
    found: dict[datetime, list[_Work]] = {}
    # What keeps the shortest is placed first, on the last evening; what keeps for weeks makes room.
    for work in sorted(works, key=lambda work: times.key(work.first or work.last), reverse=True):
        last = _evening_before(work.last)
        choices = [last - timedelta(days=back) for back in range(MOST_EVENINGS)]
        allowed = [
            one for one in choices if work.first is None or times.minutes_between(work.first, one) >= 0
        ]
        fits = [one for one in allowed if _minutes(found.get(one, ())) + work.minutes <= budget]
        found.setdefault(next(iter(fits or allowed or choices)), []).append(work)
    return found


def _minutes(works: Iterable[_Work]) -> float:
    return sum((work.minutes for work in works), day_figure("home_min").value)


def _evening_before(last: datetime) -> datetime:
    """The last evening on which work is done by that moment."""
    evening = last.replace(hour=int(day_figure("evening_h").value), minute=0, second=0, microsecond=0)
    return evening if times.minutes_between(evening, last) >= 0 else evening - timedelta(days=1)


def _evening(at: datetime, works: Sequence[_Work]) -> Iterator[HomeTask]:
    """One evening: laying out, one task per dish, then freezer and refrigerator."""
    at = times.later(at, day_figure("home_min").value)
    by_dish: dict[str, list[_Work]] = {}
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


def _said(made: Sequence[_Work]) -> Iterator[str]:
    by_verb: dict[str, list[str]] = {}
    for work in made:
        verb, name = VERBS[work.pack.kind], work.name
        for opening, own in OPENINGS.items():
            if name.startswith(opening):
                verb, name = own, name.removeprefix(opening)
        by_verb.setdefault(verb, []).append(f"{name} ({work.pack.id})")
    for verb, names in by_verb.items():
        yield f"{verb} {', '.join(names)}"
