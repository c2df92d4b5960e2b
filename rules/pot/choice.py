"""Which pot, how many of it and how full (handbook chapter 4).

The cook's own pots are asked first; without any, one 12-inch shallow pot is taken and said. A bake is matched by the
circle of the rim, everything is held to the fill limit of its family, and what is too little for the pot is told so.
"""

from __future__ import annotations

from functools import cache
from math import ceil, log

from rules import table
from rules.because import Ledger, Rule
from rules.circumstances import Day, PotOwned
from rules.dish import Dish
from rules.foods import Item
from rules.plan import PotPlan
from rules.pot.iron import Oven, depth_of, figure, fill_of, oven, ovens, volume_at
from rules.pot.pans import Pan, pan_of
from rules.pot.volume import PotFamily, Room, pot_families, raw_volume
from rules.recipe import Recipe, Struct
from rules.units import number, to

HANDBOOK = "handbook of the trade, chapter 4"

MATCH = Rule(
    id="pot.match",
    because="the {pan} has {pan_area} sq in and {pots} {rim_area} at the rim: the trade matches a bake by that circle",
    source=HANDBOOK,
)
FILL = Rule(
    id="pot.fill",
    because="about {quarts} quarts of raw food stand {depth} in deep, {share} of {pots}; {what} may take {most}",
    source=HANDBOOK,
)
SPLIT = Rule(
    id="pot.split",
    because="one {pot} would be {share} full and {what} may take {most} of it: {count} pots, each with its own coals",
    source=HANDBOOK,
)
BRIM = Rule(
    id="pot.brim",
    because="that is a little more than {most}, which {what} may take, but no reason for a second fire: hold a ladle or"
    " two back from the {pot} if it comes near the lid",
)
HOLLOW = Rule(
    id="pot.hollow",
    because="this is little for the {pot}: it stands only {depth} in deep and will dry and scorch at the edge; {instead}",
    source=HANDBOOK,
)
TALL = Rule(
    id="pot.tall",
    because="a {food} stands about {height} in tall and the {pot} is {depth} in deep: the lid carries coals and must not"
    " touch it, so {instead}",
    source=HANDBOOK,
)
OIL = Rule(
    id="pot.oil",
    because="frying oil takes at most a third of the depth: {quarts} quarts in the {pot}, which boils over if it is more",
    source=HANDBOOK,
)


class TallFood(table.Row, frozen=True, kw_only=True):
    """A food that stands tall in the pot."""

    food: str
    height_in: float


class Option(Struct, frozen=True, kw_only=True):
    """A pot that could be used: how many of it, how full each."""

    pot: Oven
    owned: int
    count: int
    fill: float | None


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
            _tell_oil(first, ledger)
        return _plan(Option(pot=first, owned=1, count=1, fill=None))
    room = raw_volume(items, dish.family)
    pan = pan_of(recipe)
    scale = items[0].scale if items else 1.0
    options = [_option(one, asks, room, pan, scale) for one in owned]
    best = min(options, key=lambda option: _rank(option, asks, pan, scale))
    _tell(best, asks, room, pan, scale, ledger)
    _tell_tall(best.pot, items, ledger)
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


def _option(own: PotOwned, asks: PotFamily, room: Room, pan: Pan | None, scale: float) -> Option:
    pot = oven(own.diameter_in, own.depth)
    count = 1
    if asks.by_area and pan is not None and pan.shape != "sheet" and not pan.assumed:
        count = max(1, ceil(pan.area_sq_in * scale / pot.rim_sq_in / figure("area match") - 0.01))
    if room.milliliters is None:
        return Option(pot=pot, owned=own.count, count=count, fill=None)
    holds = volume_at(pot, (asks.most + figure("tolerance")) * pot.depth_in)
    count = max(count, ceil(room.milliliters / holds))
    return Option(pot=pot, owned=own.count, count=count, fill=fill_of(pot, room.milliliters / count))


def _rank(option: Option, asks: PotFamily, pan: Pan | None, scale: float) -> tuple[float, ...]:
    """Pots that are there before those that are not, few before many, a matching rim, then the fuller one."""
    missing = max(0, option.count - option.owned)
    miss = 0.0
    if asks.by_area and pan is not None and not pan.assumed:
        miss = abs(log(option.pot.rim_sq_in * option.count / (pan.area_sq_in * scale)))
    too_little = option.fill is not None and _is_hollow(option, asks)
    return (missing, option.count, too_little, miss, -(option.fill or 0.0), option.pot.quarts)


def _is_hollow(option: Option, asks: PotFamily) -> bool:
    if option.fill is None or asks.least_depth_in is None:
        return False
    depth = option.fill * option.pot.depth_in
    return depth < asks.least_depth_in or (not asks.by_area and option.fill < figure("hollow"))


