"""What is done at camp: the method walked through again, with packs in place of measuring and coals in place of ovens.

What was done at home is left out. A pack that was mixed at home is opened once, by its id, at the moment when its
flour (or what else gives it body) enters; what comes as it is, is named with its amount. Baking, frying and simmering
carry the briquettes of their stage.
"""

from __future__ import annotations

from collections.abc import Iterable

from rules.because import Ledger
from rules.circumstances import Day
from rules.instructions.homework import UNTOLD, HomeWork
from rules.instructions.own import Sentence, at_camp, in_steps, paragraphs
from rules.instructions.rest import place_the_rest, plain_method
from rules.instructions.saying import with_foods, without_foods
from rules.instructions.telling import Coals, clean
from rules.instructions.words import amount_of, called, joined, sentence, with_state
from rules.method import Graph, Taking
from rules.method.graph import FIRE, HANDWORK, parts
from rules.method.words import kind_of
from rules.packs import Contents
from rules.plan import FatUse, Heat, Pack
from rules.recipe import Action, Family, Recipe
from rules.roles import BODY, Role, role_of

#: Bundles of one food that comes as it is and may be used more than once.
AS_IT_COMES = frozenset({"alone", "fat", "water"})
RAW: frozenset[Role] = frozenset({"meat", "fish"})


