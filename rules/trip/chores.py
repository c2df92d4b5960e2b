"""What has to be made at home, each pack with the moments between which that is, and what raw food wants of the shop."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime

from rules import foods
from rules.because import Ledger, Rule
from rules.day import figure as day_figure
from rules.day import longest_wait
from rules.hazards import JUICY, hazard_of
from rules.labels import days_row
from rules.plan import Pack
from rules.recipe import Struct
from rules.trip import times
from rules.trip.model import Dish
from rules.wording import short_names

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
HOURS_PER_DAY = 24


class Chore(Struct, frozen=True, kw_only=True):
    """One pack to be made: the moments between which that is, and the minutes it takes."""

    dish: Dish
    pack: Pack
    name: str
    first: datetime | None
    last: datetime
    minutes: float
    #: raw meat, poultry or fish that is frozen: the sooner after the shop the better
    is_raw: bool = False


def chores(dish: Dish, zone: str | None, shut: datetime, ledger: Ledger) -> Iterator[Chore]:
    """Every pack of a dish that is made at home."""
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
        yield Chore(
            dish=dish,
            pack=pack,
            name=names[pack.id],
            first=first,
            last=last,
            minutes=day_figure("home_pack_min").value,
            is_raw=pack.id in freeze and is_raw(pack, dish),
        )


def is_raw(pack: Pack, dish: Dish) -> bool:
    """Whether a pack holds raw meat, poultry or fish."""
    items = foods.weigh(dish.plan.recipe)
    return any(hazard_of(items[part.ingredient]) in JUICY for part in pack.items)


def bought_late(dishes: Sequence[Dish], shop: datetime, zone: str | None) -> list[tuple[Dish, str, int]]:
    """Raw food that travels unfrozen and would not keep from the shop to its meal: dish, name, days that it keeps."""
    found = []
    for dish in dishes:
        items = foods.weigh(dish.plan.recipe)
        hours = times.minutes_between(shop, times.moment(dish.eat, zone)) / 60
        for pack in dish.plan.packs:
            for part in pack.items if pack.travels == "cool" else ():
                item = items[part.ingredient]
                days = item.food.fridge_days if item.food else None
                if hazard_of(item) in JUICY and days is not None and hours > HOURS_PER_DAY * days:
                    found.append((dish, item.ingredient.name, days))
    return found
