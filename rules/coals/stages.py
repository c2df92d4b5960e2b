"""The coal plan: from dish and method to stages with coals, minutes, looks, fuel and the signs of doneness.

Handbook chapters 5, 7 and 8. The stages come from `course`, their counts from `counts`, their times and fuel from
`schedule`; where charcoal has no part the plan says so in one sentence.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import cache

import msgspec

from rules.because import Ledger, Rule
from rules.circumstances import Day
from rules.coals.counts import ALL_UNDER, Coals, coals
from rules.coals.course import course
from rules.coals.doneness import doneness
from rules.coals.drafts import Draft, heat_figure
from rules.coals.figures import figure
from rules.coals.fire import Pot
from rules.coals.fuel import chimney_min, fuel, reasons, stacked
from rules.coals.highground import boiling_f, boils_at
from rules.coals.kitchen import BAKED
from rules.coals.load import load
from rules.coals.pattern import pattern
from rules.coals.renew import renewing
from rules.coals.schedule import Timed, fired
from rules.coals.turning import turn_every, turning
from rules.coals.weather import wind_factor
from rules.dish import Dish
from rules.foods import Item
from rules.habit import minutes_factor as own_minutes
from rules.habit.record import TIMED
from rules.method import Graph
from rules.plan import Batch, Depth, Doneness, FatUse, Fuel, Heat, Minutes, PotPlan, Stage
from rules.pot import minutes_factor
from rules.recipe import Family, Recipe
from rules.table import Row, read
from rules.waits import pauses, rest_after

NO_FIRE: dict[Family, str] = {
    "no cook": "Nothing in it is cooked, so it needs no coals: packs, cooler and a clean board do the job.",
    "preserve or ferment": "This is no camp job: make it at home, where it can be watched and kept clean, and bring"
    " what is ready; no coals are planned.",
    "grill or smoke": "It wants an open grill or smoke, which a closed Dutch oven does not give: grill it over a fire"
    " or grate of its own; no coals are planned for the pot.",
}
NOTHING_HEATED = "The method heats nothing, so no coals are planned."
FIRE_BAN = (
    "Charcoal is not allowed today: no coals are lit, and the day's fire restrictions go before this plan. "
)
ON_A_STOVE = "On a camp stove, where stoves are allowed, the same dish works: {stages}."
NO_STOVE = "A bake cannot be guessed on a stove: choose another dish for this day."
#: Families that a stove cooks as well, safely.
STOVE_FAMILIES: frozenset[Family] = frozenset(
    {"stew or braise", "soup", "beans or chili", "pan fry or saute", "griddle", "boil or steam"}
)

LOOK = Rule(
    id="look.first",
    because="look first at two thirds of the low end, {minutes:.0f} minutes: every peek costs heat, so few and short; if it"
    " needs more, turn once more and give five minutes",
)
HIGH_GROUND = Rule(
    id="heat.high-ground",
    because="at {feet:,.0f} ft water boils cooler: {kind} takes a quarter longer",
)
PAUSE = Rule(
    id="heat.pause",
    because="before the {kind} the food waits {minutes:.0f} minutes off the coals, as the method says: the pot is warmed"
    " again for it",
)
EACH_POT = Rule(
    id="fuel.pots",
    because="each of the {pots} pots has coals of its own: the counts are for one, the fuel is for all",
)
LONGER_HIGH_UP = frozenset({"simmer", "boil", "roast"})
LOOKED_AT = frozenset({"bake", "roast"})


class Look(Row, frozen=True, kw_only=True):
    """What to look for in a stage."""

    id: str
    look: str


@cache
def looks() -> dict[str, Look]:
    """By key of the stage."""
    return {row.id: row for row in read("stage_looks.csv", Look)}


def plan_heat(
    recipe: Recipe,
    items: tuple[Item, ...],
    graph: Graph,  # noqa: ARG001 (one signature for every room that plans)
    dish: Dish,
    pot: PotPlan | None,
    fat: Sequence[FatUse],
    day: Day,
    ledger: Ledger,
) -> tuple[Heat | None, str | None]:
    """The coal plan of a dish, or None and the sentence that says why charcoal has no part in it."""
    if dish.family in ("preserve or ferment", "grill or smoke"):
        return None, NO_FIRE[dish.family]
    told = course(recipe, items, dish, fat, day, ledger)
    if not told:
        return None, NO_FIRE.get(dish.family, NOTHING_HEATED)
    drafts = _adjusted(_paused(told, recipe, ledger), recipe, items, dish, pot, day, ledger)
    if not day.charcoal:
        return None, FIRE_BAN + _without_coals(drafts, dish.family)
    done = doneness(recipe, items, dish, ledger)
    return _heated(drafts, items, pot, done, recipe, day, ledger), None


def _paused(drafts: Sequence[Draft], recipe: Recipe, ledger: Ledger) -> list[Draft]:
    """The drafts with the minutes that food, cooked once, is put together and chills or soaks before it goes on."""
    found = pauses(recipe, [draft.kind for draft in drafts])
    for place, minutes in found.items():
        ledger.note(PAUSE.says(drafts[place].kind, minutes=minutes, kind=drafts[place].kind))
    return [
        msgspec.structs.replace(draft, pause_min=found.get(place, 0.0)) for place, draft in enumerate(drafts)
    ]


def _without_coals(drafts: Iterable[Draft], family: Family) -> str:
    if family not in STOVE_FAMILIES:
        return NO_STOVE
    stages = ", ".join(
        f"{draft.kind} {_span(draft.low_min, draft.high_min)} minutes"
        for draft in drafts
        if draft.kind != "warm"
    )
    return ON_A_STOVE.format(stages=stages)


def _span(low: float, high: float) -> str:
    """Two ends in whole figures, one where they agree."""
    return f"{low:.0f}" if round(low) == round(high) else f"{low:.0f} to {high:.0f}"


def _adjusted(
    drafts: Sequence[Draft],
    recipe: Recipe,
    items: tuple[Item, ...],
    dish: Dish,
    pot: PotPlan | None,
    day: Day,
    ledger: Ledger,
) -> list[Draft]:
    """The drafts with the minutes of this pot and this height.

    What another depth does is an estimate: it moves the far end of the range and leaves the recipe's own time in it.
    """
    depth = minutes_factor(recipe, items, dish.family, pot, ledger) if dish.family in BAKED else 1.0
    high = heat_figure("high ground time")
    is_high = day.elevation_ft >= heat_figure("high ground").value
    found = []
    for draft in drafts:
        low, high_end = draft.low_min, draft.high_min
        if draft.is_main and draft.kind in LOOKED_AT:
            low, high_end = low * min(depth, 1.0), high_end * max(depth, 1.0)
        if is_high and draft.kind in LONGER_HIGH_UP and draft.look != "bring up":
            low, high_end = low * high.value, high_end * high.value
            ledger.note(HIGH_GROUND.says(draft.kind, high, feet=day.elevation_ft, kind=draft.kind))
        if draft.is_main and draft.kind in TIMED:
            own = own_minutes(day, draft.kind, *_size(pot))
            low, high_end = low * own.factor, high_end * own.factor
            ledger.note(*own.reasons)
        found.append(msgspec.structs.replace(draft, low_min=_round(low), high_min=_round(high_end)))
    return found


def _size(pot: PotPlan | None) -> tuple[int, Depth]:
    """Diameter [in] and depth of the pot; a 12-inch shallow one where none is chosen."""
    return (pot.diameter_in, pot.depth) if pot else (12, "shallow")


def _round(minutes: float) -> float:
    """Minutes that a cook would say: whole ones."""
    return max(float(round(minutes)), 1.0)


def _heated(
    drafts: Sequence[Draft],
    items: tuple[Item, ...],
    pot: PotPlan | None,
    done: tuple[Doneness, ...],
    recipe: Recipe,
    day: Day,
    ledger: Ledger,
) -> Heat:
    diameter, depth = _size(pot)
    pots = pot.count if pot else 1
    counted: list[Coals | None] = [
        None
        if draft.kind == "rise"
        else coals(draft.way, diameter_in=diameter, depth=depth, day=day, temp_f=draft.temp_f)
        for draft in drafts
    ]
    rest = _rest(done, recipe)
    stages, batches = fired(
        drafts,
        counted,
        rest_min=rest,
        pot=Pot(diameter_in=diameter, depth=depth, load=load(items, pots)),
        day=day,
    )
    made = [_stage(stage, diameter, depth, day, ledger) for stage in stages]
    saves, stacking = stacked(made, pots)
    of_all = [Batch(light_at_min=batch.light_at_min, count=batch.count * pots) for batch in batches]
    total = fuel(of_all, stacked_saves=saves)
    _tell(stages, total, pots, day, ledger)
    ledger.note(*stacking)
    return Heat(stages=tuple(_lit(made)), fuel=total, doneness=done)


def _rest(done: Iterable[Doneness], recipe: Recipe) -> float:
    """Minutes between the last coals and the meal: the meat's rest, the text's, and the first plates."""
    serve = figure("serve").value
    needed = [check.rest_min for check in done if check.rest_min]
    return max([serve, *needed, rest_after(recipe)])


def _tell(stages: Sequence[Timed], total: Fuel, pots: int, day: Day, ledger: Ledger) -> None:
    for stage in stages:
        if stage.coals is not None:
            ledger.note(
                *(msgspec.structs.replace(why, about=stage.draft.kind) for why in stage.coals.reasons)
            )
            renewed = renewing(stage.refresh, stage.draft.high_min)
            ledger.note(*(msgspec.structs.replace(why, about=stage.draft.kind) for why in renewed))
            ledger.note(*stage.reasons)
    if any(stage.draft.kind in ("boil", "simmer") for stage in stages):
        ledger.note(*boils_at(day.elevation_ft))
    if pots > 1:
        ledger.note(EACH_POT.says("fuel", pots=pots))
    ledger.note(*reasons(total))


def _stage(stage: Timed, diameter: int, depth: Depth, day: Day, ledger: Ledger) -> Stage:
    draft, its = stage.draft, stage.coals
    first_look = turn = None
    if its is not None and draft.kind in LOOKED_AT:
        faster = wind_factor(diameter, depth, its.aim_f, day.air_f, day.wind, day.screen)
        share = heat_figure("first look")
        first_look = max(round(draft.low_min * share.value / faster), 1)
        ledger.note(LOOK.says("first look", share, minutes=first_look))
        turn = turn_every(draft.way, its.aim_f, day)
        if turn is not None and turn < draft.high_min:
            ledger.note(turning(turn))
    return Stage(
        kind=draft.kind,
        minutes=Minutes(low=draft.low_min, high=draft.high_min),
        temp_f=_aim_f(draft, its, day),
        top=its.top if its else 0,
        under=its.under if its else 0,
        turn_every_min=turn,
        first_look_min=first_look,
        starts_at_min=stage.starts_at_min,
        look_for=looks()[draft.look].look,
        pattern=pattern(diameter, its.top, its.under, spread=draft.way in ALL_UNDER) if its else None,
        refresh=stage.refresh,
    )


def _aim_f(draft: Draft, its: Coals | None, day: Day) -> float | None:
    """The temperature inside the pot [°F]; water does not pass the boiling point of the day's height."""
    if its is None:
        return draft.temp_f
    is_water = draft.kind in ("boil", "simmer") and draft.temp_f is None
    return round(min(its.aim_f, boiling_f(day.elevation_ft)) if is_water else its.aim_f)


def _lit(stages: Sequence[Stage]) -> list[Stage]:
    """The stages with the chimney before the first that needs coals."""
    first = next((place for place, stage in enumerate(stages) if stage.top + stage.under), None)
    if first is None:
        return list(stages)
    at = (stages[first].starts_at_min or 0.0) - chimney_min()
    light = Stage(
        kind="light",
        minutes=Minutes(low=15, high=chimney_min()),
        starts_at_min=at,
        look_for=looks()["light"].look,
    )
    return sorted([light, *stages], key=lambda stage: stage.starts_at_min or 0.0)
