"""What is shown is what the JSON says: the figures of ten plans, read back from the page, the text, Markdown, table and day.

Each form is held against the JSON object that a script would read, not against the structs it was written from.
"""

from __future__ import annotations

import csv
import io
import json
import re
from datetime import datetime, timedelta
from typing import Any
from xml.etree.ElementTree import Element

import pytest
from icalendar import Calendar

from assistant.show.data import json_line
from assistant.show.forms import Look, written
from tests.assistant.dishes import DAY, TEN, plan_of
from tests.assistant.tree import having, parsed, text

#: Forms that tell the whole plan.
WHOLE = ("html", "text", "md")


def plan(dish: str) -> dict[str, Any]:
    return dict(json.loads(json_line(plan_of(dish))))


def shown(dish: str, form: str, width: int = 80) -> str:
    return written("plan", plan_of(dish), Look(form=form, width=width, day=DAY))


def page(dish: str) -> Element:
    return parsed(shown(dish, "html"))


def words(dish: str, form: str) -> str:
    """All words of a form on one line, as a reader sees them."""
    if form == "html":
        return text(next(page(dish).iter("main")))
    told = shown(dish, form)
    if form == "md":
        told = re.sub(r"\\(.)", r"\1", told)
    return " ".join(told.split())


@pytest.mark.parametrize("form", WHOLE)
@pytest.mark.parametrize("dish", TEN)
def test_steps_and_shopping_are_told_word_for_word(dish: str, form: str) -> None:
    told, of = words(dish, form), plan(dish)
    for step in (*of["home_steps"], *of["camp_steps"]):
        assert step[1:] in told  # the page gives a step its capital
    for line in of["shopping"]:
        assert line["buy"] in told
        assert line["food"].lower() in told.lower()
    for caution in of["cautions"]:
        # Its first words may be its heading, which ends without a stop.
        assert re.sub(r"[.*\s]", "", caution["text"]) in re.sub(r"[.*\s]", "", told)
    for allergen in of["allergens"]:
        assert allergen in told.lower()


@pytest.mark.parametrize("form", WHOLE)
@pytest.mark.parametrize("dish", TEN)
def test_every_count_of_coals_is_told(dish: str, form: str) -> None:
    told, heat = words(dish, form), plan(dish)["heat"]
    if heat is None:
        assert "briquettes" not in told.partition("Kit")[0].lower() or form == "text"
        return
    assert f"Bring {heat['fuel']['briquettes']} briquettes" in told
    assert f"{heat['fuel']['lit']} to light, {heat['fuel']['reserve']} in reserve" in told
    for stage in heat["stages"]:
        if stage["kind"] == "light":
            continue
        if stage["top"]:
            assert f"{stage['top']} on the lid" in told
        if stage["under"]:
            assert f"{stage['under']} under" in told
        if stage["turn_every_min"]:
            assert f"very {stage['turn_every_min']} min" in told
        if stage["first_look_min"]:
            assert f"after {stage['first_look_min']} min" in told
        for fresh in stage["refresh"]:
            assert all(f"{fresh[level]} " in told for level in ("top", "under") if fresh[level])
    for batch in heat["fuel"]["batches"]:
        assert re.search(rf"\b{batch['count']} (?:more )?(?:in the chimney|briquettes|for )", told)


@pytest.mark.parametrize("dish", TEN)
def test_the_page_draws_as_many_briquettes_as_it_counts(dish: str) -> None:
    of, tree = plan(dish), page(dish)
    for bed in having(tree, "bed"):
        counts = [int("".join(count.itertext()).split()[0]) for count in having(bed, "count")]
        drawn = [len(having(level, "coal")) for level in having(bed, "level")]
        assert counts == drawn
    if of["heat"]:
        counted = {
            (stage["top"], stage["under"]) for stage in of["heat"]["stages"] if stage["kind"] != "light"
        }
        assert len(having(tree, "bed")) >= len(counted)


@pytest.mark.parametrize("form", WHOLE)
@pytest.mark.parametrize("dish", TEN)
def test_every_moment_of_the_day_is_told_with_its_clock(dish: str, form: str) -> None:
    told, of = words(dish, form), plan(dish)
    meal = datetime.fromisoformat(DAY.eat or "")
    for moment in of["timeline"]:
        deed = moment["do"].rstrip(".").strip()
        assert deed[1:] in told
    firsts = {moment["do"]: moment for moment in reversed(of["timeline"])}
    for moment in firsts.values():
        assert f"{meal + timedelta(minutes=moment['at_min']):%H:%M}" in told


