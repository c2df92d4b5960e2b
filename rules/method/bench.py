"""The bench while the method is followed: things that stand on it, in which vessel, under which names.

Every look-up is by word and keeps the youngest, so that a long text costs no more a line than a short one.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from rules.foods.names import plain, singulars
from rules.method.graph import FIRE, LAYING, MIXING, OVEN, WAITING, Event, Thing, parts
from rules.method.words import head, is_place, kind_of, roles_called, words
from rules.recipe import Action
from rules.roles import Role

#: Foods that are called by their animal.
FLESH: frozenset[Role] = frozenset({"meat", "fish", "cured meat"})


@dataclass
class Pot:
    """A thing while the method is followed."""

    index: int
    names: list[str] = field(default_factory=list)
    vessel: str | None = None
    events: list[Event] = field(default_factory=list)
    inside: list[Role] = field(default_factory=list)
    into: int | None = None
    joined_at: int | None = None
    #: how it was put into the other: by mixing, not by laying
    mixed_in: bool = False
    holds: list[int] = field(default_factory=list)
    poured_over: bool = False
    has_fire: bool = False
    #: the oven had it last
    is_baked: bool = False
    #: shaped, rolled or chilled: what comes now lies on it or in it, and is not mixed in
    is_formed: bool = False
    #: number of spells of cooking or waiting so far
    spell: int = 0
    #: number of spells of cooking so far
    cooked: int = 0

    @property
    def is_greased(self) -> bool:
        """Whether nothing but grease and a dust of flour is in it, and it is cold."""
        only = bool(self.inside) and set(self.inside) <= {"fat", "flour"} and not self.holds
        return only and not self.has_fire and all(event.does == "grease" for event in self.events)

    @property
    def is_hot_fat(self) -> bool:
        """Whether it is fat over a fire, and nothing else yet."""
        return self.has_fire and bool(self.inside) and set(self.inside) == {"fat"}

    def thing(self) -> Thing:
        """The thing as the graph keeps it."""
        return Thing(
            names=tuple(self.names),
            vessel=self.vessel,
            events=tuple(self.events),
            into=self.into,
            joined_at=self.joined_at,
            mixed_in=self.mixed_in,
            holds=tuple(self.holds),
            poured_over=self.poured_over,
        )


class Bench:
    """What stands where, and what it is called."""

    def __init__(self) -> None:
        self.pots: list[Pot] = []
        #: the thing that was worked on last
        self.hand: int | None = None
        #: the thing that was worked on before the vessel was changed
        self.before: int | None = None
        self._vessels: dict[str, int] = {}
        self._seen: set[str] = set()
        self._pot_last: int | None = None
        self._named: dict[str, int] = {}
        self._named_word: dict[str, int] = {}
        self._food_word: dict[str, int] = {}
        self._role: dict[Role, int] = {}
        self._fire_last: int | None = None

    def open(self, action: Action) -> int:
        """A new thing, in the vessel that the action names."""
        self.before = self.hand
        self.pots.append(Pot(index=len(self.pots)))
        self.hand = len(self.pots) - 1
        self.call(self.hand, action)
        return self.hand

    def call(self, thing: int, action: Action) -> None:
        """Keep the vessel and the names that an action gives a thing."""
        pot = self.pots[thing]
        if action.vessel is not None and not is_place(action.vessel):
            pot.vessel = action.vessel
            self._seen.add(action.vessel)
            self._vessels[head(action.vessel)] = thing
            if kind_of(action.vessel) in ("pot", "pan"):
                self._pot_last = thing
        for name in (action.makes, *action.things):
            if name and not set(name.split()) <= words("anything"):
                if name not in pot.names:
                    pot.names.append(name)
                self._named[name] = thing
                self._named_word.update(dict.fromkeys(set(name.split()) - words("anything"), thing))

    def put_food(self, thing: int, name: str, role: Role) -> None:
        """A food goes into a thing, and lends it its name."""
        self.pots[thing].inside.append(role)
        self._food_word.update(dict.fromkeys({*name.split(), *singulars(plain(name)).split()}, thing))
        self._role[role] = thing

    def put_into(self, other: int, thing: int, action: Action, at: int) -> None:
        """One thing goes into another, by the action `at`."""
        if other == thing or self.pots[other].into is not None or self.top(thing) == other:
            return
        self.pots[other].into = thing
        self.pots[other].joined_at = at
        formed = self.pots[thing].is_formed or self.pots[other].is_formed
        self.pots[other].mixed_in = action.does not in LAYING and not formed
        self.pots[thing].holds.append(other)
        if action.does in ("pour", "add", "spread") and self.pots[thing].has_fire:
            self.pots[thing].poured_over = True

    def gather_orphans(self, parts_of: dict[int, set[str | None]]) -> None:
        """What was mixed cold and is never spoken of again goes into the one batter or dough that is baked."""
        baked = [pot for pot in self.pots if pot.into is None and any(e.does in OVEN for e in pot.events)]
        if len(baked) != 1:
            return
        target = baked[0]
        for pot in self.pots:
            lonely = pot.into is None and pot is not target and not pot.has_fire and pot.inside
            if lonely and any(event.does in MIXING for event in pot.events):
                same = bool(parts_of.get(pot.index, set()) & parts_of.get(target.index, set()))
                pot.into = target.index
                pot.joined_at = _met_at(pot, target)
                pot.mixed_in = same and not pot.is_formed and not target.is_formed
                target.holds.append(pot.index)

    def top(self, thing: int) -> int:
        """What a thing went into, at last."""
        seen = set()
        while (into := self.pots[thing].into) is not None and thing not in seen:
            seen.add(thing)
            thing = into
        return thing

    def happen(self, thing: int | None, event: Event) -> None:
        """A deed is done to a thing."""
        if thing is None:
            return
        pot = self.pots[thing]
        pot.events.append(event)
        if event.does in FIRE:
            pot.has_fire = True
            pot.is_baked = event.does in OVEN
            self._fire_last = thing
        if event.does in ("shape", "roll", "chill") and not pot.has_fire:
            pot.is_formed = True
        if parts(event.does, event.word):
            pot.spell += 1
            pot.cooked += 1
        elif event.does in WAITING:
            pot.spell += 1

    def is_new_vessel(self, action: Action, *, own_pot: bool, opens: bool = False) -> bool:
        """Whether the action names a vessel that nothing stands in yet.

        `own_pot`: a boil wants a pot of its own. `opens`: several foods are put together, and a bowl that is described
        otherwise than before ("large bowl", "bowl") is another one.
        """
        if action.vessel is None or is_place(action.vessel):
            return False
        if words("another") & set(action.vessel.lower().split()):
            return True
        word = head(action.vessel)
        if opens and kind_of(action.vessel) == "bowl" and action.vessel not in self._seen:
            return True
        return (own_pot and word not in self._vessels) or self._in(word) is None

    def in_vessel(self, action: Action) -> int | None:
        """What stands in the vessel that the action names, if it is not a new one."""
        if action.vessel is None:
            return None
        thing = self._in(head(action.vessel))
        return self.top(thing) if thing is not None else None

    def _in(self, word: str) -> int | None:
        """What stands in the vessel called so; "pot" and "pan" mean the last one on the fire."""
        if word in self._vessels:
            return self._vessels[word]
        return self._pot_last if word in words("any pot") else None

    def by_name(self, name: str, *, surely: bool = False) -> int | None:
        """The thing with this name: the youngest that is called so, or that holds what is called so.

        `surely` leaves out words that only point ("the mixture", "the filling").
        """
        name = name.lower()
        said = name.split()
        found = self._named.get(name)
        called = roles_called(name)
        if found is None and called & FLESH:
            # "The chicken" is the thighs, and not the pot with the chicken stock.
            found = _youngest(self._role, called & FLESH)
        if found is None:
            found = _youngest(self._food_word, said)
        if found is None:
            found = _youngest(self._named_word, said)
        if found is None:
            found = _youngest(self._role, called)
        if surely:
            return self.top(found) if found is not None else None
        if found is None and words("cooking") & set(said):
            found = self._fire_last
        if found is None and words("made before") & set(said):
            found = self.before if self.before is not None else self.hand
        if found is None and words("anything") & set(said):
            found = self.hand
        return self.top(found) if found is not None else None


def _youngest(where: dict[Role, int] | dict[str, int], keys: Iterable[str]) -> int | None:
    return max((where[key] for key in keys if key in where), default=None)  # type: ignore[index]


def _met_at(lonely: Pot, target: Pot) -> int | None:
    """The action at which a mixture that is never spoken of again meets the one that is baked.

    The first deed after both were begun that takes nothing up by itself; the fire at the latest.
    """
    begun = max(lonely.events[-1].at, target.events[0].at)
    later = [event for event in target.events if event.at > begun]
    return later[0].at if later else None
