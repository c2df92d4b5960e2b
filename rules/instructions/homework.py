"""What of the method was done at home already, and what of it is left for camp."""

from __future__ import annotations

from functools import cached_property

from rules.instructions.own import Sentence
from rules.instructions.words import deed_words, joined, sentence
from rules.method import Graph, Taking
from rules.method.graph import FIRE, HANDWORK, parts
from rules.method.words import kind_of
from rules.packs import Contents
from rules.plan import Pack
from rules.recipe import Action, Deed, Recipe
from rules.roles import Role, role_of

#: Bundles that are finished at home: nothing of their making is told at camp.
FINISHED = frozenset({"dough", "mix", "creamed", "preserve"})
#: Deeds that say nothing at camp: the coals do the preheating, the pot needs no lining by a step.
UNTOLD: frozenset[Deed] = frozenset({"preheat", "line", "can", "store", "freeze", "thaw"})
#: Foods that are still cut at camp.
CUT_AT_CAMP: frozenset[Role] = frozenset(
    {
        "vegetable",
        "fruit",
        "herb",
        "greens",
        "cheese",
        "bread",
        "meat",
        "fish",
        "cured meat",
        "tofu",
        "can",
        "dough",
        "egg",
        "boiled egg",
    }
)
#: Deeds that follow on what was made at home and are done at camp.
SHAPING: frozenset[Deed] = frozenset(
    {"shape", "roll", "fill", "layer", "top", "spread", "line", "cover", "turn", "pour"}
)
WAITING: frozenset[Deed] = frozenset({"rest", "cool", "chill"})
LONG_WAITS: frozenset[Deed] = frozenset({"marinate", "rise", "soak", "freeze", "store"})
#: What is done around something that waits.
AROUND: frozenset[Deed] = frozenset({"cover", "turn"})
#: Vessels of the fire: what goes into them goes there at camp.
BAKED_IN = frozenset({"pot", "pan", "tin"})


class HomeWork:
    """Tells for every action of the method whether the kitchen has done it."""

    def __init__(
        self,
        recipe: Recipe,
        graph: Graph,
        packs: tuple[Pack, ...],
        inside: Contents,
        takings: dict[int, list[Taking]],
    ) -> None:
        self.recipe = recipe
        self.graph = graph
        self.packs = packs
        self.inside = inside
        self.takings = takings
        self._done: dict[int, bool] = {}
        self._kitchen: dict[int, bool] = {}

    def is_over(self, found: Sentence) -> bool:
        """Whether nothing of a sentence is left for camp: it preheats, or it was mixed, cut or soaked at home."""
        over = self.over(found)
        left = [(at, action) for at, action in found.actions if at not in over]
        if any(self.takings.get(at) for at, _ in left):
            return False
        waits = bool(over) and all(action.does in WAITING for _, action in left)
        quiet = all(action.does in WAITING | AROUND for _, action in left)
        return not left or waits or (quiet and bool(self._waited(found)))

    def over(self, found: Sentence) -> frozenset[int]:
        """The actions of a sentence that were done at home, with all that was done before a wait there."""
        waited = max(self._waited(found), default=-1)
        done: set[int] = set()
        cut_next = False
        for at, action in reversed(found.actions):
            bare = action.does in HANDWORK and not action.uses
            over = (cut_next and bare) or self._is_kitchen_work(at, action)
            if over or (at < waited and all(self.is_done(taking) for taking in self.takings.get(at, []))):
                done.add(at)
            # "Peel, core and slice the apples": what is sliced at home is peeled there.
            cut_next = over and action.does in HANDWORK
        return frozenset(done)

    def _waited(self, found: Sentence) -> list[int]:
        """The actions of a sentence that let something wait at home."""
        return [
            at
            for at, action in found.actions
            if action.ahead or (action.does in WAITING | LONG_WAITS and self.was_done(at))
        ]

    def is_done(self, taking: Taking) -> bool:
        """Whether this was done at home: the dough made, the meat marinated."""
        pack = self.inside.pack(taking.ingredient, taking.at)
        if pack is None:
            return False
        sort = self.inside.sort(pack)
        return sort in FINISHED or (sort == "flesh" and taking.marinade and len(pack.items) > 1)

    def was_done(self, at: int) -> bool:
        """Whether what this action works on was finished at home, up to here."""
        if at not in self._done:
            self._done[at] = self._is_finished(at)
        return self._done[at]

    def _is_finished(self, at: int) -> bool:
        thing = next(iter(self.graph.worked(at)), None)
        if thing is None:
            return False
        fire = any(event.does in FIRE for event in self.graph.things[thing].events if event.at == at)
        inside = [taking for taking in self.graph.inside(thing) if taking.at <= at]
        return bool(inside) and not fire and all(self.is_done(taking) for taking in inside)

    def handwork(self, action: Action) -> str:
        """Cutting and draining that is left for camp."""
        left = []
        for use in action.uses:
            pack = self.inside.pack(use.ingredient)
            role = role_of(self.recipe.ingredients[use.ingredient])
            if pack is not None and pack.kind in ("fresh", "pantry") and role in CUT_AT_CAMP:
                left.append(self.recipe.ingredients[use.ingredient].name)
        words = deed_words().get(action.does)
        if left and words:
            return sentence(words.opening.format(what=f"the {joined(left)}"))
        if words and words.bare and not action.uses and not action.things:
            return sentence(words.bare)
        return ""

    def pack_id(self, taking: Taking) -> str | None:
        """The pack that a taking comes from."""
        pack = self.inside.pack(taking.ingredient, taking.at)
        return pack.id if pack else None

    def _is_kitchen_work(self, at: int, action: Action) -> bool:
        """Whether an action is the kitchen's and nothing is left of it at camp."""
        if at not in self._kitchen:
            self._kitchen[at] = self._is_home_work(at, action)
        return self._kitchen[at]

    def _is_home_work(self, at: int, action: Action) -> bool:
        takings = self.takings.get(at, [])
        if action.ahead or (action.does in UNTOLD and not action.things):
            return True
        if action.does in HANDWORK:
            return bool(action.uses or not self.graph.worked(at)) and not self.handwork(action)
        if kind_of(action.vessel or "") in BAKED_IN:
            return bool(takings) and all(self.is_done(taking) for taking in takings)
        if action.does in FIRE or parts(action.does, action.word):
            return bool(takings) and all(self.is_done(taking) for taking in takings)
        if not takings:
            return action.does not in SHAPING and self.was_done(at)
        return all(self.is_done(taking) for taking in takings) or self._is_mixed_at_home(at, takings)

    def _is_mixed_at_home(self, at: int, takings: list[Taking]) -> bool:
        """Whether all that is in the bowl by now came out of one bag that was mixed at home."""
        before = (taking for taking in self.inside_of(takings[0].thing) if taking.at < at)
        packs = {self.pack_id(taking) for taking in (*before, *takings)}
        return len(packs) == 1 and packs <= self._mixed

    def inside_of(self, thing: int) -> list[Taking]:
        """All that goes into one thing, what is guessed included."""
        return self._inside.get(thing, [])

    @cached_property
    def _inside(self) -> dict[int, list[Taking]]:
        found: dict[int, list[Taking]] = {}
        for takings in self.takings.values():
            for taking in takings:
                found.setdefault(taking.thing, []).append(taking)
        return found

    @cached_property
    def _mixed(self) -> frozenset[str]:
        """Packs that were mixed at home of several foods."""
        mixes = (pack for pack in self.packs if pack.kind in ("dry mix", "wet mix") and len(pack.items) > 1)
        return frozenset(pack.id for pack in mixes)
