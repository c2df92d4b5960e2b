"""Following the method from action to action: which foods meet in which thing.

The reader gives typed actions; here their pronouns are settled. A named thing ("the batter") is looked for among the
things so far; a vessel named before means what stands in it; an ingredient already taken means the thing that it went
into; else the deed goes on with the thing at hand. A step without actions counts as one adding of all that it uses.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from rules.method.graph import (
    FIRE,
    HANDWORK,
    LAYING,
    MIXING,
    OVEN,
    STOVE,
    WAITING,
    WARMING,
    Event,
    Graph,
    Thing,
    parts,
)
from rules.method.settle import Raw, settle
from rules.method.words import head, is_place, kind_of, roles_called, words
from rules.recipe import Action, Deed, Recipe, Step, Use
from rules.roles import POURED_AGAIN, role_of

#: Deeds that open a thing of their own when they name foods and no thing.
OPENING: frozenset[Deed] = frozenset({"mix", "beat", "cream", "cut in", "mash", "blend", "melt"})
#: Deeds that a fat is heated for.
FRYING: frozenset[Deed] = frozenset({"saute", "fry", "brown", "deep fry", "griddle", "heat", "bake", "roast"})
#: Deeds that set a fresh pot on the fire when they name foods and a pot.
POT_OF_ITS_OWN: frozenset[Deed] = frozenset({"boil", "steam", "melt", "heat", "deep fry"})
SEVERAL = 2


@dataclass
class _Pot:
    """A thing while the method is followed."""

    index: int
    names: list[str] = field(default_factory=list)
    vessel: str | None = None
    events: list[Event] = field(default_factory=list)
    into: int | None = None
    holds: list[int] = field(default_factory=list)
    poured_over: bool = False
    #: number of spells of cooking or waiting so far
    spell: int = 0
    #: number of spells of cooking so far
    cooked: int = 0
    #: how it was put into the other: by mixing, not by laying
    mixed_in: bool = False

    @property
    def is_baked(self) -> bool:
        """Whether the oven had it last."""
        fires = [event.does for event in self.events if event.does in FIRE]
        return bool(fires) and fires[-1] in OVEN

    @property
    def has_fire(self) -> bool:
        """Whether it stood on a fire already."""
        return any(event.does in FIRE for event in self.events)


def graph(recipe: Recipe) -> Graph:
    """The method graph of a recipe; without a method it is empty."""
    follower = _Follower(recipe)
    follower.follow()
    things = tuple(
        Thing(
            names=tuple(pot.names),
            vessel=pot.vessel,
            events=tuple(pot.events),
            into=pot.into,
            mixed_in=pot.mixed_in,
            holds=tuple(pot.holds),
            poured_over=pot.poured_over,
        )
        for pot in follower.pots
    )
    return Graph(
        takings=settle(follower.takings, things, follower.roles),
        things=things,
        handwork=tuple(follower.handwork),
        deeds=tuple(follower.deeds.items()),
    )


class _Follower:
    """Walks through the actions and keeps what stands where."""

    def __init__(self, recipe: Recipe) -> None:
        self.recipe = recipe
        self.roles = [role_of(ingredient) for ingredient in recipe.ingredients]
        self.pots: list[_Pot] = []
        self.takings: list[Raw] = []
        self.handwork: dict[tuple[int, Deed], None] = {}
        self.deeds: dict[Deed, int] = {}
        self.where: dict[int, int] = {}
        self.left: dict[int, float] = {}
        self.vessels: dict[str, int] = {}
        self.hand: int | None = None
        #: what was taken up to be used by the next deed ("take two ounces more and stir them in")
        self.held: list[Use] = []
        self.at = -1

    def follow(self) -> None:
        """Every action of every step."""
        for number, step in enumerate(self.recipe.steps):
            for action in step.actions or _as_one(step):
                self.at += 1
                self._act(number, action)

    def _act(self, step: int, action: Action) -> None:
        deed = action.does
        self.deeds[deed] = self.deeds.get(deed, 0) + 1
        if deed in HANDWORK:
            self._handle(step, action)
            return
        if deed in ("preheat", "line", "turn", "cover", "can"):
            self._happen(self._known(action), step, action)
            return
        if deed == "other" and not parts(deed, action.word):
            self._take_up(step, action)
            return
        fresh, again = self._split(action)
        targets = self._targets(action, fresh, again)
        if deed == "grease":
            self._take(fresh, step, action, self._open(action), laid=True)
            return
        if not fresh and not targets:
            self._happen(self._set_out(action), step, action)
            return
        thing = self._meet(action, fresh, targets)
        # What a fire deed does, it does to what it takes too: the event comes after the takings.
        self._take(fresh, step, action, thing, laid=self._lies(deed, fresh, targets))
        self._happen(thing, step, action)

    def _take_up(self, step: int, action: Action) -> None:
        """Taking up, removing, checking: what is new is held for the next deed."""
        self.held = [use for use in action.uses if self.left.get(use.ingredient, 1.0) > 0]
        if not self.held:
            self._happen(self._known(action), step, action)

    def _set_out(self, action: Action) -> int | None:
        """A pot set on the fire with nothing in it yet; any other new vessel takes what is at hand."""
        if not self._names_new_vessel(action) or action.does == "serve":
            return self.hand
        empty = kind_of(action.vessel or "") in ("pot", "pan") and not set(action.word.split()) & words(
            "moving"
        )
        if self.hand is None or (empty and action.does in MIXING | WARMING | STOVE):
            return self._open(action)
        self._call(self.hand, action)
        return self.hand

    def _lies(self, deed: Deed, fresh: list[Use], targets: list[int]) -> bool:
        return (
            deed in LAYING
            and deed not in ("shape", "roll")
            and bool(fresh)
            and (bool(targets) or deed == "serve")
        )

    def _handle(self, step: int, action: Action) -> None:
        for use in action.uses:
            self.handwork[(use.ingredient, action.does)] = None
        for name in action.things:
            self.handwork.update(
                dict.fromkeys((index, action.does) for index in self._ingredients_called(name))
            )
        known = self._known(action)
        if known is not None and not action.uses:
            self._happen(known, step, action)

    def _ingredients_called(self, name: str) -> list[int]:
        said = set(name.lower().split())
        return [
            index
            for index, ingredient in enumerate(self.recipe.ingredients)
            if index in self.where and said <= set(ingredient.name.split())
        ]

    def _split(self, action: Action) -> tuple[list[Use], list[int]]:
        """The uses that take something new, and the ingredients that are spoken of again."""
        fresh: list[Use] = []
        again: list[int] = []
        uses = [
            *self.held,
            *(use for use in action.uses if use.ingredient not in {h.ingredient for h in self.held}),
        ]
        self.held = []
        for use in uses:
            index = use.ingredient
            if not 0 <= index < len(self.roles):
                continue
            left = self.left.get(index, 1.0)
            if left > 0 or (self.roles[index] in POURED_AGAIN and self._elsewhere(index, action)):
                fresh.append(use)
            else:
                again.append(index)
        return fresh, again

    def _fat_again(self, action: Action) -> list[Use]:
        """A fat that is only spoken of, but heated in another pan than before: it is poured again."""
        if action.does not in FRYING:
            return []
        spoken = {word for name in action.things for word in name.split()}
        return [
            Use(ingredient=index)
            for index, role in enumerate(self.roles)
            if role == "fat"
            and spoken & set(self.recipe.ingredients[index].name.split()) & words("fat")
            and index in self.where
            and self.where[index] != self._hand_for(action)
        ]

    def _hand_for(self, action: Action) -> int | None:
        """The thing that an action means by its vessel, or the one at hand."""
        vessel = self._in_vessel(action)
        return vessel if vessel is not None else None if self._names_new_vessel(action) else self.hand

    def _elsewhere(self, index: int, action: Action) -> bool:
        """Whether a food that is poured more than once is poured again, and not just spoken of."""
        return action.does in MIXING | LAYING | WARMING | {"grease", "saute", "fry", "brown"} and not (
            self.where.get(index) == self.hand and action.does in STOVE | WARMING
        )

    def _targets(self, action: Action, fresh: list[Use], again: list[int]) -> list[int]:
        """The things that the action works on, the one that the others go into first."""
        found: list[int] = []
        vessel = self._in_vessel(action)
        named = [thing for name in action.things if (thing := self._by_name(name)) is not None]
        if vessel is not None:
            found.append(vessel)
        found += named
        found += (self._top(self.where[index]) for index in again if index in self.where)
        if not found and self._goes_on(action, fresh):
            found.append(self.hand if self.hand is not None else self._open(action))
        return list(dict.fromkeys(found))

    def _goes_on(self, action: Action, fresh: list[Use]) -> bool:
        """Whether the action goes on with the thing at hand."""
        if self.hand is None or self._names_new_vessel(action):
            return False
        deed = action.does
        if deed in OPENING:
            if words("joining") & set(action.word.split()):
                return True
            return len(fresh) < SEVERAL and not self._starts(deed, fresh)
        if deed in WARMING | STOVE and fresh:
            return self._stands_on_a_fire(self.hand)
        return True

    def _stands_on_a_fire(self, thing: int) -> bool:
        """Whether a thing is in a pan or pot, was heated, or is nothing but fat."""
        pot = self.pots[thing]
        if pot.is_baked:
            return False
        if pot.has_fire or (pot.vessel and kind_of(pot.vessel) in ("pot", "pan")):
            return True
        inside = [taking for taking in self.takings if taking.thing == thing]
        return bool(inside) and all(self.roles[taking.use.ingredient] == "fat" for taking in inside)

    def _starts(self, deed: Deed, fresh: list[Use]) -> bool:
        """Beating eggs, melting butter: one food alone that begins a thing of its own."""
        if not fresh:
            return False
        role = self.roles[fresh[0].ingredient]
        return (deed == "beat" and role in ("egg", "milk")) or deed in ("melt", "mash", "blend", "cream")

    def _names_new_vessel(self, action: Action) -> bool:
        if action.vessel is None:
            return False
        if is_place(action.vessel):
            return False
        word = head(action.vessel)
        another = bool(words("another") & set(action.vessel.lower().split()))
        own_pot = action.does in POT_OF_ITS_OWN and bool(action.uses) and word not in self.vessels
        return another or own_pot or self._vessel(word) is None

    def _in_vessel(self, action: Action) -> int | None:
        if action.vessel is None or self._names_new_vessel(action):
            return None
        thing = self._vessel(head(action.vessel))
        return self._top(thing) if thing is not None else None

    def _vessel(self, word: str) -> int | None:
        """What stands in the vessel called so, or in one of its kind where the recipe changes its word."""
        if word in self.vessels:
            return self.vessels[word]
        if word in words("any pot"):
            same = [thing for known, thing in self.vessels.items() if kind_of(known) in ("pot", "pan")]
            return same[-1] if same else None
        return None

    def _by_name(self, name: str) -> int | None:
        """The thing with this name: the youngest that is called so, or that holds what is called so."""
        said = set(name.lower().split())
        for pot in reversed(self.pots):
            if name in pot.names:
                return self._top(pot.index)
        for taking in reversed(self.takings):
            if said & set(self.recipe.ingredients[taking.use.ingredient].name.split()):
                return self._top(taking.thing)
        for pot in reversed(self.pots):
            if any(said & set(known.split()) - words("anything") for known in pot.names):
                return self._top(pot.index)
        roles = roles_called(name.lower())
        for taking in reversed(self.takings):
            if self.roles[taking.use.ingredient] in roles:
                return self._top(taking.thing)
        if said & words("cooking"):
            return next((self._top(pot.index) for pot in reversed(self.pots) if pot.has_fire), None)
        return self.hand if said & words("anything") else None

    def _known(self, action: Action) -> int | None:
        targets = [thing for name in action.things if (thing := self._by_name(name)) is not None]
        vessel = self._in_vessel(action)
        return targets[0] if targets else vessel if vessel is not None else self.hand

    def _meet(self, action: Action, fresh: list[Use], targets: list[int]) -> int:
        """The thing that comes of it."""
        if not targets:
            thing = self._open(action)
        else:
            thing = targets[0]
            if self._names_new_vessel(action) and action.does in MIXING | LAYING | FIRE and not fresh:
                self._call(thing, action)
            for other in targets[1:]:
                self._put_into(other, thing, action)
        self._call(thing, action)
        self.hand = thing
        return thing

    def _open(self, action: Action) -> int:
        pot = _Pot(index=len(self.pots))
        self.pots.append(pot)
        self.hand = pot.index
        self._call(pot.index, action)
        return pot.index

    def _call(self, thing: int, action: Action) -> None:
        pot = self.pots[thing]
        if action.vessel is not None and not is_place(action.vessel):
            pot.vessel = action.vessel
            self.vessels[head(action.vessel)] = thing
        for name in (action.makes, *action.things):
            if name and name not in pot.names and not set(name.split()) <= words("anything"):
                pot.names.append(name)

    def _put_into(self, other: int, thing: int, action: Action) -> None:
        if other == thing or self.pots[other].into is not None or self._top(thing) == other:
            return
        self.pots[other].into = thing
        self.pots[other].mixed_in = action.does not in LAYING
        self.pots[thing].holds.append(other)
        if action.does in ("pour", "add", "spread") and self.pots[thing].has_fire:
            self.pots[thing].poured_over = True

    def _top(self, thing: int) -> int:
        seen = set()
        while (into := self.pots[thing].into) is not None and thing not in seen:
            seen.add(thing)
            thing = into
        return thing

    def _take(self, fresh: list[Use], step: int, action: Action, thing: int, *, laid: bool) -> None:
        beside = tuple(use.ingredient for use in fresh)
        pot = self.pots[thing]
        for use in fresh:
            index = use.ingredient
            self.left[index] = max(0.0, self.left.get(index, 1.0) - use.share)
            if self.left[index] < 1e-6:
                self.left[index] = 0.0
            self.takings.append(
                Raw(use, self.at, step, action, thing, pot.vessel, pot.spell, pot.cooked, beside, laid)
            )
            self.where[index] = thing

    def _happen(self, thing: int | None, step: int, action: Action) -> None:
        if thing is None:
            return
        pot = self.pots[thing]
        minutes = action.minutes
        pot.events.append(
            Event(
                at=self.at,
                step=step,
                does=action.does,
                word=action.word,
                minutes_low=minutes.low_min if minutes else 0.0,
                minutes_high=minutes.high_min if minutes else 0.0,
                vessel=action.vessel,
                ahead=action.ahead,
            )
        )
        if parts(action.does, action.word):
            pot.spell += 1
            pot.cooked += 1
        elif action.does in WAITING:
            pot.spell += 1


def _as_one(step: Step) -> tuple[Action, ...]:
    """A step whose deeds could not be read: everything that it uses is added."""
    if not step.uses:
        return ()
    return (Action(does="add", word="add", uses=tuple(Use(ingredient=index) for index in step.uses)),)
