"""On the road: frozen bags leave the ice in time, beans go into their water."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rules import clock
from rules.because import Ledger, Rule
from rules.circumstances import Day
from rules.day.figures import figure
from rules.day.home import back_to_the_evening
from rules.day.task import Task
from rules.foods import weigh
from rules.hazards import dry_kidney_beans
from rules.plan import Cold, Heat, Pack
from rules.recipe import Recipe
from rules.wording import short_names

SOAKED = Rule(
    id="day.soak",
    because="{food} soaks before it is cooked, at least {hours:.0f} hours, and the water is poured away",
)
NIGHT_THAW = Rule(
    id="day.night-thaw",
    because="{pack} would go into the water at {clock}, when nobody is up: it thaws in the cooler instead, or is cooked"
    " from frozen",
)
AT_NIGHT = (
    " Nobody is up then: on the evening before lay it at the lid, away from the ice, and what is still hard in the"
    " morning is cooked half as long again."
)


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


def on_the_road(
    packs: Sequence[Pack],
    cold: Cold | None,
    wanted: float,
    shut: float,
    begins: float,
    day: Day,
    ledger: Ledger,
) -> Iterator[Task]:
    """When a frozen bag leaves the ice, so that it is soft when it is wanted.

    `wanted`, `shut` and `begins` are when the food is first used, the cooler shut and the camp work begun.
    """
    names = short_names(packs)
    for bag in cold.bags if cold else ():
        if bag.move_hours_before is None:
            continue
        at = wanted - 60 * bag.move_hours_before
        do = f"{names[bag.pack]}: {bag.advice}"
        if at < shut:
            do = f"Still at home, {do}"
        elif at < begins and back_to_the_evening(at, day):
            do += AT_NIGHT
            ledger.note(NIGHT_THAW.says(bag.pack, pack=names[bag.pack], clock=clock.told(day, at)))
        yield Task(at, "road", do)


def soaking(recipe: Recipe, first: float, shut: float, day: Day, ledger: Ledger) -> Iterator[Task]:
    """Dry beans are put in water so long before the fire, whether the text says so or leaves it at "overnight"."""
    items = weigh(recipe)
    row = figure("soak_min")
    told: dict[int, float] = {}
    for step in recipe.steps:
        for action in step.actions:
            if action.does != "soak":
                continue
            minutes = max(row.value, action.minutes.low_min if action.minutes else 0.0)
            for use in action.uses:
                food = items[use.ingredient].food
                if food is not None and food.group == "legume":
                    told[use.ingredient] = max(minutes, told.get(use.ingredient, 0.0))
    for item in items:
        is_soaked = (
            "soak" in (item.ingredient.prep or "") and item.food is not None and item.food.group == "legume"
        )
        if is_soaked:
            told.setdefault(item.index, row.value)
    for item in dry_kidney_beans(recipe, items):
        told.setdefault(item.index, row.value)
    for index, minutes in sorted(told.items()):
        name, least = recipe.ingredients[index].name, figure("soak_least_min").value / 60
        ledger.note(SOAKED.says("day", row, food=name, hours=least))
        at = first - minutes
        at -= back_to_the_evening(at, day)
        where = " in a jar with a lid, which rides in the cooler" if at < shut else ""
        yield Task(
            at,
            "road",
            f"{name}: into plenty of cold water{where} to soak, at least {least:.0f} hours; pour that water away before"
            " cooking and take fresh.",
        )
