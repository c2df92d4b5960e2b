"""Coals in the camp steps, and sentences made tidy: no doubles, nothing said twice in a row."""

from __future__ import annotations

from rules.method.graph import parts
from rules.plan import Heat, Stage, StageKind
from rules.recipe import Action, Deed

_STAGES: dict[Deed, tuple[StageKind, ...]] = {
    "bake": ("bake", "roast"), "roast": ("roast", "bake"), "broil": ("brown top", "bake"),
    "brown": ("brown", "fry"), "saute": ("brown", "fry"), "fry": ("fry", "brown"), "deep fry": ("fry",), "griddle": ("fry",),
    "melt": ("heat fat", "brown", "fry"), "heat": ("heat fat", "brown", "fry", "boil", "simmer"),
    "boil": ("boil", "simmer"), "simmer": ("simmer", "boil"), "reduce": ("simmer",), "steam": ("boil", "simmer"),
    "pressure cook": ("simmer",), "rise": ("rise",), "toast": ("fry", "brown"),
}  # fmt: skip
_COOKS: tuple[StageKind, ...] = ("simmer", "fry")


class Coals:
    """Tells the briquettes of each stage once, with the deed that opens it."""

    def __init__(self, heat: Heat | None) -> None:
        self._heat = heat
        self._left: list[Stage] = [stage for stage in heat.stages if stage.top + stage.under] if heat else []

    def lighting(self) -> tuple[str, ...]:
        """The first step: lighting the chimney."""
        if self._heat is None or not self._heat.fuel.batches:
            return ()
        count = self._heat.fuel.batches[0].count
        return (f"Light {count} briquettes in the chimney; they are ready when they are grey at the edges.",)

    def before(self, action: Action) -> str:
        """The briquettes of the stage that this action opens: "over 8 coals, 17 on the lid: "."""
        wanted = _STAGES.get(action.does, _COOKS if parts(action.does, action.word) else ())
        for number, stage in enumerate(self._left):
            if stage.kind in wanted:
                del self._left[: number + 1]
                lid = f"{stage.top} on the lid" if stage.top else "none on the lid"
                return f"with {stage.under} coals under the pot and {lid}, "
        return ""

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
