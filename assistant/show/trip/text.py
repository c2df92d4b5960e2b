"""A trip's plan for a terminal of 80 columns: the meals first, then home, shop, boxes, coolers, fire and the days."""

from __future__ import annotations

from typing import TYPE_CHECKING

from assistant.show.plain import one_line
from assistant.show.terminal import WARN, Page
from assistant.show.trip import told
from rules.trip.model import TripPlan

if TYPE_CHECKING:
    from assistant.show.forms import Look


def trip_text(plan: TripPlan, look: Look) -> str:
    """The whole trip; the plan of each dish by itself is `coalside camp`'s, or a page of the booklet."""
    page = Page(look)
    page.title(one_line(plan.name), "trip")
    page.facts(f"{name.lower()} {figure}" for name, figure in told.facts(plan))
    for warning in plan.warnings:
        page.say(warning, indent=0, style=WARN)
    _meals(page, plan)
    _diets(page, plan)
    _home(page, plan)
    _shopping(page, plan)
    _packing(page, plan)
    _coolers(page, plan)
    _fire(page, plan)
    _calendar(page, plan)
    _careful(page, plan)
    return page.text()


def _meals(page: Page, plan: TripPlan) -> None:
    page.heading("meals")
    for meal, dishes in told.meals(plan):
        page.say(meal)
        page.rows([(one_line(dish.title, 60), told.pot(dish)) for dish in dishes], indent=4)
    for settled in plan.settled:
        page.say(settled.said, style=WARN if settled.way == "open" else "")


def _diets(page: Page, plan: TripPlan) -> None:
    if plan.diets:
        page.heading("who avoids what")
        page.rows(told.diets(plan), widths=(14, 24))


def _home(page: Page, plan: TripPlan) -> None:
    page.heading("at home")
    page.rows([(told.moment(task.at), task.do) for task in plan.home], widths=(17,))


def _shopping(page: Page, plan: TripPlan) -> None:
    page.heading("shopping")
    for aisle, lines in told.aisles(plan):
        page.say(aisle)
        page.rows(
            [(line.food, line.buy, told.bought(line, plan)) for line in lines], indent=4, widths=(18, 20)
        )


def _packing(page: Page, plan: TripPlan) -> None:
    page.heading("packing")
    for box, rows in told.boxes(plan):
        page.say(box)
        page.rows([("-", f"{row.item}{_for(told.of_dishes(row.dishes, plan))}") for row in rows], indent=4)


def _for(dishes: str) -> str:
    return f" (for {dishes})" if dishes else ""


def _coolers(page: Page, plan: TripPlan) -> None:
    for cooler in plan.coolers:
        page.heading(cooler.name, f"{cooler.quarts:g} quarts, from the top down")
        page.bullets(told.layer(layer, plan) for layer in reversed(cooler.layers))
        for note in cooler.notes:
            page.say(note)
        page.rows(
            [("", "inside", "ice", "frozen packs"), *told.course(cooler, plan)], indent=4, widths=(17, 8, 18)
        )


def _fire(page: Page, plan: TripPlan) -> None:
    if plan.fuel is None:
        return
    page.heading("fire")
    page.say(told.fuel(plan.fuel, plan))
    page.rows([(at, count, for_) for at, count, for_ in told.lightings(plan)], indent=4, widths=(17, 4))


def _calendar(page: Page, plan: TripPlan) -> None:
    page.heading("the days")
    for day, moments in told.by_date(plan.calendar):
        page.say(day)
        page.rows([(told.hour(one.at), one.do) for one in moments], indent=4, widths=(6,))


def _careful(page: Page, plan: TripPlan) -> None:
    page.heading("careful")
    page.bullets((caution.text for caution in plan.cautions), sign="!", style=WARN)
    if plan.questions:
        page.heading("left open")
        page.bullets(f"{ask.about}: {ask.text} Taken: {ask.default}." for ask in plan.questions)
