"""What is done at camp: the method walked through again, with packs in place of measuring and coals in place of ovens.

What was done at home is left out. A pack that was mixed at home is opened once, by its id; what comes as it is, is
named with its amount. Baking, frying and simmering carry the briquettes of their stage.
"""

from __future__ import annotations

from collections.abc import Iterator

from rules.circumstances import Day
from rules.instructions.words import amount_of, joined, sentence
from rules.method import Graph, Taking
from rules.method.graph import FIRE, HANDWORK, parts
from rules.packs import Contents
from rules.plan import Heat, Pack, Stage, StageKind
from rules.recipe import Action, Deed, Recipe, Step

#: Bundles that are finished at home: nothing of their making is told at camp.
_FINISHED = frozenset({"dough", "mix", "creamed", "preserve"})
_STAGES: dict[Deed, tuple[StageKind, ...]] = {
    "bake": ("bake", "roast"), "roast": ("roast", "bake"), "broil": ("brown top", "bake"),
    "brown": ("brown", "fry"), "saute": ("brown", "fry"), "fry": ("fry", "brown"), "deep fry": ("fry",), "griddle": ("fry",),
    "melt": ("heat fat", "brown", "fry"), "heat": ("heat fat", "brown", "fry", "boil", "simmer"),
    "boil": ("boil", "simmer"), "simmer": ("simmer", "boil"), "reduce": ("simmer",), "steam": ("boil", "simmer"),
    "pressure cook": ("simmer",), "rise": ("rise",), "toast": ("fry", "brown"),
}  # fmt: skip
_VERB: dict[Deed, tuple[str, str]] = {
    "mix": ("mix {what}", "stir in {what}"),
    "beat": ("beat {what}", "beat in {what}"),
    "cream": ("cream {what}", "cream in {what}"),
    "cut in": ("cut in {what}", "cut in {what}"),
    "rub": ("rub in {what}", "rub in {what}"),
    "knead": ("knead {what}", "knead in {what}"),
    "fold": ("fold {what} together", "fold in {what}"),
    "mash": ("mash {what}", "mash in {what}"),
    "blend": ("mash {what} fine", "mash in {what}"),
    "add": ("put in {what}", "add {what}"),
    "pour": ("pour in {what}", "pour in {what}"),
    "season": ("season with {what}", "season with {what}"),
    "coat": ("coat with {what}", "coat with {what}"),
    "fill": ("fill with {what}", "fill with {what}"),
    "layer": ("lay in {what}", "lay in {what}"),
    "spread": ("spread {what}", "spread {what} over it"),
    "top": ("top with {what}", "top with {what}"),
    "shape": ("shape {what}", "shape it with {what}"),
    "roll": ("roll out {what}", "roll it in {what}"),
    "heat": ("heat {what}", "heat {what} with it"),
    "melt": ("melt {what}", "melt in {what}"),
    "brown": ("brown {what}", "add {what} and brown"),
    "saute": ("fry {what} gently", "add {what} and fry gently"),
    "fry": ("fry {what}", "add {what} and fry"),
    "deep fry": ("deep-fry {what}", "deep-fry {what}"),
    "griddle": ("fry {what} in the pan", "fry {what} in the pan"),
    "boil": ("boil {what}", "add {what} and boil"),
    "simmer": ("simmer {what}", "add {what} and simmer"),
    "reduce": ("boil {what} down", "add {what} and boil down"),
    "deglaze": ("loosen what sticks with {what}", "loosen what sticks with {what}"),
    "steam": ("steam {what}", "add {what} and steam"),
    "pressure cook": ("simmer {what} with the lid shut", "add {what} and simmer with the lid shut"),
    "bake": ("bake {what}", "add {what} and bake"),
    "roast": ("roast {what}", "add {what} and roast"),
    "broil": ("brown the top of {what}", "add {what} and brown the top"),
    "grill": ("grill {what}", "grill {what}"),
    "smoke": ("smoke {what}", "smoke {what}"),
    "toast": ("toast {what}", "toast {what}"),
    "marinate": ("let {what} marinate", "marinate with {what}"),
    "soak": ("soak {what}", "soak with {what}"),
    "serve": ("serve with {what}", "serve with {what}"),
    "grease": ("grease the pot with {what}", "grease the pot with {what}"),
    "rise": ("let {what} rise", "let it rise with {what}"),
    "rest": ("let {what} rest", "let it rest with {what}"),
    "cool": ("let {what} cool", "let it cool"),
    "drain": ("drain {what}", "drain {what}"),
    "rinse": ("rinse {what}", "rinse {what}"),
    "strain": ("strain {what}", "strain {what}"),
    "chop": ("cut {what}", "cut {what}"),
    "grate": ("grate {what}", "grate {what}"),
    "peel": ("peel {what}", "peel {what}"),
    "grind": ("crush {what}", "crush {what}"),
    "other": ("cook {what}", "add {what} and cook"),
}  # fmt: skip
_BARE: dict[Deed, str] = {
    "mix": "stir", "beat": "beat it", "knead": "knead it", "fold": "fold it together", "mash": "mash it", "blend": "mash it fine",
    "boil": "bring it to the boil", "simmer": "simmer it", "bake": "bake it", "roast": "roast it", "broil": "brown the top",
    "fry": "fry it", "saute": "fry it gently", "brown": "brown it", "reduce": "boil it down", "steam": "steam it with the lid shut",
    "pressure cook": "simmer it with the lid shut", "rise": "let it rise in the covered pot near the warmth", "rest": "let it rest",
    "cool": "let it cool", "drain": "drain it", "strain": "strain it", "shape": "shape it", "roll": "roll it out", "turn": "turn it over",
    "cover": "put the lid on", "serve": "serve", "griddle": "fry it in the pan", "grill": "grill it", "toast": "toast it",
    "deep fry": "deep-fry it", "heat": "heat it", "melt": "let it melt", "chop": "cut it", "layer": "layer it", "pour": "pour it in",
    "other": "cook it",
}  # fmt: skip


