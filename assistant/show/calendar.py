"""A plan's day as an iCalendar file (RFC 5545): one event per moment that needs hands, each with an alarm.

Where the zone is known the times are UTC: minutes pass evenly there whatever the clocks do, and no reader has to
understand a zone's rules (the zone tables that RFC 5545 wants beside local times are read differently by different
readers). Without a zone they float, as a clock on the table does.

Nothing in the file depends on when or where it is written: identifiers come from the plan itself, the time stamp from
the meal, so the same plan gives the same bytes.
"""

from __future__ import annotations

import uuid
from collections.abc import Iterable, Sequence
from datetime import UTC, datetime, timedelta
from itertools import groupby
from zoneinfo import ZoneInfo

from icalendar import Alarm, Calendar, Event

from assistant.show import words
from assistant.show.plain import one_line
from rules.circumstances import Day
from rules.plan import Plan
from rules.problem import UsageProblem
from rules.trip.model import TripPlan

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
    events = (
        event(
            title,
            meal + timedelta(minutes=at_min),
            [words.sentence(one_line(moment.do, most=2000)) for moment in moments],
            key=f"{meal.isoformat()}|{at_min:g}",
            stamped=meal,
        )
        for at_min, moments in groupby(plan.timeline, key=lambda moment: moment.at_min)
    )
    return as_ics(f"{title}, at camp", events)


def trip_calendar(plan: TripPlan) -> str:
    """The whole trip as one calendar: an event for each moment, named after what is done then."""
    title = one_line(plan.name)
    stamped = _in_utc(plan.leave, plan.zone)
    names = {dish.id: f"{one_line(dish.meal)}, {one_line(dish.title)}" for dish in plan.dishes}
    events = (
        event(
            title,
            _in_utc(at, plan.zone),
            [words.sentence(one_line(moment.do, most=2000)) for moment in moments],
            key=at,
            stamped=stamped,
            last_lines=[names[dish] for dish in dict.fromkeys(one for m in moments for one in m.dishes)],
        )
        for at, group in groupby(plan.calendar, key=lambda moment: moment.at)
        for moments in [list(group)]
    )
    return as_ics(f"{title}, at camp", events)


def as_ics(name: str, events: Iterable[Event]) -> str:
    """A calendar of those events under that name."""
    out = Calendar()
    out.add("prodid", "-//coalside//camp plan//EN")
    out.add("version", "2.0")
    out.add("x-wr-calname", name)
    for one in events:
        out.add_component(one)
    text: str = out.to_ical().decode("utf-8")
    return text


def _in_utc(written: str, zone: str | None) -> datetime:
    """A written moment in UTC, or floating where no zone is known."""
    moment = datetime.fromisoformat(written)
    return moment.replace(tzinfo=ZoneInfo(zone)).astimezone(UTC) if zone else moment


def _meal(day: Day) -> datetime:
    """The meal in UTC, or floating where no zone is known."""
    wanted = "a calendar needs the meal's date and clock; write --eat 2027-07-03T18:30"
    if day.eat is None or "T" not in day.eat:
        raise UsageProblem("--as ics", f"with --eat {day.eat or '(not given)'}", wanted)
    meal = datetime.fromisoformat(day.eat)
    if day.zone and meal.tzinfo is None:
        meal = meal.replace(tzinfo=ZoneInfo(day.zone))
    return meal if meal.tzinfo is None else meal.astimezone(UTC)


def event(
    title: str,
    starts: datetime,
    lines: Sequence[str],
    *,
    key: str,
    stamped: datetime,
    last_lines: Sequence[str] = (),
) -> Event:
    """One moment that needs hands, with an alarm before it; `lines` say what is done, the first names the event.

    The identifier comes from `title`, `key` and the first line, the time stamp from the day of `stamped`.
    """
    summary, *more = lines
    # A reckoned moment may fall within a minute; the clock on a wall has none.
    starts = starts.replace(second=0, microsecond=0)
    made = Event()
    made.add("uid", f"{uuid.uuid5(NAMESPACE, f'{title}|{key}|{summary}')}@coalside")
    made.add("dtstamp", datetime(stamped.year, stamped.month, stamped.day, tzinfo=UTC))
    made.add("dtstart", starts)
    made.add("dtend", starts + EVENT_LASTS)
    made.add("summary", summary)
    made.add("description", "\n".join([title, *more, *last_lines]))
    alarm = Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("trigger", -ALARM_BEFORE)
    alarm.add("description", summary)
    made.add_component(alarm)
    return made
