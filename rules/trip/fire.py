"""Briquettes for all meals: lightings that lie close together share a chimney, and one reserve serves the whole trip."""

from __future__ import annotations

import math
from collections.abc import Sequence
from datetime import datetime

from rules.because import Ledger, Rule
from rules.coals.figures import figure as coal_figure
from rules.recipe import Struct
from rules.trip import times
from rules.trip.irons import Booked
from rules.trip.model import Dish, LightFor, Lighting, TripFuel
from rules.trip.stacking import main_stage

SHARED = Rule(
    id="fire.shared",
    because="{dishes} are lit within {minutes:.0f} minutes of each other: one chimney of {count} for both, at the"
    " earlier moment",
)
SPARED = Rule(
    id="fire.spared",
    because="{dish} stands on another pot's lid: {count} coals under it need not be lit",
)
RESERVE = Rule(
    id="fire.reserve",
    because="{lit} briquettes are lit on the whole trip; a quarter more, {reserve}, stays in the bag for wind, wet and"
    " a lid lifted too often, counted once for all meals",
)


class _Flame(Struct, frozen=True, kw_only=True):
    """One dish's lighting before chimneys are shared."""

    at: datetime
    dish: str
    count: int


def fuel(
    dishes: Sequence[Dish], booked: Sequence[Booked], names: dict[str, str], zone: str | None, ledger: Ledger
) -> TripFuel | None:
    """What is lit when and for which dish, and how much to bring; None for a trip without coals."""
    spared = _spared(booked, names, ledger)
    flames = sorted(
        (flame for dish in dishes for flame in _flames(dish, zone, spared.get(dish.id, 0))),
        key=lambda flame: (times.key(flame.at), int(flame.dish)),
    )
    if not flames:
        return None
    lightings = tuple(_lighting(group, names, ledger) for group in _together(flames))
    lit = sum(lighting.count for lighting in lightings)
    reserve = math.ceil(lit * coal_figure("reserve").value)
    ledger.note(RESERVE.says("fuel", coal_figure("reserve"), lit=lit, reserve=reserve))
    return TripFuel(
        lit=lit,
        saved=sum(spared.values()),
        reserve=reserve,
        briquettes=lit + reserve,
        kg=round((lit + reserve) * coal_figure("mass").value / 1000, 1),
        lightings=lightings,
    )


def _spared(booked: Sequence[Booked], names: dict[str, str], ledger: Ledger) -> dict[str, int]:
    """By dish: coals under a stacked pot, which the lid below carries already."""
    found = {}
    for one in booked:
        if one.on is not None:
            found[one.dish.id] = main_stage(one.dish.plan.heat).under
            ledger.note(SPARED.says("fuel", dish=names[one.dish.id], count=found[one.dish.id]))
    return found


def _flames(dish: Dish, zone: str | None, spared: int) -> list[_Flame]:
    """The lightings of one dish; what is spared comes off the first."""
    if dish.plan.heat is None:
        return []
    ready = times.moment(dish.ready, zone)
    flames = []
    for batch in dish.plan.heat.fuel.batches:
        less = min(spared, batch.count)
        spared -= less
        flames.append(
            _Flame(at=times.later(ready, batch.light_at_min), dish=dish.id, count=batch.count - less)
        )
    return [flame for flame in flames if flame.count]


def _together(flames: Sequence[_Flame]) -> list[list[_Flame]]:
    """Lightings in order, those of different dishes close together in one chimney as long as it holds them."""
    near, holds = times.figure("light_together_min").value, coal_figure("chimney holds").value
    groups: list[list[_Flame]] = []
    for flame in flames:
        group = groups[-1] if groups else []
        fits = (
            group
            and times.minutes_between(group[0].at, flame.at) <= near
            and sum(one.count for one in group) + flame.count <= holds
            and flame.dish not in {one.dish for one in group}
        )
        if fits:
            group.append(flame)
        else:
            groups.append([flame])
    return groups


def _lighting(group: Sequence[_Flame], names: dict[str, str], ledger: Ledger) -> Lighting:
    count = sum(flame.count for flame in group)
    if len(group) > 1:
        apart = times.minutes_between(group[0].at, group[-1].at)
        dishes = " and ".join(names[flame.dish] for flame in group)
        ledger.note(
            SHARED.says(
                "fuel",
                times.figure("light_together_min"),
                dishes=dishes,
                minutes=max(1.0, apart),
                count=count,
            )
        )
    return Lighting(
        at=times.written(group[0].at),
        count=count,
        for_=tuple(LightFor(dish=flame.dish, count=flame.count) for flame in group),
    )
