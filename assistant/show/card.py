"""The camp card: a plan as one self-contained page for phone and paper.

The page needs no script and nothing from outside. Every text passes through the template's escaping; the drawings are
made here from numbers alone.
"""

from __future__ import annotations

import hashlib
from functools import cache
from importlib import resources
from typing import Any

from jinja2 import Environment, StrictUndefined
from markupsafe import Markup

from assistant.show import words
from assistant.show.drawing import coals_drawing
from assistant.show.plain import one_line, printable
from rules.circumstances import Day
from rules.plan import Cold, Doneness, Fuel, Pack, Plan, Refresh, Stage

#: What a stage is called on the card.
STAGES = {
    "light": "Light the coals",
    "warm": "Warm the pot",
    "heat fat": "Heat the fat",
    "brown": "Brown",
    "fry": "Fry",
    "boil": "Boil",
    "simmer": "Simmer",
    "bake": "Bake",
    "roast": "Roast",
    "brown top": "Brown the top",
    "rise": "Let it rise",
    "keep warm": "Keep warm",
}


def plan_card(plan: Plan, day: Day) -> str:
    """The page's HTML."""
    title = one_line(plan.recipe.title or "Camp meal", 120)
    page: str = _template().render(
        title=title,
        key=hashlib.sha256("\n".join((title, *plan.camp_steps)).encode()).hexdigest()[:16],
        style=Markup(_text("card.css")),  # noqa: S704 (our own file)
        script=Markup(_text("card.js")),  # noqa: S704 (our own file)
        facts=_facts(plan, day),
        questions=plan.questions,
        no_coals_because=plan.no_coals_because if plan.heat is None else None,
        stages=[_stage(stage, plan, day) for stage in plan.heat.stages] if plan.heat else [],
        curve=None,
        fuel=_fuel(plan.heat.fuel, day) if plan.heat else "",
        doneness=[_done(sign, day) for sign in plan.heat.doneness] if plan.heat else [],
        cautions=plan.cautions,
        allergens=_allergens(plan),
        camp_steps=plan.camp_steps,
        home_steps=plan.home_steps,
        timeline=[
            {"at": moment.clock or words.when(moment.at_min, None), "do": moment.do}
            for moment in plan.timeline
        ],
        packs=[_pack(pack, plan, day) for pack in plan.packs],
        fat=_fat(plan),
        cold=_cold(plan.cold, plan, day) if plan.cold else [],
        lists=_lists(plan),
        why=plan.why,
        labels=[printable(label.text).split("\n") for label in plan.labels],
    )
    return page


@cache
def _template() -> Any:
    environment = Environment(
        autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True, finalize=_clean
    )
    return environment.from_string(_text("card.html.j2"))


def _clean(value: object) -> object:
    """Signs that would turn the writing direction or hide text never reach the page."""
    return printable(value) if isinstance(value, str) and not isinstance(value, Markup) else value


def _text(name: str) -> str:
    return resources.files("assistant").joinpath("show", name).read_text(encoding="utf-8")


def _facts(plan: Plan, day: Day) -> list[dict[str, str]]:
    facts = []
    if plan.people:
        facts.append({"figure": str(plan.people), "word": "people" if plan.people > 1 else "person"})
    elif plan.recipe.servings:
        facts.append({"figure": words.span(plan.recipe.servings), "word": plan.recipe.servings.of})
    if plan.scale != 1:
        facts.append({"figure": f"{words.number(plan.scale)} ×", "word": "the recipe"})
    if plan.pot:
        facts.append({"figure": f"{plan.pot.diameter_in} in", "word": words.pot(plan.pot)})
    if plan.heat:
        facts.append({"figure": str(plan.heat.fuel.briquettes), "word": "briquettes to bring"})
    if day.eat:
        facts.append({"figure": day.eat[-5:], "word": "we eat"})
    return facts


