"""Which forms of output there are for which kind of result, and how several results follow each other.

A form is named by the word after `--as`. Writers are imported when they are asked for, so that a plain question does
not load the makers of pages and calendars.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from importlib import import_module
from typing import Any, Literal

from assistant.show.celsius import for_metric
from assistant.show.data import error, json_line, json_text
from rules.circumstances import Day
from rules.plan import Plan
from rules.problem import UsageProblem
from rules.recipe import Struct

Kind = Literal["recipe", "plan", "coals", "why", "turn", "habit", "choices", "trip"]


class Look(Struct, frozen=True, kw_only=True):
    """How a result is shown: the form, the width in columns, whether colours may be used, and the cook's day."""

    form: str = "text"
    width: int = 80
    color: bool = False
    day: Day = Day()


class Result(Struct, frozen=True, kw_only=True):
    """What became of one file: the thing made of it, that thing as written, or why there is none."""

    file: str
    thing: Struct | None = None
    text: str | None = None
    problem: str | None = None


Writer = Callable[[Any, Look], str]


def _late(module: str, function: str) -> Callable[..., str]:
    """A function of a sister module, imported at its first call."""

    def call(*given: Any) -> str:
        written: str = getattr(import_module(f"assistant.show.{module}"), function)(*given)
        return written

    return call


def _for_the_day(module: str, function: str) -> Writer:
    """A writer that wants the day instead of the look."""
    write = _late(module, function)
    return lambda thing, look: write(thing, look.day)


_JSON: dict[str, Writer] = {
    "json": lambda thing, _look: json_text(thing),
    "jsonl": lambda thing, _look: json_line(thing),
}
WRITERS: dict[Kind, dict[str, Writer]] = {
    "recipe": {"text": _late("text", "recipe_text"), **_JSON, "md": _late("markdown", "recipe_markdown")},
    "plan": {
        "text": _late("text", "plan_text"),
        **_JSON,
        "md": _late("markdown", "plan_markdown"),
        "html": _for_the_day("card", "plan_card"),
        "ics": _for_the_day("calendar", "calendar"),
        "csv": _late("tables", "plan_csv"),
    },
    "coals": {"text": _late("text", "coals_text"), **_JSON},
    "why": {"text": _late("text", "why_text"), **_JSON},
    "turn": {"text": _late("text", "turn_text"), **_JSON},
    "habit": {
        "text": _late("habit", "habit_text"),
        **_JSON,
        "md": _late("habit", "habit_markdown"),
        "csv": _late("habit", "habit_csv"),
    },
    "choices": {
        "text": _late("choice", "choices_text"),
        **_JSON,
        "md": _late("choice", "choices_markdown"),
    },
    "trip": {
        "text": _late("trip.text", "trip_text"),
        **_JSON,
        "md": _late("trip.markdown", "trip_markdown"),
        "html": _late("trip.booklet", "trip_booklet"),
        "ics": lambda plan, _look: _late("calendar", "trip_calendar")(plan),
        "csv": _late("trip.table", "trip_csv"),
    },
}
NAMES: dict[Kind, str] = {
    "trip": "a trip",
    "recipe": "a recipe",
    "plan": "a plan",
    "coals": "a coal count",
    "why": "a list of reasons",
    "turn": "a talk",
    "habit": "a log",
    "choices": "a choice",
}
#: File name endings that name a form.
ENDINGS = {
    ".json": "json", ".jsonl": "jsonl", ".md": "md", ".html": "html", ".htm": "html", ".ics": "ics", ".csv": "csv",
    ".txt": "text",
}  # fmt: skip


#: The ending that a file of a form gets when nobody names the file.
ENDING_OF = {
    "text": ".txt",
    "json": ".json",
    "jsonl": ".jsonl",
    "md": ".md",
    "html": ".html",
    "ics": ".ics",
    "csv": ".csv",
}


def chosen(kind: Kind, said: str | None, out: str | None) -> str:
    """The form: the one that was said, else the one that the file's ending names, else text.

    Raises:
        UsageProblem: there is no such form of this kind of result.
    """
    ending = out[out.rfind(".") :].lower() if out and "." in out else ""
    form = said or ENDINGS.get(ending, "text")
    if form not in WRITERS[kind]:
        *most, last = WRITERS[kind]
        option, found = ("--as", said) if said else ("--out", out or "")
        raise UsageProblem(option, found, f"{NAMES[kind]} comes as {', '.join(most)} or {last}")
    return form


def written(kind: Kind, thing: Struct, look: Look) -> str:
    """One result in its form, ending in one newline."""
    if isinstance(thing, Plan) and look.day.units == "metric" and look.form not in _JSON:
        thing = for_metric(thing)
    return WRITERS[kind][look.form](thing, look).rstrip("\n") + "\n"


def stream(kind: Kind, results: Iterable[Result], look: Look, *, several: bool) -> Iterator[str]:
    """The pieces to write, one after the other: lines, documents, or the elements of one JSON array."""
    if several and look.form == "json":
        yield from _array(_pieces(kind, results, look))
        return
    between = "" if look.form == "jsonl" else "\n"
    for number, piece in enumerate(_pieces(kind, results, look)):
        yield between + piece if number else piece


def _pieces(kind: Kind, results: Iterable[Result], look: Look) -> Iterator[str]:
    for result in results:
        if result.text is not None:
            yield result.text
        elif result.thing is not None:
            yield written(kind, result.thing, look)
        elif look.form in _JSON and result.problem is not None:
            yield _JSON[look.form](error(result.file, result.problem), look) + "\n"


def _array(pieces: Iterable[str]) -> Iterator[str]:
    opening = "[\n"
    for piece in pieces:
        yield opening + piece.rstrip("\n")
        opening = ",\n"
    yield "[]\n" if opening == "[\n" else "\n]\n"
