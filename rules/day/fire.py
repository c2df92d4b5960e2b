"""The part of the day at the fire: chimney, stages, turns, looks, fresh coals, and the moment when it may be done."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rules.day.figures import figure
from rules.day.task import Task
from rules.day.waiting import long
from rules.foods import weigh
from rules.hazards import JUICY, hazard_of, only_named
from rules.plan import Batch, FatUse, Heat, Pack, Stage, StageKind
from rules.recipe import Recipe
from rules.safety import limit
from rules.waits import rest_after, waits

STARTS: dict[StageKind, str] = {
    "warm": "Warm the pot with its lid: {coals}.",
    "heat fat": "Heat the fat: {coals}.",
    "brown": "Brown: {coals}.",
    "fry": "Fry: {coals}.",
    "boil": "Bring to the boil: {coals}.",
    "simmer": "Simmer: {coals}.",
    "bake": "Coals on, bake: {coals}.",
    "roast": "Coals on, roast: {coals}.",
    "brown top": "Coals to the lid to brown the top: {coals}.",
    "rise": "Let the dough rise near warmth.",
    "keep warm": "Keep warm at {hot} or above: {coals}.",
}
#: Stages in which the dish becomes done.
COOKING: frozenset[StageKind] = frozenset({"fry", "boil", "simmer", "bake", "roast", "brown top"})
MEAT_GOES_IN: frozenset[StageKind] = COOKING | {"brown"}
#: The cook stays beside these.
HOT_FAT = "the fat over the coals"
ATTENDED: dict[StageKind, str] = {"brown": "the browning", "fry": "the frying"}
THIRDS = "lid a third one way, pot a third the other way"
TURN = f"Turn: {THIRDS}; keep the lid shut. So every {{every}} minutes."
TURN_AGAIN = "Turn again."
LOOK = "First look: lift the lid straight up, look, shut it again"
NOT_YET = " If it is not, turn once more and give it five minutes."
#: A turn so near to a look or to the end of a stage is the same walk to the pot [min].
ONE_WALK = 3


def lightings(heat: Heat | None) -> Iterator[Task]:
    """Every lighting of the chimney."""
    for number, batch in enumerate(heat.fuel.batches if heat else ()):
        yield Task(batch.light_at_min, "light", _lighting(batch, number), 3.0)


def _lighting(batch: Batch, number: int) -> str:
    more = "" if number == 0 else " more"
    briquettes = _briquettes(batch.count).partition(" ")[2]
    return f"Light {batch.count}{more} {briquettes} in the chimney; ready when they are grey with ash."


def laid_out(packs: Sequence[Pack], at_min: float) -> Task:
    """Hands, fire place, water, packs."""
    water = "; draw and treat the water" if any(pack.kind == "water" for pack in packs) else ""
    do = f"Wash hands, clear the fire place, water and shovel at hand; lay out bowl, packs and lid lifter{water}."
    return Task(at_min, "fire", do, figure("before_fire_min").value, "laying out")


def staged(stages: Sequence[Stage], recipe: Recipe, fat: Sequence[FatUse]) -> Iterator[Task]:
    """Every stage with its turns, its first look and its fresh coals."""
    cooking = [stage for stage in stages if stage.kind in COOKING]
    for stage in stages:
        start = stage.starts_at_min or 0.0
        do = " ".join(part for part in (_begun(stage, recipe, fat), _sentence(stage.look_for)) if part)
        beside = _beside(stage, recipe)
        hands = stage.minutes.high if stage.minutes and beside else 3.0
        yield Task(start, "coals", do, hands, beside)
        yield from _turned(stage, is_last=bool(cooking) and stage is cooking[-1])
        for fresh in stage.refresh:
            yield Task(fresh.at_min, "coals", f"Fresh coals on: {_two(fresh.top, fresh.under)}.", 3.0)


def _beside(stage: Stage, recipe: Recipe) -> str:
    """What the cook stays beside, empty where the pot may be left alone."""
    if stage.kind == "heat fat" and recipe.family == "deep fry":
        return HOT_FAT
    return ATTENDED.get(stage.kind, "")


def _begun(stage: Stage, recipe: Recipe, fat: Sequence[FatUse]) -> str:
    do = STARTS.get(stage.kind, "{coals}.").format(coals=_coals(stage), hot=limit("hot_f"))
    if stage.kind != "heat fat":
        return do
    hot = [use.ingredient for use in fat if use.goes in ("hot pot first", "browning")]
    named = ", ".join(dict.fromkeys(recipe.ingredients[index].name for index in hot))
    return do.replace("the fat", named) if named else do


def _turned(stage: Stage, *, is_last: bool) -> Iterator[Task]:
    """The turns and the first look; a turn beside the look, the end or the sign of doneness is one walk with it."""
    start = stage.starts_at_min or 0.0
    end = start + (stage.minutes.high if stage.minutes else 0.0)
    done = start + stage.minutes.low if stage.minutes and is_last else end
    look = start + stage.first_look_min if stage.first_look_min is not None else None
    every = stage.turn_every_min
    turns = [start + every * time for time in range(1, int((end - start) // every) + 1)] if every else []
    turns = [at for at in turns if end - at >= ONE_WALK and (abs(at - done) >= ONE_WALK)]
    for number, at in enumerate(turns):
        if look is not None and abs(at - look) <= ONE_WALK:
            yield Task(max(at, look), "coals", f"{LOOK}, and turn: {THIRDS}.", 2.0)
            look = None
        else:
            yield Task(at, "coals", TURN_AGAIN if number else TURN.format(every=every))
    if look is not None:
        yield Task(look, "coals", f"{LOOK}.")


def washing(recipe: Recipe, stages: Sequence[Stage]) -> Iterator[Task]:
    """Once the raw meat is in the pot, hands and tools are washed or changed."""
    first = next((stage for stage in stages if stage.kind in MEAT_GOES_IN), None)
    items = weigh(recipe)
    is_raw = any(hazard_of(item) in JUICY for item in items) or any(
        only_named(kind, recipe, items) for kind in JUICY
    )
    if first is not None and is_raw:
        do = "Once the raw meat or fish is in: wash hands, board and knife; a clean utensil from here on."
        yield Task(first.starts_at_min or 0.0, "fire", do, 2.0)


def done(recipe: Recipe, heat: Heat, stages: Sequence[Stage]) -> Iterator[Task]:
    """The first moment at which the dish may be done, and its rest."""
    cooking = [stage for stage in stages if stage.kind in COOKING]
    if not cooking:
        return
    last = cooking[-1]
    start = last.starts_at_min or 0.0
    early = start + (last.minutes.low if last.minutes else 0.0)
    late = start + (last.minutes.high if last.minutes else 0.0)
    signs = "; ".join(dict.fromkeys(sign.sign for sign in heat.doneness)) or last.look_for
    again = NOT_YET if last.turn_every_min and early < late else ""
    yield Task(min(early, -1.0), "fire", f"It may be done from now on. {_sentence(signs)}{again}".strip())
    if late < -1:
        yield Task(late, "fire", _off(recipe, -late), 2.0)


def _off(recipe: Recipe, minutes: float) -> str:
    """Off the coals, and how long it stands: as the method says, else until the plates are ready."""
    rest = f" {long(minutes)}" if rest_after(recipe) else ""
    after = [wait for wait in waits(recipe) if wait.fire is None and wait.cooked]
    longer = next((wait.low_min for wait in after if wait.low_min > minutes or wait.what == "chill"), None)
    ahead = f" It wants {long(longer)} before it is eaten: cook it so much earlier." if longer else ""
    return f"Off the coals; let it rest{rest}, lid ajar.{ahead}"


def _sentence(words: str) -> str:
    return f"{words[:1].upper()}{words[1:].rstrip('.')}." if words else ""


def _coals(stage: Stage) -> str:
    span = f", {_span(stage.minutes.low, stage.minutes.high)}" if stage.minutes else ""
    return f"{_two(stage.top, stage.under)}{span}"


def _two(top: int, under: int) -> str:
    if not top:
        return f"{_briquettes(under)}, all under the pot"
    return f"{_briquettes(top)} on the lid, {under} under the pot"


def _briquettes(count: int) -> str:
    return f"{count} briquette{'' if count == 1 else 's'}"


def _span(low: float, high: float) -> str:
    return f"{low:.0f} minutes" if round(low) == round(high) else f"{low:.0f} to {high:.0f} minutes"
