"""Which forms there are, and how results follow each other on the way out."""

from __future__ import annotations

import json

import pytest

from assistant.show.forms import NAMES, WRITERS, Look, Result, chosen, stream, written
from rules.circumstances import Day
from rules.plan import Plan
from rules.problem import UsageProblem


@pytest.mark.parametrize(
    ("said", "out", "form"),
    [
        (None, None, "text"),
        ("json", None, "json"),
        (None, "a.MD", "md"),
        (None, "a.htm", "html"),
        ("csv", "a.json", "csv"),
        (None, "plan", "text"),
    ],
)
def test_the_form_is_the_one_said_else_the_files_ending_else_text(
    said: str | None, out: str | None, form: str
) -> None:
    assert chosen("plan", said, out) == form


@pytest.mark.parametrize("kind", WRITERS)
def test_a_form_that_is_not_there_is_told_with_those_that_are(kind: str) -> None:
    with pytest.raises(UsageProblem) as caught:
        chosen(kind, "pdf", None)  # type: ignore[arg-type]
    *most, last = WRITERS[kind]  # type: ignore[index]
    assert str(caught.value) == f"--as pdf: {NAMES[kind]} comes as {', '.join(most)} or {last}."  # type: ignore[index]


@pytest.mark.parametrize("form", WRITERS["plan"])
def test_every_form_of_a_plan_is_written_and_ends_in_one_newline(river_plan: Plan, form: str) -> None:
    text = written("plan", river_plan, Look(form=form, day=Day(eat="2027-07-03T18:30")))
    assert text.endswith("\n")
    assert not text.endswith("\n\n")
    assert "Cobbler" in text


def results(plan: Plan) -> list[Result]:
    return [Result(file="a", thing=plan), Result(file="b", problem="b: gone."), Result(file="c", thing=plan)]


def test_lines_of_json_stand_in_the_order_of_the_files(river_plan: Plan) -> None:
    lines = "".join(stream("plan", results(river_plan), Look(form="jsonl"), several=True)).splitlines()
    assert [json.loads(line).get("error") for line in lines] == [None, "b: gone.", None]


def test_several_results_as_json_are_one_array(river_plan: Plan) -> None:
    rows = json.loads("".join(stream("plan", results(river_plan), Look(form="json"), several=True)))
    assert [row["file"] for row in rows] == ["river.txt", "b", "river.txt"]
    assert json.loads("".join(stream("plan", [], Look(form="json"), several=True))) == []


def test_a_failure_leaves_no_gap_in_text(river_plan: Plan) -> None:
    pieces = list(stream("plan", results(river_plan), Look(), several=True))
    assert len(pieces) == 2
    assert pieces[1].startswith("\nGravel Bar")
