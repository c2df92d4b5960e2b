"""What goes into which cooler and in which order: cooked last lies lowest, raw meat below what is eaten as it is.

Every pack that travels cold has the moment at which it is taken out; coolers are filled from the packs that stay
longest. The physics of what follows is `rules.trip.thermal`, the ice `rules.trip.cooler`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime

from rules import foods
from rules.because import Ledger, Rule
from rules.cold.bags import frozen
from rules.cold.composition import Composition, density
from rules.cold.contents import of_pack
from rules.day import first_use
from rules.foods import Item
from rules.hazards import JUICY, hazard_of
from rules.plan import Pack
from rules.recipe import Struct
from rules.trip import times
from rules.trip.model import Cooler, Dish, Trip

LAST_LOWEST = Rule(
    id="cooler.last-lowest",
    because="{label} is cooked last, {hours:.0f} hours after the cooler is shut: it lies lowest, where it is coldest and"
    " nobody digs",
)
RAW_BOXED = Rule(
    id="cooler.raw-boxed",
    because="{label} is raw and lies above {under}, which is wanted later: it rides in a lidded box of its own, so that"
    " nothing drips",
)
TWO_COOLERS = Rule(
    id="cooler.two",
    because="{late} is shut until what is in it is needed; what is wanted first rides in {early}, which is opened often",
)
#: Food packed as it comes fills this share of the room that it takes.
PACKED_SHARE = 0.7


class Pile(Struct, frozen=True, kw_only=True):
    """One pack in a cooler: its dish, when it is taken out [h], what is known of it for the physics."""

    dish: Dish
    pack: Pack
    out_h: float
    raw: bool
    ready_to_eat: bool
    #: how many days raw food in it keeps once it is thawed
    keeps_days: int | None = None
    made_of: Composition | None = None
    kg: float | None = None
    thick: float | None = None

    @property
    def key(self) -> str:
        """Its name over all dishes."""
        return f"{self.dish.id}/{self.pack.id}"

    @property
    def liters(self) -> float:
        """The room that it takes; a quart where nothing is known."""
        if self.made_of is None or self.kg is None:
            return 1.0
        return 1000 * self.kg / density(self.made_of, 4.0) / PACKED_SHARE


class Loaded(Struct, frozen=True, kw_only=True):
    """One cooler with its packs, lowest first."""

    name: str
    quarts: float
    piles: tuple[Pile, ...]

    @property
    def hours(self) -> float:
        """From its shutting until the last pack is taken out."""
        return max((pile.out_h for pile in self.piles), default=0.0)

    @property
    def liters(self) -> float:
        """The room that its packs take."""
        return sum(pile.liters for pile in self.piles)


def load(dishes: Sequence[Dish], trip: Trip, leave: datetime, ledger: Ledger) -> tuple[Loaded, ...]:
    """Every cooler with what lies in it; none where nothing travels cold."""
    piles = sorted(
        (pile for dish in dishes for pile in _piles(dish, trip, leave)),
        key=lambda pile: (-pile.out_h, not pile.raw, pile.key),
    )
    if not piles:
        return ()
    coolers = trip.coolers or (Cooler(),)
    if not trip.coolers:
        ledger.ask("cooler", "Which coolers come along?", f"one of {Cooler().quarts:g} quarts")
    loaded = tuple(_shared_out(piles, coolers))
    for one in loaded:
        _tell(one, ledger)
    if len(loaded) > 1:
        ledger.note(TWO_COOLERS.says("coolers", late=loaded[0].name, early=loaded[-1].name))
    return loaded


def _piles(dish: Dish, trip: Trip, leave: datetime) -> Iterator[Pile]:
    """The cold packs of one dish with the moment each is taken out."""
    plan = dish.plan
    items = foods.weigh(plan.recipe, plan.scale)
    moves = {
        bag.pack: bag.move_hours_before
        for bag in (plan.cold.bags if plan.cold else ())
        if bag.move_hours_before is not None
    }
    shut = times.shut(leave)
    ready_h = times.minutes_between(shut, times.moment(dish.ready, trip.zone)) / 60
    wanted_h = ready_h + (first_use(plan.heat) - times.figure("out_min").value) / 60
    for pack in plan.packs:
        if pack.travels not in ("cool", "frozen"):
            continue
        hazards = {hazard_of(items[part.ingredient]) for part in pack.items}
        found = of_pack(pack, items)
        hard = frozen(pack, items) if pack.travels == "frozen" else None
        yield Pile(
            dish=dish,
            pack=pack,
            out_h=max(0.0, wanted_h - moves.get(pack.id, 0.0)),
            raw=bool(hazards & set(JUICY)),
            keeps_days=min(_days_of_raw(pack, items), default=None),
            ready_to_eat=not hazards & {*JUICY, "egg", "flour"},
            made_of=found[0] if found else None,
            kg=found[1] if found else None,
            thick=hard.thick if hard else None,
        )


def _days_of_raw(pack: Pack, items: Sequence[Item]) -> Iterator[int]:
    for part in pack.items:
        item = items[part.ingredient]
        if hazard_of(item) in JUICY and item.food is not None and item.food.fridge_days is not None:
            yield item.food.fridge_days


def _shared_out(piles: Sequence[Pile], coolers: Sequence[Cooler]) -> Iterator[Loaded]:
    """Packs from the last wanted to the first over the coolers, largest cooler first, each to its share of the room."""
    by_size = sorted(enumerate(coolers, start=1), key=lambda one: -one[1].quarts)
    room = sum(cooler.quarts for cooler in coolers)
    whole = sum(pile.liters for pile in piles)
    left = list(piles)
    for place, (number, cooler) in enumerate(by_size):
        name = cooler.name or (f"cooler {number}" if len(coolers) > 1 else "the cooler")
        is_last = place == len(by_size) - 1
        share = whole * cooler.quarts / room
        taken: list[Pile] = []
        while left and (is_last or not taken or sum(pile.liters for pile in taken) + left[0].liters <= share):
            taken.append(left.pop(0))
        yield Loaded(name=name, quarts=cooler.quarts, piles=tuple(taken))


def _tell(one: Loaded, ledger: Ledger) -> None:
    if not one.piles:
        return
    lowest = one.piles[0]
    ledger.note(LAST_LOWEST.says(one.name, label=lowest.pack.label, hours=lowest.out_h))
    for pile in one.piles:
        under = drips_on(pile, one)
        if under is not None:
            ledger.note(RAW_BOXED.says(one.name, label=pile.pack.label, under=under.pack.label))


def drips_on(pile: Pile, one: Loaded) -> Pile | None:
    """A pack below a raw one that is eaten as it is; None where nothing can be dripped on."""
    if not pile.raw:
        return None
    below = one.piles[: one.piles.index(pile)]
    return next((other for other in below if other.ready_to_eat and other.dish.id != pile.dish.id), None)
