"""A plan, a recipe, a coal count or reasons drawn for a terminal of 80 columns.

The first screen holds what the cook needs with a lighter in the hand: dish, pot, the coals drawn from above, minutes,
looks and turns. Everything else follows in the order of the work. Plain text and coloured text are the same text.
"""

from __future__ import annotations

import io
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from rich.console import Console
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from assistant.show import words
from assistant.show.plain import one_line, printable
from assistant.show.rings import COAL, COLUMNS, levels
from rules.plan import Heat, Moment, Pattern, Plan, Stage
from rules.recipe import Ingredient, Recipe
from rules.units import in_all

if TYPE_CHECKING:
    from assistant.show.forms import Look
    from assistant.show.kinds import Reasons, Turn
    from rules.coals.ask import CoalsAnswer

EMBER, HEAD, QUIET, WARN = "bold dark_orange", "bold", "dim", "bold yellow"
#: Below this width the two levels of coals stand under each other instead of side by side with the facts.
NARROW = 76


class Page:
    """Lines on their way to a terminal: headings, paragraphs, rows and lists, wrapped to the width."""

    def __init__(self, look: Look) -> None:
        self.width = look.width
        self.day = look.day
        self._out = io.StringIO()
        self._console = Console(
            file=self._out,
            width=look.width,
            force_terminal=look.color,
            no_color=not look.color,
            color_system="256" if look.color else None,
            highlight=False,
            markup=False,
            emoji=False,
            legacy_windows=False,
        )

    def title(self, left: str, right: str) -> None:
        """The name of the dish, and what kind of dish it is at the right edge."""
        room = self.width - len(right) - 3
        if right and room >= 24 and len(left) <= room:
            line = Text(left, HEAD) + Text(" " * (self.width - len(left) - len(right))) + Text(right, QUIET)
            self._console.print(line)
        else:
            self._console.print(Text(left, HEAD))
            if right:
                self._console.print(Text(right, QUIET))
        self._console.print(Text("▔" * self.width, "dark_orange"))

    def heading(self, name: str, note: str = "") -> None:
        """A section's name, with a few words of explanation."""
        self.gap()
        self._console.print(Text(name.upper(), EMBER) + Text(f"   {note}" if note else "", QUIET))

    def gap(self) -> None:
        """An empty line."""
        self._console.print()

    def say(self, text: str, *, indent: int = 2, style: str = "") -> None:
        """A paragraph."""
        self._console.print(Padding(Text(printable(text), style), (0, 0, 0, indent)))

    def rows(
        self, rows: Iterable[Sequence[str | Text]], *, indent: int = 2, widths: Sequence[int] = ()
    ) -> None:
        """Rows of cells; the last column takes what is left and wraps. `widths` fixes those of the first columns."""
        grid = Table.grid(padding=(0, 2, 0, 0), pad_edge=False)
        filled = [[cell if isinstance(cell, Text) else Text(printable(cell)) for cell in row] for row in rows]
        if not filled:
            return
        for number in range(len(filled[0])):
            is_last = number == len(filled[0]) - 1
            width = widths[number] if number < len(widths) else None
            grid.add_column(width=width, ratio=1 if is_last and width is None else None)
        for row in filled:
            grid.add_row(*row)
        grid.expand = True
        self._console.print(Padding(grid, (0, 0, 0, indent)))

    def bullets(self, lines: Iterable[str], *, sign: str = "-", style: str = "") -> None:
        """A list; a sign ending in a point counts."""
        self.rows(
            [Text(f"{number}." if sign == "1." else sign, QUIET), Text(printable(line), style)]
            for number, line in enumerate(lines, start=1)
        )

    def text(self) -> str:
        """Everything so far, without blanks at the line ends."""
        return "\n".join(line.rstrip() for line in self._out.getvalue().split("\n"))


def plan_text(plan: Plan, look: Look) -> str:
    """The whole plan, what matters over the coals first."""
    page = Page(look)
    _head(page, plan)
    _coals(page, plan)
    _packs(page, plan)
    _steps(page, plan)
    _timeline(page, plan.timeline)
    _cold(page, plan)
    _lists(page, plan)
    _careful(page, plan)
    _open(page, plan)
    return page.text()


