"""One page: the order in which the rules are asked.

Reads like the handbook's table of contents. Nothing is decided here; each room is asked once, is told what was
decided before, and writes its reasons and questions into the ledger. Before a plan leaves, `promises.keep` holds it
against what every plan promises.
"""

from __future__ import annotations

from rules import cautions, foods, instructions, labels, method, promises, shopping, swaps
from rules import day as the_day
from rules import dish as the_dish
from rules import fat as the_fat
from rules import kit as the_kit
from rules import packs as the_packs
from rules import pot as the_pot
from rules.because import Ledger
from rules.circumstances import Day, checked
from rules.coals import stages
from rules.coals.curve import with_curve
from rules.cold import keep as cooler
from rules.plan import Plan
from rules.recipe import Recipe


def camp(recipe: Recipe, day: Day | None = None) -> Plan:
    """The camp version of a recipe on the day it is cooked.

    Raises:
        UsageProblem: when the day cannot be (a 13-inch pot).
        BrokenInvariant: when a rule would lose an ingredient or miscount a coal; no such plan leaves the house.
    """
    day = checked(day or Day())
    ledger = Ledger()
    _doubts_of_the_reader(recipe, ledger)

    # The recipe as it will be cooked: what is swapped or left out, and for how many.
    recipe = swaps.apply(recipe, day, ledger)
    scale = the_pot.scaling(recipe, day, ledger)
    items = foods.weigh(recipe, scale)

    # What it is, and what is done with what.
    graph = method.graph(recipe)
    dish = the_dish.decide(recipe, items, graph, ledger)

    # Where everything travels, where the fat goes, which pot.
    packs = the_packs.divide(recipe, items, graph, dish, day, ledger)
    fat = the_fat.place(recipe, items, graph, dish, day, ledger)
    pot = the_pot.choose(recipe, items, dish, day, ledger)

    # Heat and cold.
    heat, no_coals_because = stages.plan_heat(recipe, items, graph, dish, pot, fat, day, ledger)
    cold = cooler.cold(recipe, items, packs, day, ledger)

    # The work, the day, the lists.
    home_steps, camp_steps = instructions.write(
        recipe, items, graph, dish, packs, fat, pot, heat, day, ledger
    )
    timeline = the_day.timeline(recipe, dish, packs, fat, heat, cold, home_steps, camp_steps, day, ledger)
    allergens, check_label = cautions.allergens(recipe, items, ledger)
    plan = Plan(
        recipe=recipe,
        people=day.people,
        scale=scale,
        pot=pot if heat else None,
        packs=packs,
        fat=fat,
        heat=heat,
        no_coals_because=no_coals_because,
        home_steps=home_steps,
        camp_steps=camp_steps,
        timeline=timeline,
        cold=cold,
        shopping=shopping.shopping(
            recipe, items, packs, heat, day, ledger, ice_kg=cold.ice_kg if cold else None
        ),
        kit=the_kit.kit(
            recipe,
            items,
            packs,
            fat,
            pot,
            heat,
            camp_steps,
            day,
            ledger,
            ice_kg=cold.ice_kg if cold else None,
            home_steps=home_steps,
        ),
        labels=labels.labels(recipe, items, packs, heat, day, ledger, graph=graph, camp_steps=camp_steps),
        cautions=cautions.cautions(recipe, items, graph, dish, heat, packs, day, ledger),
        allergens=allergens,
        check_label=check_label,
        questions=ledger.questions,
        why=ledger.reasons,
        file=recipe.file,
    )
    promises.keep(plan)
    return with_curve(plan, day) if day.curve else plan


def _doubts_of_the_reader(recipe: Recipe, ledger: Ledger) -> None:
    for doubt in recipe.doubts:
        ledger.ask(f"line {doubt.line + 1}", doubt.text, doubt.taken)
    for unread in recipe.unread:
        ledger.ask(f"line {unread.line + 1}", f'"{unread.text}" was not understood.', "left out of the plan")
