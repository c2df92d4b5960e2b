"""The shape of the method graph: takings of ingredients, the things they become, what happens to those.

A *thing* is whatever stands in one vessel at a time: a batter, a sauce, the pot. A *taking* is one moment at which an
ingredient, or a share of it, goes into a thing. An *event* is a deed done to a thing. Order is the order of the
text: `at` numbers the actions of the whole method from 0.
"""

from __future__ import annotations

from collections import defaultdict
from functools import cached_property

from rules.recipe import Deed, Struct

#: Deeds that cook food over a fire on a stove. Coals below do the same.
STOVE: frozenset[Deed] = frozenset(
    {"brown", "saute", "fry", "deep fry", "griddle", "boil", "simmer", "reduce", "deglaze", "steam", "pressure cook", "toast"}
)  # fmt: skip
#: Deeds that only warm: they do not yet make a cooked thing.
WARMING: frozenset[Deed] = frozenset({"heat", "melt"})
#: Deeds of the oven.
OVEN: frozenset[Deed] = frozenset({"bake", "roast", "broil"})
#: Deeds over an open fire.
OPEN_FIRE: frozenset[Deed] = frozenset({"grill", "smoke"})
FIRE = STOVE | WARMING | OVEN | OPEN_FIRE
#: Deeds by which foods become one mixture.
MIXING: frozenset[Deed] = frozenset(
    {"mix", "beat", "cream", "cut in", "rub", "knead", "fold", "mash", "blend", "add", "pour", "season", "marinate", "soak"}
)  # fmt: skip
#: Deeds that lay one thing on or around another without mixing them.
LAYING: frozenset[Deed] = frozenset({"coat", "fill", "layer", "spread", "top", "shape", "roll", "serve"})
#: Handwork on one food that needs no fire and no company.
HANDWORK: frozenset[Deed] = frozenset({"chop", "grate", "peel", "grind", "rinse", "drain", "strain"})
#: Time that passes.
WAITING: frozenset[Deed] = frozenset(
    {"rise", "rest", "chill", "freeze", "thaw", "marinate", "soak", "cool", "ferment", "store"}
)
#: Deeds after which what is added next enters at another moment.
PARTING = (STOVE - {"deglaze"}) | OVEN | OPEN_FIRE


def parts(does: Deed, word: str) -> bool:
    """Whether what is added after this deed enters at another moment: the pot cooks in between."""
    return does in PARTING or (does == "other" and word.startswith("cook"))


class Taking(Struct, frozen=True, kw_only=True):
    """One moment at which an ingredient goes into a thing.

    `share` is the part of the whole ingredient; `beside` are the ingredients that the same action takes. `group` is
    the same for all that meet cold in one mixture, or enter the same pot between two spells of cooking. `hot` says
    that the thing is over the fire; `laid` that it lies on the thing and is not mixed in; `marinade` that it waits with raw
    flesh before any fire.
    """

    ingredient: int
    share: float
    at: int
    step: int
    does: Deed
    word: str
    thing: int
    group: int
    #: where it goes, as written; None where the text does not say
    vessel: str | None = None
    beside: tuple[int, ...] = ()
    hot: bool = False
    laid: bool = False
    marinade: bool = False
    ahead: bool = False
    #: no action takes it: it is guessed from the words of a step or the order of the list
    guessed: bool = False


class Event(Struct, frozen=True, kw_only=True):
    """A deed done to a thing, by the action `at`."""

    at: int
    step: int
    does: Deed
    word: str
    minutes_low: float = 0.0
    minutes_high: float = 0.0
    vessel: str | None = None
    ahead: bool = False


class Thing(Struct, frozen=True, kw_only=True):
    """What stands in one vessel. `into` is the thing that it was put into later; `holds` those put into it."""

    names: tuple[str, ...] = ()
    vessel: str | None = None
    events: tuple[Event, ...] = ()
    into: int | None = None
    #: the action that put it there
    joined_at: int | None = None
    #: it was mixed into that thing, not laid on or around it
    mixed_in: bool = False
    holds: tuple[int, ...] = ()
    #: a mixture was poured over what was in it (hot fat, caramel)
    poured_over: bool = False

    def does(self, *deeds: Deed) -> bool:
        """Whether any of these deeds is done to it."""
        return any(event.does in deeds for event in self.events)


class Graph(Struct, frozen=True, kw_only=True, dict=True):
    """The method as a graph. `takings` stand in the order of the text."""

    takings: tuple[Taking, ...] = ()
    #: where foods that no action takes probably enter
    guesses: tuple[Taking, ...] = ()
    things: tuple[Thing, ...] = ()
    #: what is done to a food before or beside the takings: (ingredient, deed)
    handwork: tuple[tuple[int, Deed], ...] = ()
    #: every deed of the method with the number of times it is done
    deeds: tuple[tuple[Deed, int], ...] = ()

    def moments(self, ingredient: int) -> tuple[Taking, ...]:
        """The takings of one ingredient; empty when the method never names it."""
        return self._of_food.get(ingredient, ())

    def company(self, taking: Taking) -> tuple[Taking, ...]:
        """The takings of the same group, this one included."""
        return self._of_group.get(taking.group, ())

    def inside(self, thing: int) -> tuple[Taking, ...]:
        """All that is taken into one thing, laid on it or mixed in."""
        return self._of_thing.get(thing, ())

    def worked(self, at: int) -> tuple[int, ...]:
        """The things to which the action `at` does something."""
        return self._worked.get(at, ())

    def handled(self, ingredient: int, *deeds: Deed) -> bool:
        """Whether one of these deeds is handwork done to the ingredient."""
        return any(index == ingredient and deed in deeds for index, deed in self.handwork)

    def count(self, *deeds: Deed) -> int:
        """How often these deeds are done in the whole method."""
        return sum(times for deed, times in self.deeds if deed in deeds)

    def after(self, taking: Taking) -> tuple[Event, ...]:
        """What is done to the thing, and to the things it goes into, from the taking on."""
        events: list[Event] = []
        index: int | None = taking.thing
        seen: set[int] = set()
        while index is not None and index not in seen:
            seen.add(index)
            events += (event for event in self.things[index].events if event.at >= taking.at)
            index = self.things[index].into
        return tuple(sorted(events, key=lambda event: event.at))

    def whole(self, thing: int) -> int:
        """The last thing that this one ends in."""
        seen: set[int] = set()
        while (into := self.things[thing].into) is not None and thing not in seen:
            seen.add(thing)
            thing = into
        return thing

    @cached_property
    def _of_food(self) -> dict[int, tuple[Taking, ...]]:
        return _sorted_by(self.takings, "ingredient")

    @cached_property
    def _of_group(self) -> dict[int, tuple[Taking, ...]]:
        return _sorted_by(self.takings, "group")

    @cached_property
    def _of_thing(self) -> dict[int, tuple[Taking, ...]]:
        return _sorted_by(self.takings, "thing")

    @cached_property
    def _worked(self) -> dict[int, tuple[int, ...]]:
        found: defaultdict[int, dict[int, None]] = defaultdict(dict)
        for number, thing in enumerate(self.things):
            for event in thing.events:
                found[event.at][number] = None
        return {at: tuple(numbers) for at, numbers in found.items()}


def _sorted_by(takings: tuple[Taking, ...], field: str) -> dict[int, tuple[Taking, ...]]:
    """The takings by one of their numbers, in the order of the text."""
    found: defaultdict[int, list[Taking]] = defaultdict(list)
    for taking in takings:
        found[getattr(taking, field)].append(taking)
    return {number: tuple(of) for number, of in found.items()}
