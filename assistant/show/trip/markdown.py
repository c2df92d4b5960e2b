"""A trip's plan as Markdown, to send to the crew."""

from __future__ import annotations

from typing import TYPE_CHECKING

from assistant.show.markdown import bullets, grid, plain, section
from assistant.show.trip import told
from rules.trip.model import CoolerPlan, TripPlan

if TYPE_CHECKING:
    from assistant.show.forms import Look


def trip_markdown(plan: TripPlan, look: Look) -> str:  # noqa: ARG001 - every writer is called alike
    """The whole trip."""
    named = told.names(plan)
    meals = [(meal, named[dish.id], told.pot(dish)) for meal, dishes in told.meals(plan) for dish in dishes]
    shopping = [
        (aisle, line.food, line.buy, told.bought(line, plan))
        for aisle, lines in told.aisles(plan)
        for line in lines
    ]
    packing = [
        (box, row.item, told.of_dishes(row.dishes, plan)) for box, rows in told.boxes(plan) for row in rows
    ]
    written = [
        f"# {plain(plan.name)}",
        plain(", ".join(f"{name.lower()} {figure}" for name, figure in told.facts(plan))),
        *section("Put right first", bullets(plan.warnings)),
        *section("Meals", grid(("Meal", "Dish", "Pot"), meals)),
        *section("Pots settled", bullets(one.said for one in plan.settled)),
        *section("Who avoids what", grid(("Who", "Dish", "What to do"), told.diets(plan))),
        *section("At home", grid(("When", "Do"), ((told.moment(task.at), task.do) for task in plan.home))),
        *section("Shopping", grid(("Aisle", "Food", "Buy", "For"), shopping)),
        *section("Packing", grid(("Box", "What", "For"), packing)),
        *(part for cooler in plan.coolers for part in _cooler(cooler, plan)),
        *_fire(plan),
        *section(
            "The days",
            grid(("When", "Do"), ((told.moment(one.at), one.do) for one in plan.calendar)),
        ),
        *section("Careful", bullets(caution.text for caution in plan.cautions)),
        *section("Left open", bullets(f"{ask.text} Taken: {ask.default}." for ask in plan.questions)),
        *section(
            "Why",
            grid(("About", "Because", "Source"), ((r.about, r.because, r.source) for r in plan.why)),
        ),
    ]
    return "\n\n".join(part for part in written if part) + "\n"


def _cooler(cooler: CoolerPlan, plan: TripPlan) -> tuple[str, ...]:
    """One cooler: from the top down, its notes, its course."""
    layers = bullets(told.layer(layer, plan) for layer in reversed(cooler.layers))
    course = grid(("When", "Inside", "Ice left", "Frozen packs"), told.course(cooler, plan))
    name = f"{cooler.name[:1].upper()}{cooler.name[1:]}, {cooler.quarts:g} quarts, from the top down"
    return section(name, "\n\n".join([layers, bullets(cooler.notes), course]))


def _fire(plan: TripPlan) -> tuple[str, ...]:
    if plan.fuel is None:
        return ()
    rows = grid(("Light at", "Briquettes", "For"), told.lightings(plan))
    return section("Fire", "\n\n".join([plain(told.fuel(plan.fuel, plan)), rows]))
