"""Waits of the method at camp: when each begins, so that it is over when the coals want the food."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from rules.day.figures import figure
from rules.plan import Heat, Pack, Stage
from rules.recipe import Recipe
from rules.waits import Wait, stage_after, waits
from rules.waits import figure as wait_figure

#: Packs in which a mixture was made at home, with its waiting.
MADE = frozenset({"prepped", "wet mix"})
WORDS = {
    "chill": "Covered, into the cooler: it chills now, {span}.",
    "marinate": "Meat and marinade into their bag and back into the cooler: {span}.",
    "rise": "Cover it and let it rise, out of sun and wind: {span}.",
    "rest": "It rests now: {span}.",
}


class Begun(NamedTuple):
    """A wait with the minute at which it begins; `stage` is the stage it ends at, None for the table or a grill."""

    at_min: float
    wait: Wait
    stage: int | None


def is_at_home(wait: Wait, packs: Sequence[Pack]) -> bool:
    """Whether all that waits was put together at home: it is in bags that were made there."""
    homes = {
        part.ingredient: pack.kind
        for pack in sorted(packs, key=lambda pack: pack.kind in MADE)
        for part in pack.items
    }
    return bool(wait.foods) and all(homes.get(food) in MADE for food in wait.foods)


def at_camp(recipe: Recipe, packs: Sequence[Pack], heat: Heat | None) -> list[Begun]:
    """The waits of the method that fall at camp before a fire or before the meal, in the order of the day."""
    found: list[Begun] = []
    ends: dict[int | None, float] = {}
    for wait in reversed(_waited(recipe, packs, heat)):
        stage = _ends_at(wait, recipe, heat)
        end = ends.get(stage, _begins(stage, wait, heat))
        begin = end - wait.low_min
        ends[stage] = begin - figure("wait_work_min").value
        found.append(Begun(begin, wait, stage))
    return found[::-1]


def told(begun: Begun) -> str:
    """The wait in one sentence."""
    return WORDS[begun.wait.what].format(span=long(begun.wait.low_min, at_least=True))


def long(minutes: float, *, at_least: bool = False) -> str:
    """A length of time as it is said: 45 minutes, 2 hours, 21 days."""
    hours = minutes / 60
    if minutes < 90:
        said = f"{minutes:.0f} minutes"
    else:
        said = f"{hours / 24:g} days" if hours >= 48 else f"{hours:.3g} hours"
    return f"{said} at least" if at_least else said


def _waited(recipe: Recipe, packs: Sequence[Pack], heat: Heat | None) -> list[Wait]:
    rises = heat is not None and any(stage.kind == "rise" for stage in heat.stages)
    return [
        wait
        for wait in waits(recipe)
        if wait.low_min >= wait_figure("short_wait_min")
        and not is_at_home(wait, packs)
        and not (wait.what == "rise" and rises)
        and not (wait.fire is None and wait.cooked)
        and not _soaks_long(wait)
    ]


def _soaks_long(wait: Wait) -> bool:
    """Beans and grains that soak for hours: a rule of their own says when. Bread under a custard does not."""
    return wait.deed == "soak" and wait.low_min > wait_figure("longest_pause_min")


def _ends_at(wait: Wait, recipe: Recipe, heat: Heat | None) -> int | None:
    if heat is None:
        return None
    kinds = [stage.kind for stage in heat.stages]
    if "rise" in kinds and any(later.what == "rise" and later.at > wait.at for later in waits(recipe)):
        return kinds.index("rise")
    return stage_after(wait, kinds)


def _begins(stage: int | None, wait: Wait, heat: Heat | None) -> float:
    """When what the food waits for begins."""
    if heat is not None and stage is not None:
        warms = wait.cooked and stage > 0 and heat.stages[stage - 1].kind == "warm"
        return heat.stages[stage - 1 if warms else stage].starts_at_min or 0.0
    if heat is not None:
        return min((one.starts_at_min or 0.0 for one in _cooking(heat)), default=0.0)
    return -figure("grill_min" if wait.fire else "plate_min").value


def _cooking(heat: Heat) -> Iterator[Stage]:
    return (one for one in heat.stages if one.kind != "light" and one.starts_at_min is not None)
