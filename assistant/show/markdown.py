"""A plan or a recipe as Markdown (CommonMark with tables), to keep beside the recipe or to send to the crew.

Recipe text is escaped, so that a star or a pipe in it stays a star or a pipe.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from assistant.show import parts, words
from assistant.show.boxes import boxes
from assistant.show.moments import Line, again, by_date, hour
from assistant.show.plain import one_line, printable
from assistant.show.rings import levels
from rules.plan import Caution, Heat, Plan, Stage
from rules.recipe import Recipe
from rules.units import in_all

if TYPE_CHECKING:
    from assistant.show.forms import Look

#: Signs of Markdown, and the one that opens a character reference ("&lt;").
_SIGNS = re.compile(r"([\\`*_{}\[\]<>|~#]|&(?=#?\w{1,40};))")
_LINE_START = re.compile(r"^(\s*)([-+]|\d{1,9}[.)])(?=\s)")


def plan_markdown(plan: Plan, look: Look) -> str:
    """The whole plan."""
    written = [
        f"# {plain(plan.recipe.title or 'A recipe without a name')}",
        plain(", ".join([plan.recipe.family, *parts.facts(plan, look.day)])),
        *_questions(plan),
        *(_coals(plan, plan.heat, look) if plan.heat else ("## Coals", plain(plan.no_coals_because or ""))),
        *_packs(plan, look),
        *numbered("At home", plan.home_steps),
        *numbered("At camp", plan.camp_steps),
        *_the_day(plan, look),
        *_cold(plan, look),
        *_shopping(plan),
        *section("Kit for home", bullets(plan.kit.home)),
        *section("Kit for camp", bullets(plan.kit.camp)),
        *section("Labels", "\n\n".join(_label(label.text) for label in plan.labels)),
        *section("Careful", "\n".join(map(_caution, plan.cautions))),
        *_holds(plan),
        *_why(plan),
    ]
    return "\n\n".join(part for part in written if part) + "\n"


def recipe_markdown(recipe: Recipe, look: Look) -> str:
    """A recipe as it was read."""
    rows = []
    for item in recipe.ingredients:
        measured = words.amount(in_all(item.amounts), look.day.units)
        rows.append((item.component or "", measured, " ".join([*item.state, item.name]), item.prep or ""))
    written = [
        f"# {plain(recipe.title or 'A recipe without a name')}",
        f"{recipe.family}"
        + (f", {words.span(recipe.servings)} {plain(recipe.servings.of)}" if recipe.servings else ""),
        *section("Ingredients", grid(("Part", "Amount", "Food", "Preparation"), rows)),
        *numbered("Method", [step.text for step in recipe.steps]),
        *section("Not understood", bullets(f"line {line.line + 1}: {line.text}" for line in recipe.unread)),
    ]
    return "\n\n".join(part for part in written if part) + "\n"


def plain(text: str) -> str:
    """Recipe text on one line whose signs mean nothing to Markdown."""
    return _LINE_START.sub(r"\1\\\2", _SIGNS.sub(r"\\\1", one_line(text, most=2000)))


def section(name: str, body: str) -> tuple[str, ...]:
    """A heading with its text; nothing for no text."""
    return (f"## {name}", body) if body else ()


def bullets(lines: Iterable[str]) -> str:
    """A list with a hyphen before each line."""
    return "\n".join(f"- {plain(line)}" for line in lines)


def numbered(name: str, steps: Sequence[str]) -> tuple[str, ...]:
    """A heading with numbered steps."""
    return section(name, "\n".join(f"{number}. {plain(step)}" for number, step in enumerate(steps, start=1)))


def grid(head: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """A table; empty without rows."""
    lines = [f"| {' | '.join(map(plain, row))} |" for row in rows]
    if not lines:
        return ""
    return "\n".join([f"| {' | '.join(head)} |", f"|{'---|' * len(head)}", *lines])


def _questions(plan: Plan) -> tuple[str, ...]:
    return section(
        "Left open", bullets(f"{question.text} Taken: {question.default}." for question in plan.questions)
    )


def _the_day(plan: Plan, look: Look) -> tuple[str, ...]:
    """A table for each date."""
    tables = [
        (date, grid(("When", "Do"), (_moment(line, look) for line in lines)))
        for date, lines in by_date(plan.timeline, look.day)
    ]
    return section(
        "The day", "\n\n".join(f"### {date}\n\n{table}" if date else table for date, table in tables)
    )


def _moment(line: Line, look: Look) -> tuple[str, str]:
    """When and what; what is done again and again is one row that names its times."""
    more = again(line, look.day)
    return hour(line.moments[0], look.day), f"{line.do} {words.sentence(more)}" if more else line.do


def _caution(caution: Caution) -> str:
    heading, text = parts.caution(caution)
    return f"- **{plain(words.sentence(heading))}** {plain(text)}"


def _coals(plan: Plan, heat: Heat, look: Look) -> tuple[str, ...]:
    rows = [
        (
            row.when,
            row.what,
            row.where,
            row.lasts,
            words.degrees(row.stage.temp_f, look.day.units)
            if row.stage and row.stage.temp_f is not None
            else "",
            row.stage.look_for if row.stage else "",
        )
        for row in parts.fire_rows(heat, look.day)
    ]
    main = words.main_stage(plan)
    lines = [
        *(
            f"{words.capital(stage.kind)}: {said}"
            for stage in heat.stages
            for said in parts.rhythm(stage, look.day)
        ),
        parts.fuel(heat.fuel, look.day.units),
        *(parts.done(check, look.day.units) for check in heat.doneness),
    ]
    drawn = _drawn(main, plan.pot.diameter_in) if main is not None and plan.pot else ""
    return (
        "## Coals",
        parts.per_pot(plan),
        grid(("When", "What", "Coals", "Lasts", "Inside", "Look for"), rows),
        drawn,
        bullets(lines),
    )


def _drawn(stage: Stage, diameter_in: int) -> str:
    """Both levels side by side, in a block that keeps its blanks."""
    pattern = stage.pattern
    drawn = levels(diameter_in, stage.top, stage.under, pattern)
    rows = [f"{left}    {right}".rstrip() for left, right in zip(*drawn, strict=True)]
    caption = f"{stage.top} on the lid, left; {stage.under} under the pot, right"
    if pattern:
        caption += f": {printable(pattern.top)}; {printable(pattern.under)}"
    return "\n".join([caption, "", "```text", *rows, "```"])


def _packs(plan: Plan, look: Look) -> tuple[str, ...]:
    rows = [
        (
            f"{box.id}: {box.name}" if box.id else box.name,
            "; ".join(box.lines),
            box.where,
            box.make_ahead or "",
        )
        for box in boxes(plan, look.day.units)
    ]
    fat = [f"{plan.recipe.ingredients[use.ingredient].name}: {parts.fat_goes(use)}" for use in plan.fat]
    return (
        *section("Packs", grid(("Pack", "Holds", "Travels", "Ahead"), rows)),
        *section("Fat", bullets(fat)),
    )


def _cold(plan: Plan, look: Look) -> tuple[str, ...]:
    return section("Cold", bullets(parts.cold_lines(plan, look.day.units)))


def _shopping(plan: Plan) -> tuple[str, ...]:
    rows = (
        (row.food, row.buy, row.need, row.left_over or "", "look first" if row.likely_at_home else "")
        for row in plan.shopping
    )
    return section("Shopping", grid(("Food", "Buy", "Needed", "Left over", "At home"), rows))


def _label(text: str) -> str:
    """A label as a quotation, its line breaks kept."""
    return "\n".join(f"> {plain(line)}  " for line in printable(text).split("\n"))


def _holds(plan: Plan) -> tuple[str, ...]:
    lines = [
        f"Read the label of the {row.food}: it may hold {words.joined(row.may_hold, 'or')}."
        for row in plan.check_label
    ]
    return section(
        "Holds", "\n\n".join(part for part in (words.joined(plan.allergens), bullets(lines)) if part)
    )


def _why(plan: Plan) -> tuple[str, ...]:
    return section(
        "Why", grid(("About", "Because", "Source"), ((r.about, r.because, r.source) for r in plan.why))
    )