class Camp:
    """Writes the camp steps, one a step of the recipe."""

    def __init__(
        self,
        recipe: Recipe,
        graph: Graph,
        packs: tuple[Pack, ...],
        inside: Contents,
        fat: tuple[FatUse, ...],
        heat: Heat | None,
        day: Day,
    ) -> None:
        self.recipe = recipe
        self.graph = graph
        self.packs = packs
        self.inside = inside
        self.day = day
        self.coals = Coals(heat)
        self.opened: set[str] = set()
        self.washed = False
        self.takings: dict[int, list[Taking]] = {}
        for taking in (*graph.takings, *graph.guesses):
            self.takings.setdefault(taking.at, []).append(taking)
        self.home = HomeWork(recipe, graph, packs, inside, self.takings)
        self.opens = self._openings()
        self.hot_fat = frozenset(use.ingredient for use in fat if use.goes == "hot pot first")

    def steps(self, family: Family, ledger: Ledger) -> tuple[str, ...]:
        """All camp steps."""
        told = [
            (step, cooks)
            for sentences in paragraphs(self.recipe)
            for cooks in [self._cooks(sentences)]
            for step in in_steps(clean(self._paragraph(sentences)))
        ]
        rest = self._unopened()
        if not told:
            fat = [self._called(pack) for pack in rest if self._is_fat(pack)]
            food = [self._called(pack) for pack in rest if not self._is_fat(pack)]
            steps = plain_method(family, food, fat, ledger)
        else:
            hot = [self._called(pack) for pack in rest if self._is_hot_fat(pack)]
            maybe = [self._called(pack) for pack in rest if self._is_optional(pack)]
            wanted = [called for pack in rest if (called := self._called(pack)) not in {*hot, *maybe}]
            steps = place_the_rest(told, wanted, maybe, hot)
        return (*self.coals.lighting(), *steps, *self.coals.doneness())

    def _paragraph(self, sentences: list[Sentence]) -> list[str]:
        """One step of the recipe: what is taken from the packs, then its own sentences, or ours where it has none."""
        own = [found for found in sentences if found.says is not None]
        if not own:
            return [self._tell(at, action) for found in sentences for at, action in found.actions]
        said: list[str] = []
        for found in own:
            if self.home.is_over(found):
                continue
            if self._melts_first(found):
                said.append(self._melted(found))
                continue
            taken, raw = self._taken(found)
            take = sentence(f"take {joined(taken)}") if taken else ""
            coals = self.coals.now(action for _, action in found.actions)
            does = sentence(at_camp(found.says or "")) + self._washing(raw)
            said.append(" ".join(part for part in (take, coals, does) if part))
        return said

    def _taken(self, found: Sentence) -> tuple[list[str], bool]:
        """What a sentence needs from the packs, in words, each pack once; and whether raw flesh is among it."""
        told: list[str] = []
        raw = False
        for at, _ in found.actions:
            foods, is_raw = self._foods(at, [*self._skipped(at), *self.takings.get(at, [])], again=False)
            told += foods
            raw = raw or is_raw
        return told, raw

    def _skipped(self, at: int) -> list[Taking]:
        """Takings of sentences that were done at home whose thing is at work now."""
        here = self._at_work(at)
        return [
            taking
            for thing in sorted(here)
            for taking in self.home.inside_of(thing)
            if taking.at < at and self.home.pack_id(taking) not in self.opened
        ]

    def _at_work(self, at: int) -> set[int]:
        """The things that an action works on, with all that has been joined into them by then."""
        here = set(self._things_at(at))
        grown = True
        while grown:
            joined_in = {
                number
                for number, thing in enumerate(self.graph.things)
                if thing.into in here and thing.joined_at is not None and thing.joined_at <= at
            }
            grown = not joined_in <= here
            here |= joined_in
        return here

    def _melts_first(self, found: Sentence) -> bool:
        """Whether a sentence does nothing but bring the fat into the hot pot before a batter."""
        takings = [taking for at, _ in found.actions for taking in self.takings.get(at, [])]
        return bool(takings) and all(taking.ingredient in self.hot_fat for taking in takings)

    def _melted(self, found: Sentence) -> str:
        takings = [taking for at, _ in found.actions for taking in self.takings.get(at, [])]
        fats = [
            self._as_it_comes(pack, taking)
            for taking in takings
            if (pack := self.inside.pack(taking.ingredient, taking.at)) is not None
        ]
        return sentence(f"put {joined(fats)} into the hot pot and shut the lid until it sizzles")

    def _cooks(self, sentences: list[Sentence]) -> bool:
        return any(
            action.does in FIRE or parts(action.does, action.word)
            for found in sentences
            if not self.home.is_over(found)
            for _, action in found.actions
        )

    def _openings(self) -> dict[str, int]:
        """For each pack the action at which it is opened: where its body enters, else where its first food does."""
        first: dict[str, int] = {}
        leavener: dict[str, int] = {}
        body: dict[str, int] = {}
        for at in sorted(self.takings):
            for taking in self.takings[at]:
                pack = self.inside.pack(taking.ingredient, at)
                if pack is None:
                    continue
                first.setdefault(pack.id, at)
                role = role_of(self.recipe.ingredients[taking.ingredient])
                if role in BODY:
                    (leavener if role == "leavener" else body).setdefault(pack.id, at)
        return first | leavener | body

    def _tell(self, at: int, action: Action) -> str:
        """One action in a sentence; empty when it was done at home or says nothing at camp."""
        takings = self.takings.get(at, [])
        if action.does in UNTOLD:
            return ""
        if action.does in HANDWORK:
            return self.home.handwork(action)
        if takings and all(self.home.is_done(taking) for taking in takings):
            return ""
        if not takings and self.home.was_done(at):
            return ""
        foods, raw = self._foods(at, takings)
        if takings and foods and all(taking.ingredient in self.hot_fat for taking in takings):
            told = f"put {joined(foods)} into the hot pot and shut the lid until it sizzles"
        elif not foods:
            skipped = bool(takings) and action.does not in FIRE and not parts(action.does, action.word)
            told = "" if skipped else without_foods(action, empty=self._has_no_food(at))
        else:
            told = with_foods(
                action,
                foods,
                first=self._is_first(at, takings),
                hot=bool(takings)
                and (takings[0].hot or kind_of(takings[0].vessel or "") in ("pot", "pan", "tin")),
                laid=bool(takings) and takings[0].laid,
                fats=all(role_of(self.recipe.ingredients[taking.ingredient]) == "fat" for taking in takings),
            )
        return sentence(self.coals.before(action) + told) + self._washing(raw) if told else ""

    def _has_no_food(self, at: int) -> bool:
        """Whether what the action works on holds nothing yet, or nothing but the fat that the batter goes over."""
        things = set(self._things_at(at))
        inside = {
            taking.ingredient
            for thing in (things or range(len(self.graph.things)))
            for taking in self.home.inside_of(thing)
            if taking.at <= at
        }
        joined_in = any(
            thing.into in things and thing.joined_at is not None and thing.joined_at <= at
            for thing in self.graph.things
        )
        return not inside or (inside <= self.hot_fat and not joined_in)

    def _is_first(self, at: int, takings: list[Taking]) -> bool:
        """Whether these are the first foods of their bowl or pot at camp."""
        before = (
            (taking for taking in self.home.inside_of(takings[0].thing) if taking.at < at) if takings else ()
        )
        return not any(not self.home.is_done(taking) for taking in before)

    def _foods(self, at: int, takings: list[Taking], *, again: bool = True) -> tuple[list[str], bool]:
        """What an action takes, in words, and whether raw flesh is among it; `again` names what was opened before."""
        told: list[str] = []
        raw = False
        for pack in (*self._finished(at), *self._packs(takings)):
            if not again and pack.id in self.opened:
                continue
            if self.inside.sort(pack) == "table":
                told += [
                    self.recipe.ingredients[t.ingredient].name
                    for t in takings
                    if self.inside.pack(t.ingredient, t.at) is pack
                ]
                self.opened.add(pack.id)
            elif self.inside.sort(pack) in AS_IT_COMES and pack.kind != "prepped" and pack.kind != "dry mix":
                told.append(
                    self._as_it_comes(
                        pack, next(t for t in takings if self.inside.pack(t.ingredient, t.at) is pack)
                    )
                )
            elif pack.id not in self.opened and (
                not again or at >= self.opens.get(pack.id, at) or pack not in self._packs(takings)
            ):
                self.opened.add(pack.id)
                told.append(called(pack, self.recipe, self.inside))
                raw = raw or self._is_raw(pack)
        return told, raw

    def _packs(self, takings: Iterable[Taking]) -> list[Pack]:
        packs = (
            self.inside.pack(taking.ingredient, taking.at)
            for taking in takings
            if not self.home.is_done(taking)
        )
        return list({pack.id: pack for pack in packs if pack is not None}.values())

    def _finished(self, at: int) -> list[Pack]:
        """Packs finished at home that belong to the thing at work and were not opened yet."""
        thing = next((node for node in self._things_at(at)), None)
        if thing is None:
            return []
        whole = self.graph.whole(thing)
        found = {}
        for taking in self.graph.takings:
            if taking.at < at and self.home.is_done(taking) and self.graph.whole(taking.thing) == whole:
                pack = self.inside.pack(taking.ingredient, taking.at)
                if pack is not None and pack.id not in self.opened:
                    found[pack.id] = pack
        return list(found.values())

    def _things_at(self, at: int) -> list[int]:
        found = [taking.thing for taking in self.takings.get(at, [])]
        return [*found, *self.graph.worked(at)]

    def _as_it_comes(self, pack: Pack, taking: Taking) -> str:
        """A food that travels as it comes: with its amount the first time, by its name again."""
        ingredient = self.recipe.ingredients[taking.ingredient]
        again = pack.id in self.opened
        self.opened.add(pack.id)
        item = pack.items[0]
        told = with_state(amount_of(item, ingredient, self.day.units), ingredient)
        if taking.share >= item.share - 1e-9:
            return f"the {ingredient.name}" if again else told
        return f"more {ingredient.name}" if again else f"part of the {told.removeprefix('about ')}"

    def _is_raw(self, pack: Pack) -> bool:
        return self.inside.sort(pack) == "flesh" and any(
            role_of(self.recipe.ingredients[item.ingredient]) in RAW for item in pack.items
        )

    def _washing(self, raw: bool) -> str:
        """After raw flesh hands and tools are washed, and the marinade is not kept."""
        if not raw or self.washed:
            return ""
        self.washed = True
        return " Wash hands and tools before touching anything else; use a clean spoon and dish for the cooked food."

    def _unopened(self) -> list[Pack]:
        """The packs that no step opened."""
        return [
            pack
            for pack in self.packs
            if pack.id not in self.opened and pack.kind != "water" and self.inside.sort(pack) != "table"
        ]

    def _called(self, pack: Pack) -> str:
        if self.inside.sort(pack) in AS_IT_COMES and pack.kind in ("fresh", "pantry"):
            item = pack.items[0]
            return amount_of(item, self.recipe.ingredients[item.ingredient], self.day.units)
        return called(pack, self.recipe, self.inside)

    def _is_fat(self, pack: Pack) -> bool:
        return all(role_of(self.recipe.ingredients[item.ingredient]) == "fat" for item in pack.items)

    def _is_hot_fat(self, pack: Pack) -> bool:
        return all(item.ingredient in self.hot_fat for item in pack.items)

    def _is_optional(self, pack: Pack) -> bool:
        return all(self.recipe.ingredients[item.ingredient].optional for item in pack.items)
