"""Following the method from action to action: which foods meet in which thing.

The reader gives typed actions; here their pronouns are settled. A named thing ("the batter") is looked for among the
things so far; a vessel named before means what stands in it; an ingredient already taken means the thing that it went
into; else the deed goes on with the thing at hand. A step without actions counts as one adding of all that it uses.
"""

from __future__ import annotations

import re
from functools import lru_cache
from itertools import islice

from msgspec.structs import replace

from rules.method.actions import actions_of
from rules.method.bench import Bench
from rules.method.graph import HANDWORK, LAYING, MIXING, STOVE, WARMING, Event, Graph, parts
from rules.method.settle import FLESH, Raw, settle
from rules.method.unsaid import Doing, guesses
from rules.method.words import kind_of, words
from rules.recipe import Action, Deed, Recipe, Use
from rules.roles import POURED_AGAIN, role_of

#: Deeds that open a thing of their own when they name foods and no thing.
OPENING: frozenset[Deed] = frozenset({"mix", "beat", "cream", "cut in", "mash", "blend", "melt"})
#: Deeds that a fat is heated for.
FRYING: frozenset[Deed] = frozenset({"saute", "fry", "brown", "deep fry", "griddle", "heat", "bake", "roast"})
#: Deeds that set a fresh pot on the fire when they name foods and a pot.
POT_OF_ITS_OWN: frozenset[Deed] = frozenset({"boil", "steam", "melt", "heat", "deep fry"})
#: Deeds whose thing goes over or into another.
RECEIVING: frozenset[Deed] = frozenset({"pour", "add", "spread", "top"})
#: Deeds of one thing over or into another.
GOES_OVER: frozenset[Deed] = frozenset({"pour", "spread", "top"})
#: Deeds that are done around a thing and change nothing in it.
AROUND: frozenset[Deed] = frozenset({"preheat", "line", "turn", "cover", "can"})
#: Actions that are followed: a banquet has two hundred; a text with more than this is no recipe, and its foods stand
#: where their nature puts them.
MOST_ACTIONS = 1500
SEVERAL = 2
LITTLE = 1e-6


def graph(recipe: Recipe) -> Graph:
    """The method graph of a recipe; without a method it is empty."""
    return _graph(replace(recipe, family="other"))


@lru_cache(maxsize=4)  # the reader asks for the family's sake, then the plan
def _graph(recipe: Recipe) -> Graph:
    follower = _Follower(recipe)
    follower.follow()
    things = tuple(pot.thing() for pot in follower.bench.pots)
    raws = [*follower.takings, *guesses(recipe, follower.roles, follower.takings, follower.doings)]
    settled = settle(raws, things, follower.roles)
    return Graph(
        takings=tuple(taking for taking in settled if not taking.guessed),
        guesses=tuple(taking for taking in settled if taking.guessed),
        things=things,
        handwork=tuple(follower.handwork),
        deeds=tuple(follower.deeds.items()),
    )