@pytest.mark.parametrize("form", WHOLE)
@pytest.mark.parametrize("dish", TEN)
def test_every_pack_is_told_with_its_id_and_every_label_with_its_lines(dish: str, form: str) -> None:
    told, of = words(dish, form), plan(dish)
    for pack in of["packs"]:
        assert pack["id"] in told
    for label in of["labels"]:
        for line in label["text"].split("\n"):
            assert " ".join(line.split()) in re.sub(r" > ", " ", told)


@pytest.mark.parametrize("dish", TEN)
def test_the_table_has_a_row_for_every_purchase_packed_food_and_tool(dish: str) -> None:
    of = plan(dish)
    rows = list(csv.DictReader(io.StringIO(shown(dish, "csv"), newline="")))
    by_list = {name: [row for row in rows if row["list"] == name] for name in ("shopping", "packing", "kit")}
    assert [(row["item"], row["amount"]) for row in by_list["shopping"]] == [
        (line["food"], line["buy"]) for line in of["shopping"]
    ]
    assert [row["where"].partition(":")[0] for row in by_list["packing"]] == [
        pack["id"] for pack in of["packs"] for _ in pack["items"]
    ]
    assert [row["item"] for row in by_list["kit"]] == [*of["kit"]["home"], *of["kit"]["camp"]]


@pytest.mark.parametrize("dish", TEN)
def test_the_calendar_has_every_moment_at_its_time(dish: str) -> None:
    of, meal = plan(dish), datetime.fromisoformat(DAY.eat or "")
    told: dict[datetime, str] = {}
    for event in Calendar.from_ical(shown(dish, "ics")).walk("VEVENT"):
        at = event.decoded("dtstart")
        told[at] = f"{event['summary']} {event['description']}"
    for moment in of["timeline"]:
        at = (meal + timedelta(minutes=moment["at_min"])).replace(second=0, microsecond=0)
        assert moment["do"].rstrip(".")[1:] in told[at]


@pytest.mark.parametrize("dish", TEN)
def test_a_second_reader_of_calendars_sees_the_same_events(dish: str) -> None:
    """vobject reads RFC 5545 by itself; starts, ends, names, texts and alarms must be those that icalendar reads."""
    vobject = pytest.importorskip("vobject", reason="vobject is not installed: no second reader is asked")
    text = shown(dish, "ics")
    seen = [
        (
            event.dtstart.value,
            event.dtend.value,
            event.summary.value,
            event.description.value,
            event.valarm.trigger.value,
        )
        for event in vobject.readOne(text).vevent_list
    ]
    own = [
        (
            event.decoded("dtstart"),
            event.decoded("dtend"),
            str(event["summary"]),
            str(event["description"]),
            event.walk("VALARM")[0].decoded("trigger"),
        )
        for event in Calendar.from_ical(text).walk("VEVENT")
    ]
    assert seen == own


@pytest.mark.parametrize("dish", TEN)
def test_the_calendar_survives_a_round_trip(dish: str) -> None:
    text = shown(dish, "ics")
    again = Calendar.from_ical(text).to_ical().decode()
    assert again.split() == text.split()


@pytest.mark.parametrize("width", [40, 60, 80])
@pytest.mark.parametrize("dish", TEN)
def test_no_line_of_a_plan_is_wider_than_the_terminal(dish: str, width: int) -> None:
    assert [line for line in shown(dish, "text", width).splitlines() if len(line) > width] == []


@pytest.mark.parametrize("dish", TEN)
def test_the_first_screen_of_a_plan_holds_pot_coals_and_minutes(dish: str) -> None:
    """A terminal of 24 lines by 80 columns, nothing scrolled."""
    screen, of = " ".join(" ".join(shown(dish, "text").splitlines()[:24]).split()), plan(dish)
    if of["heat"] is None:
        assert of["no_coals_because"][:40] in screen
        return
    assert f"{of['pot']['diameter_in']}-inch" in screen
    assert f"{of['heat']['fuel']['briquettes']} briquettes" in screen
    assert "on the lid" in screen or "under" in screen
    assert re.search(r"\d+ (?:to \d+ )?(?:minutes|min|h)\b", screen)
