"""A plan, a recipe, a coal count or reasons drawn for a terminal of 80 columns.

The first screen holds what the cook needs with a lighter in the hand: dish, pot, the coals drawn from above, minutes,
looks and turns. Everything else follows in the order of the work. Plain text and coloured text are the same text.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.text import Text

from assistant.show import parts, words
from assistant.show.boxes import boxes
from assistant.show.graph import course_rows
from assistant.show.moments import Line, again, by_date, hour
from assistant.show.plain import one_line, printable
from assistant.show.rings import COAL, COLUMNS, levels
from assistant.show.terminal import EMBER, HEAD, QUIET, WARN, Page
from rules.plan import Heat, Pattern, Plan, Stage
from rules.recipe import Ingredient, Recipe
from rules.units import in_all

if TYPE_CHECKING:
    from assistant.show.forms import Look
    from assistant.show.kinds import Reasons, Turn
    from rules.coals.ask import CoalsAnswer

#: Below this width the two levels of coals stand above the facts instead of beside them.
NARROW = 76


def plan_text(plan: Plan, look: Look) -> str:
    """The whole plan, what matters over the coals first."""
    page = Page(look)
    _head(page, plan)
    _coals(page, plan)
    _packs(page, plan)
    _steps(page, plan)
    _the_day(page, plan)
    _cold(page, plan)
    _lists(page, plan)
    _labels(page, plan)
    _careful(page, plan)
    _open(page, plan)
    return page.text()


def _head(page: Page, plan: Plan) -> None:
    page.title(one_line(plan.recipe.title or "A recipe without a name"), plan.recipe.family)
    page.facts(parts.facts(plan, page.day))
    if plan.questions:
        count = len(plan.questions)
        things = "1 thing was" if count == 1 else f"{count} things were"
        page.say(f"{things} left open and taken by default: see LEFT OPEN at the end.", indent=0, style=WARN)


def _coals(page: Page, plan: Plan) -> None:
    if plan.heat is None:
        page.heading("coals", "none")
        page.say(plan.no_coals_because or "")
        return
    stage = words.main_stage(plan)
    if stage is not None and plan.pot is not None:
        _levels(page, plan.pot.diameter_in, stage.top, stage.under, stage.pattern, _facts(page, stage))
    if per_pot := parts.per_pot(plan):
        page.say(per_pot, style=WARN)
    _stages(page, plan.heat, stage)
    page.gap()
    page.say(parts.fuel(plan.heat.fuel, page.day.units))
    _doneness(page, plan.heat)
    _curve(page, plan.heat)


def _facts(page: Page, stage: Stage) -> Text:
    aim = f" at {words.temperature(stage.temp_f, page.day.units)}" if stage.temp_f is not None else ""
    facts = Text(f"{stage.kind}{aim}\n", HEAD)
    if stage.minutes:
        facts.append(f"{words.minutes(stage.minutes)}\n")
    if stage.first_look_min is not None:
        facts.append(f"first look after {stage.first_look_min} min\n")
    if stage.turn_every_min is not None:
        facts.append(
            f"every {stage.turn_every_min} min: lid a third of a turn one way, pot a third the other\n"
        )
    if stage.look_for:
        facts.append(printable(stage.look_for))
    return facts


def _levels(page: Page, diameter_in: int, top: int, under: int, pattern: Pattern | None, facts: Text) -> None:
    """The briquettes seen from above, the facts beside them; narrow pages have them below each other."""
    page.gap()
    lid, floor = levels(diameter_in, top, under, pattern)
    drawn = [
        _level(f"{top} on the lid", lid, pattern.top if pattern else ""),
        _level(f"{under} under", floor, pattern.under if pattern else ""),
    ]
    if page.width >= NARROW:
        page.rows([[*drawn, Text("\n") + facts]], widths=(COLUMNS, COLUMNS))
    else:
        page.rows([drawn], widths=(COLUMNS, COLUMNS), indent=0)
        page.gap()
        page.say(facts.plain)


def _level(name: str, rows: list[str], pattern: str) -> Text:
    level = Text(name.center(COLUMNS).rstrip() + "\n", EMBER)
    for row in rows:
        for sign in row:
            level.append(sign, EMBER if sign == COAL else QUIET)
        level.append("\n")
    level.append(printable(pattern), QUIET)
    return level


def _stages(page: Page, heat: Heat, drawn: Stage | None) -> None:
    """Everything done to the fire; the stage that is drawn has its turns and looks beside its drawing."""
    page.heading("over the coals", "one thing after the other")
    page.rows(
        [
            row.when,
            Text(row.what, HEAD),
            row.where,
            row.lasts + (_looked(row.stage) if row.stage != drawn else ""),
        ]
        for row in parts.fire_rows(heat, page.day)
    )


def _looked(stage: Stage | None) -> str:
    look = stage.first_look_min if stage else None
    turn = stage.turn_every_min if stage else None
    return (f", first look after {look} min" if look else "") + (f", every {turn} min a turn" if turn else "")


def _curve(page: Page, heat: Heat) -> None:
    if heat.curve:
        page.heading("how warm", "reckoned, not measured")
        page.rows(course_rows(heat.curve, page.day))


def _doneness(page: Page, heat: Heat) -> None:
    for check in heat.doneness:
        page.say(parts.done(check, page.day.units))


def _packs(page: Page, plan: Plan) -> None:
    page.heading("packs", "what travels together, mixed or cut at home")
    for box in boxes(plan, page.day.units):
        opening = (f"{box.id}  " if box.id else "") + one_line(box.name)
        page.say(Text(opening, HEAD) + Text(f"  {box.where}", QUIET))
        page.say("; ".join(box.lines), indent=4)
        if box.make_ahead:
            page.say(words.sentence(box.make_ahead), indent=4, style=QUIET)
    if plan.fat:
        page.heading("fat")
        page.rows([plan.recipe.ingredients[use.ingredient].name, parts.fat_goes(use)] for use in plan.fat)


def _steps(page: Page, plan: Plan) -> None:
    for name, steps in (("at home", plan.home_steps), ("at camp", plan.camp_steps)):
        if steps:
            page.heading(name)
            page.bullets(steps, sign="1.")


def _the_day(page: Page, plan: Plan) -> None:
    """The day by dates; what is done again and again is one line."""
    if not plan.timeline:
        return
    page.heading("the day", "" if page.day.eat else "counted to the meal")
    for date, lines in by_date(plan.timeline, page.day):
        if date:
            page.say(date, style=HEAD)
        page.rows([Text(hour(line.moments[0], page.day), EMBER), _told(line, page)] for line in lines)


def _told(line: Line, page: Page) -> str:
    more = again(line, page.day)
    return f"{line.do} {words.sentence(more)}" if more else line.do


def _cold(page: Page, plan: Plan) -> None:
    lines = parts.cold_lines(plan, page.day.units)
    if lines:
        page.heading("cold")
        for line in lines:
            page.say(line)


def _lists(page: Page, plan: Plan) -> None:
    if plan.shopping:
        page.heading("shopping", "to buy, and what the plan needs of it")
        page.rows([line.food, parts.bought(line)] for line in plan.shopping if not line.likely_at_home)
        if at_home := [line for line in plan.shopping if line.likely_at_home]:
            page.say("Look at home first", style=HEAD)
            page.rows([line.food, parts.bought(line)] for line in at_home)
    if plan.kit.home or plan.kit.camp:
        page.heading("kit")
        page.rows(
            [Text(name, HEAD), "; ".join(things)]
            for name, things in (("home", plan.kit.home), ("camp", plan.kit.camp))
            if things
        )


def _labels(page: Page, plan: Plan) -> None:
    if plan.labels:
        page.heading("labels", "what to write on the bags")
        for label in plan.labels:
            first, *rest = printable(label.text).split("\n")
            page.say(first, style=HEAD)
            for line in rest:
                page.say(line, indent=4)


def _careful(page: Page, plan: Plan) -> None:
    if plan.cautions:
        page.heading("careful")
        for heading, text in map(parts.caution, plan.cautions):
            page.say(Text(words.sentence(printable(heading)), WARN) + Text(f" {printable(text)}"))
    if plan.allergens or plan.check_label:
        page.heading("holds")
        page.say(
            words.capital(words.joined(plan.allergens)) + "."
            if plan.allergens
            else "None of the nine that must be declared, as far as the recipe tells."
        )
        for row in plan.check_label:
            page.say(f"Read the label of the {row.food}: it may hold {words.joined(row.may_hold, 'or')}.")


def _open(page: Page, plan: Plan) -> None:
    if plan.questions:
        page.heading("left open", "say otherwise and the plan follows")
        for question in plan.questions:
            page.say(f"{question.text} Taken: {question.default}.".replace("..", "."))
    about = plan.recipe.ingredients[0].name if plan.recipe.ingredients else "coals"
    page.gap()
    page.say(
        f'{len(plan.why)} reasons stand behind this: coalside why FILE "{one_line(about, 30)}"',
        indent=0,
        style=QUIET,
    )


def recipe_text(recipe: Recipe, look: Look) -> str:
    """A recipe as it was read."""
    page = Page(look)
    page.title(one_line(recipe.title or "A recipe without a name"), recipe.family)
    facts = []
    if recipe.servings:
        facts.append(f"{words.span(recipe.servings)} {recipe.servings.of}")
    if recipe.oven:
        facts.append(
            recipe.oven.stated
            or (words.degrees(recipe.oven.temp_f, look.day.units) if recipe.oven.temp_f else "")
        )
        facts.append(recipe.oven.vessel or "")
    page.facts(facts)
    component: str | None = None
    page.heading("ingredients", "as read")
    rows: list[list[str | Text]] = []
    for ingredient in recipe.ingredients:
        if ingredient.component != component:
            component = ingredient.component
            rows.append([Text(""), Text(printable(component or "the rest"), HEAD)])
        rows.append([Text(_measured(ingredient, look)), _named(ingredient)])
    page.rows(rows)
    if recipe.steps:
        page.heading("method")
        page.bullets((step.text for step in recipe.steps), sign="1.")
    if recipe.unread:
        page.heading("not understood", "kept as written")
        page.rows([f"line {line.line + 1}", line.text] for line in recipe.unread)
    if recipe.doubts:
        page.heading("doubtful")
        page.rows(
            [f"line {doubt.line + 1}", f"{doubt.text} Taken: {doubt.taken}."] for doubt in recipe.doubts
        )
    return page.text()


def _measured(ingredient: Ingredient, look: Look) -> str:
    return words.amount(in_all(ingredient.amounts), look.day.units) or "-"


def _named(ingredient: Ingredient) -> str:
    parts = [" ".join([*ingredient.state, ingredient.name]), ingredient.prep or "", ingredient.notes or ""]
    if ingredient.alternatives:
        parts.append(f"or {words.joined(ingredient.alternatives, 'or')}")
    if ingredient.optional:
        parts.append("optional")
    if ingredient.from_ == "method":
        parts.append("named by the method alone")
    return ", ".join(part for part in parts if part)


def why_text(answer: Reasons, look: Look) -> str:
    """Reasons, each with its source."""
    page = Page(look)
    for reason in answer.why:
        page.say(f"{reason.about}: {words.because(reason)}", indent=0)
        page.say(f"{reason.source}  [{reason.rule}]", style=QUIET)
    return page.text()


def coals_text(answer: CoalsAnswer, look: Look) -> str:
    """The coals for a pot and a temperature, drawn, with their renewing and the fuel."""
    page = Page(look)
    aim = words.temperature(answer.temp_f, look.day.units)
    pot = f"{'deep ' if answer.depth == 'deep' else ''}{answer.diameter_in}-inch pot"
    page.title(
        f"{answer.total} briquettes: {answer.top} on the lid, {answer.under} under",
        f"{answer.for_} at {aim}, {pot}",
    )
    facts = Text(f"{answer.for_} at {aim}\n", HEAD)
    if answer.turn_every_min is not None:
        facts.append(f"turn every {answer.turn_every_min} min\n")
    facts.append(f"for {words.number(answer.minutes)} min")
    _levels(page, answer.diameter_in, answer.top, answer.under, answer.pattern, facts)
    page.gap()
    for fresh in answer.refresh:
        page.say(parts.fresh_coals_in(fresh))
    page.say(parts.fuel(answer.fuel, look.day.units))
    page.heading("why")
    for reason in answer.why:
        page.say(words.because(reason))
    return page.text()


def turn_text(turn: Turn, _look: Look) -> str:
    """A sentence of the talk and its answer."""
    return f"> {one_line(turn.said)}\n{printable(turn.answer)}\n"
