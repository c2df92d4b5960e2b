"""The figures of a plan that the talk tells, one a line: "Pot: a 12-inch pot (6 quarts), half full"."""

from __future__ import annotations

from assistant.show import words
from rules.circumstances import Day
from rules.plan import Plan


def scale_figure(plan: Plan, _day: Day) -> str:
    """How much is made, against the recipe."""
    return (
        "Amounts: as written" if plan.scale == 1 else f"Amounts: {words.number(plan.scale)} times the recipe"
    )


def pot_figure(plan: Plan, _day: Day) -> str:
    """Which pot, and how full."""
    if plan.pot is None:
        return ""
    full = f", {words.fill(plan.pot.fill)}" if plan.pot.fill is not None else ""
    return f"Pot: {words.pot(plan.pot)}{full}"


def coals_figure(plan: Plan, _day: Day) -> str:
    """The briquettes of the stage that cooks the dish."""
    stage = words.main_stage(plan)
    return f"Coals for the {stage.kind}: {words.coals(stage)}" if stage else ""


def minutes_figure(plan: Plan, day: Day) -> str:
    """How long and how hot the dish cooks."""
    stage = words.main_stage(plan)
    if stage is None or stage.minutes is None:
        return ""
    aim = f" at {words.temperature(stage.temp_f, day.units)}" if stage.temp_f is not None else ""
    return f"{stage.kind.capitalize()}: {words.minutes(stage.minutes)}{aim}"


def fuel_figure(plan: Plan, _day: Day) -> str:
    """How many briquettes come along."""
    return f"Briquettes to bring: {plan.heat.fuel.briquettes}" if plan.heat else ""


def light_figure(plan: Plan, day: Day) -> str:
    """When the first coals are lit."""
    first = min((batch.light_at_min for batch in plan.heat.fuel.batches), default=None) if plan.heat else None
    return f"Light the chimney: {words.when(first, day)}" if first is not None else ""


def ice_figure(plan: Plan, day: Day) -> str:
    """How much ice comes along."""
    if plan.cold is None or plan.cold.ice_kg is None:
        return ""
    return f"Ice to bring: {words.weight(plan.cold.ice_kg, day.units)}"


def tail(figure: str) -> str:
    """The figure of a sentence alone: what stands behind its colon."""
    return figure.partition(": ")[2] or figure
