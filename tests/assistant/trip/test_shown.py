"""A trip as text, Markdown, table, calendar and JSON: the same figures everywhere.

Outside: vobject, a reader of RFC 5545 of its own; the csv module; jsonschema's validator of JSON Schema 2020-12.
"""

from __future__ import annotations

import csv
import io
import json
import re
from datetime import datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from jsonschema import Draft202012Validator

from assistant import cli
from assistant.show.calendar import trip_calendar
from assistant.show.forms import WRITERS, Look, written
from assistant.show.schema import schema
from assistant.show.trip import told as in_words
from assistant.show.trip.markdown import trip_markdown
from assistant.show.trip.table import trip_csv
from assistant.show.trip.text import trip_text
from rules.trip.model import Cooler, Trip
from rules.trip.plan import plan
from tests.assistant import hostile
from tests.assistant.trip.test_booklet import hostile_plan
from tests.trips import WEEKEND, meal, pot, trip, weekend


def test_the_text_stays_within_its_width_and_tells_everything() -> None:
    planned = weekend()
    said = trip_text(planned, Look(width=80))
    assert max(map(len, said.split("\n"))) <= 80
    flat = " ".join(said.split())
    for dish in planned.dishes:
        assert " ".join(dish.title.split()) in flat
    for heading in (
        "MEALS",
        "WHO AVOIDS WHAT",
        "AT HOME",
        "SHOPPING",
        "PACKING",
        "FIRE",
        "THE DAYS",
        "CAREFUL",
    ):
        assert heading in said
    assert planned.fuel is not None
    assert f"Bring {planned.fuel.briquettes} briquettes" in flat


def test_every_bought_food_stands_in_the_markdown_and_in_the_table() -> None:
    planned = weekend()
    page, table = trip_markdown(planned, Look()), trip_csv(planned, Look())
    rows = list(csv.reader(io.StringIO(table)))
    bought = {row[2]: row[3] for row in rows if row[0] == "shopping"}
    for line in planned.shopping:
        assert f"| {line.food} | {line.buy} |" in page
        assert bought[line.food] == line.buy


def test_the_shares_in_the_table_add_up_to_what_is_needed() -> None:
    rows = list(csv.reader(io.StringIO(trip_csv(weekend(), Look()))))
    needed: dict[str, float] = {}
    for row in rows:
        if row[0] == "need" and row[4]:
            needed[row[2]] = needed.get(row[2], 0.0) + float(row[4])
    for row in rows:
        if row[0] == "shopping" and row[4]:
            assert float(row[4]) == pytest.approx(needed[row[2]], abs=0.3)


def test_a_second_parser_reads_the_calendar_alike() -> None:
    vobject = pytest.importorskip("vobject", reason="vobject is not installed: no second reader is asked")
    planned = weekend()
    read = vobject.readOne(trip_calendar(planned))
    seen = {event.dtstart.value.astimezone(ZoneInfo("America/Boise")) for event in read.vevent_list}
    wanted = {
        datetime.fromisoformat(moment.at).replace(tzinfo=ZoneInfo("America/Boise"))
        for moment in planned.calendar
    }
    assert seen == wanted
    texts = " ".join(f"{event.summary.value} {event.description.value}" for event in read.vevent_list)
    for moment in planned.calendar:
        assert " ".join(moment.do.split())[:200] in " ".join(texts.split())
    assert len({event.uid.value for event in read.vevent_list}) == len(read.vevent_list)
    assert all(event.valarm.trigger.value == timedelta(minutes=-5) for event in read.vevent_list)


def test_the_calendar_s_lines_are_folded_as_the_standard_wants() -> None:
    """RFC 5545, 3.1: lines of 75 octets at most, ended by CRLF."""
    lines = trip_calendar(weekend()).split("\r\n")
    assert max(len(line.encode()) for line in lines) <= 75


def test_the_json_keeps_to_its_schema(capsys: pytest.CaptureFixture[str]) -> None:
    published = schema("trip")
    Draft202012Validator.check_schema(published)
    assert cli.run(["trip", str(WEEKEND), "--as", "json"]) == cli.DONE
    made = json.loads(capsys.readouterr().out)
    Draft202012Validator(published).validate(made)
    assert made["schema"] == "coalside/trip/1"
    assert [dish["plan"]["schema"] for dish in made["dishes"]] == ["coalside/plan/1"] * 7


