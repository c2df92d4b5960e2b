"""What the cooler has to do for this dish: frozen bags as ice, their thawing, ice to bring, raw food within its days.

Joins the physics of this chapter (composition, freezing, thaw, cooler) to the packs of a plan. Handbook, section 6.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from rules.because import Ledger, Rule
from rules.circumstances import Day
from rules.cold.bags import Frozen, bag, frozen
from rules.cold.composition import specific_heat
from rules.cold.contents import of_pack
from rules.cold.cooler import Budget, budget, cold_hours, room_for_ice_kg
from rules.cold.hours import air_f, celsius, cooler_quarts, figure, in_cooler
from rules.cold.order import layers
from rules.cold.raw_days import raw_food
from rules.foods import Item
from rules.plan import Bag, Cold, Hours, Pack
from rules.recipe import Recipe
from rules.safety import limit
from rules.wording import listed, mass

ICE = Rule(
    id="cold.ice",
    because="in {hours:.0f} hours at {air:.0f} °F the walls let in {leak:.0f} kJ, the lid {openings:.0f} and the food"
    " brings {warm:.0f}; frozen bags take {bags:.0f} and {ice:.1f} kg of ice the rest, a quarter more for sun and drain",
)
TOO_LONG = Rule(
    id="cold.too-long",
    because="{ice:.0f} kg of ice do not fit beside the food in {quarts:.0f} quarts: what fits, {room:.0f} kg, is gone after"
    " {hours:.0f} hours, and {foods} would pass {limit}",
)
#: Produce is sold cold and no matter of hours while it is whole.
PRODUCE = frozenset({"vegetable", "fruit", "herb", "water"})
#: Coolers as they are sold [US quarts], common practice; two large ones hold what one does not.
SOLD_QUARTS = (16, 28, 36, 48, 60, 75, 100, 120, 150)


def cold(
    recipe: Recipe,
    items: Sequence[Item],
    packs: Sequence[Pack],
    day: Day,
    ledger: Ledger,
) -> Cold | None:
    """What the cooler does on the way and what it needs; None when nothing travels cold."""
    cooled = [pack for pack in packs if pack.travels in ("cool", "frozen")]
    if not cooled:
        return None
    if not day.shares_cooler:
        _ask(day, ledger)
    hard = [one for pack in cooled if pack.travels == "frozen" and (one := frozen(pack, items))]
    bags = tuple(bag(one, recipe, items, day, ledger) for one in hard)
    notes = tuple(raw_food(cooled, bags, items, day, ledger))
    counts = not day.shares_cooler and in_cooler(day) > 0
    spent = _budget(hard, bags, cooled, items, day) if counts else None
    return Cold(
        frozen_packs=tuple(pack.id for pack in cooled if pack.travels == "frozen"),
        freeze_hours=_span([one.freeze_hours for one in bags]),
        thaw_hours=_span([one.thaw_hours for one in bags]),
        ice_kg=_to_bring(spent) if spent else None,
        bags=bags,
        notes=(*notes, *_ice(spent, cooled, items, day, ledger)) if spent else notes,
        layers=layers(cooled, items, ledger),
    )


def _ask(day: Day, ledger: Ledger) -> None:
    if day.trip_hours is None:
        ledger.ask(
            "trip", "How many hours is the food in the cooler before the meal?", f"{in_cooler(day):g} hours"
        )
    if day.cooler_quarts is None:
        ledger.ask("cooler", "How large is the cooler?", f"{cooler_quarts(day):g} quarts")


def _span(ranges: Sequence[Hours | None]) -> Hours | None:
    known = [one for one in ranges if one is not None]
    if not known:
        return None
    return Hours(low=min(one.low for one in known), high=max(one.high for one in known))


def _budget(
    hard: Sequence[Frozen], bags: Sequence[Bag], cooled: Sequence[Pack], items: Sequence[Item], day: Day
) -> Budget:
    hours = in_cooler(day)
    taken = 0.0
    for one, state in zip(hard, bags, strict=True):
        if state.thaw_hours is None:
            continue
        # Heat comes in evenly enough: the middle of the thawing time tells the part that was taken on the way.
        middle = (state.thaw_hours.low + state.thaw_hours.high) / 2
        taken += min(1.0, hours / middle) * one.heat
    warm = 0.0
    for pack in cooled:
        found = of_pack(pack, items) if pack.travels == "cool" else None
        if found:
            food, kg = found
            fall = figure("warm_food").value - figure("in_cooler").value
            warm += kg * specific_heat(food, figure("warm_food").value) * fall
    return budget(
        quarts=cooler_quarts(day), air_c=celsius(air_f(day)), hours=hours, warm_kj=warm, bags_kj=taken
    )


def _to_bring(spent: Budget) -> float:
    """Ice with its margin, up to the next half kilogram."""
    return math.ceil(2 * spent.ice_kg * figure("ice_margin").value) / 2


def _ice(
    spent: Budget, cooled: Sequence[Pack], items: Sequence[Item], day: Day, ledger: Ledger
) -> Iterator[str]:
    """How much ice, and whether it fits."""
    hours, bring = in_cooler(day), _to_bring(spent)
    ledger.note(
        ICE.says(
            "ice",
            figure("cooler_ua"),
            hours=hours,
            air=air_f(day),
            leak=spent.leak,
            openings=spent.openings,
            warm=spent.warm,
            bags=spent.bags,
            ice=spent.ice_kg,
        )
    )
    liters = sum(found[1] for pack in cooled if (found := of_pack(pack, items)))
    room = room_for_ice_kg(quarts=cooler_quarts(day), food_liters=liters)
    yield (
        f"Bring {mass(bring, day.units)} of ice for {hours:g} hours: that is for the whole cooler, whatever else rides in"
        " it; keep it full, shut and in the shade, and leave the melt water in until new ice comes."
    )
    if bring > room:
        yield _warning(spent, cooled, items, liters, day, ledger)


def _warning(
    spent: Budget, cooled: Sequence[Pack], items: Sequence[Item], liters: float, day: Day, ledger: Ledger
) -> str:
    """When the ice that fits is gone, what then spoils, and what to change."""
    quarts, bring = cooler_quarts(day), _to_bring(spent)
    room = room_for_ice_kg(quarts=quarts, food_liters=liters)
    lasts = cold_hours(
        ice_kg=room / figure("ice_margin").value,
        quarts=quarts,
        air_c=celsius(air_f(day)),
        warm_kj=spent.warm,
        bags_kj=spent.bags,
    )
    foods = listed(_what_spoils(cooled, items))
    ledger.note(
        TOO_LONG.says(
            "ice", ice=bring, quarts=quarts, room=room, hours=lasts, foods=foods, limit=limit("cold_f")
        )
    )
    more = mass(math.ceil(2 * (bring - room)) / 2, day.units)
    larger = next(
        (
            f"a cooler of {size} quarts"
            for size in SOLD_QUARTS
            if size > quarts and _holds(size, spent, liters, day)
        ),
        "a second cooler",
    )
    return (
        f"That does not fit: {mass(round(room), day.units)} go in beside the food and are gone after about"
        f" {lasts:.0f} hours. From then on {foods} would pass {limit('cold_f')}, and what has done so for two hours (one"
        f" above {limit('hot_air_f')})"
        f" is thrown away. Change one thing: buy {more} of ice on the way before that, take {larger}, or plan canned, cured"
        " or dried food instead."
    )


def _holds(quarts: float, spent: Budget, liters: float, day: Day) -> bool:
    """Whether a larger cooler has room for the ice that it then needs."""
    needs = budget(
        quarts=quarts,
        air_c=celsius(air_f(day)),
        hours=in_cooler(day),
        warm_kj=spent.warm,
        bags_kj=spent.bags,
    )
    return _to_bring(needs) <= room_for_ice_kg(quarts=quarts, food_liters=liters)


def _what_spoils(cooled: Sequence[Pack], items: Sequence[Item]) -> list[str]:
    """Raw flesh, milk, eggs and what else is no produce; where there is none of it, what was cut and opened."""
    inside = [items[part.ingredient] for pack in cooled for part in pack.items]
    names = [
        item.ingredient.name
        for item in inside
        if item.food is not None and item.food.keeps != "shelf" and item.food.group not in PRODUCE
    ]
    return names or [item.ingredient.name for item in inside]
