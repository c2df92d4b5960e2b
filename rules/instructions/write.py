"""The steps at home and the steps at camp, written from packs, fat, pot and coals."""

from __future__ import annotations

from rules.because import Ledger, Rule
from rules.circumstances import Day
from rules.dish import Dish
from rules.foods import Item
from rules.instructions.camp import Camp
from rules.instructions.home import home_steps
from rules.instructions.spare import spare
from rules.method import Graph
from rules.packs import Contents
from rules.plan import FatUse, Heat, Pack, PotPlan
from rules.recipe import Recipe

HOME = Rule(
    id="steps.home",
    because="measuring, cutting and mixing are done at home: {count} steps there leave {camp} at camp",
    source="handbook of the trade, chapter 1",
)
NOT_A_CAMP_JOB = Rule(
    id="steps.not-camp",
    because="a {family} is made at home and comes along ready",
    source="handbook of the trade, chapter 7",
)


def write(
    recipe: Recipe,
    items: tuple[Item, ...],
    graph: Graph,
    dish: Dish,
    packs: tuple[Pack, ...],
    fat: tuple[FatUse, ...],
    pot: PotPlan | None,  # noqa: ARG001 - named by the coal plan
    heat: Heat | None,
    day: Day,
    ledger: Ledger,
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Home steps and camp steps, each a few plain sentences."""
    inside = Contents(recipe, items, graph, dish, day, packs)
    home = home_steps(recipe, packs, inside, day)
    if dish.family == "preserve or ferment":
        ledger.note(NOT_A_CAMP_JOB.says("steps", family=dish.family))
        return home, ("Nothing is left to do at camp: it comes along ready.",)
    writer = Camp(recipe, graph, packs, inside, fat, heat, day)
    told = writer.told()
    missed = writer.missed()
    if missed:
        writer = Camp(recipe, graph, packs, inside, fat, heat, day, also=missed)
        told = writer.told()
    camp = writer.steps(told, dish.family, ledger)
    extra = spare(camp, fat, ledger)
    if extra:
        home = (*home[:-1], extra, *home[-1:])
    ledger.note(HOME.says("steps", count=len(home), camp=len(camp)))
    return home, camp
