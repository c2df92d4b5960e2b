"""The booklet of a trip: one self-contained page that prints as a sheet for each part and each dish.

The sheets of the dishes are filled by the templates of the camp card; the lists and the days are the trip's own. Like
the card it fetches nothing and runs no script but its own.
"""

from __future__ import annotations

import hashlib
from collections import Counter
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

import msgspec
from markupsafe import Markup

from assistant.show import parts, words
from assistant.show.boxes import Box
from assistant.show.card import chapters
from assistant.show.plain import one_line
from assistant.show.template import own_text, policy, template
from assistant.show.trip import told
from rules.plan import Moment, Plan
from rules.trip.model import Dish, TripPlan
from rules.trip.plan import of_the_trip

if TYPE_CHECKING:
    from assistant.show.forms import Look

#: How large a dish is printed, so that its sheet is one page: letters on it, and the size.
SIZES = ((2_600, "larger"), (4_200, "usual"), (6_000, "smaller"))
#: What the end of a line and a drawing take, in letters.
LETTERS_OF_A_LINE, LETTERS_OF_A_DRAWING = 25, 350
#: Moments that stand on the sheet of the days; the rest stands on the dishes' own.
OF_THE_DAYS = frozenset({"road", "light", "meal", "after"})
#: Moments that stand on a dish's own sheet; its lightings stand beside its coals.
OF_A_DISH = frozenset({"road", "fire", "meal"})


def trip_booklet(plan: TripPlan, look: Look) -> str:  # noqa: ARG001 - every writer is called alike
    """The page's HTML."""
    title = one_line(plan.name, 120)
    script = own_text("card.js")
    style = f"{own_text('card.css')}\n{own_text('trip/booklet.css')}"
    shared = _shared(plan)
    page: str = template("trip/booklet.html.j2").render(
        title=title,
        key=hashlib.sha256(f"{title}|{plan.leave}".encode("utf-8", "surrogatepass")).hexdigest()[:16],
        style=Markup(style),  # noqa: S704 (our own file)
        script=Markup(script),  # noqa: S704 (our own file)
        policy=policy(script=script),
        facts=told.facts(plan),
        warnings=plan.warnings,
        questions=[
            (f"{ask.about}: {words.sentence(ask.text)}", words.sentence(ask.default))
            for ask in plan.questions
        ],
        meals=[
            (
                meal,
                [{"id": dish.id, "title": one_line(dish.title), "pot": told.pot(dish)} for dish in dishes],
            )
            for meal, dishes in told.meals(plan)
        ],
        settled=[one.said for one in plan.settled],
        diets=list(told.diets(plan)),
        cautions=[
            (*parts.caution(caution), caution.source) for caution in plan.cautions if caution.text in shared
        ],
        home=[(day, [(told.hour(task.at), task.do) for task in tasks]) for day, tasks in _evenings(plan)],
        shopping=[
            (aisle, [(words.capital(line.food), line.buy, told.bought(line, plan)) for line in lines])
            for aisle, lines in told.aisles(plan)
        ],
        packing=[
            (box, [(row.item, told.of_dishes(row.dishes, plan)) for row in rows])
            for box, rows in told.boxes(plan)
        ],
        coolers=list(_coolers(plan)),
        fuel=told.fuel(plan.fuel, plan) if plan.fuel else "",
        days=list(_days(plan)),
        dishes=[_sheet(dish, plan, shared) for dish in plan.dishes],
        why=told.reasons(plan),
        reasons=len(plan.why),
        labels=[lines for dish in plan.dishes for lines in chapters(dish.plan, dish.day)["labels"]],
    )
    return page


def _evenings(plan: TripPlan) -> Iterator[tuple[str, list[Any]]]:
    by_day: dict[str, list[Any]] = {}
    for task in plan.home:
        by_day.setdefault(told.date(task.at), []).append(task)
    yield from by_day.items()


def _coolers(plan: TripPlan) -> Iterator[dict[str, Any]]:
    for cooler in plan.coolers:
        yield {
            "name": cooler.name,
            "quarts": f"{cooler.quarts:g}",
            "layers": [
                {"travels": layer.travels, "said": told.layer(layer, plan)}
                for layer in reversed(cooler.layers)
            ],
            "notes": cooler.notes,
            "course": list(told.course(cooler, plan)),
        }


