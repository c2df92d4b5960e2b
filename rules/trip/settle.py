"""Two dishes and one pot: found, and settled by another pot, by order, by stacking or by a smaller batch.

Dishes that cannot wait are seated first. One that finds its pot taken tries, in this order: another pot that is free;
a moment before or after (where it may wait, or is sweet and follows the meal); fewer helpings, as many as the free pots
hold. Where the fire has no room for one more pot, a covered bake stands on the lid of another. What stays open is said.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import datetime

from rules.because import Ledger, Rule
from rules.plan import Heat, Stage
from rules.trip import dishes as the_dishes
from rules.trip import times
from rules.trip.irons import Booked, Iron, Span, as_owned, free, kind_name, kind_of, owned, span_of
from rules.trip.model import Dish, Meal, Settled, Trip, Way
from rules.trip.waiting import follows, waits
from rules.units import number

ANOTHER = Rule(
    id="pots.another",
    because="{pot} is taken by {others}: {dish} is cooked in {instead}, which is free then",
)
EARLIER = Rule(
    id="pots.earlier",
    because="{pot} is taken by {others}: {dish} is cooked before, done {minutes} minutes earlier, and waits {how}",
)
LATER = Rule(
    id="pots.later",
    because="{pot} is taken by {others}: {dish} is sweet and follows the meal by {minutes} minutes, when the pot is"
    " washed",
)
STACKED = Rule(
    id="pots.stacked",
    because="the fire has room for {fires}: {dish} stands on the lid of {others}, whose {top} coals are its heat from"
    " below; lift it off with two lifters to look under it",
)
SMALLER = Rule(
    id="pots.smaller",
    because="{dish} wants {wanted} and {had} free: made {share} as large it fits, so set more bread or salad"
    " beside it",
)
OPEN = Rule(
    id="pots.open",
    because="{dish} wants {wanted} while {others} {have} the fire, and neither waits: bring another pot, or move one of"
    " them",
)
#: How much of the batch is tried, largest first.
SHARES = (0.9, 0.8, 0.7, 0.6, 0.5)
COVERED = frozenset({"bake", "roast", "brown top", "keep warm", "rise"})
MOST_MOVES = 12


class Table:
    """The pots and the fire over the whole trip, while dishes are seated."""

    def __init__(self, trip: Trip, leave: datetime, ledger: Ledger) -> None:
        self.trip, self.leave, self.ledger = trip, leave, ledger
        self.irons = owned(trip)
        self.booked: list[Booked] = []
        self.settled: list[Settled] = []
        self.arrive = times.later(leave, 60 * trip.drive_hours)
        self.names: dict[str, str] = {}

    def span(self, dish: Dish) -> Span:
        """The span of a dish that has one."""
        found = span_of(dish, self.trip.zone)
        assert found is not None
        return found

    def meets(self, span: Span) -> list[Booked]:
        """Who has pots in that span."""
        return [one for one in self.booked if one.span.meets(span)]

    def pots_for(self, dish: Dish) -> tuple[Iron, ...] | None:
        """Free pots as the plan wants them; None where they are taken."""
        pot = dish.plan.pot
        if pot is None:
            return ()
        fit = [iron for iron in free(self.irons, self.booked, self.span(dish)) if iron.kind == kind_of(pot)]
        return tuple(fit[: pot.count]) if len(fit) >= pot.count else None

    def has_fire(self, dish: Dish, irons: Sequence[Iron]) -> bool:
        """Whether the fire has room for its pots beside those that burn then."""
        if self.trip.fires is None:
            return True
        span = self.span(dish)
        burning = [
            iron for one in self.booked if one.on is None and one.span.burns_with(span) for iron in one.irons
        ]
        return len(burning) + len(irons) <= self.trip.fires

    def take(self, dish: Dish, irons: tuple[Iron, ...], *, on: str | None = None) -> None:
        """Give the pots to the dish."""
        self.booked.append(Booked(dish=dish, irons=irons, span=self.span(dish), on=on))


def settle(
    planned: Sequence[Dish], trip: Trip, leave: datetime, ledger: Ledger
) -> tuple[tuple[Dish, ...], tuple[Booked, ...], tuple[Settled, ...]]:
    """The dishes as they can be cooked, who has which pot, and every clash with its way out.

    `planned` are the trip's meals in their order, with ids.
    """
    table = Table(trip, leave, ledger)
    table.names = the_dishes.names(planned)
    meals = dict(zip((dish.id for dish in planned), the_dishes.in_order(trip), strict=True))
    now = {dish.id: dish for dish in planned}
    for dish in sorted(planned, key=lambda dish: (waits(dish) is not None or follows(dish), int(dish.id))):
        if span_of(dish, trip.zone) is not None:
            now[dish.id] = _seat(dish, meals[dish.id], table)
    return tuple(now.values()), tuple(table.booked), tuple(table.settled)


def _seat(dish: Dish, meal: Meal, table: Table) -> Dish:
    """Pots for one dish; the dish as it is cooked now."""
    irons = table.pots_for(dish)
    if irons is not None and table.has_fire(dish, irons):
        table.take(dish, irons)
        return dish
    ways: tuple[Callable[[Dish, Meal, Table], Dish | None], ...] = (_another, _stacked, _moved, _smaller)
    for way in ways:
        found = way(dish, meal, table)
        if found is not None:
            return found
    return _left_open(dish, table)


def _another(dish: Dish, meal: Meal, table: Table) -> Dish | None:
    """Another pot that is free, where its own is taken."""
    if table.pots_for(dish) is not None:
        return None
    idle = free(table.irons, table.booked, table.span(dish))
    if not idle:
        return None
    tried = _again(dish, meal, table, irons=idle)
    irons = table.pots_for(tried)
    if irons is None or not table.has_fire(tried, irons):
        return None
    _note(table, ANOTHER, "another pot", dish, instead=_pots(irons))
    table.take(tried, irons)
    return tried


def _moved(dish: Dish, meal: Meal, table: Table) -> Dish | None:
    """Cooked after the meal or before it, in a pot that is free then; a sweet dish rather after."""
    eat = times.moment(dish.eat, table.trip.zone)
    wait = waits(dish)
    after = times.figure("follows_min").value if follows(dish) else 0.0
    moves: list[tuple[float, Dish, tuple[Iron, ...]]] = []
    for ready in _moments(dish, table):
        by = times.minutes_between(eat, ready)
        if not (-(wait.waits_min if wait else 0.0) <= by <= after) or by == 0:
            continue
        tried = _again(dish, meal, table, ready=ready)
        irons = table.pots_for(tried)
        if irons is None:
            tried = _again(
                dish, meal, table, ready=ready, irons=free(table.irons, table.booked, table.span(tried))
            )
            irons = table.pots_for(tried)
        early = times.minutes_between(table.arrive, table.span(tried).start) >= 0
        if irons is not None and early and table.has_fire(tried, irons):
            moves.append((by, tried, irons))
    if not moves:
        return None
    # After the meal before ahead of it, and each as near to it as can be.
    by, tried, irons = min(moves, key=lambda move: (move[0] < 0, abs(move[0])))
    if by > 0:
        _note(table, LATER, "order", dish, minutes=f"{by:.0f}")
    else:
        _note(table, EARLIER, "order", dish, minutes=f"{-by:.0f}", how=wait.how if wait else "")
    table.take(tried, irons)
    return tried


def _moments(dish: Dish, table: Table) -> list[datetime]:
    """When it could be done instead: just before a pot is wanted, or as soon after one is washed."""
    span = table.span(dish)
    cooks = times.minutes_between(span.start, span.ready)
    wash = times.figure("wash_min").value
    blocking = sorted(table.meets(span), key=lambda one: times.key(one.span.start))
    before = [times.later(one.span.start, -wash) for one in blocking]
    after = [times.later(one.span.end, cooks) for one in blocking]
    return [*after, *before][:MOST_MOVES]


def _smaller(dish: Dish, meal: Meal, table: Table) -> Dish | None:
    """As much of it as the free pots hold."""
    pot = dish.plan.pot
    idle = free(table.irons, table.booked, table.span(dish))
    if pot is None or not idle:
        return None
    for share in SHARES:
        tried = _again(dish, meal, table, irons=idle, scale=dish.plan.scale * share)
        irons = table.pots_for(tried)
        if irons is not None and table.has_fire(tried, irons):
            had = f"{_pots(idle)} {'is' if len(idle) == 1 else 'are'}"
            _note(table, SMALLER, "smaller", dish, had=had, share=f"{number(share)} times")
            table.take(tried, irons)
            return tried
    return None


def _stacked(dish: Dish, meal: Meal, table: Table) -> Dish | None:  # noqa: ARG001 - all ways are asked alike
    """On the lid of a covered bake, where the fire has no room for one more pot."""
    irons = table.pots_for(dish)
    if irons is None or len(irons) != 1 or table.trip.fires is None:
        return None
    span = table.span(dish)
    carried = {one.on for one in table.booked}
    for below in table.booked:
        fits = below.span.burns_with(span) and below.on is None and below.dish.id not in carried
        if fits and carries(below, irons[0], dish):
            _note(
                table,
                STACKED,
                "stacking",
                dish,
                others=[below],
                fires=f"{table.trip.fires} pot{'' if table.trip.fires == 1 else 's'}",
                top=main_stage(below.dish.plan.heat).top,
            )
            table.take(dish, irons, on=below.dish.id)
            return dish
    return None


def carries(below: Booked, iron: Iron, dish: Dish) -> bool:
    """Whether a pot may stand on that dish's lid: both bake covered, it is no larger, and the lid bears enough coals."""
    lower, upper = below.dish.plan.heat, dish.plan.heat
    if lower is None or upper is None or len(below.irons) != 1:
        return False
    covered = all(
        stage.kind in COVERED | {"light", "warm"} for heat in (lower, upper) for stage in heat.stages
    )
    return (
        covered
        and iron.diameter_in <= below.irons[0].diameter_in
        and main_stage(lower).top >= main_stage(upper).under > 0
    )


