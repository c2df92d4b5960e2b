"""A trip with a hostile name, a hostile person and a hostile dish through every form of a trip.

Outside: html5lib's strict parser, markdown-it-py with raw HTML allowed, and the readers of JSON, CSV and iCalendar.
"""

from __future__ import annotations

import csv
import io
import json

import html5lib
import pytest
from icalendar import Calendar

from assistant import cli
from assistant.show.forms import WRITERS
from assistant.show.tables import FORMULA_STARTS
from tests.assistant import hostile
from tests.assistant.test_hostile import unfit
from tests.assistant.tree import parsed

TRIP = r"""
name = "<script>window.hurt = 4</script> =1+1 \u202eeip 🥧 & | *"
leave = 2027-07-03T09:00:00
people = 9

[[person]]
name = "=HYPERLINK(1) <img src=x onerror=window.hurt=5>"
avoids = ["milk"]

[[meal]]
name = "<b onclick=1>Supper</b> | * `x`"
at = 2027-07-03T18:30:00
recipe = "hostile.txt"
"""


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    """The trip in every form."""
    folder = tmp_path_factory.mktemp("trip")
    (folder / "hostile.txt").write_text(hostile.TEXT, encoding="utf-8")
    (folder / "trip.toml").write_text(TRIP, encoding="utf-8")
    found = {}
    for form in WRITERS["trip"]:
        out = folder / f"out.{form}"
        assert cli.run(["trip", str(folder / "trip.toml"), "--as", form, "--out", str(out)]) == cli.DONE
        found[form] = out.read_bytes().decode()
    return found


@pytest.mark.parametrize("form", WRITERS["trip"])
def test_no_sign_steers_or_turns_and_nothing_is_lost(written: dict[str, str], form: str) -> None:
    assert unfit(written[form]) == set()
    assert "🥧" in written[form] or form == "csv"  # the lists do without the trip's name
    if form not in ("text", "ics"):  # which break a long word over their lines
        assert hostile.LONG in written[form]


def test_the_booklet_is_whole_and_holds_no_markup_of_strangers(written: dict[str, str]) -> None:
    tree = parsed(written["html"])
    assert len(list(tree.iter("script"))) <= 1
    assert not list(tree.iter("img"))
    for element in tree.iter():
        assert not [name for name in element.attrib if name.startswith("on")]
    assert "<script>window.hurt = 4</script>" in "".join(next(tree.iter("h1")).itertext())


def test_markdown_stays_text(written: dict[str, str]) -> None:
    markdown_it = pytest.importorskip(
        "markdown_it", reason="markdown-it-py is not installed: no second reader is asked"
    )
    page = markdown_it.MarkdownIt("commonmark", {"html": True}).enable("table").render(written["md"])
    tags = {str(element.tag) for element in html5lib.parseFragment(page, namespaceHTMLElements=False).iter()}
    assert not tags & {"script", "img", "b", "svg", "style"}


def test_no_cell_is_a_formula(written: dict[str, str]) -> None:
    rows = list(csv.reader(io.StringIO(written["csv"], newline="")))
    assert len(rows) > 10
    assert not [cell for row in rows for cell in row if cell.startswith(FORMULA_STARTS)]


def test_the_calendar_holds_events_alone(written: dict[str, str]) -> None:
    calendar = Calendar.from_ical(written["ics"])
    assert {component.name for component in calendar.walk()} == {"VCALENDAR", "VEVENT", "VALARM"}
    assert all(len(line.encode()) <= 75 for line in written["ics"].split("\r\n"))


def test_json_gives_back_the_very_name(written: dict[str, str]) -> None:
    assert json.loads(written["json"])["name"].startswith("<script>window.hurt = 4</script> =1+1 \u202eeip")


def test_no_line_of_the_text_is_too_wide(written: dict[str, str]) -> None:
    assert not [line for line in written["text"].splitlines() if len(line) > 80]