def _days(plan: TripPlan) -> Iterator[tuple[str, list[tuple[str, str]]]]:
    """The days at camp: the road, every lighting, every meal, and what comes after."""
    kept = [moment for moment in plan.calendar if moment.kind in OF_THE_DAYS]
    for day, moments in told.by_date(kept):
        yield day, [(told.hour(one.at), words.sentence(one.do)) for one in moments]


def _shared(plan: TripPlan) -> frozenset[str]:
    """The cautions that several dishes raise in the same words: they stand on the first sheet, once."""
    raised = Counter(
        of_the_trip(caution, dish, plan.fuel) for dish in plan.dishes for caution in dish.plan.cautions
    )
    return frozenset(text for text, count in raised.items() if count > 1)


def _sheet(dish: Dish, plan: TripPlan, shared: frozenset[str]) -> dict[str, Any]:
    """One dish: the card's chapters that are wanted at camp, and what the trip adds to them."""
    at_camp = tuple(moment for moment in dish.plan.timeline if moment.kind in OF_A_DISH)
    shown = chapters(_with_moments(dish, at_camp), dish.day)
    eaten = "" if dish.ready == dish.eat else f", done at {told.hour(dish.ready)}"
    sheet = {
        **shown,
        "id": dish.id,
        "title": one_line(dish.title, 120),
        "meal": f"{one_line(dish.meal, 60)}, {told.moment(dish.eat)}{eaten}",
        "notes": list(_notes(dish, plan)),
        "packed": [(box.id or "", _packed(box)) for box in shown["packs"]],
        "cautions": [
            parts.caution(caution)
            for caution in dish.plan.cautions
            if of_the_trip(caution, dish, plan.fuel) not in shared
        ],
    }
    return {**sheet, "size": _size(sheet)}


def _with_moments(dish: Dish, moments: tuple[Moment, ...]) -> Plan:
    return msgspec.structs.replace(dish.plan, timeline=moments)


def _notes(dish: Dish, plan: TripPlan) -> Iterator[str]:
    """What the trip settles about this dish: its pot, shared chimneys, who avoids what in it."""
    yield from (one.said for one in plan.settled if dish.id in (one.dish, *one.others))
    for lit in plan.fuel.lightings if plan.fuel else ():
        if len(lit.for_) > 1 and dish.id in {part.dish for part in lit.for_}:
            shares = ", ".join(f"{part.count} for {told.names(plan)[part.dish]}" for part in lit.for_)
            yield f"One chimney at {told.hour(lit.at)}: {lit.count} briquettes, {shares}."
    yield from (f"{line.rstrip('.')}." for line in told.diets_of(dish, plan))


def _packed(box: Box) -> str:
    """One pack in a line: its name and how it travels; several that travel as bought by their foods."""
    where = f" ({box.where})" if box.where else ""
    return f"{box.name}{where}" if box.id else f"{box.name}: {'; '.join(box.lines)}"


def _size(sheet: dict[str, Any]) -> str:
    """How large a sheet is set, by how much there is on it."""
    letters = _letters(sheet)
    return next((size for most, size in SIZES if letters <= most), "smallest")


def _letters(sheet: dict[str, Any]) -> int:
    """What is on a sheet, in letters; an end of a line and a drawing count for as many as they take."""
    lines = [*sheet["camp_steps"], *sheet["notes"], *sheet["allergens"]]
    lines += [line["do"] for _, rows in sheet["timeline"] for line in rows]
    lines += [said for _, said in sheet["packed"]]
    lines += [text for _, text in sheet["cautions"]]
    if fire := sheet["fire"]:
        lines += [stage["look_for"] for bed in fire["beds"] for stage in bed["stages"]]
        lines += [check["sign"] for check in fire["doneness"]]
        lines += [" " * LETTERS_OF_A_DRAWING] * (len(fire["beds"]) + bool(fire["graph"]))
    return sum(len(line) + LETTERS_OF_A_LINE for line in lines)
