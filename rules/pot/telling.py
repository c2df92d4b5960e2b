"""Why this pot, how full it gets, and what to ask when it does not fit, in the ledger's sentences."""

from __future__ import annotations

from functools import cache

from rules import table
from rules.because import Ledger, Rule
from rules.foods import Item
from rules.pot.iron import Oven, depth_of, fill_of, ovens, volume_at
from rules.pot.options import Option, is_hollow, needed, sq_in
from rules.pot.pans import Pan
from rules.pot.volume import PotFamily, Room, pot_families
from rules.units import number, to

HANDBOOK = "handbook of the trade, chapter 4"

MATCH = Rule(
    id="pot.match",
    because="{pan} has {pan_area} sq in and {pots} {rim_area} at the rim: the trade matches a bake by that circle",
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


def tell(best: Option, asks: PotFamily, room: Room, pan: Pan | None, scale: float, ledger: Ledger) -> None:
    """Say how the pan was matched, how full the pot gets, and what to do about too much or too little."""
    area = sq_in(asks, pan, scale)
    if pan is not None and area is not None:
        ledger.note(
            MATCH.says(
                "pot",
                pan=f"the {pan.said}" if scale == 1.0 else f"{number(scale)} times the {pan.said}",
                pan_area=f"{area:.0f}",
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
                "pot",
                pot=_name(best.pot),
                share=f"{alone:.0%}",
                what=asks.what,
                most=most,
                count=_word(best.count),
            )
        )
        _ask_for_more(best, asks, room.milliliters, area, ledger)
    elif is_hollow(best, asks):
        depth = f"{best.fill * best.pot.depth_in:.1f}"
        instead = _smaller(room.milliliters, best.pot, asks, sq_in(asks, pan, scale))
        ledger.note(HOLLOW.says("pot", pot=_name(best.pot), depth=depth, instead=instead))
        ledger.ask(
            "pot", f"This is little for {_some(best.pot, 1)}: {instead}. Is there one?", _name(best.pot)
        )


def _ask_amounts(best: Option, room: Room, ledger: Ledger) -> None:
    if room.unknown:
        foods = ", ".join(dict.fromkeys(room.unknown))
        text = f"How full the pot gets cannot be told without an amount for {foods}. How much is it?"
    else:
        text = "How full the pot gets cannot be told: the recipe states no amounts. Will it fit?"
    ledger.ask("fill", text, f"it fits {_in_words(best)}")


def _ask_for_more(
    best: Option, asks: PotFamily, milliliters: float, area: float | None, ledger: Ledger
) -> None:
    if best.count <= best.owned:
        return
    fewer = min(
        ((needed(pot, asks, milliliters, area), pot.quarts, pot) for pot in ovens()), key=lambda one: one[:2]
    )
    instead = f", or {_some(fewer[2], fewer[0])}" if fewer[0] < best.count else ""
    ledger.ask(
        "pot",
        f"This wants {_word(best.count)} pots of this size{instead}. What comes along?",
        f"{_in_words(best)}, or one after the other",
    )


def _smaller(milliliters: float, pot: Oven, asks: PotFamily, pan_sq_in: float | None) -> str:
    """What to do with too little for the pot: the smaller pot that is most like the pan, else the smallest."""
    fitting = [
        other
        for other in ovens()
        if other.quarts < pot.quarts
        and other.diameter_in >= 8
        and fill_of(other, milliliters) <= asks.most
        and depth_of(other, milliliters) >= (asks.least_depth_in or 0.0)
    ]
    if not fitting:
        return "take a tin on a trivet in this pot"
    like = min(fitting, key=lambda other: abs(other.rim_sq_in - (pan_sq_in or 0.0)))
    return f"take {_some(like, 1)}, or a tin on a trivet in this one"


def tell_tall(pot: Oven, items: tuple[Item, ...], ledger: Ledger) -> None:
    """Warn of a whole bird or joint that would touch the lid."""
    for item in items:
        row = _tall_foods().get(item.food.name if item.food else "")
        if row is None or row.height_in < pot.depth_in or _is_cut(item):
            continue
        deeper = next((one for one in ovens() if _clears(one, pot, row.height_in)), None)
        instead = f"take {_some(deeper, 1)} or cut it up" if deeper else "cut it up or press it flat"
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


def tell_oil(pot: Oven, ledger: Ledger) -> None:
    """Say how much frying oil the pot may hold."""
    most = volume_at(pot, pot_families()["deep fry"].most * pot.depth_in)
    ledger.note(OIL.says("pot", quarts=f"{to(most, 'milliliter', 'quart'):.1f}", pot=_name(pot)))


def _name(pot: Oven) -> str:
    return f"{pot.diameter_in}-inch pot" if pot.depth == "shallow" else f"deep {pot.diameter_in}-inch pot"


def _some(pot: Oven, count: int) -> str:
    """One pot with its article, several with their number."""
    if count > 1:
        return f"{_word(count)} {_name(pot)}s"
    return f"an {_name(pot)}" if _name(pot).startswith("8") else f"a {_name(pot)}"


def _in_words(option: Option) -> str:
    return _some(option.pot, option.count)


def _word(count: int) -> str:
    words = "one two three four five six seven eight nine ten eleven twelve".split()  # noqa: SIM905
    return words[count - 1] if count <= len(words) else str(count)


def _share(most: float) -> str:
    words = {0.5: "half", 0.67: "two thirds", 0.75: "three quarters", 0.3333: "a third"}
    return words.get(most, f"{most:.0%}")
