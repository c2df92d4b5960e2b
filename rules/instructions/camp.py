"""What is done at camp: the method walked through again, with packs in place of measuring and coals in place of ovens.

What was done at home is left out. What comes out of which pack when, `unpacking.py` knows; baking, frying and simmering
carry the briquettes of their stage.
"""

from __future__ import annotations

from collections.abc import Mapping

from rules.because import Ledger
from rules.circumstances import Day
from rules.instructions.homework import UNTOLD, HomeWork
from rules.instructions.hotfat import HotFat
from rules.instructions.own import Sentence, in_steps, paragraphs, what_is_left
from rules.instructions.rest import place_the_rest, plain_method
from rules.instructions.saying import with_foods, without_foods
from rules.instructions.telling import Coals, clean
from rules.instructions.translate import at_camp
from rules.instructions.unpacking import Unpacking
from rules.instructions.words import joined, sentence
from rules.method import Graph, Taking
from rules.method.graph import FIRE, HANDWORK, MIXING, parts
from rules.method.words import kind_of
from rules.packs import Contents
from rules.plan import FatUse, Heat, Pack
from rules.recipe import Action, Family, Recipe
from rules.roles import role_of

#: Steps as told, each with whether it cooks.
Told = list[tuple[str, bool]]


class Camp:
    """Writes the camp steps, one a step of the recipe.

    `also` are packs to be opened by the sentence with this action, beside what it asks for.
    """

    def __init__(
        self,
        recipe: Recipe,
        graph: Graph,
        packs: tuple[Pack, ...],
        inside: Contents,
        fat: tuple[FatUse, ...],
        heat: Heat | None,
        day: Day,
        also: Mapping[int, tuple[Pack, ...]] | None = None,
    ) -> None:
        self.recipe = recipe
        self.graph = graph
        self.coals = Coals(heat, recipe)
        self.also = also or {}
        self.washed = False
        self.takings: dict[int, list[Taking]] = {}
        for taking in (*graph.takings, *graph.guesses):
            self.takings.setdefault(taking.at, []).append(taking)
        self.home = HomeWork(recipe, graph, packs, inside, self.takings)
        self.unpacking = Unpacking(recipe, graph, packs, inside, self.home, day.units)
        self.hot = HotFat(graph, fat, self.takings)

    def steps(self, told: Told, family: Family, ledger: Ledger) -> tuple[str, ...]:
        """All camp steps: what was told, with what no sentence opened, between the lighting and the last look."""
        unpacking = self.unpacking
        rest = unpacking.unopened(table=not told)
        if not told:
            fat = [unpacking.name(pack) for pack in rest if unpacking.is_fat(pack)]
            food = [unpacking.name(pack) for pack in rest if not unpacking.is_fat(pack)]
            steps = plain_method(family, food, fat, ledger)
        else:
            hot = [unpacking.name(pack) for pack in rest if unpacking.holds_only(pack, self.hot.fats)]
            maybe = [unpacking.name(pack) for pack in rest if unpacking.is_optional(pack)]
            wanted = [name for pack in rest if (name := unpacking.name(pack)) not in {*hot, *maybe}]
            steps = place_the_rest(told, wanted, maybe, hot)
        return (*self.coals.lighting(), *steps, *self.coals.doneness())

    def told(self) -> Told:
        """The recipe's own steps at camp."""
        return [
            (step, cooks)
            for sentences in paragraphs(self.recipe)
            for cooks in [self._cooks(sentences)]
            for step in in_steps(clean(self._paragraph(sentences)))
        ]

    def missed(self) -> dict[int, tuple[Pack, ...]]:
        """Once told: packs made at home that no sentence opened, by the action that should have.

        That is the first one left for camp after the home's work on it, which does more than cut or heat.
        """
        found: dict[int, tuple[Pack, ...]] = {}
        left = [
            sentence_
            for sentences in paragraphs(self.recipe)
            for sentence_ in sentences
            if sentence_.says is not None and not self.home.is_over(sentence_)
        ]
        for pack in self.unpacking.unopened():
            last = self.unpacking.last_taking(pack)
            if last is None or pack.kind not in ("dry mix", "wet mix", "prepped"):
                continue
            after = [one for one in left if one.actions[-1][0] >= last]
            works = [
                one for one in after if any(action.does not in HANDWORK | UNTOLD for _, action in one.actions)
            ]
            if works:
                at = works[0].actions[0][0]
                found[at] = (*found.get(at, ()), pack)
        return found

    def _paragraph(self, sentences: list[Sentence]) -> list[str]:
        """One step of the recipe: what is taken from the packs, then its own sentences, or ours where it has none."""
        own = [found for found in sentences if found.says is not None]
        if not own:
            return [self._tell(at, action) for found in sentences for at, action in found.actions]
        said: list[str] = []
        for found in own:
            over = self.home.over(found)
            if self.home.is_over(found):
                continue
            if self.hot.is_only(found):
                self.hot.wait(found)
                continue
            riding = self._riding(found)
            if riding and self._only(found, riding):
                continue
            melts = self._hot_fat(found)
            taken, raw = self._taken(found)
            take = sentence(f"take {joined(taken)}") if taken else ""
            coals = self.coals.now(action for _, action in found.actions)
            does = (
                sentence(at_camp(what_is_left(found, over)))
                + _in_the_mix(self._names(riding))
                + self._washing(raw)
            )
            said.append(" ".join(part for part in (melts, take, coals, does) if part))
        return said

    def _riding(self, found: Sentence) -> list[Taking]:
        """What this sentence takes that comes later, in the dry mix."""
        return [
            taking for at, _ in found.actions for taking in self.unpacking.riding(self.takings.get(at, []))
        ]

    def _only(self, found: Sentence, riding: list[Taking]) -> bool:
        """Whether a sentence does nothing but mix such foods in."""
        takings = [taking for at, _ in found.actions for taking in self.takings.get(at, [])]
        return takings == riding and all(action.does in MIXING for _, action in found.actions)

    def _names(self, takings: list[Taking]) -> list[str]:
        return [self.recipe.ingredients[taking.ingredient].name for taking in takings]

    def _taken(self, found: Sentence) -> tuple[list[str], bool]:
        """What a sentence needs from the packs, in words, each pack once; and whether raw flesh is among it."""
        told: list[str] = []
        raw = False
        for at, action in found.actions:
            takings = [*self.unpacking.skipped(at), *self.takings.get(at, [])]
            if action.does in HANDWORK:
                told += self.unpacking.to_be_cut(action)
            foods, is_raw = self.unpacking.foods(at, takings, again=False)
            told += foods
            raw = raw or is_raw
            for pack in self.also.get(at, ()):
                if pack.id not in self.unpacking.opened:
                    raw = raw or self.unpacking.is_raw(pack)
                    told.append(self.unpacking.open(pack))
        return told, raw

    def _hot_fat(self, found: Sentence) -> str:
        """The fat that the batter of this sentence is poured over, or that its fire would find cold."""
        takings = self.hot.due(found)
        fats = [
            self.unpacking.as_it_comes(pack, taking)
            for taking in takings
            if (pack := self.unpacking.inside.pack(taking.ingredient, taking.at)) is not None
        ]
        if not fats:
            return ""
        coals = self.coals.now(self.hot.melting(takings))
        told = f"put {joined(fats)} into the hot pot and shut the lid until it sizzles"
        over = "" if self.hot.is_said(takings) else "; pour the batter over it"
        return " ".join(part for part in (coals, sentence(told + over)) if part)

    def _cooks(self, sentences: list[Sentence]) -> bool:
        return any(
            action.does in FIRE or parts(action.does, action.word)
            for found in sentences
            if not self.home.is_over(found)
            for _, action in found.actions
        )

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
        foods, raw = self.unpacking.foods(at, takings)
        if takings and foods and all(taking.ingredient in self.hot.fats for taking in takings):
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
        things = set(self.unpacking.things_at(at))
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
        return not inside or (inside <= self.hot.fats and not joined_in)

    def _is_first(self, at: int, takings: list[Taking]) -> bool:
        """Whether these are the first foods of their bowl or pot at camp."""
        before = (
            (taking for taking in self.home.inside_of(takings[0].thing) if taking.at < at) if takings else ()
        )
        return not any(not self.home.is_done(taking) for taking in before)

    def _washing(self, raw: bool) -> str:
        """After raw flesh hands and tools are washed, and the marinade is not kept."""
        if not raw or self.washed:
            return ""
        self.washed = True
        return " Wash hands and tools before touching anything else; use a clean spoon and dish for the cooked food."


def _in_the_mix(names: list[str]) -> str:
    """What the sentence before need not take ("The sugar is in the dry mix")."""
    if not names:
        return ""
    several = len(set(names)) > 1
    return f" The {joined(names)} {'are' if several else 'is'} in the dry mix."
