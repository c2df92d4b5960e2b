"""The day: everything that needs hands, backwards from the moment of eating (handbook, section 8).

Home first (shop, mix, freeze, pack, leave), then the road (thawing), then the fire (chimney, stages, turns, fresh
coals) and what comes after the meal. Minutes come from the coal plan and the cooler; clock times from `clock`.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from rules import clock, table
from rules.because import Ledger, Rule
from rules.cautions import is_hot
from rules.circumstances import Day
from rules.cold.hours import in_cooler
from rules.dish import Dish
from rules.foods import weigh
from rules.hazards import JUICY, dry_kidney_beans, hazard_of, only_named
from rules.plan import Batch, Cold, FatUse, Heat, Moment, MomentKind, Pack, Stage, StageKind
from rules.recipe import Recipe
from rules.wording import mass, short_names

BACKWARDS = Rule(
    id="day.backwards",
    because="everything is counted back from the moment of eating: the first coals are lit {minutes:.0f} minutes before it",
)
LEAVENED_LAST = Rule(
    id="day.mix-last",
    because="wet and dry meet {minutes:.0f} minutes before the pot is ready: the leavener spends its gas within minutes",
)
SOAKED = Rule(
    id="day.soak",
    because="{food} soaks before it is cooked, at least {hours:.0f} hours, and the water is poured away",
)
EVENING = Rule(
    id="day.evening",
    because="kitchen work that would fall between {night:.0f}:00 and {morning:.0f}:00 is done on the evening before",
)

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
    "keep warm": "Keep warm at 140 °F or above: {coals}.",
}
#: Stages in which the dish becomes done.
COOKING: frozenset[StageKind] = frozenset({"fry", "boil", "simmer", "bake", "roast", "brown top"})
MEAT_GOES_IN: frozenset[StageKind] = COOKING | {"brown"}
#: At home nobody looks at the minute.
QUARTER_HOUR = 15


class DayFigure(table.Row, frozen=True, kw_only=True):
    """One length of time or hour of the day."""

    id: str
    value: float
    unit: str


def figure(key: str) -> DayFigure:
    """The row of one figure of the day."""
    return next(row for row in table.read("day_figures.csv", DayFigure) if row.id == key)


def timeline(
    recipe: Recipe,
    dish: Dish,
    packs: Sequence[Pack],
    fat: Sequence[FatUse],
    heat: Heat | None,
    cold: Cold | None,
    home_steps: Sequence[str],
    camp_steps: Sequence[str],
    day: Day,
    ledger: Ledger,
) -> tuple[Moment, ...]:
    """The moments of the day in order; with clock times when the cook says when the meal is."""
    parts: tuple[tuple[MomentKind, Iterator[Timed]], ...] = (
        ("home", _at_home(recipe, packs, cold, home_steps, day, ledger)),
        ("road", _on_the_road(packs, cold, heat, day)),
        ("light", _lightings(heat)),
        ("fire", _fire(recipe, dish, packs, fat, heat, ledger) if heat else _without_fire(camp_steps)),
        ("meal", iter([(0.0, "Serve and eat.")])),
        ("after", _after_the_meal(heat, cold, day)),
    )
    moments = [(at, kind, do) for kind, part in parts for at, do in part]
    moments.sort(key=lambda moment: moment[0])
    return tuple(Moment(at_min=at, clock=clock.told(day, at), do=do, kind=kind) for at, kind, do in moments)


Timed = tuple[float, str]


# At home


def _at_home(
    recipe: Recipe,
    packs: Sequence[Pack],
    cold: Cold | None,
    home_steps: Sequence[str],
    day: Day,
    ledger: Ledger,
) -> Iterator[Timed]:
    names = short_names(packs)
    shut = -60 * in_cooler(day)
    made = [pack for pack in packs if pack.kind in ("dry mix", "wet mix", "prepped")]
    chilled = [pack for pack in made if pack.travels != "shelf"]
    frozen = [pack for pack in packs if cold is not None and pack.id in cold.frozen_packs]
    work = figure("home_min").value + figure("home_pack_min").value * len(made)
    # The bags are done so early that the cold has its time before the cooler is shut.
    wait = figure("fridge_min").value if chilled else 0.0
    if frozen and cold is not None and cold.freeze_hours:
        wait = 60 * cold.freeze_hours.high
    long = longest_wait(recipe) if any(pack.kind == "prepped" for pack in made) else 0.0
    wait += long
    begin = shut - wait
    if made or home_steps:
        begin = _not_at_night(shut - wait - work, day, ledger)
        then = f" Something in it waits {_long(long)}." if long else ""
        yield (
            begin,
            f"Kitchen work: {', '.join(names[pack.id] for pack in made) or 'the steps for home'}.{then}",
        )
        begin += work
    if frozen:
        yield begin, f"Lay flat in the freezer: {', '.join(names[pack.id] for pack in frozen)}."
    if cool := [names[pack.id] for pack in chilled if pack not in frozen]:
        yield begin, f"Into the refrigerator: {', '.join(cool)}."
    yield _not_at_night(begin - work - figure("shop_min").value, day, ledger), "Shop."
    yield shut, _packed(packs, cold, day)
    yield shut + figure("leave_min").value, "Leave."


def longest_wait(recipe: Recipe) -> float:
    """The longest rise, marinade or chill that is done at home before packing [min]; short ones hide in the work.

    What is preserved or fermented waits its longest time of any kind.
    """
    kept = recipe.family == "preserve or ferment"
    waits = [
        span.low_min
        for step in recipe.steps
        for span in step.durations
        if kept or span.what in ("marinate", "rise", "chill")
    ]
    return max((minutes for minutes in waits if minutes >= figure("long_wait_min").value), default=0.0)


def _long(minutes: float) -> str:
    hours = minutes / 60
    return f"{hours / 24:g} days" if hours >= 48 else f"{hours:g} hours"


def _packed(packs: Sequence[Pack], cold: Cold | None, day: Day) -> str:
    if cold is None:
        return "Pack the box and the kit, fuel counted."
    raw = ", raw meat at the bottom" if any(pack.label.startswith("raw ") for pack in packs) else ""
    ice = f", {mass(cold.ice_kg, day.units)} of ice on top" if cold.ice_kg else ""
    return f"Pack the cooler{raw}{ice}; shut it. Shelf packs and kit beside it, fuel counted."


def _not_at_night(at_min: float, day: Day, ledger: Ledger) -> float:
    """A quarter of an hour for work in the kitchen; what would fall into the night moves to the evening before it."""
    at_min = QUARTER_HOUR * math.floor(at_min / QUARTER_HOUR)
    moment = clock.at(day, at_min)
    if moment is None:
        return at_min
    night, morning, evening = (figure(key).value for key in ("night_from_h", "night_to_h", "evening_h"))
    hour = moment.hour + moment.minute / 60
    if morning <= hour < night:
        return at_min
    ledger.note(EVENING.says("day", figure("evening_h"), night=night, morning=morning))
    back = hour - evening if hour >= night else hour + 24 - evening
    return at_min - 60 * back


# On the road


def _on_the_road(packs: Sequence[Pack], cold: Cold | None, heat: Heat | None, day: Day) -> Iterator[Timed]:
    """When a frozen bag leaves the ice, so that it is soft when it is wanted."""
    if cold is None:
        return
    wanted = first_use(heat)
    names = short_names(packs)
    for bag in cold.bags:
        if bag.move_hours_before is not None:
            at = max(wanted - 60 * bag.move_hours_before, -60 * in_cooler(day))
            yield at, f"{names[bag.pack]}: {bag.advice}"


def first_use(heat: Heat | None) -> float:
    """When the first pack is wanted at the fire [min from the meal]."""
    starts = (
        [
            stage.starts_at_min
            for stage in heat.stages
            if stage.starts_at_min is not None and stage.kind != "light"
        ]
        if heat
        else []
    )
    return min(starts, default=-figure("no_coals_camp_min").value)


# At the fire


def _fire(
    recipe: Recipe, dish: Dish, packs: Sequence[Pack], fat: Sequence[FatUse], heat: Heat, ledger: Ledger
) -> Iterator[Timed]:
    stages = [stage for stage in heat.stages if stage.kind != "light" and stage.starts_at_min is not None]
    lights = [batch.light_at_min for batch in heat.fuel.batches]
    first = min(
        [*lights, *(stage.starts_at_min or 0.0 for stage in stages)],
        default=-figure("no_coals_camp_min").value,
    )
    ledger.note(BACKWARDS.says("day", minutes=-first))
    yield from _soaking(recipe, first, ledger)
    yield first - figure("before_fire_min").value, _laid_out(packs)
    for stage in stages:
        yield from _stage(stage, recipe, fat)
    yield from _washing(recipe, stages)
    yield from _mixing(dish, packs, stages, ledger)
    yield from _done(heat, stages)


def _soaking(recipe: Recipe, first: float, ledger: Ledger) -> Iterator[Timed]:
    """Dry beans are put in water so long before the fire, whether the text says so or leaves it at "overnight"."""
    items = weigh(recipe)
    soaked = {
        use.ingredient
        for step in recipe.steps
        for action in step.actions
        if action.does == "soak"
        for use in action.uses
        if (food := items[use.ingredient].food) is not None and food.group == "legume"
    }
    soaked |= {
        item.index
        for item in items
        if item.food is not None and item.food.group == "legume" and "soak" in (item.ingredient.prep or "")
    }
    beans = sorted(soaked | {item.index for item in dry_kidney_beans(recipe, items)})
    row = figure("soak_min")
    for index in beans:
        name = recipe.ingredients[index].name
        ledger.note(SOAKED.says("day", row, food=name, hours=figure("soak_least_min").value / 60))
        yield (
            first - row.value,
            f"{name}: into plenty of cold water to soak, at least {figure('soak_least_min').value / 60:.0f} hours; "
            "pour that water away before cooking and take fresh.",
        )


def _laid_out(packs: Sequence[Pack]) -> str:
    water = "; draw and treat the water" if any(pack.kind == "water" for pack in packs) else ""
    return f"Wash hands, clear the fire place, water and shovel at hand; lay out bowl, packs and lid lifter{water}."


def _lightings(heat: Heat | None) -> Iterator[Timed]:
    for number, batch in enumerate(heat.fuel.batches if heat else ()):
        yield batch.light_at_min, _lighting(batch, number)


def _lighting(batch: Batch, number: int) -> str:
    more = "" if number == 0 else " more"
    briquettes = _briquettes(batch.count).partition(" ")[2]
    return f"Light {batch.count}{more} {briquettes} in the chimney; ready when they are grey with ash."


def _stage(stage: Stage, recipe: Recipe, fat: Sequence[FatUse]) -> Iterator[Timed]:
    start = stage.starts_at_min or 0.0
    do = STARTS.get(stage.kind, "{coals}.").format(coals=_coals(stage))
    if stage.kind == "heat fat":
        named = ", ".join(
            dict.fromkeys(
                recipe.ingredients[use.ingredient].name
                for use in fat
                if use.goes in ("hot pot first", "browning")
            )
        )
        do = do.replace("the fat", named) if named else do
    yield start, " ".join(part for part in (do, _sentence(stage.look_for)) if part)
    end = start + (stage.minutes.high if stage.minutes else 0.0)
    if stage.turn_every_min:
        at = start + stage.turn_every_min
        while at < end - 1:
            yield at, "Turn: lid a third one way, pot a third the other way; keep the lid shut."
            at += stage.turn_every_min
    if stage.first_look_min is not None:
        yield start + stage.first_look_min, "First look: lift the lid straight up, look, shut it again."
    for fresh in stage.refresh:
        yield fresh.at_min, f"Fresh coals on: {_two(fresh.top, fresh.under)}."


def _sentence(words: str) -> str:
    return f"{words[:1].upper()}{words[1:].rstrip('.')}." if words else ""


def _washing(recipe: Recipe, stages: Sequence[Stage]) -> Iterator[Timed]:
    """Once the raw meat is in the pot, hands and tools are washed or changed."""
    first = next((stage for stage in stages if stage.kind in MEAT_GOES_IN), None)
    items = weigh(recipe)
    is_raw = any(hazard_of(item) in JUICY for item in items) or any(
        only_named(kind, recipe, items) for kind in JUICY
    )
    if first is not None and is_raw:
        yield (
            first.starts_at_min or 0.0,
            "Once the raw meat or fish is in: wash hands, board and knife; a clean utensil from here on.",
        )


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


def _mixing(dish: Dish, packs: Sequence[Pack], stages: Sequence[Stage], ledger: Ledger) -> Iterator[Timed]:
    """Wet to dry just before the pot is ready, where a leavened mix waits for its liquid."""
    dry = [pack for pack in packs if pack.kind == "dry mix"]
    baked = [stage for stage in stages if stage.kind in ("bake", "fry")]
    if not (dish.leavened and dry and baked):
        return
    names = short_names(packs)
    minutes = figure("mix_min").value
    ledger.note(LEAVENED_LAST.says("mixing", figure("mix_min"), minutes=minutes))
    yield (
        (baked[0].starts_at_min or 0.0) - minutes,
        f"Mix {', '.join(names[pack.id] for pack in dry)} with its liquid, just until it comes together; then into the pot at once.",
    )


def _done(heat: Heat, stages: Sequence[Stage]) -> Iterator[Timed]:
    """The first moment at which the dish may be done, its rest, and the meal."""
    cooking = [stage for stage in stages if stage.kind in COOKING]
    if cooking:
        last = cooking[-1]
        start = last.starts_at_min or 0.0
        early = start + (last.minutes.low if last.minutes else 0.0)
        late = start + (last.minutes.high if last.minutes else 0.0)
        signs = "; ".join(dict.fromkeys(done.sign for done in heat.doneness)) or last.look_for
        told = f" {signs[:1].upper()}{signs[1:]}".rstrip(".") + "." if signs else ""
        yield min(early, -1.0), f"It may be done from now on.{told}"
        if late < -1:
            yield late, "Off the coals; let it rest, lid ajar."


def _without_fire(camp_steps: Sequence[str]) -> Iterator[Timed]:
    if camp_steps:
        yield (
            -figure("no_coals_camp_min").value,
            "Wash hands, lay out bowl and packs; put it together as the steps for camp say.",
        )


# After the meal


def _after_the_meal(heat: Heat | None, cold: Cold | None, day: Day) -> Iterator[Timed]:
    if heat:
        out = figure("coals_out_min").value
        yield out, "Coals out: drown, stir, drown again, feel; never cold water on the hot pot."
        yield (
            out + figure("ash_cold_min").value,
            "Feel the ash again; stone cold, it goes into the lidded metal can.",
        )
    if heat or cold:
        limit = figure("leftovers_hot_min" if is_hot(day) else "leftovers_min").value
        yield limit, "Leftovers are in shallow boxes in the cooler by now, or thrown away."
