"""A plan's day as an iCalendar file (RFC 5545): one event per moment that needs hands, each with an alarm.

Where the zone is known the times are UTC: minutes pass evenly there whatever the clocks do, and no reader has to
understand a zone's rules (the zone tables that RFC 5545 wants beside local times are read differently by different
readers). Without a zone they float, as a clock on the table does.

Nothing in the file depends on when or where it is written: identifiers come from the plan itself, the time stamp from
the meal, so the same plan gives the same bytes.
"""

from __future__ import annotations

import uuid
from datetime import UTC, datetime, timedelta
from itertools import groupby
from zoneinfo import ZoneInfo

from icalendar import Alarm, Calendar, Event

from assistant.show import words
from assistant.show.plain import one_line
from rules.circumstances import Day
from rules.plan import Moment, Plan
from rules.problem import UsageProblem

#: Our own name space, so that identifiers are the same on every machine.
NAMESPACE = uuid.UUID("6f1d5a0e-3b62-5f0c-9a57-2c8c5f3f9b11")
ALARM_BEFORE = timedelta(minutes=5)
#: Long enough to be seen in a calendar's day, short enough that neighbours do not overlap.
EVENT_LASTS = timedelta(minutes=5)


def calendar(plan: Plan, day: Day) -> str:
    """The iCalendar text, lines ended by CRLF and folded at 75 octets.

    Raises:
        UsageProblem: when the day has no date and clock for the meal.
    """
    meal = _meal(day)
    title = one_line(plan.recipe.title or "Camp meal")
    out = Calendar()
    out.add("prodid", "-//coalside//camp plan//EN")
    out.add("version", "2.0")
    out.add("x-wr-calname", f"{title}, at camp")
    for at_min, moments in groupby(plan.timeline, key=lambda moment: moment.at_min):
        out.add_component(_event(title, meal, at_min, list(moments)))
    text: str = out.to_ical().decode("utf-8")
    return text


def _meal(day: Day) -> datetime:
    """The meal in UTC, or floating where no zone is known."""
    wanted = "a calendar needs the meal's date and clock; write --eat 2027-07-03T18:30"
    if day.eat is None or "T" not in day.eat:
        raise UsageProblem("--as ics", f"with --eat {day.eat or '(not given)'}", wanted)
    meal = datetime.fromisoformat(day.eat)
    if day.zone and meal.tzinfo is None:
        meal = meal.replace(tzinfo=ZoneInfo(day.zone))
    return meal if meal.tzinfo is None else meal.astimezone(UTC)


def _event(title: str, meal: datetime, at_min: float, moments: list[Moment]) -> Event:
    starts = meal + timedelta(minutes=at_min)
    summary, *more = [words.sentence(one_line(moment.do, most=2000)) for moment in moments]
    event = Event()
    event.add("uid", f"{uuid.uuid5(NAMESPACE, f'{title}|{meal.isoformat()}|{at_min:g}|{summary}')}@coalside")
    event.add("dtstamp", datetime(meal.year, meal.month, meal.day, tzinfo=UTC))
    event.add("dtstart", starts)
    event.add("dtend", starts + EVENT_LASTS)
    event.add("summary", summary)
    event.add("description", "\n".join([title, *more]))
    alarm = Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("trigger", -ALARM_BEFORE)
    alarm.add("description", summary)
    event.add_component(alarm)
    return event
