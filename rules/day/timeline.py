"""The day put together: home first, then the road, the fire, the meal and what comes after it (handbook, section 8).

Minutes come from the coal plan, the method and the cooler; clock times from `clock`. What one cook cannot do at once
says so.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rules import clock
from rules.because import Ledger, Rule
from rules.cautions import is_hot
from rules.circumstances import Day
from rules.cold.hours import in_cooler
from rules.day import fire, home, road, waiting
from rules.day.figures import figure
from rules.day.mixing import mixing
from rules.day.task import Task, in_order
from rules.dish import Dish
from rules.plan import Cold, FatUse, Heat, Moment, Pack
from rules.recipe import Recipe
from rules.safety import figure as safety

BACKWARDS = Rule(
    id="day.backwards",
    because="everything is counted back from the moment of eating: the first coals are lit {minutes:.0f} minutes before it",
)
SHORT_TRIP = Rule(
    id="day.short-trip",
    because="the work at camp begins {minutes:.0f} minutes before the meal, so the cooler is shut and on its way before"
    " that, although it was said to hold the food for {hours:g} hours",
)


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
    at_camp = [
        *fire.lightings(heat),
        *(
            _at_the_fire(recipe, dish, packs, fat, heat, ledger)
            if heat
            else _without_fire(recipe, packs, camp_steps)
        ),
    ]
    begins = min((task.at_min for task in at_camp), default=0.0)
    shut = _shut(begins, day, ledger)
    first = min(begins + figure("before_fire_min").value, 0.0) if heat else begins
    wanted = min([road.first_use(heat), *(task.at_min for task in at_camp if task.name in FOOD_WORK)])
    tasks = [
        *home.at_home(recipe, packs, cold, home_steps, shut, day, ledger),
        *road.soaking(recipe, first, shut, day, ledger),
        *road.on_the_road(packs, cold, wanted, shut, begins, day, ledger),
        *at_camp,
        Task(0.0, "meal", "Serve and eat."),
        *_after_the_meal(heat, cold, day),
    ]
    return tuple(
        Moment(at_min=task.at_min, clock=clock.told(day, task.at_min), do=task.do, kind=task.kind)
        for task in in_order(tasks, ledger)
    )


#: Work that takes food out of its packs before the first stage.
FOOD_WORK = frozenset({"the mixing", "the kneading", "putting it together"})


def _shut(begins: float, day: Day, ledger: Ledger) -> float:
    """When the cooler is shut: as long before the meal as the cook says, and before the work at camp begins."""
    said = -60 * in_cooler(day)
    latest = begins - figure("arrive_min").value - figure("leave_min").value
    if said <= latest:
        return said
    ledger.note(SHORT_TRIP.says("day", figure("arrive_min"), minutes=-begins, hours=in_cooler(day)))
    return latest


def _at_the_fire(
    recipe: Recipe, dish: Dish, packs: Sequence[Pack], fat: Sequence[FatUse], heat: Heat, ledger: Ledger
) -> Iterator[Task]:
    stages = [stage for stage in heat.stages if stage.kind != "light" and stage.starts_at_min is not None]
    begun = waiting.at_camp(recipe, packs, heat)
    work = [*mixing(recipe, dish, packs, heat, begun, ledger)]
    lights = [batch.light_at_min for batch in heat.fuel.batches]
    first = min(
        [*lights, *(stage.starts_at_min or 0.0 for stage in stages), *(task.at_min for task in work)],
        default=-figure("no_coals_camp_min").value,
    )
    ledger.note(BACKWARDS.says("day", minutes=-min(lights, default=first)))
    yield fire.laid_out(packs, first - figure("before_fire_min").value)
    yield from work
    yield from (Task(one.at_min, "fire", waiting.told(one)) for one in begun)
    yield from fire.staged(stages, recipe, fat)
    yield from fire.washing(recipe, stages)
    yield from fire.done(recipe, heat, stages)


def _without_fire(recipe: Recipe, packs: Sequence[Pack], camp_steps: Sequence[str]) -> Iterator[Task]:
    if not camp_steps:
        return
    begun = waiting.at_camp(recipe, packs, None)
    minutes = figure("no_coals_camp_min").value
    grills = recipe.family == "grill or smoke"
    extra = figure("grill_min").value if grills else 0.0
    first = min([-minutes - extra, *(one.at_min - minutes / 2 for one in begun)])
    do = "Wash hands, lay out bowl and packs; put it together as the steps for camp say."
    yield Task(first, "fire", do, minutes / 2, "putting it together")
    yield from (Task(one.at_min, "fire", waiting.told(one)) for one in begun)
    if grills:
        do = "Make the fire for the grill and cook over it, as the steps for camp say."
        yield Task(-figure("grill_min").value, "fire", do, minutes / 2, "the grilling")


def _after_the_meal(heat: Heat | None, cold: Cold | None, day: Day) -> Iterator[Task]:
    if heat:
        out = figure("coals_out_min").value
        yield Task(
            out, "after", "Coals out: drown, stir, drown again, feel; never cold water on the hot pot.", 3.0
        )
        yield Task(
            out + figure("ash_cold_min").value,
            "after",
            "Feel the ash again; stone cold, it goes into the lidded metal can.",
        )
    if heat or cold:
        limit = 60 * safety("out_hot_h" if is_hot(day) else "out_h").value
        yield Task(
            limit, "after", "Leftovers are in shallow boxes in the cooler by now, or thrown away.", 2.0
        )