def main_stage(heat: Heat | None) -> Stage:
    """The longest stage over coals."""
    assert heat is not None  # only dishes over coals have pots
    burning = [stage for stage in heat.stages if stage.kind != "light"] or list(heat.stages)
    return max(burning, key=lambda stage: stage.minutes.high if stage.minutes else 0.0)


def _left_open(dish: Dish, table: Table) -> Dish:
    others = table.meets(table.span(dish))
    _note(table, OPEN, "open", dish, have="has" if len(others) == 1 else "have")
    kind = kind_of(dish.plan.pot) if dish.plan.pot else None
    table.take(dish, tuple(iron for iron in table.irons if iron.kind == kind)[:1])
    return dish


def _again(
    dish: Dish,
    meal: Meal,
    table: Table,
    *,
    ready: datetime | None = None,
    irons: Sequence[Iron] = (),
    scale: float | None = None,
) -> Dish:
    return the_dishes.planned(
        dish.id,
        meal,
        table.trip,
        leave=table.leave,
        ready=ready or times.moment(dish.ready, table.trip.zone),
        pots=as_owned(irons),
        scale=scale,
    )


def _note(
    table: Table, rule: Rule, way: Way, dish: Dish, *, others: Sequence[Booked] = (), **slots: object
) -> None:
    """The clash, its way out, and the reason in the ledger."""
    against = list(others) or table.meets(table.span(dish))
    named = " and ".join(table.names[one.dish.id] for one in against) or "nobody"
    pot = dish.plan.pot
    wanted = kind_name(kind_of(pot)) if pot else "a pot"
    wanted = f"{pot.count} x {wanted}" if pot and pot.count > 1 else f"the {wanted}"
    known = {"pot": wanted, "wanted": wanted, "others": named, "dish": table.names[dish.id], **slots}
    reason = rule.says(f"pot of {table.names[dish.id]}", None, **{slot: known[slot] for slot in rule.slots})
    table.ledger.note(reason)
    table.settled.append(
        Settled(
            dish=dish.id,
            others=tuple(one.dish.id for one in against),
            way=way,
            clash=f"{table.names[dish.id]} wants {wanted} while {named} {'has' if len(against) == 1 else 'have'} the fire"
            if against
            else f"{table.names[dish.id]} wants {wanted}, and only {_pots(table.irons)} {'comes' if len(table.irons) == 1 else 'come'} along",
            said=f"{reason.because[:1].upper()}{reason.because[1:]}.",
        )
    )


def _pots(irons: Sequence[Iron]) -> str:
    counts: dict[str, int] = {}
    for iron in irons:
        name = kind_name(iron.kind)
        counts[name] = counts.get(name, 0) + 1
    return " and ".join(f"{count} x {name}" if count > 1 else f"the {name}" for name, count in counts.items())


def seated(booked: Sequence[Booked], dish: str) -> Booked | None:
    """Who sits where."""
    return next((one for one in booked if one.dish.id == dish), None)