@pytest.mark.parametrize("form", WRITERS["trip"])
def test_every_form_is_written_and_hostile_names_turn_nothing(form: str) -> None:
    said = written("trip", hostile_plan(), Look(form=form))
    assert said.endswith("\n")
    assert hostile.MARK not in said
    assert not any(line.startswith(('"=', "=")) for line in said.splitlines())


@pytest.mark.parametrize("form", [*WRITERS["trip"]])
def test_the_command_writes_every_form_to_a_file(
    form: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / f"trip.{form}"
    assert cli.run(["trip", str(WEEKEND), "--as", form, "--out", str(out)]) == cli.DONE
    assert out.stat().st_size > 1000
    assert cli.run(["trip", str(WEEKEND), "--as", form, "--out", str(out)]) == cli.FAILED
    assert "it exists already" in capsys.readouterr().err
    assert cli.run(["trip", str(WEEKEND), "--as", form, "--out", str(out), "--force"]) == cli.DONE


@pytest.mark.parametrize(
    ("arguments", "code", "sentence"),
    [
        (["nowhere.toml"], cli.FAILED, "nowhere.toml: there is no such file; check the name and the folder."),
        (
            ["x.toml", "--as", "pdf"],
            cli.WRONG_USAGE,
            "--as pdf: a trip comes as text, json, jsonl, md, html, ics or csv.",
        ),
        ([], cli.WRONG_USAGE, "coalside trip: missing argument 'TRIP.toml'; coalside trip --help says more."),
    ],
)
def test_what_goes_wrong_has_its_code_and_one_sentence(
    arguments: list[str], code: int, sentence: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert cli.run(["trip", *arguments]) == code
    assert capsys.readouterr().err.strip() == sentence


def test_a_broken_trip_file_fails_with_its_line(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "river.toml"
    file.write_text("leave = 2027-07-02T09:00:00\npoeple = 9\n", encoding="utf-8")
    assert cli.run(["trip", str(file)]) == cli.FAILED
    assert (
        f'{file}, line 2: a trip has no key "poeple"; did you mean people?' == capsys.readouterr().err.strip()
    )


@pytest.mark.parametrize(
    ("title", "short"),
    [
        ("Beans", "Beans"),
        ("Peach Cobbler for the Last Night on the River", "Peach Cobbler"),
        ("Chicken and Dumplings for Cold Hands", "Chicken and Dumplings"),
        ("Everybody's Favourite Extraordinary Casserole Bake", "Everybody's Favourite"),
        ("Slumgullionnnnnnnnnnnnnnnnnnnnnnnnnnnn", "Slumgullionnnnnnnnnnnnnnnnnn"),
    ],
)
def test_long_titles_are_cut_where_the_dish_ends(title: str, short: str) -> None:
    assert in_words._short(title) == short


ODD = {
    "no coals": trip(meal("cabbage-slaw")),
    "a fire ban": trip(meal("can-chili"), charcoal=False),
    "nobody counted": trip(meal("pan-cornbread"), people=None, pots=(), coolers=(), zone=None, leave=None),
    "metric": trip(meal("can-chili"), units="metric", pots=(pot(deep=True),)),
    "two coolers": trip(
        meal("can-chili"),
        meal("egg-bake", "2027-07-03T08:30"),
        coolers=(Cooler(quarts=30), Cooler(quarts=12)),
    ),
    "a clash left open": trip(meal("can-chili"), meal("egg-bake"), pots=(pot(deep=True),)),
    "a crowd": trip(meal("beef-stew"), people=60, pots=(pot(14, deep=True, count=3),)),
    "two weeks": trip(meal("soda-bread", "2027-07-15T18:30"), meal("can-chili", "2027-07-20T18:30")),
}


@pytest.mark.parametrize("form", WRITERS["trip"])
@pytest.mark.parametrize("told", ODD.values(), ids=ODD.keys())
def test_odd_trips_are_shown_in_every_form(told: Trip, form: str) -> None:
    said = written("trip", plan(told), Look(form=form))
    assert len(said) > 500
    assert not re.search(r"\bNone\b(?! on the lid)", said)