def _head(page: Page, plan: Plan) -> None:
    page.title(one_line(plan.recipe.title or "A recipe without a name"), plan.recipe.family)
    facts = []
    if plan.people:
        facts.append(f"for {plan.people}")
    elif plan.recipe.servings:
        served = plan.recipe.servings
        facts.append(f"{words.span(served)} {served.of}" if plan.scale == 1 else "")
    if plan.scale != 1:
        facts.append(f"{words.number(plan.scale)} times the recipe")
    if plan.pot:
        facts.append(words.pot(plan.pot))
        if plan.pot.fill is not None:
            facts.append(words.fill(plan.pot.fill))
    if page.day.eat:
        facts.append(f"eat at {page.day.eat.replace('T', ' ')}")
    page.say(" · ".join(fact for fact in facts if fact), indent=0)
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
    if plan.pot is not None and plan.pot.count > 1:
        page.say(
            f"The counts are for each of the {words.count(plan.pot.count)} pots, the fuel is for all.",
            style=WARN,
        )
    _stages(page, plan.heat)
    page.gap()
    page.say(words.fuel(plan.heat.fuel, page.day.units))
    _doneness(page, plan.heat)


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


def _stages(page: Page, heat: Heat) -> None:
    page.heading("over the coals", "one thing after the other")
    page.rows(
        [row.when, Text(row.what, HEAD), row.where, row.lasts] for row in words.fire_rows(heat, page.day)
    )


def _doneness(page: Page, heat: Heat) -> None:
    for check in heat.doneness:
        page.say(words.done(check, page.day.units))


def _packs(page: Page, plan: Plan) -> None:
    page.heading("packs", "what travels together, mixed or cut at home")
    for pack in plan.packs:
        where = words.TRAVELS[pack.travels] + (f", {pack.container}" if pack.container else "")
        page.say(f"{pack.id}  {one_line(words.pack_name(pack))}  ({pack.kind}: {where})", style=HEAD)
        page.say("; ".join(words.packed(plan, item, page.day.units) for item in pack.items), indent=4)
        if pack.make_ahead:
            page.say(pack.make_ahead, indent=4, style=QUIET)
    if plan.fat:
        page.heading("fat")
        page.rows([plan.recipe.ingredients[use.ingredient].name, words.fat_goes(use)] for use in plan.fat)


def _steps(page: Page, plan: Plan) -> None:
    for name, steps in (("at home", plan.home_steps), ("at camp", plan.camp_steps)):
        if steps:
            page.heading(name)
            page.bullets(steps, sign="1.")


def _timeline(page: Page, moments: Sequence[Moment]) -> None:
    if moments:
        page.heading("the day", "counted to the meal")
        told: set[str] = set()
        rows: list[list[str | Text]] = []
        for moment in moments:
            # What was told in full is told by its name from then on.
            do = moment.do.partition(":")[0] + "." if moment.do in told else moment.do
            told.add(moment.do)
            rows.append([Text(moment.clock or words.when(moment.at_min), EMBER), do])
        page.rows(rows)


def _cold(page: Page, plan: Plan) -> None:
    lines = words.cold_lines(plan, page.day.units)
    if lines:
        page.heading("cold")
        for line in lines:
            page.say(line)


def _lists(page: Page, plan: Plan) -> None:
    if plan.shopping:
        page.heading("shopping", "to buy, and what the plan needs of it")
        rows = []
        for line in plan.shopping:
            rest = f" ({line.left_over} left over)" if line.left_over else ""
            home = " - look at home first" if line.likely_at_home else ""
            rows.append([line.food, line.buy, f"{line.need}{rest}{home}"])
        page.rows(rows)
    if plan.kit.home or plan.kit.camp:
        page.heading("kit")
        page.rows(
            [Text(name, HEAD), "; ".join(things)]
            for name, things in (("home", plan.kit.home), ("camp", plan.kit.camp))
            if things
        )


def _careful(page: Page, plan: Plan) -> None:
    if plan.cautions:
        page.heading("careful")
        page.bullets((caution.text for caution in plan.cautions), sign="!")
    if plan.allergens or plan.check_label:
        page.heading("holds")
        page.say(
            words.joined(list(plan.allergens))
            or "none of the nine that must be declared, as far as the recipe tells"
        )
        for row in plan.check_label:
            page.say(
                f"Read the label of the {row.food}: it may hold {words.joined(list(row.may_hold), 'or')}."
            )


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
    page.say(" · ".join(fact for fact in facts if fact), indent=0)
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
        page.say(words.fresh_coals_in(fresh))
    page.say(words.fuel(answer.fuel, look.day.units))
    page.heading("why")
    for reason in answer.why:
        page.say(words.because(reason))
    return page.text()


def turn_text(turn: Turn, _look: Look) -> str:
    """A sentence of the talk and its answer."""
    return f"> {one_line(turn.said)}\n{printable(turn.answer)}\n"