def _stage(stage: Stage, plan: Plan, day: Day) -> dict[str, Any]:
    counted = bool(stage.top + stage.under)
    rhythm = []
    if stage.turn_every_min:
        rhythm.append(
            f"Every {stage.turn_every_min} minutes: lid a third of a turn one way, pot a third the other."
        )
    if stage.first_look_min:
        rhythm.append(f"First look after {stage.first_look_min} minutes.")
    return {
        "name": STAGES[stage.kind],
        "minutes": words.minutes(stage.minutes) if stage.minutes else "",
        "counted": counted and stage.kind != "light",
        "top": stage.top,
        "under": stage.under,
        "drawing": Markup(coals_drawing(stage, plan.pot))  # noqa: S704 (numbers and our own words)
        if counted and plan.pot and stage.kind != "light"
        else None,
        "pattern": f"Lid: {stage.pattern.top}. Under: {stage.pattern.under}." if stage.pattern else "",
        "look_for": stage.look_for,
        "rhythm": " ".join(rhythm),
        "refresh": [_fresh(fresh, day) for fresh in stage.refresh],
    }


def _fresh(fresh: Refresh, day: Day) -> str:
    return (
        f"{_at(fresh.light_at_min, day)} light {fresh.top + fresh.under} more; "
        f"{_at(fresh.at_min, day)} put {fresh.top} on the lid and {fresh.under} under."
    )


def _at(at_min: float, day: Day) -> str:
    """A moment as it opens a sentence: "18:10:" or "40 min before:"."""
    return words.when(at_min, day)


def _fuel(fuel: Fuel, day: Day) -> str:
    lightings = len(fuel.batches)
    times = f" in {lightings} lightings" if lightings > 1 else ""
    return (
        f"Bring {fuel.briquettes} briquettes ({words.weight(fuel.kg, day.units)}): "
        f"{fuel.lit} to light{times}, {fuel.reserve} in reserve."
    )


def _done(sign: Doneness, day: Day) -> str:
    heat = f" ({words.degrees(sign.temp_f, day.units)} inside)" if sign.temp_f else ""
    rest = f", then {sign.rest_min:g} minutes of rest" if sign.rest_min else ""
    return f"{sign.what}: {sign.sign}{heat}{rest}"


def _allergens(plan: Plan) -> str:
    parts = [f"Holds {words.joined(plan.allergens)}."] if plan.allergens else []
    parts += [
        f"Check the label of {held.food} for {words.joined(held.may_hold, 'or')}."
        for held in plan.check_label
    ]
    return " ".join(parts)


def _pack(pack: Pack, plan: Plan, day: Day) -> dict[str, Any]:
    return {
        "label": words.pack_name(pack),
        "kind": pack.kind.capitalize(),
        "travels": pack.travels,
        "rides": words.TRAVELS[pack.travels],
        "container": pack.container,
        "lines": [words.packed(plan, item, day.units) for item in pack.items],
        "make_ahead": pack.make_ahead,
    }


def _fat(plan: Plan) -> list[str]:
    lines = []
    for use in plan.fat:
        share = "" if use.share >= 1 else f" ({use.share:.0%})"
        name = plan.recipe.ingredients[use.ingredient].name
        moment = f": {use.when}" if use.when else ""
        lines.append(f"{name}{share} {words.GOES[use.goes]}{moment}")
    return lines


def _cold(cold: Cold, plan: Plan, day: Day) -> list[str]:
    named = {pack.id: words.pack_name(pack) for pack in plan.packs}
    lines = []
    if cold.ice_kg:
        lines.append(f"Bring {words.weight(cold.ice_kg, day.units)} of ice.")
    if cold.frozen_packs:
        lines.append(
            f"Travels frozen: {words.joined([named.get(pack, pack) for pack in cold.frozen_packs])}."
        )
    if cold.thaw_hours:
        lines.append(f"Thaws in {words.span(cold.thaw_hours, 'hours')} in the cooler.")
    return [*lines, *cold.notes]


def _lists(plan: Plan) -> list[tuple[str, list[str]]]:
    bought = [
        f"{line.buy} (needs {line.need}{f'; {line.left_over} left' if line.left_over else ''})"
        for line in plan.shopping
    ]
    found = [("Camp kit", list(plan.kit.camp)), ("Kit at home", list(plan.kit.home)), ("Shopping", bought)]
    return [(heading, lines) for heading, lines in found if lines]
