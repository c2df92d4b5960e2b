"""When what goes over the coals is mixed, kneaded or filled in, so that nothing leavened waits and nothing is late."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rules.because import Ledger, Rule
from rules.day.figures import figure
from rules.day.task import Task
from rules.day.waiting import Begun
from rules.dish import Dish
from rules.plan import Heat, Pack, Stage, StageKind
from rules.recipe import Recipe
from rules.wording import listed, short_names

LEAVENED_LAST = Rule(
    id="day.mix-last",
    because="wet and dry meet {minutes:.0f} minutes before the pot is ready: the leavener spends its gas within minutes",
)
OVEN: frozenset[StageKind] = frozenset({"bake", "roast"})
EMPTY: frozenset[StageKind] = frozenset({"warm", "heat fat"})
FILL = "Put together what goes into the pot, as the steps for camp say."


def mixing(
    recipe: Recipe, dish: Dish, packs: Sequence[Pack], heat: Heat, begun: Sequence[Begun], ledger: Ledger
) -> Iterator[Task]:
    """The handwork before the pot takes the food."""
    dry = [pack for pack in packs if pack.kind == "dry mix"]
    stages = heat.stages
    over = next((place for place, stage in enumerate(stages) if stage.kind in ("bake", "fry")), None)
    if dish.yeasted and any(stage.kind == "rise" for stage in stages):
        yield from _kneaded(packs, stages, begun)
    elif dish.leavened and dry and over is not None:
        yield _leavened(packs, dry, stages, over, begun, ledger)
    elif dish.leavened and dry and stages[-1].kind == "simmer":
        yield from _dumplings(recipe, packs, dry, stages[-1], ledger)
    else:
        yield from _filled(stages, begun)


def _leavened(
    packs: Sequence[Pack],
    dry: Sequence[Pack],
    stages: Sequence[Stage],
    over: int,
    begun: Sequence[Begun],
    ledger: Ledger,
) -> Task:
    """Wet to dry just before the pot is ready, or before the rest that the method gives the batter."""
    minutes = figure("mix_min").value
    mixes = listed(short_names(packs)[pack.id] for pack in dry)
    waits = [one.at_min for one in begun if one.stage == over]
    start = min([stages[over].starts_at_min or 0.0, *waits])
    if waits:
        do = f"Mix {mixes} with its liquid, just until it comes together."
    else:
        ledger.note(LEAVENED_LAST.says("mixing", figure("mix_min"), minutes=minutes))
        do = f"Mix {mixes} with its liquid, just until it comes together; then into the pot at once."
    return Task(start - minutes, "fire", do, minutes, "the mixing")


def _dumplings(
    recipe: Recipe, packs: Sequence[Pack], dry: Sequence[Pack], simmer: Stage, ledger: Ledger
) -> Iterator[Task]:
    """A leavened dough that is cooked on a simmering pot enters for the last stretch of it."""
    spans = [span.high_min for step in recipe.steps for span in step.durations if span.what == "simmer"]
    if simmer.minutes is None or not spans or spans[-1] > simmer.minutes.high:
        return
    end = (simmer.starts_at_min or 0.0) + simmer.minutes.high
    minutes = figure("mix_min").value
    of = {pack.component for pack in dry if pack.component}
    mixes = [pack for pack in dry if len(pack.items) > 1 or not of]
    if mixes:
        ledger.note(LEAVENED_LAST.says("mixing", figure("mix_min"), minutes=minutes))
        named = listed(short_names(packs)[pack.id] for pack in mixes)
        do = f"Mix {named} with its liquid, just until it comes together; then on the pot at once, lid shut."
        yield Task(end - spans[-1] - minutes, "fire", do, minutes, "the mixing")


def _kneaded(packs: Sequence[Pack], stages: Sequence[Stage], begun: Sequence[Begun]) -> Iterator[Task]:
    """A dough that was not made at home is kneaded before its first rise."""
    place = next(place for place, stage in enumerate(stages) if stage.kind == "rise")
    if any(pack.kind == "prepped" and "dough" in pack.label for pack in packs):
        return
    start = min([stages[place].starts_at_min or 0.0, *(one.at_min for one in begun if one.stage == place)])
    minutes = figure("knead_min").value
    yield Task(
        start - minutes,
        "fire",
        "Mix and knead the dough, as the steps for camp say.",
        minutes,
        "the kneading",
    )


def _filled(stages: Sequence[Stage], begun: Sequence[Begun]) -> Iterator[Task]:
    """What is baked first of all is put together while the coals catch; what waits, before its wait."""
    minutes = figure("fill_min").value
    cooking = [stage for stage in stages if stage.kind not in ("light", "rise")]
    first = min((one.at_min for one in begun), default=None)
    if first is not None:
        yield Task(first - minutes, "fire", FILL, minutes, "putting it together")
    elif cooking and next((stage.kind for stage in cooking if stage.kind not in EMPTY), None) in OVEN:
        yield Task((cooking[0].starts_at_min or 0.0) - minutes, "fire", FILL, minutes, "putting it together")
