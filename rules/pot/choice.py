"""Which pot, how many of it and how full (handbook chapter 4).

The cook's own pots are asked first; without any, one 12-inch shallow pot is taken and said. A bake is matched by the
circle of the rim, everything is held to the fill limit of its family, and what is too little for the pot is told so.
"""

from __future__ import annotations

from rules.because import Ledger
from rules.circumstances import Day, PotOwned
from rules.dish import Dish
from rules.foods import Item
from rules.plan import PotPlan
from rules.pot.iron import Oven, oven
from rules.pot.options import Option, option_of, rank
from rules.pot.pans import pan_of
from rules.pot.telling import tell, tell_oil, tell_tall
from rules.pot.volume import pot_families, raw_volume
from rules.recipe import Recipe


def choose(recipe: Recipe, items: tuple[Item, ...], dish: Dish, day: Day, ledger: Ledger) -> PotPlan | None:
    """The pot for the dish; None for what needs none (salads, ferments, a grill)."""
    if dish.family in ("no cook", "preserve or ferment", "grill or smoke"):
        return None
    owned = day.pots or (PotOwned(),)
    if not day.pots:
        ledger.ask("pot", "Which camp oven comes along?", "one 12-inch camp oven, shallow")
    asks = pot_families().get(dish.family)
    if asks is None or dish.family == "deep fry":
        # Cookies, griddle cakes and what is fried go in batches: the pot is a floor, not a vessel to fill.
        first = _largest_floor(owned)
        if dish.family == "deep fry":
            tell_oil(first, ledger)
        return _plan(Option(pot=first, owned=1, count=1, fill=None))
    room = raw_volume(items, dish.family)
    pan = pan_of(recipe)
    scale = items[0].scale if items else 1.0
    options = [option_of(one, asks, room, pan, scale) for one in owned]
    best = min(options, key=lambda option: rank(option, asks, pan, scale))
    tell(best, asks, room, pan, scale, ledger)
    tell_tall(best.pot, items, ledger)
    return _plan(best)


def _plan(option: Option) -> PotPlan:
    return PotPlan(
        diameter_in=option.pot.diameter_in,
        depth=option.pot.depth,
        quarts=option.pot.quarts,
        count=option.count,
        fill=round(option.fill, 2) if option.fill is not None else None,
    )


def _largest_floor(owned: tuple[PotOwned, ...]) -> Oven:
    return max((oven(one.diameter_in, one.depth) for one in owned), key=lambda pot: pot.bottom_in)