def _tell(best: Option, asks: PotFamily, room: Room, pan: Pan | None, scale: float, ledger: Ledger) -> None:
    if asks.by_area and pan is not None and not pan.assumed and pan.shape != "sheet":
        ledger.note(
            MATCH.says(
                "pot",
                pan=pan.said,
                pan_area=f"{pan.area_sq_in * scale:.0f}",
                pots=_in_words(best),
                rim_area=f"{best.pot.rim_sq_in * best.count:.0f}",
            )
        )
    if best.fill is None or room.milliliters is None:
        _ask_amounts(best, room, ledger)
        return
    most = _share(asks.most)
    ledger.note(
        FILL.says(
            "fill",
            quarts=f"{to(room.milliliters, 'milliliter', 'quart'):.1f}",
            depth=f"{best.fill * best.pot.depth_in:.1f}",
            share=f"{best.fill:.0%}",
            pots=_in_words(best),
            what=asks.what,
            most=most,
        )
    )
    if best.count == 1 and best.fill > asks.most + 0.01:
        ledger.note(BRIM.says("fill", pot=_name(best.pot), what=asks.what, most=most))
    if best.count > 1:
        alone = fill_of(best.pot, room.milliliters)
        ledger.note(
            SPLIT.says(
                "pot", pot=_name(best.pot), share=f"{alone:.0%}", what=asks.what, most=most, count=best.count
            )
        )
        _ask_for_more(best, asks, room.milliliters, ledger)
    elif _is_hollow(best, asks):
        depth = f"{best.fill * best.pot.depth_in:.1f}"
        instead = _smaller(room.milliliters, best.pot, asks)
        ledger.note(HOLLOW.says("pot", pot=_name(best.pot), depth=depth, instead=instead))
        ledger.ask("pot", f"This is little for {_one(best.pot)}: {instead}. Is there one?", _name(best.pot))


def _ask_amounts(best: Option, room: Room, ledger: Ledger) -> None:
    if room.unknown:
        foods = ", ".join(dict.fromkeys(room.unknown))
        text = f"How full the pot gets cannot be told without an amount for {foods}. How much is it?"
    else:
        text = "How full the pot gets cannot be told: the recipe states no amounts. Will it fit?"
    ledger.ask("fill", text, f"it fits {_in_words(best)}")


def _ask_for_more(best: Option, asks: PotFamily, milliliters: float, ledger: Ledger) -> None:
    if best.count <= best.owned:
        return
    larger = next((pot for pot in ovens() if fill_of(pot, milliliters) <= asks.most), None)
    instead = f", or {_one(larger)}" if larger else ""
    ledger.ask(
        "pot",
        f"This wants {best.count} pots of this size{instead}. What comes along?",
        f"{_pots(best)}, or one after the other",
    )


def _smaller(milliliters: float, pot: Oven, asks: PotFamily) -> str:
    """What to do with too little for the pot."""
    for other in ovens():
        deep = depth_of(other, milliliters)
        fits = fill_of(other, milliliters) <= asks.most and other.quarts < pot.quarts
        if fits and other.diameter_in >= 8 and deep >= (asks.least_depth_in or 0.0):
            return f"take {_one(other)}, or a tin on a trivet in this one"
    return "take a tin on a trivet in this pot"


def _tell_tall(pot: Oven, items: tuple[Item, ...], ledger: Ledger) -> None:
    for item in items:
        row = _tall_foods().get(item.food.name if item.food else "")
        if row is None or row.height_in < pot.depth_in or _is_cut(item):
            continue
        deeper = next((one for one in ovens() if _clears(one, pot, row.height_in)), None)
        instead = f"take {_one(deeper)} or cut it up" if deeper else "cut it up or press it flat"
        ledger.note(
            TALL.says(
                item.ingredient.name,
                row,
                food=row.food,
                height=number(row.height_in),
                pot=_name(pot),
                depth=number(pot.depth_in),
                instead=instead,
            )
        )


def _clears(other: Oven, pot: Oven, height_in: float) -> bool:
    return other.depth_in > height_in and other.diameter_in >= pot.diameter_in


def _is_cut(item: Item) -> bool:
    said = f"{item.ingredient.prep or ''} {item.ingredient.text}".lower()
    return any(
        word in said for word in ("cut", "chop", "dice", "cube", "slice", "joint", "piece", "shred", "wedge")
    )


@cache
def _tall_foods() -> dict[str, TallFood]:
    return {row.food: row for row in table.read("tall_foods.csv", TallFood)}


def _tell_oil(pot: Oven, ledger: Ledger) -> None:
    most = volume_at(pot, pot_families()["deep fry"].most * pot.depth_in)
    ledger.note(OIL.says("pot", quarts=f"{to(most, 'milliliter', 'quart'):.1f}", pot=_name(pot)))


def _name(pot: Oven) -> str:
    return f"{pot.diameter_in}-inch pot" if pot.depth == "shallow" else f"deep {pot.diameter_in}-inch pot"


def _one(pot: Oven) -> str:
    return f"an {_name(pot)}" if _name(pot).startswith("8") else f"a {_name(pot)}"


def _pots(option: Option) -> str:
    return _name(option.pot) if option.count == 1 else f"{option.count} {_name(option.pot)}s"


def _in_words(option: Option) -> str:
    return _one(option.pot) if option.count == 1 else _pots(option)


def _share(most: float) -> str:
    words = {0.5: "half", 0.67: "two thirds", 0.75: "three quarters", 0.3333: "a third"}
    return words.get(most, f"{most:.0%}")