class Camp:
    """Writes the camp steps, one a step of the recipe."""

    def __init__(
        self,
        recipe: Recipe,
        graph: Graph,
        packs: tuple[Pack, ...],
        inside: Contents,
        heat: Heat | None,
        day: Day,
    ) -> None:
        self.recipe = recipe
        self.graph = graph
        self.packs = packs
        self.inside = inside
        self.heat = heat
        self.day = day
        self.opened: set[str] = set()
        self.used: set[tuple[str, int]] = set()
        self.stages: list[Stage] = [stage for stage in heat.stages if stage.top + stage.under] if heat else []
        self.last_fire = self._last_fire()

    def steps(self) -> tuple[str, ...]:
        """All camp steps."""
        told: list[str] = []
        if self.heat and self.heat.fuel.batches:
            count = self.heat.fuel.batches[0].count
            told.append(
                f"Light {count} briquettes in the chimney; they are ready when they are grey at the edges."
            )
        for _, actions in self._by_step():
            sentences = [line for at, action in actions if (line := self._tell(at, action))]
            if sentences:
                told.append(" ".join(sentences))
        rest = self._left_over()
        if rest:
            told.insert(len(told) - 1 if len(told) > 1 else len(told), sentence(f"add {joined(rest)}"))
        return tuple(told)

    def _by_step(self) -> Iterator[tuple[Step, list[tuple[int, Action]]]]:
        at = 0
        for step in self.recipe.steps:
            actions = []
            for action in step.actions:
                actions.append((at, action))
                at += 1
            if not step.actions and step.uses:
                actions.append((at, Action(does="add", word="add")))
                at += 1
            yield step, actions

    def _last_fire(self) -> int:
        last = -1
        for _, actions in self._by_step():
            for at, action in actions:
                if action.does in FIRE or parts(action.does, action.word):
                    last = at
        return last

    def _tell(self, at: int, action: Action) -> str:
        takings = [taking for taking in self.graph.takings if taking.at == at]
        if action.does in ("preheat", "line", "can", "store", "freeze", "thaw"):
            return ""
        if action.does in HANDWORK:
            return self._handwork(action)
        if takings and all(self._is_done(taking) for taking in takings):
            return ""
        if not takings and self._was_done(at):
            return ""
        foods = self._foods(takings)
        if takings and not foods and action.does not in FIRE:
            return ""
        if not takings and action.does not in _BARE:
            return ""
        if not takings and action.does == "other" and not parts(action.does, action.word):
            return ""
        return sentence(
            self._coals(action) + self._words(action, foods, takings) + _time(action) + _sign(action)
        )

    def _words(self, action: Action, foods: list[str], takings: list[Taking]) -> str:
        if not foods:
            return _BARE.get(action.does, action.word)
        alone, joining = _VERB.get(action.does, ("add {what}", "add {what}"))
        first = takings and not any(
            other.thing == takings[0].thing and other.at < takings[0].at for other in self.graph.takings
        )
        where = ""
        if first:
            where = (
                " in the pot"
                if takings[0].hot
                else " in the bowl"
                if action.does in ("mix", "beat", "add", "cream")
                else ""
            )
        return (alone if first else joining).format(what=joined(foods)) + where

    def _coals(self, action: Action) -> str:
        """The briquettes of the stage that this action opens."""
        wanted = _STAGES.get(action.does, ("simmer", "fry") if parts(action.does, action.word) else ())
        for number, stage in enumerate(self.stages):
            if stage.kind in wanted:
                del self.stages[: number + 1]
                lid = f"{stage.top} on the lid" if stage.top else "none on the lid"
                return f"with {stage.under} coals under the pot and {lid}: "
        return ""

    def _foods(self, takings: list[Taking]) -> list[str]:
        told = []
        for taking in takings:
            pack = self.inside.pack(taking.ingredient, taking.at)
            if pack is None:
                told.append(self.recipe.ingredients[taking.ingredient].name)
            elif self.inside.sort(pack) in ("alone", "fat", "table", "water") and len(pack.items) == 1:
                told.append(self._single(pack, taking))
            elif self.inside.sort(pack) == "table":
                told.append(self.recipe.ingredients[taking.ingredient].name)
                self.opened.add(pack.id)
            elif pack.id not in self.opened:
                self.opened.add(pack.id)
                told.append(f"the {_short(pack)} ({pack.id})")
        return told

    def _single(self, pack: Pack, taking: Taking) -> str:
        """A food that travels as it comes: with its amount the first time, by its name again."""
        ingredient = self.recipe.ingredients[taking.ingredient]
        again = pack.id in self.opened
        self.opened.add(pack.id)
        item = pack.items[0]
        if again or taking.share < item.share - 1e-9:
            return (
                f"the rest of the {ingredient.name}"
                if again
                else f"some of the {amount_of(item, ingredient, self.day.units)}"
            )
        return amount_of(item, ingredient, self.day.units)

    def _handwork(self, action: Action) -> str:
        """Cutting and draining that is left for camp."""
        left = []
        for use in action.uses:
            pack = self.inside.pack(use.ingredient)
            if pack is not None and pack.kind in ("fresh", "pantry") and self.inside.sort(pack) != "table":
                left.append(self.recipe.ingredients[use.ingredient].name)
        if left:
            alone, _ = _VERB.get(action.does, ("prepare {what}", ""))
            return sentence(alone.format(what=f"the {joined(left)}"))
        if not action.uses and action.does in ("drain", "strain"):
            return sentence(_BARE[action.does])
        return ""

    def _is_done(self, taking: Taking) -> bool:
        """Whether this was done at home: the dough made, the meat marinated."""
        pack = self.inside.pack(taking.ingredient, taking.at)
        if pack is None:
            return False
        sort = self.inside.sort(pack)
        return sort in _FINISHED or (sort == "flesh" and taking.marinade)

    def _was_done(self, at: int) -> bool:
        """Whether what this action works on was finished at home, up to here."""
        for thing, node in enumerate(self.graph.things):
            if any(event.at == at for event in node.events):
                inside = [
                    taking for taking in self.graph.takings if taking.thing == thing and taking.at <= at
                ]
                fire = any(event.does in FIRE and event.at == at for event in node.events)
                return bool(inside) and not fire and all(self._is_done(taking) for taking in inside)
        return False

    def _left_over(self) -> list[str]:
        """Packs that no step opened."""
        return [
            f"the {_short(pack)} ({pack.id})"
            for pack in self.packs
            if pack.id not in self.opened and pack.kind != "water" and self.inside.sort(pack) != "table"
        ]


def _short(pack: Pack) -> str:
    return pack.label.removeprefix("the ")


def _time(action: Action) -> str:
    span = action.minutes
    if span is None or span.high_min <= 0:
        return ""
    low, high = f"{span.low_min:g}", f"{span.high_min:g}"
    return f" for {low} minutes" if low == high else f" for {low} to {high} minutes"


def _sign(action: Action) -> str:
    return f", {action.until}" if action.until else ""
