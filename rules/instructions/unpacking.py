"""Which packs an action of the method opens at camp, and how a step calls what comes out of them.

A pack that was mixed at home is opened once: when its flour, or what else gives it body, enters, or, where that was
told of the kitchen's work, when something is done to what it became. What comes as it is, is named with its amount.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable

from rules.circumstances import Units
from rules.foods import catalogue
from rules.instructions.homework import CUT_AT_CAMP, HomeWork
from rules.instructions.words import GOES_IN, amount_of, called, with_note, with_state
from rules.method import Graph, Taking
from rules.packs import Contents
from rules.plan import Pack
from rules.recipe import Action, Ingredient, Recipe
from rules.roles import BODY, Role, role_of

#: Bundles of one food that comes as it is and may be used more than once.
AS_IT_COMES = frozenset({"alone", "fat", "water"})
RAW: frozenset[Role] = frozenset({"meat", "fish"})
#: One of these is "the can", not "the 1 can".
UNITS = (
    "1 can ",
    "1 jar ",
    "1 package ",
    "1 bottle ",
    "1 bag ",
    "1 box ",
    "1 bunch ",
    "1 carton ",
    "1 stick ",
)
#: A share this near to another is the same.
SAME = 1e-9


class Unpacking:
    """The packs of one dish while its camp steps are told: what is open already, what opens next."""

    def __init__(
        self,
        recipe: Recipe,
        graph: Graph,
        packs: tuple[Pack, ...],
        inside: Contents,
        home: HomeWork,
        units: Units,
    ) -> None:
        self.recipe = recipe
        self.graph = graph
        self.packs = packs
        self.inside = inside
        self.home = home
        self.units = units
        self.takings = home.takings
        self.opened: set[str] = set()
        self._first = self._openings()

    def _openings(self) -> dict[str, int]:
        """For each pack the action at which it is opened: where its body enters, else where its first food does."""
        first: dict[str, int] = {}
        leavener: dict[str, int] = {}
        body: dict[str, int] = {}
        for at in sorted(self.takings):
            for taking in self.takings[at]:
                pack = self.inside.pack(taking.ingredient, at)
                if pack is None or self._only_dusts(taking):
                    continue
                first.setdefault(pack.id, at)
                role = role_of(self.recipe.ingredients[taking.ingredient])
                if role in BODY:
                    (leavener if role == "leavener" else body).setdefault(pack.id, at)
        return first | leavener | body

    def foods(self, at: int, takings: list[Taking], *, again: bool = True) -> tuple[list[str], bool]:
        """What an action takes, in words, and whether raw flesh is among it; `again` names what was opened before."""
        told: list[str] = []
        raw = False
        riding = self.riding(takings)
        for pack in (*self._finished(at), *self._packs(taking for taking in takings if taking not in riding)):
            if not again and pack.id in self.opened:
                continue
            sort = self.inside.sort(pack)
            if sort == "table":
                told += [
                    self.recipe.ingredients[t.ingredient].name
                    for t in takings
                    if self.inside.pack(t.ingredient, t.at) is pack
                ]
                self.opened.add(pack.id)
            elif sort in AS_IT_COMES and pack.kind not in ("prepped", "dry mix"):
                taking = next(t for t in takings if self.inside.pack(t.ingredient, t.at) is pack)
                told.append(self.as_it_comes(pack, taking))
            elif pack.id not in self.opened and (
                not again or at >= self._first.get(pack.id, at) or pack not in self._packs(takings)
            ):
                told.append(self.open(pack))
                raw = raw or self.is_raw(pack)
        return told, raw

    def riding(self, takings: Iterable[Taking]) -> list[Taking]:
        """Those that ride in a dry mix whose flour enters later: the sugar that the recipe beats with the eggs."""
        found = []
        for taking in takings:
            pack = self.inside.pack(taking.ingredient, taking.at)
            if (
                pack is None
                or pack.id in self.opened
                or self.inside.sort(pack) != "dry"
                or taking.does == "grease"
            ):
                continue
            if len(pack.items) > 1 and self._is_before_its_flour(pack, taking):
                found.append(taking)
        return found

    def _is_before_its_flour(self, pack: Pack, taking: Taking) -> bool:
        """Whether the flour of a mix enters later, or stands in a bowl that is not at work yet."""
        first = self._first.get(pack.id, taking.at)
        bowls = {
            other.thing
            for other in self.takings.get(first, [])
            if self.inside.pack(other.ingredient, other.at) is pack
        }
        return first > taking.at or not bowls <= self._at_work(taking.at)

    def to_be_cut(self, action: Action) -> list[str]:
        """Foods that travel whole and are cut or drained by an action, before they enter anything."""
        told = []
        for use in action.uses:
            pack = self.inside.pack(use.ingredient)
            takings = self.graph.moments(use.ingredient)
            whole = (
                pack is not None
                and pack.kind in ("fresh", "pantry")
                and self.inside.sort(pack) in AS_IT_COMES
            )
            if pack is not None and whole and takings and pack.id not in self.opened:
                told.append(self.as_it_comes(pack, takings[0]))
        return told

    def open(self, pack: Pack) -> str:
        """Open a pack that was made at home: what a step calls it."""
        self.opened.add(pack.id)
        return called(pack, self.recipe, self.inside)

    def skipped(self, at: int) -> list[Taking]:
        """Takings of sentences that were done at home whose thing is at work now."""
        return [
            taking
            for thing in sorted(self._at_work(at))
            for taking in self.home.inside_of(thing)
            if taking.at < at and self.home.pack_id(taking) not in self.opened
        ]

    def _at_work(self, at: int) -> set[int]:
        """The things that an action works on, with all that has been joined into them by then."""
        here = set(self.things_at(at))
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

    def things_at(self, at: int) -> list[int]:
        """The things that an action works on."""
        found = [taking.thing for taking in self.takings.get(at, [])]
        return [*found, *self.graph.worked(at)]

    def _packs(self, takings: Iterable[Taking]) -> list[Pack]:
        packs = (
            self.inside.pack(taking.ingredient, taking.at)
            for taking in takings
            if not self.home.is_done(taking) and not self._only_dusts(taking)
        )
        return list({pack.id: pack for pack in packs if pack is not None}.values())

    def _only_dusts(self, taking: Taking) -> bool:
        """Whether a little flour or fat goes on a board or a pot, for which no bag of a dough is opened."""
        pack = self.inside.pack(taking.ingredient, taking.at)
        if taking.does != "grease" or pack is None or pack.kind not in ("dry mix", "prepped"):
            return False
        return any(other.does != "grease" for other in self.graph.moments(taking.ingredient))

    def _finished(self, at: int) -> list[Pack]:
        """Packs finished at home that belong to the thing at work and were not opened yet."""
        thing = next((node for node in self.things_at(at)), None)
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

    def as_it_comes(self, pack: Pack, taking: Taking) -> str:
        """A food that travels as it comes: with its amount the first time, by its name again."""
        ingredient = self.recipe.ingredients[taking.ingredient]
        again = pack.id in self.opened
        self.opened.add(pack.id)
        item = pack.items[0]
        told = with_state(amount_of(item, ingredient, self.units), ingredient)
        if taking.share >= item.share - SAME:
            return f"the {ingredient.name}" if again else with_note(told, self._cut_at_camp(pack, ingredient))
        whole = told.removeprefix("about ").removeprefix("1 " if told.startswith(UNITS) else "")
        return f"more {ingredient.name}" if again else f"part of the {whole}"

    def _cut_at_camp(self, pack: Pack, ingredient: Ingredient) -> str:
        """What is still to be done to a food that travels whole: "peeled and cored"."""
        if self._is_soaked(ingredient):
            return "soaked, their water poured away"
        prep = ingredient.prep or ""
        whole = pack.kind in ("fresh", "pantry") and role_of(ingredient) in CUT_AT_CAMP - {"can"}
        return prep if whole and prep not in GOES_IN else ""

    def _is_soaked(self, ingredient: Ingredient) -> bool:
        """Whether beans or grain are soaked for hours before, which the day tells."""
        food = catalogue().get(ingredient.food) if ingredient.food else None
        if food is None or food.group != "legume":
            return False
        if "soak" in (ingredient.prep or ""):
            return True
        index = self.recipe.ingredients.index(ingredient)
        return any(
            action.does == "soak" and any(use.ingredient == index for use in action.uses)
            for step in self.recipe.steps
            for action in step.actions
        )

    def is_raw(self, pack: Pack) -> bool:
        """Whether raw meat or fish comes out of it."""
        return self.inside.sort(pack) == "flesh" and any(
            role_of(self.recipe.ingredients[item.ingredient]) in RAW for item in pack.items
        )

    def unopened(self, *, table: bool = False) -> list[Pack]:
        """The packs that no step opened; the salt of the table only where it is asked for."""
        return [
            pack
            for pack in self.packs
            if pack.id not in self.opened
            and pack.kind != "water"
            and (table or self.inside.sort(pack) != "table")
        ]

    def last_taking(self, pack: Pack) -> int | None:
        """The last action that takes of a pack; None where the method never names it."""
        at = [
            number
            for number, takings in self.takings.items()
            for taking in takings
            if self.inside.pack(taking.ingredient, taking.at) is pack
        ]
        return max(at, default=None)

    def name(self, pack: Pack) -> str:
        """How a step calls a pack that no sentence of the method asks for."""
        if self.inside.sort(pack) in AS_IT_COMES and pack.kind in ("fresh", "pantry"):
            item = pack.items[0]
            return amount_of(item, self.recipe.ingredients[item.ingredient], self.units)
        return called(pack, self.recipe, self.inside)

    def is_fat(self, pack: Pack) -> bool:
        """Whether it holds nothing but fat."""
        return all(role_of(self.recipe.ingredients[item.ingredient]) == "fat" for item in pack.items)

    def holds_only(self, pack: Pack, foods: Collection[int]) -> bool:
        """Whether it holds nothing but these ingredients."""
        return all(item.ingredient in foods for item in pack.items)

    def is_optional(self, pack: Pack) -> bool:
        """Whether all of it may be left out."""
        return all(self.recipe.ingredients[item.ingredient].optional for item in pack.items)
