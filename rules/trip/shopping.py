"""One shopping list for all dishes: every food once, bought in whole packages for the sum, with who needs how much.

What is bought, in which packages and from which aisle is `rules.shopping`'s business; here its needs are joined. Two
dishes that want half a dozen eggs and four are one dozen, not two.
"""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from rules import foods
from rules.because import Ledger, Rule
from rules.circumstances import Day, Units
from rules.foods import Food
from rules.recipe import Amount, Struct
from rules.shopping import FUEL_AISLE, OPEN, Need, asked, bought_as, needs_of, purchase_of, walked
from rules.trip.model import Buy, Dish, Share, TripFuel
from rules.trip.sums import total
from rules.units import kitchen
from rules.wording import mass

JOINED = Rule(
    id="trip.joined",
    because="{food} goes into {count} dishes: {need} together, bought once",
)


class _Joined(Struct, frozen=True, kw_only=True):
    """One food with every dish's need of it."""

    need: Need
    parts: tuple[tuple[Dish, Need], ...]


def shopping(dishes: Sequence[Dish], fuel: TripFuel | None, units: Units, ledger: Ledger) -> tuple[Buy, ...]:
    """The list in the order of the shop; the last line is the fuel."""
    day = Day(units=units)
    lines = [
        (walked(one.need.food), place, _line(one, day, ledger)) for place, one in enumerate(_joined(dishes))
    ]
    bought = [line for _, _, line in sorted(lines, key=lambda line: line[:2])]
    if fuel:
        bought.append(
            Buy(
                food="charcoal briquettes",
                buy=f"bags of {mass(fuel.kg, units)} or more together",
                need=f"{fuel.briquettes} briquettes",
                aisle=FUEL_AISLE,
            )
        )
    return tuple(bought)


def _joined(dishes: Sequence[Dish]) -> list[_Joined]:
    """Needs by food, in the order in which the dishes name them."""
    by_food: dict[str, list[tuple[Dish, Need]]] = {}
    for dish in dishes:
        items = foods.weigh(dish.plan.recipe, dish.plan.scale)
        for need in needs_of(items, dish.plan.packs):
            by_food.setdefault(_key(need), []).append((dish, need))
    return [_Joined(need=_together(parts), parts=tuple(parts)) for parts in by_food.values()]


def _key(need: Need) -> str:
    return bought_as(need.food.name) if need.food else need.name.lower()


def _together(parts: Sequence[tuple[Dish, Need]]) -> Need:
    first = parts[0][1]
    names = {need.name for _, need in parts}
    food: Food | None = first.food
    return Need(
        # Where dishes call one food by different names, it is bought by the catalogue's.
        name=first.name if len(names) == 1 or food is None else food.spoken,
        food=food,
        items=tuple(item for _, need in parts for item in need.items),
        amounts=tuple(amount for _, need in parts for amount in need.amounts),
    )


def _line(one: _Joined, day: Day, ledger: Ledger) -> Buy:
    amounts = total(one.need.amounts, one.need.food)
    merged = msgspec.structs.replace(one.need, amounts=amounts)
    bought = purchase_of(merged, day, ledger)
    need = _words(amounts, one.need, day)
    if len(one.parts) > 1:
        ledger.note(JOINED.says(merged.name, food=merged.name, count=len(one.parts), need=need))
    return Buy(
        food=bought.food,
        buy=bought.buy,
        need=need,
        left_over=bought.left_over,
        aisle=bought.aisle,
        likely_at_home=bought.likely_at_home,
        amounts=amounts,
        grams=one.need.grams,
        milliliters=one.need.milliliters,
        for_=tuple(_share(dish, need, day) for dish, need in one.parts),
    )


def _share(dish: Dish, need: Need, day: Day) -> Share:
    return Share(
        dish=dish.id,
        need=asked(need, day),
        amounts=need.amounts,
        grams=need.grams,
        milliliters=need.milliliters,
    )


def _words(amounts: Sequence[Amount], need: Need, day: Day) -> str:
    words = " and ".join(kitchen(amount, units=day.units) for amount in amounts) or OPEN
    return f"{words} (optional)" if all(item.ingredient.optional for item in need.items) else words
