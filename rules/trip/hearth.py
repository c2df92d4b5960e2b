"""The pots and the fire over the whole trip while dishes are seated, and what is said of every clash."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from rules.because import Ledger, Rule
from rules.trip import dishes as the_dishes
from rules.trip import times
from rules.trip.irons import Booked, Iron, Span, as_owned, free, kind_name, kind_of, owned, span_of
from rules.trip.model import Dish, Meal, Settled, Trip, Way


class Hearth:
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


def again(
    dish: Dish,
    meal: Meal,
    hearth: Hearth,
    *,
    ready: datetime | None = None,
    irons: Sequence[Iron] = (),
    scale: float | None = None,
) -> Dish:
    """The dish planned anew: done at another moment, in other pots, or another share of it."""
    return the_dishes.planned(
        dish.id,
        meal,
        hearth.trip,
        leave=hearth.leave,
        ready=ready or times.moment(dish.ready, hearth.trip.zone),
        pots=as_owned(irons),
        scale=scale,
    )


def note(
    hearth: Hearth, rule: Rule, way: Way, dish: Dish, *, others: Sequence[Booked] = (), **slots: object
) -> None:
    """The clash, its way out, and the reason in the ledger."""
    against = list(others) or hearth.meets(hearth.span(dish))
    named = " and ".join(hearth.names[one.dish.id] for one in against) or "nobody"
    pot = dish.plan.pot
    wanted = kind_name(kind_of(pot)) if pot else "a pot"
    wanted = f"{pot.count} x {wanted}" if pot and pot.count > 1 else f"the {wanted}"
    fires = hearth.trip.fires or 0
    full = f"the fire has room for {fires} pot{'' if fires == 1 else 's'}, taken"
    taken = full if hearth.pots_for(dish) is not None else f"{wanted} is taken"
    known = {
        "pot": wanted,
        "taken": taken,
        "wanted": wanted,
        "others": named,
        "dish": hearth.names[dish.id],
        **slots,
    }
    reason = rule.says(f"pot of {hearth.names[dish.id]}", None, **{slot: known[slot] for slot in rule.slots})
    hearth.ledger.note(reason)
    hearth.settled.append(
        Settled(
            dish=dish.id,
            others=tuple(one.dish.id for one in against),
            way=way,
            clash=f"{hearth.names[dish.id]} wants {wanted} while {named} {'has' if len(against) == 1 else 'have'} the fire"
            if against
            else f"{hearth.names[dish.id]} wants {wanted}, and only {pots_said(hearth.irons)} {'comes' if len(hearth.irons) == 1 else 'come'} along",
            said=f"{reason.because[:1].upper()}{reason.because[1:]}.",
        )
    )


def pots_said(irons: Sequence[Iron]) -> str:
    """Pots in words, alike ones together."""
    counts: dict[str, int] = {}
    for iron in irons:
        name = kind_name(iron.kind)
        counts[name] = counts.get(name, 0) + 1
    return " and ".join(f"{count} x {name}" if count > 1 else f"the {name}" for name, count in counts.items())
