"""The list itself: one line per food in the order in which a shop is walked, cold food late, ice and fuel last."""

from __future__ import annotations

from collections.abc import Sequence

from rules.because import Ledger, Rule
from rules.circumstances import Day
from rules.foods import Item
from rules.plan import Heat, Pack, Purchase
from rules.recipe import Recipe
from rules.shopping.cart import purchase_of
from rules.shopping.need import needs_of
from rules.shopping.walk import walked
from rules.shopping.words import mass
from rules.wording import mass as both_masses

FUEL = Rule(
    id="shopping.fuel",
    because="{briquettes} briquettes are {kg:g} kg with the reserve: weigh them or count them into a box",
)
ICE = Rule(
    id="shopping.ice",
    because="{ice} of ice for the cooler: bought last, or frozen at home in flat bottles",
)
FUEL_AISLE = "charcoal"
ICE_AISLE = "ice"


def shopping(
    recipe: Recipe,  # noqa: ARG001 - the rooms are all asked in one way
    items: Sequence[Item],
    packs: Sequence[Pack],
    heat: Heat | None,
    day: Day,
    ledger: Ledger,
    *,
    ice_kg: float | None = None,
) -> tuple[Purchase, ...]:
    """What to buy for this plan, in the order of the shop; the last line is the fuel."""
    needs = needs_of(items, packs)
    lines = sorted(
        (walked(need.food), place, purchase_of(need, day, ledger)) for place, need in enumerate(needs)
    )
    bought = [line for _, _, line in lines]
    if ice_kg:
        amount = both_masses(ice_kg, day.units)
        ledger.note(ICE.says("ice", ice=amount))
        bought.append(
            Purchase(food="ice for the cooler", buy=f"bags of {amount} in all", need=amount, aisle=ICE_AISLE)
        )
    if heat:
        fuel = heat.fuel
        ledger.note(FUEL.says("fuel", briquettes=fuel.briquettes, kg=fuel.kg))
        bought.append(
            Purchase(
                food="charcoal briquettes",
                buy=f"a bag of at least {mass(1000 * fuel.kg, day)}",
                need=f"{fuel.briquettes} briquettes",
                aisle=FUEL_AISLE,
            )
        )
    return tuple(bought)
