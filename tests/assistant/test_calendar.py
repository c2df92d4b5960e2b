"""RFC 5545 is the outside here: what it demands of a calendar is read back through the library and by hand."""

from __future__ import annotations

from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from icalendar import Calendar

from assistant.show.calendar import calendar
from rules.circumstances import Day
from rules.plan import Moment, Plan
from rules.problem import UsageProblem
from rules.recipe import Recipe
from tests.assistant import hostile

PLAN = Plan(
    recipe=Recipe(title="River, cake; “plain”"),
    timeline=(
        Moment(at_min=-1440, do="Freeze the berry bag flat."),
        Moment(at_min=-75, do="Light 30 briquettes in the chimney, " + "well away from the tents " * 6),
        Moment(at_min=-45, do="Coals on: 17 above, 8 under."),
        Moment(at_min=-45, do="Pour the batter."),
        Moment(at_min=0, do="Eat."),
    ),
    no_coals_because="a test",
)


def events(text: str) -> list[object]:
    return list(Calendar.from_ical(text).walk("VEVENT"))


def test_moments_of_one_minute_are_one_event_with_an_alarm() -> None:
    found = events(calendar(PLAN, Day(eat="2027-07-03T18:30")))
    assert [event.decoded("dtstart") for event in found] == [
        datetime(2027, 7, 2, 18, 30),
        datetime(2027, 7, 3, 17, 15),
        datetime(2027, 7, 3, 17, 45),
        datetime(2027, 7, 3, 18, 30),
    ]
    assert found[2]["summary"] == "Coals on: 17 above, 8 under."
    assert "Pour the batter." in found[2]["description"]
    for event in found:
        (alarm,) = event.walk("VALARM")
        assert alarm["action"] == "DISPLAY"
        assert alarm.decoded("trigger") == timedelta(minutes=-5)


def test_what_rfc_5545_demands_is_there() -> None:
    """RFC 5545, sections 3.1 (lines), 3.6 (PRODID, VERSION) and 3.6.1 (UID and DTSTAMP of an event)."""
    text = calendar(PLAN, Day(eat="2027-07-03T18:30"))
    lines = text.split("\r\n")
    assert "\n" not in "".join(lines)
    assert all(len(line.encode()) <= 75 for line in lines)
    parsed = Calendar.from_ical(text)
    assert parsed["version"] == "2.0"
    assert parsed["prodid"]
    uids = [event["uid"] for event in events(text)]
    assert len(set(uids)) == len(uids) == 4
    assert all(event.decoded("dtstamp").utcoffset() == timedelta() for event in events(text))


def test_the_same_plan_gives_the_same_bytes() -> None:
    day = Day(eat="2027-07-03T18:30", zone="America/Boise")
    assert calendar(PLAN, day) == calendar(PLAN, day)


def test_in_a_zone_minutes_pass_evenly_over_a_change_of_clocks() -> None:
    """The clocks of America/Boise go forward on 14 March 2027 at 02:00 (IANA time zone database)."""
    plan = Plan(
        recipe=Recipe(title="Rolls"), timeline=(Moment(at_min=-600, do="Mix."), Moment(at_min=0, do="Eat."))
    )
    text = calendar(plan, Day(eat="2027-03-14T08:00", zone="America/Boise"))
    assert "DTSTART:20270314T140000Z" in text
    mix, eat = (event.decoded("dtstart").astimezone(ZoneInfo("America/Boise")) for event in events(text))
    assert mix.isoformat() == "2027-03-13T21:00:00-07:00"
    assert eat.isoformat() == "2027-03-14T08:00:00-06:00"


@pytest.mark.parametrize("eat", [None, "18:30"])
def test_without_a_date_it_says_what_to_write(eat: str | None) -> None:
    with pytest.raises(UsageProblem, match="write --eat 2027-07-03T18:30"):
        calendar(PLAN, Day(eat=eat))


def test_a_second_parser_reads_the_same_moments(river_plan: Plan) -> None:
    """vobject is a reader of RFC 5545 of its own; what icalendar wrote it must read alike."""
    vobject = pytest.importorskip("vobject", reason="vobject is not installed: no second reader is asked")
    text = calendar(river_plan, Day(eat="2027-07-03T18:30", zone="America/Boise"))
    other = vobject.readOne(text)
    seen = [(event.dtstart.value.isoformat(), event.summary.value) for event in other.vevent_list]
    own = [(event.decoded("dtstart").isoformat(), str(event["summary"])) for event in events(text)]
    assert seen == own
    assert [summary for _, summary in own] == ["Freeze the peaches flat.", "Light 25 briquettes.", "Eat."]
    assert own[1][0] == "2027-07-03T23:05:00+00:00"  # 17:05 in Boise
    assert all(event.valarm.trigger.value == timedelta(minutes=-5) for event in other.vevent_list)


def test_hostile_text_stays_in_its_field_and_turns_nothing() -> None:
    """RFC 5545, 3.3.11: line breaks, commas and semicolons of a text are escaped; nothing opens a component."""
    text = calendar(hostile.plan(), Day(eat="2027-07-03T18:30"))
    assert hostile.MARK not in text
    assert text.count("BEGIN:VEVENT") == text.count("END:VEVENT") == len(events(text))
    assert all(len(line.encode()) <= 75 for line in text.split("\r\n"))
    evil = Plan(
        recipe=Recipe(title="Pie\r\nEND:VCALENDAR"),
        timeline=(Moment(at_min=0, do="Eat;\nBEGIN:VEVENT, now"),),
    )
    (event,) = events(calendar(evil, Day(eat="2027-07-03T18:30")))
    assert event["summary"] == "Eat; BEGIN:VEVENT, now."
