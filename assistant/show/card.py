"""The camp card: a plan as one self-contained page for phone and paper.

The page needs no script and nothing from outside, and says so to the browser in its content security policy. Every
text passes through the template's escaping; the drawings are made from numbers alone.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from itertools import groupby
from typing import Any

from markupsafe import Markup

from assistant.show import parts, words
from assistant.show.boxes import boxes
from assistant.show.fire import fire
from assistant.show.moments import Line, again, by_date, hour
from assistant.show.paper import print_size
from assistant.show.plain import one_line, printable
from assistant.show.template import own_text, policy, template
from rules.circumstances import Day
from rules.plan import Plan, Purchase
from rules.wording import short_names

LONGEST_TITLE = 120


def plan_card(plan: Plan, day: Day) -> str:
    """The page's HTML."""
    title = one_line(plan.recipe.title or "Camp meal", LONGEST_TITLE)
    script, style = own_text("card.js"), own_text("card.css")
    shown = chapters(plan, day)
    page: str = template("card.html.j2").render(
        title=title,
        prefix="",
        key=_digest("\n".join((title, *plan.camp_steps, *(moment.do for moment in plan.timeline)))),
        style=Markup(f":root {{ --print: {print_size(shown):g}pt }} {style}"),  # noqa: S704 (our own file)
        script=Markup(script),  # noqa: S704 (our own file)
        policy=policy(script=script),
        **shown,
    )
    return page


def chapters(plan: Plan, day: Day) -> dict[str, Any]:
    """Everything that the templates show of a plan, by the names that they use."""
    return {
        "facts": list(_facts(plan, day)),
        "questions": [(words.sentence(ask.text), words.sentence(ask.default)) for ask in plan.questions],
        "fire": fire(plan, plan.heat, day) if plan.heat else None,
        "no_coals_because": words.sentence(plan.no_coals_because or "No coals are needed."),
        "cautions": [(*parts.caution(caution), caution.source) for caution in plan.cautions],
        "allergens": list(_allergens(plan)),
        "camp_steps": plan.camp_steps,
        "home_steps": plan.home_steps,
        "timeline": [
            (date, [_line(line, day) for line in lines]) for date, lines in by_date(plan.timeline, day)
        ],
        "packs": list(boxes(plan, day.units)),
        "fat": list(_fat(plan)),
        "cold": list(_cold(plan, day)),
        "shopping": list(_shopping(plan)),
        "kit": [("Pack for camp", plan.kit.camp), ("Have at hand at home", plan.kit.home)],
        "why": [
            (about, list(reasons)) for about, reasons in groupby(plan.why, key=lambda reason: reason.about)
        ],
        "reasons": len(plan.why),
        "labels": [printable(label.text).split("\n") for label in plan.labels],
    }


def _digest(text: str) -> str:
    return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()[:16]


def _facts(plan: Plan, day: Day) -> Iterator[tuple[str, str]]:
    """Name and figure of what one looks for first."""
    if plan.people:
        yield "People", str(plan.people)
    elif plan.recipe.servings:
        yield words.capital(one_line(plan.recipe.servings.of, 30)), words.span(plan.recipe.servings)
    if plan.scale != 1:
        yield "Recipe", f"× {words.number(plan.scale)}"
    if plan.pot:
        times = f"{plan.pot.count} × " if plan.pot.count > 1 else ""
        depth = words.depth_of(plan.pot.depth)
        yield f"Pot, {depth}, {words.number(plan.pot.quarts)} qt", f"{times}{plan.pot.diameter_in} in"
    if plan.heat:
        yield "Briquettes to bring", str(plan.heat.fuel.briquettes)
        if plan.heat.fuel.batches:
            yield "First coals lit", words.when(parts.first_lit(plan.heat.fuel), day)
    if day.eat:
        *date, eating = words.meal(day).rsplit(" ", 1)
        yield ", ".join(["We eat", *date]), eating


def _line(line: Line, day: Day) -> dict[str, Any]:
    """A line of the day with a tick for each of its moments, which tell uneven times by themselves."""
    return {
        "at": [hour(moment, day) for moment in line.moments],
        "do": line.do,
        "again": words.sentence(again(line, day)) if line.every_min is not None else "",
    }


def _allergens(plan: Plan) -> Iterator[str]:
    if plan.allergens:
        yield f"Holds {words.joined(plan.allergens)}."
    for held in plan.check_label:
        yield f"Check the label of {held.food} for {words.joined(held.may_hold, 'or')}."


def _fat(plan: Plan) -> Iterator[str]:
    for use in plan.fat:
        share = "" if use.share >= 1 else f" ({use.share:.0%} of it)"
        name = words.capital(plan.recipe.ingredients[use.ingredient].name)
        yield f"{name}{share}: {parts.fat_goes(use)}."


def _cold(plan: Plan, day: Day) -> Iterator[str]:
    if plan.cold is None:
        return
    if plan.cold.ice_kg is not None and not any("ice" in note for note in plan.cold.notes):
        yield f"Ice to bring: {words.weight(plan.cold.ice_kg, day.units)}."
    named = short_names(plan.packs)
    for bag in plan.cold.bags:
        yield parts.bag(bag, named.get(bag.pack, bag.pack))
    yield from plan.cold.notes


def _shopping(plan: Plan) -> Iterator[tuple[str, list[tuple[str, str]]]]:
    """What to buy by aisle, and last what most kitchens have."""
    to_buy = [line for line in plan.shopping if not line.likely_at_home]
    at_home = [line for line in plan.shopping if line.likely_at_home]
    for aisle, lines in groupby(to_buy, key=lambda line: line.aisle):
        yield words.capital(aisle or "Other"), list(map(_bought, lines))
    if at_home:
        yield "Look at home first", list(map(_bought, at_home))


def _bought(line: Purchase) -> tuple[str, str]:
    return words.capital(line.food), parts.bought(line)
