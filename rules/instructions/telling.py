"""Coals in the camp steps, and sentences made tidy: no doubles, nothing said twice in a row."""

from __future__ import annotations

from collections.abc import Iterable

from rules.method.graph import OVEN, parts
from rules.plan import Heat, Stage, StageKind
from rules.recipe import Action, Deed, Recipe

_STAGES: dict[Deed, tuple[StageKind, ...]] = {
    "bake": ("bake", "roast"), "roast": ("roast", "bake"), "broil": ("brown top", "bake"),
    "brown": ("brown", "fry"), "saute": ("brown", "fry"), "fry": ("fry", "brown"), "deep fry": ("fry",), "griddle": ("fry",),
    "melt": ("heat fat", "brown", "fry"), "heat": ("heat fat", "brown", "fry", "boil", "simmer"),
    "boil": ("boil", "simmer"), "simmer": ("simmer", "boil"), "reduce": ("simmer",), "steam": ("boil", "simmer"),
    "pressure cook": ("simmer",), "rise": ("rise",), "toast": ("fry", "brown"),
}  # fmt: skip
#: Up to here a longer time is the recipe's own.
SAME_WITHIN = 1.15
_WARMING: frozenset[Deed] = frozenset({"heat", "melt"})
_COOKS: tuple[StageKind, ...] = ("simmer", "fry")


class Coals:
    """Tells the briquettes of each stage once, with the deed that opens it."""

    def __init__(self, heat: Heat | None, recipe: Recipe | None = None) -> None:
        self._heat = heat
        #: the coals that lie as they were told last
        self._lying: str | None = None
        #: how long the recipe itself bakes, all its spells together [minutes]
        self._baked_min = sum(
            action.minutes.high_min
            for step in (recipe.steps if recipe else ())
            for action in step.actions
            if action.minutes is not None and action.does in OVEN
        )
        self._now: Stage | None = None
        #: whether the stage that is on has begun to cook, or only to warm its fat
        self._cooked = False
        self._left: list[Stage] = [stage for stage in heat.stages if stage.top + stage.under] if heat else []

    def lighting(self) -> tuple[str, ...]:
        """The first step: lighting the chimney."""
        if self._heat is None or not self._heat.fuel.batches:
            return ()
        count = self._heat.fuel.batches[0].count
        return (f"Light {count} briquettes in the chimney; they are ready when they are grey at the edges.",)

    def before(self, action: Action) -> str:
        """The briquettes of the stage that this action opens: "with 8 coals under the pot and 17 on the lid, "."""
        stage = self._opened(action)
        return f"with {_lie(stage)}, " if stage else ""

    def now(self, actions: Iterable[Action]) -> str:
        """The briquettes of the stages that a sentence opens, as a sentence of its own; empty when it opens none.

        It gives the minutes too where this pot needs longer than the recipe says.
        """
        told = []
        for action in actions:
            stage = self._opened(action)
            if stage is None:
                continue
            longer = self._longer(stage, action)
            if _lie(stage) != self._lying or longer:
                told.append(f"{_lie(stage)}{longer}")
            self._lying = _lie(stage)
        return f"Coals now: {'; after that '.join(told)}." if told else ""

    def _opened(self, action: Action) -> Stage | None:
        """The stage that an action opens: the next of its kind, unless what is on the fire serves it as well."""
        wanted = _STAGES.get(action.does, _COOKS if parts(action.does, action.word) else ())
        if not wanted:
            return None
        current = wanted.index(self._now.kind) if self._now and self._now.kind in wanted else len(wanted)
        for number, stage in enumerate(self._left):
            if stage.kind not in wanted:
                continue
            again = self._now is not None and stage.kind == self._now.kind and self._cooked and number == 0
            if wanted.index(stage.kind) < current or again:
                del self._left[: number + 1]
                self._now, self._cooked = stage, action.does not in _WARMING
                return stage
            break
        self._cooked = self._cooked or (current < len(wanted) and action.does not in _WARMING)
        return None

    def _longer(self, stage: Stage, action: Action) -> str:
        """The minutes where this pot needs longer than the recipe says."""
        said, minutes = action.minutes, stage.minutes
        if said is None or minutes is None or stage.kind not in ("bake", "roast"):
            return ""
        if minutes.high <= SAME_WITHIN * max(said.high_min, self._baked_min):
            return ""
        span = (
            f"{minutes.low:.0f} to {minutes.high:.0f}"
            if minutes.low < minutes.high
            else f"{minutes.high:.0f}"
        )
        return f", in this pot for {span} minutes"

    def doneness(self) -> tuple[str, ...]:
        """The last step: how one knows that it is done."""
        if self._heat is None or not self._heat.doneness:
            return ()
        told = []
        for done in self._heat.doneness[:2]:
            degrees = f" ({done.temp_f:.0f} °F inside)" if done.temp_f else ""
            rest = f", after {done.rest_min:.0f} minutes of rest" if done.rest_min else ""
            told.append(f"{done.what}: {done.sign.rstrip('.')}{degrees}{rest}")
        return (f"Look before you serve. {'. '.join(one[:1].upper() + one[1:] for one in told)}.",)


def _lie(stage: Stage) -> str:
    return f"{stage.under} coals under the pot and {stage.top or 'none'} on the lid"


def clean(sentences: list[str]) -> list[str]:
    """The sentences without empty ones and without one that the next says again, or says with its time."""
    kept: list[str] = []
    for said in sentences:
        if not said:
            continue
        stem = said.rstrip(".")
        if kept and (kept[-1] == said or stem == kept[-1].rstrip(".")):
            continue
        if kept and said.startswith(kept[-1].rstrip(".") + " for "):
            kept.pop()
        kept.append(said)
    return kept
