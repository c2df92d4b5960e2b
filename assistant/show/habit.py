"""The cook's log and what it taught: as text, Markdown, and a table of its lines."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator
from typing import TYPE_CHECKING

from assistant.show.plain import printable
from assistant.show.tables import harmless
from rules.habit.evidence import is_counted
from rules.habit.findings import Finding
from rules.habit.record import Cooked
from rules.recipe import Struct

if TYPE_CHECKING:
    from assistant.show.forms import Look

EMPTY = "Nothing is logged yet. After a meal tell the chat: took 35 minutes, bottom a bit dark, pot read 340."
SHADES = {-2: "pale", -1: "a bit pale", 0: "right", 1: "a bit dark", 2: "dark", 3: "burnt"}
WHOSE = {"heat": "the chart's heat", "split": "the chart's split", "minutes": "the recipe's minutes"}
GOES = {"heat": "coals", "split": "top over bottom", "minutes": "minutes"}
HEADER = (
    "cooked_at", "dish", "stage", "pot_in", "depth", "charcoal", "air_f", "wind", "planned_low_min", "planned_high_min",
    "minutes", "aim_f", "pot_f", "top", "under", "chart_top", "chart_under", "laid_top", "laid_under",
)  # fmt: skip


class Line(Struct, frozen=True, kw_only=True):
    """A line of the log and when it was written."""

    cooked_at: str
    cooked: Cooked


class HabitReport(Struct, frozen=True, kw_only=True):
    """The whole log, what it taught, and how many of its lines could not be read."""

    cooks: tuple[Line, ...] = ()
    findings: tuple[Finding, ...] = ()
    unreadable: int = 0


def habit_text(report: HabitReport, _look: Look | None = None) -> str:
    """What is learnt, then the lines, the latest first."""
    if not report.cooks:
        return "\n".join([EMPTY, *_left_out(report)])
    told = ["What your log teaches:", *(f"  {finding_text(one)}" for one in report.findings)]
    if not report.findings:
        told = ["Your log teaches nothing yet: minutes, a reading or a darkness would."]
    lines = (f"  {line.cooked_at[:10]}  {line_text(line.cooked)}" for line in reversed(report.cooks))
    return "\n".join([*told, f"Your log, {counted(len(report.cooks))}:", *lines, *_left_out(report)])


def habit_markdown(report: HabitReport, _look: Look) -> str:
    """The same as two lists."""
    if not report.cooks:
        return f"# Log of cooks\n\n{EMPTY}\n"
    told = "\n".join(f"- {finding_text(one)}" for one in report.findings) or "- nothing yet"
    lines = "\n".join(f"- {line.cooked_at[:10]}: {line_text(line.cooked)}" for line in report.cooks)
    return f"# Log of cooks\n\n## What it teaches\n\n{told}\n\n## Cooks\n\n{lines}\n"


def habit_csv(report: HabitReport, _look: Look) -> str:
    """The lines of the log, one a row; what was not said is empty."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(HEADER)
    for line in report.cooks:
        writer.writerow([harmless("" if cell is None else f"{cell}") for cell in _cells(line)])
    return out.getvalue()


def _cells(line: Line) -> tuple[object, ...]:
    cook, told = line.cooked, line.cooked.told
    return (
        line.cooked_at, cook.dish, cook.kind, cook.diameter_in, cook.depth, cook.charcoal, cook.air_f, cook.wind,
        cook.chart_low_min, cook.chart_high_min, told.minutes, cook.aim_f, told.pot_f,
        _shade(told.top), _shade(told.under), cook.chart_top, cook.chart_under, cook.laid_top, cook.laid_under,
    )  # fmt: skip


def _shade(darkness: int | None) -> str | None:
    return None if darkness is None else SHADES[darkness]


def finding_text(one: Finding) -> str:
    """One finding as a line: the figure, its uncertainty, what the plan makes of it."""
    same = abs(one.factor - 1) < 0.005
    made = "nothing changes" if same else f"{GOES[one.what]} times {one.factor:.2f}"
    return (
        f"{one.about}: {one.percent:.0f} % of {WHOSE[one.what]}, give or take {one.give_percent:.0f};"
        f" {made} ({counted(one.cooks)})"
    )


def line_text(cook: Cooked) -> str:
    """One line of the log: what was told, beside what was planned."""
    told = cook.told
    said = []
    if told.minutes is not None:
        planned = f"{cook.chart_low_min:.0f}"
        if cook.chart_high_min != cook.chart_low_min:
            planned += f" to {cook.chart_high_min:.0f}"
        odd = "" if is_counted(cook) else ", too far off to count"
        said.append(f"{told.minutes:.0f} min where the recipe says {planned}{odd}")
    if told.pot_f is not None:
        aim = f" where {cook.aim_f:.0f} was the aim" if cook.aim_f is not None else ""
        said.append(f"pot at {told.pot_f:.0f} °F{aim}")
    for face, darkness in (("top", told.top), ("bottom", told.under)):
        if darkness is not None:
            said.append(f"{face} {SHADES[darkness]}")
    pot = f"{cook.diameter_in}-inch {cook.depth}, {cook.laid_top} above and {cook.laid_under} below"
    day = f"{cook.air_f:.0f} °F and {cook.wind}"
    return printable(f"{cook.dish}: {'; '.join(said) or 'nothing told'} ({pot}, {cook.charcoal}, {day})")


def counted(cooks: int) -> str:
    """A number of cooks in words."""
    return "1 cook" if cooks == 1 else f"{cooks} cooks"


def _left_out(report: HabitReport) -> Iterator[str]:
    if report.unreadable:
        yield f"Left out: {report.unreadable} that cannot be read by this version."
