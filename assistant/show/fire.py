"""The coal plan as the card shows it: how the coals lie, and what is cooked over each such bed.

Stages that follow each other over the same coals share one bed and one drawing. Every figure is the plan's own.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from typing import Any

from markupsafe import Markup

from assistant.show import parts, words
from assistant.show.drawing import Turn, level_drawing
from assistant.show.graph import course, graph, told
from assistant.show.rings import laid
from rules.circumstances import Day
from rules.coals.load import planned
from rules.plan import Batch, Doneness, Heat, Pattern, Plan, PotPlan, Refresh, Stage

#: What a stage is called on the card.
STAGES = {
    "light": "Light the coals",
    "warm": "Warm the pot",
    "heat fat": "Heat the fat",
    "brown": "Brown",
    "fry": "Fry",
    "boil": "Bring to the boil",
    "simmer": "Simmer",
    "bake": "Bake",
    "roast": "Roast",
    "brown top": "Brown the top",
    "rise": "Let it rise",
    "keep warm": "Keep warm",
}
#: What a chimney is lit for.
FOR = {
    "warm": "warming the pot",
    "heat fat": "heating the fat",
    "brown": "browning",
    "fry": "frying",
    "boil": "the boil",
    "simmer": "the simmer",
    "bake": "the bake",
    "roast": "the roast",
    "brown top": "browning the top",
    "keep warm": "keeping warm",
}
#: What makes two stages lie over the same coals.
Bed = tuple[int, int, Pattern | None]


def fire(plan: Plan, heat: Heat, day: Day) -> dict[str, Any]:
    """Everything that the card's chapter on fire shows."""
    over = [stage for stage in heat.stages if stage.kind != "light"]
    return {
        "beds": [_bed(list(stages), plan.pot, day) for _, stages in groupby(over, key=_coals)],
        "lighting": [_ashed(stage) for stage in heat.stages if stage.kind == "light"],
        "chimney": [_lighting(batch, heat, day) for batch in heat.fuel.batches],
        "per_pot": parts.per_pot(plan),
        "graph": _graph(plan, heat, day),
        "fuel": parts.fuel(heat.fuel, day.units),
        "doneness": [_done(check, day) for check in heat.doneness],
    }


def _coals(stage: Stage) -> Bed:
    return stage.top, stage.under, stage.pattern


def _bed(stages: Sequence[Stage], pot: PotPlan | None, day: Day) -> dict[str, Any]:
    """One bed of coals: both levels drawn, and its stages in order."""
    first = stages[0]
    is_turned = any(stage.turn_every_min for stage in stages)
    return {
        "levels": list(_levels(first, pot, is_turned=is_turned)) if first.top + first.under else [],
        "stages": [_stage(stage, day) for stage in stages],
    }


def _levels(stage: Stage, pot: PotPlan | None, *, is_turned: bool) -> Iterator[dict[str, Any]]:
    """The lid and what lies under the pot; a level without coals is told beside the other."""
    said = stage.pattern
    lid, floor = laid(pot.diameter_in, stage.top, stage.under, said) if pot else ((), ())
    for count, spots, pattern, is_lid in (
        (stage.top, lid, said.top if said else "", True),
        (stage.under, floor, said.under if said else "", False),
    ):
        if not count:
            continue
        where = "on the lid" if is_lid else "under the pot"
        turn: Turn | None = ("clockwise" if is_lid else "counter-clockwise") if is_turned else None
        text = "; ".join(
            part
            for part in (
                f"{count} briquettes {where}",
                pattern,
                f"{'lid' if is_lid else 'pot'} turned {turn}" if turn else "",
            )
            if part
        )
        none = "" if stage.top and stage.under else f" None {'under the pot' if is_lid else 'on the lid'}."
        drawing = level_drawing(spots, pot.diameter_in, text, is_lid=is_lid, turn=turn) if pot else ""
        yield {
            "count": count,
            "where": where,
            "pattern": (words.sentence(pattern) if pattern else "") + none,
            "drawing": Markup(drawing),  # noqa: S704 (numbers and our own words)
        }


def _stage(stage: Stage, day: Day) -> dict[str, Any]:
    return {
        "name": STAGES[stage.kind],
        "at": words.when(stage.starts_at_min, day) if stage.starts_at_min is not None else "",
        "minutes": words.minutes(stage.minutes) if stage.minutes else "",
        "inside": words.degrees(stage.temp_f, day.units) if stage.temp_f is not None else "",
        "look_for": f"Look for: {stage.look_for.rstrip('.')}." if stage.look_for else "",
        "rhythm": parts.rhythm(stage, day),
        "fresh": [_fresh(fresh, day) for fresh in stage.refresh],
    }


def _ashed(light: Stage) -> str:
    span = f"{words.minutes(light.minutes)} in the chimney" if light.minutes else "In the chimney"
    return words.sentence(f"{span}, until {light.look_for}" if light.look_for else span)


def _fresh(fresh: Refresh, day: Day) -> str:
    """Fresh coals from the moment they go on: "17:39: 5 on the lid and 2 under, lit at 17:19"."""
    return (
        f"{words.when(fresh.at_min, day)}: {parts.placed(fresh)}; "
        f"light them {'at ' if day.eat else ''}{words.when(fresh.light_at_min, day)}"
    )


def _lighting(batch: Batch, heat: Heat, day: Day) -> dict[str, str]:
    """One chimney: when, how many, and when they are wanted."""
    wanted = [
        fresh.at_min
        for stage in heat.stages
        for fresh in stage.refresh
        if fresh.light_at_min == batch.light_at_min
    ]
    use = f"fresh coals {words.when(wanted[0], day)}" if wanted else ""
    if not wanted:
        after = [
            stage
            for stage in heat.stages
            if stage.starts_at_min is not None
            and stage.top + stage.under
            and stage.starts_at_min > batch.light_at_min
        ]
        use = FOR[after[0].kind] if after else ""
    return {"at": words.when(batch.light_at_min, day), "count": str(batch.count), "use": use}


def _graph(plan: Plan, heat: Heat, day: Day) -> dict[str, Any] | None:
    """The course of the stage that cooks the dish, with its words."""
    stage = words.main_stage(plan)
    if stage is None:
        return None
    of = course(stage, plan.pot, heat, day, planned(plan))
    if of is None:
        return None
    return {
        "name": STAGES[stage.kind],
        "drawing": Markup(graph(of, day)),  # noqa: S704 (numbers and our own words)
        "told": told(of, day),
    }


def _done(check: Doneness, day: Day) -> dict[str, str]:
    inside = f"{words.degrees(check.temp_f, day.units)} inside. " if check.temp_f is not None else ""
    rest = f" Rest {words.number(check.rest_min)} minutes." if check.rest_min else ""
    return {"what": words.capital(check.what), "sign": f"{inside}{words.sentence(check.sign)}{rest}"}
