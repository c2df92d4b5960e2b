"""Answers about a whole trip, each a few lines out of its plan: the figure first, as those about one dish."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from assistant.show import words
from assistant.show.trip import told
from rules.trip.model import TripPlan
from rules.wording import mass

MOST_LINES = 40


def answer(about: str, plan: TripPlan) -> str:
    """The answer about one side of the trip."""
    lines = list(_ANSWERS[about](plan))
    if len(lines) > MOST_LINES:
        lines = [
            *lines[:MOST_LINES],
            f"and {len(lines) - MOST_LINES} lines more: save the trip as a file to see all.",
        ]
    return "\n".join(lines)


def _plan(plan: TripPlan) -> Iterator[str]:
    yield f"{plan.name}: {words.joined([f'{name.lower()} {figure}' for name, figure in told.facts(plan)])}."
    for meal, dishes in told.meals(plan):
        yield f"{meal}: {'; '.join(f'{dish.title} ({told.pot(dish)})' for dish in dishes)}."
    if any(reason.rule.startswith("habit.") for dish in plan.dishes for reason in dish.plan.why):
        yield "Coals and minutes go by your own log."
    yield from (one.said for one in plan.settled)
    yield from (f"Mind: {one}" for one in plan.warnings)
    yield from _diets_that_matter(plan)
    if plan.questions:
        asked = [f"{one.text} Taken: {one.default}." for one in plan.questions if ":" not in one.about]
        yield from (f"Left open: {one}" for one in asked[:3])
    if plan.fuel is not None:
        yield "Coals outside only: they give off carbon monoxide."


def _shopping(plan: TripPlan) -> Iterator[str]:
    for aisle, lines in told.aisles(plan):
        yield f"{aisle}: {'; '.join(f'{line.food} ({line.buy})' for line in lines)}."


def _packing(plan: TripPlan) -> Iterator[str]:
    for box, rows in told.boxes(plan):
        yield f"{box}: {words.joined([row.item for row in rows])}."


def _cold(plan: TripPlan) -> Iterator[str]:
    if not plan.coolers:
        yield "Nothing on this trip has to be kept cold."
    for one in plan.coolers:
        yield f"{one.name}, {one.quarts:g} quarts: bring {mass(one.ice_kg, plan.units)} of ice. From the top down:"
        yield from (f"- {told.layer(layer, plan)}" for layer in reversed(one.layers))
        yield from one.notes


def _coals(plan: TripPlan) -> Iterator[str]:
    if plan.fuel is None:
        yield "Nothing on this trip needs coals."
        return
    yield told.fuel(plan.fuel, plan)
    yield from (f"- {at}: {count}, {for_}" for at, count, for_ in told.lightings(plan))


def _home(plan: TripPlan) -> Iterator[str]:
    yield from (f"{told.moment(task.at)}: {task.do}" for task in plan.home)


def _calendar(plan: TripPlan) -> Iterator[str]:
    for day, moments in told.by_date(plan.calendar):
        yield f"{day}:"
        yield from (f"- {told.hour(one.at)} {one.do}" for one in moments)


def _diets(plan: TripPlan) -> Iterator[str]:
    if not plan.diets:
        yield "Nobody was said to avoid anything. Say for example: one of us can't have nuts."
    yield from (f"{who}: {dish}: {what}" for who, dish, what in told.diets(plan))


def _diets_that_matter(plan: TripPlan) -> Iterator[str]:
    if any(one.verdict != "fits" for one in plan.diets):
        yield from (
            f"{one.person} and {told.names(plan)[one.dish]}: {one.said}"
            for one in plan.diets
            if one.verdict != "fits"
        )


def _pots(plan: TripPlan) -> Iterator[str]:
    named = told.names(plan)
    for use in plan.pots:
        yield f"{use.pot}: {named[use.dish]}, {told.moment(use.from_)} to {told.hour(use.until)}."
    yield from (one.said for one in plan.settled)


_ANSWERS: dict[str, Callable[[TripPlan], Iterator[str]]] = {
    "plan": _plan,
    "shopping": _shopping,
    "packing": _packing,
    "cold": _cold,
    "coals": _coals,
    "home": _home,
    "calendar": _calendar,
    "diets": _diets,
    "pots": _pots,
}