class _Follower:
    """Walks through the actions."""

    def __init__(self, recipe: Recipe) -> None:
        self.recipe = recipe
        self.roles = [role_of(ingredient) for ingredient in recipe.ingredients]
        self.bench = Bench()
        self.takings: list[Raw] = []
        self.doings: list[Doing] = []
        self.handwork: dict[tuple[int, Deed], None] = {}
        self.deeds: dict[Deed, int] = {}
        self.where: dict[int, int] = {}
        self.left: dict[int, float] = {}
        #: the parts of the dish that stand in each thing
        self.parts: dict[int, set[str | None]] = {}
        #: what was taken up to be used by the next deed ("take two ounces more and stir them in")
        self.held: list[Use] = []
        self.at = -1
        self.names: dict[str, list[int]] = {}
        self.components: dict[frozenset[str], list[int]] = {}
        for index, ingredient in enumerate(recipe.ingredients):
            part = frozenset((ingredient.component or "").lower().split()) - words("no part")
            if part:
                self.components.setdefault(part, []).append(index)
            for word in set(ingredient.name.split()):
                self.names.setdefault(word, []).append(index)

    def follow(self) -> None:
        """Every action of every step."""
        for at, step, action in islice(actions_of(self.recipe), MOST_ACTIONS):
            self.at = at
            self._act(step, action)
        self.bench.gather_orphans(self.parts)

    def _act(self, step: int, action: Action) -> None:
        deed = action.does
        self.deeds[deed] = self.deeds.get(deed, 0) + 1
        if deed in HANDWORK:
            self._handle(step, action)
        elif deed == "cover" and any(self.roles[use.ingredient] != "fat" for use in action.uses):
            # "Cover with lemon slices": no lid, but food that is laid on.
            self._work(step, replace(action, does="top"))
        elif deed in AROUND:
            self._happen(self._known(action), step, action)
        elif deed == "other" and not parts(deed, action.word):
            self._take_up(step, action)
        else:
            self._work(step, action)

    def _work(self, step: int, action: Action) -> None:
        """Putting together, cooking, laying, waiting."""
        if words("well") & set(action.word.split()):
            self._make_a_well(step, action)
            return
        fresh, again = self._split(action)
        if action.does == "soak" and not again and {self.roles[use.ingredient] for use in fresh} == {"water"}:
            self._soak_apart(fresh, step, action)
            return
        targets = self._targets(action, fresh, again)
        if action.does == "grease":
            self._grease(fresh, step, action)
            return
        if not fresh and not targets:
            self._happen(self._set_out(action), step, action)
            return
        hand = self.bench.hand
        thing = self._meet(action, targets)
        if not targets and (self._goes_over(action, hand) or self._fries_it(action, fresh, hand)):
            # "Pour over the chicken in a bag", "brown it in the oil": what is at hand goes to what is taken.
            self.bench.put_into(hand, thing, action, self.at)  # type: ignore[arg-type]
        # What a fire deed does, it does to what it takes too: the event comes after the takings.
        laid = _lies(action.does, fresh, targets) or (
            bool(targets) and action.does in ("add", "pour", "roll") and self.bench.pots[thing].is_formed
        )
        self._take(fresh, step, action, thing, laid=laid)
        self._happen(thing, step, action)

    def _fries_it(self, action: Action, fresh: list[Use], hand: int | None) -> bool:
        """Whether what was tossed or coated is fried in fresh fat: "brown it in the oil"."""
        if hand is None or action.does not in STOVE or self.bench.pots[hand].has_fire:
            return False
        it = re.search(rf"\b{re.escape(action.word)} (?:it|them)\b", action.says or "", re.IGNORECASE)
        return it is not None and all(self.roles[use.ingredient] == "fat" for use in fresh)

    def _soak_apart(self, fresh: list[Use], step: int, action: Action) -> None:
        """Water for skewers or paper: it is for them alone, and what was at hand stays so."""
        hand = self.bench.hand
        thing = self.bench.open(replace(action, things=(), makes=None))
        self._take(fresh, step, action, thing, laid=False)
        self._happen(thing, step, action)
        self.bench.hand = hand

    def _goes_over(self, action: Action, hand: int | None) -> bool:
        """Whether the mixture at hand is poured over foods that the action takes."""
        over = action.does == "pour" and "over" in action.word.split()
        return over and hand is not None and bool(self.bench.pots[hand].inside)

    def _make_a_well(self, step: int, action: Action) -> None:
        """A well is made in the flour; what was mixed by itself just before goes into it."""
        hand, flour = self.bench.hand, self.bench.by_name("flour")
        if flour is None or self.bench.pots[flour].has_fire:
            self._happen(hand, step, action)
            return
        if hand is not None and hand != flour and not self.bench.pots[hand].has_fire:
            self.bench.put_into(hand, flour, action, self.at)
        self.bench.hand = flour
        self._happen(flour, step, action)

    def _grease(self, fresh: list[Use], step: int, action: Action) -> None:
        """Fat in a pot on the fire stays there for what follows; in a tin it is only grease."""
        hand = self.bench.hand
        stove = kind_of(action.vessel or "") in ("pot", "pan")
        if stove and self._is_new(action):
            hand = self.bench.open(action)
            self._take(fresh, step, action, hand, laid=False)
            return
        self._take(fresh, step, action, self.bench.open(action), laid=True)
        self.bench.hand = hand

    def _take_up(self, step: int, action: Action) -> None:
        """Taking up, removing, checking: what is new is held for the next deed."""
        self.held = [use for use in action.uses if self.left.get(use.ingredient, 1.0) > 0]
        if not self.held:
            self._happen(self._known(action), step, action)

    def _set_out(self, action: Action) -> int | None:
        """A pot set on the fire with nothing in it yet; any other new vessel takes what is at hand."""
        hand = self.bench.hand
        if action.does == "serve" or not self._is_new(action):
            return hand
        moving = words("moving") & set(action.word.split())
        empty = kind_of(action.vessel or "") in ("pot", "pan") and not moving
        if hand is None or (empty and action.does in MIXING | WARMING | STOVE):
            return self.bench.open(action)
        self.bench.call(hand, action)
        return hand

    def _handle(self, step: int, action: Action) -> None:
        """Handwork is kept with the food; cutting what is at hand happens to the thing."""
        for use in action.uses:
            self.handwork[(use.ingredient, action.does)] = None
        for name in action.things:
            self.handwork.update(dict.fromkeys((index, action.does) for index in self._called(name)))
        if not action.uses:
            self._happen(self._known(action), step, action)

    def _called(self, name: str) -> list[int]:
        """The ingredients already taken whose name holds all these words."""
        said = name.lower().split()
        sets = [set(self.names.get(word, ())) for word in said]
        return sorted(set.intersection(*sets) & self.where.keys()) if sets else []

    def _split(self, action: Action) -> tuple[list[Use], list[int]]:
        """The uses that take something new, and the ingredients that are spoken of again."""
        fresh: list[Use] = []
        again: list[int] = []
        held = {use.ingredient for use in self.held}
        uses = [*self.held, *(use for use in action.uses if use.ingredient not in held)]
        uses += self._fat_again(action)
        uses += self._whole_part(action)
        self.held = []
        for use in uses:
            index = use.ingredient
            if not 0 <= index < len(self.roles):
                continue
            again_poured = self.roles[index] in POURED_AGAIN and self._elsewhere(index, action)
            if self.left.get(index, 1.0) > 0 or again_poured:
                fresh.append(use)
            else:
                again.append(index)
        return fresh, again

    def _whole_part(self, action: Action) -> list[Use]:
        """A part of the dish that is spoken of as one ("stir the glaze together"), nothing of it taken yet."""
        if action.uses or action.does not in MIXING | LAYING:
            return []
        said = {word for name in (*action.things, action.makes or "") for word in name.lower().split()}
        return [
            Use(ingredient=index)
            for part, members in self.components.items()
            if said & part and not any(index in self.left for index in members)
            for index in members
        ]

    def _fat_again(self, action: Action) -> list[Use]:
        """A fat that is only spoken of, but heated in another pan than before: it is poured again."""
        if action.does not in FRYING:
            return []
        spoken = {word for name in action.things for word in name.split()} & words("fat")
        vessel = None if self._is_new(action) else self.bench.in_vessel(action)
        thing = vessel if vessel is not None else None if self._is_new(action) else self.bench.hand
        return [
            Use(ingredient=index)
            for word in spoken
            for index in self.names.get(word, ())
            if self.roles[index] == "fat" and index in self.where and self.where[index] != thing
        ]

    def _elsewhere(self, index: int, action: Action) -> bool:
        """Whether a food that is poured more than once is poured again, and not just spoken of."""
        pours = action.does in MIXING | LAYING | WARMING | {"grease", "saute", "fry", "brown"}
        here = self.where.get(index) == self.bench.hand and action.does in STOVE | WARMING
        return pours and (not here or self._is_new(action))

    def _targets(self, action: Action, fresh: list[Use], again: list[int]) -> list[int]:
        """The things that the action works on, the one that the others go into first."""
        found: list[int] = []
        if not self._is_new(action) and (vessel := self.bench.in_vessel(action)) is not None:
            found.append(vessel)
        opens = action.does in OPENING and len(fresh) >= SEVERAL
        found += [
            thing for name in action.things if (thing := self.bench.by_name(name, surely=opens)) is not None
        ]
        if opens:
            found = [thing for thing in found if not self._is_other_part(fresh, thing)]
        found += [self.bench.top(self.where[index]) for index in again if index in self.where]
        if not found and self.bench.hand is not None and self._goes_on(action, fresh, self.bench.hand):
            found.append(self.bench.hand)
        return self._received(list(dict.fromkeys(found)), fresh, action)

    def _received(self, found: list[int], fresh: list[Use], action: Action) -> list[int]:
        """The thing that receives stands first, where one goes over another."""
        hand = self.bench.hand
        if (
            action.does in STOVE
            and found
            and hand is not None
            and hand not in found
            and self.bench.pots[hand].is_hot_fat
        ):
            # "Heat the oil. Brown the beef": the beef that was tossed in flour goes into the oil.
            return [hand, *found]
        if action.does in MIXING and "in" in action.word.split() and hand is not None and hand not in found:
            # "Stir in the macaroni": what was cooked before goes into what is at hand.
            return [hand, *found] if found else found
        if action.does not in RECEIVING or not found:
            return found
        before = self.bench.top(self.bench.before) if self.bench.before is not None else None
        if (
            found == [hand]
            and not fresh
            and not action.things
            and action.does in GOES_OVER
            and action.vessel is None
        ):
            # "Mix the crumbs with the butter. Scatter over the top": over what was made before.
            return [before, *found] if before is not None and before != hand else found
        if (
            len(found) == 1
            and fresh
            and hand is not None
            and hand not in found
            and self._goes_into(found[0], hand)
        ):
            # "Add the chicken and the cream": to the sauce on the fire.
            return [hand, *found]
        if len(found) > 1 and (
            self.bench.pots[found[-1]].is_hot_fat or (action.does in GOES_OVER and not fresh)
        ):
            # "Pour the batter over the hot butter": what is named last receives.
            return [found[-1], *found[:-1]]
        if (
            len(found) == 1
            and not fresh
            and hand is not None
            and hand != found[0]
            and self.bench.pots[found[0]].is_greased
        ):
            # "Spread it in the dish": the dish that was only greased.
            return [found[0], self.bench.top(hand)]
        if len(found) == 1 and not fresh and action.vessel is None and hand not in (None, found[0]):
            # "Spoon the peaches over the top": on what is at hand.
            return [self.bench.top(hand), found[0]]
        return found

    def _goes_into(self, thing: int, hand: int) -> bool:
        """Whether a thing that was spoken of goes into what stands on the fire, and not the other way round."""
        inside = set(self.bench.pots[thing].inside)
        on_fire = self.bench.pots[hand].has_fire and not self.bench.pots[hand].is_baked
        return on_fire and bool(inside & FLESH)

    def _goes_on(self, action: Action, fresh: list[Use], hand: int) -> bool:
        """Whether the action goes on with the thing at hand."""
        if self._is_new(action):
            return False
        deed = action.does
        mixes = deed in MIXING - {"add", "pour", "season"}
        if mixes and len(fresh) >= SEVERAL and self._is_other_part(fresh, hand):
            return False
        if deed in OPENING:
            if words("joining") & set(action.word.split()):
                return True
            return len(fresh) < SEVERAL and not self._starts(deed, fresh)
        if deed in WARMING | STOVE and fresh:
            return self._stands_on_a_fire(hand)
        return True

    def _is_other_part(self, fresh: list[Use], hand: int) -> bool:
        """Whether all of it belongs to a part of the dish that nothing at hand belongs to."""
        part = {self.recipe.ingredients[use.ingredient].component for use in fresh}
        return len(part) == 1 and not part & self.parts.get(hand, set(part))

    def _stands_on_a_fire(self, thing: int) -> bool:
        """Whether a thing is in a pan or pot, was heated, or is nothing but fat."""
        pot = self.bench.pots[thing]
        if pot.is_baked:
            return False
        on_stove = pot.has_fire or kind_of(pot.vessel or "") in ("pot", "pan")
        return on_stove or (bool(pot.inside) and set(pot.inside) == {"fat"})

    def _starts(self, deed: Deed, fresh: list[Use]) -> bool:
        """Beating eggs, melting butter: one food alone that begins a thing of its own."""
        if not fresh:
            return False
        role = self.roles[fresh[0].ingredient]
        return (deed == "beat" and role in ("egg", "milk")) or deed in ("melt", "mash", "blend", "cream")

    def _is_new(self, action: Action) -> bool:
        own_pot = action.does in POT_OF_ITS_OWN and bool(action.uses)
        hand = self.bench.hand
        if action.does in ("add", "pour", "fold") and action.vessel == "bowl" and hand is not None:
            # "Add it to the bowl": the one that the mixture at hand stands in, named or not.
            return False
        opens = action.does in OPENING and len(action.uses) >= SEVERAL
        return self.bench.is_new_vessel(action, own_pot=own_pot, opens=opens)

    def _known(self, action: Action) -> int | None:
        """The thing that an action without foods speaks of."""
        named = [thing for name in action.things if (thing := self.bench.by_name(name)) is not None]
        if named:
            return named[0]
        vessel = None if self._is_new(action) else self.bench.in_vessel(action)
        return vessel if vessel is not None else self.bench.hand

    def _meet(self, action: Action, targets: list[int]) -> int:
        """The thing that comes of it."""
        if not targets:
            return self.bench.open(action)
        thing = targets[0]
        for other in targets[1:]:
            self.bench.put_into(other, thing, action, self.at)
        self.bench.call(thing, action)
        self.bench.hand = thing
        return thing

    def _take(self, fresh: list[Use], step: int, action: Action, thing: int, *, laid: bool) -> None:
        beside = tuple(use.ingredient for use in fresh)
        pot = self.bench.pots[thing]
        for use in fresh:
            index = use.ingredient
            left = self.left.get(index, 1.0) - use.share
            self.left[index] = left if left > LITTLE else 0.0
            self.takings.append(
                Raw(use, self.at, step, action, thing, pot.vessel, pot.spell, pot.cooked, beside, laid)
            )
            self.bench.put_food(thing, self.recipe.ingredients[index].name, self.roles[index])
            self.where[index] = thing
            if not laid:
                self.parts.setdefault(thing, set()).add(self.recipe.ingredients[index].component)

    def _happen(self, thing: int | None, step: int, action: Action) -> None:
        minutes = action.minutes
        event = Event(
            at=self.at,
            step=step,
            does=action.does,
            word=action.word,
            minutes_low=minutes.low_min if minutes else 0.0,
            minutes_high=minutes.high_min if minutes else 0.0,
            vessel=action.vessel,
            ahead=action.ahead,
        )
        if thing is not None:
            pot = self.bench.pots[thing]
            self.doings.append(Doing(self.at, step, action, thing, pot.vessel, pot.spell, pot.cooked))
        self.bench.happen(thing, event)


def _lies(deed: Deed, fresh: list[Use], targets: list[int]) -> bool:
    return deed in LAYING - {"shape", "roll"} and bool(fresh) and (bool(targets) or deed == "serve")
