"""The log in the talk: written with its plan, learnt from at once, undone, forgotten, exported."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import msgspec
import pytest

from assistant.chat.beyond import rooms
from assistant.chat.session import Session
from assistant.keep import Store
from assistant.reader.read import read
from assistant.show.forms import Look
from assistant.show.habit import HabitReport, habit_csv, habit_markdown, habit_text
from rules.circumstances import Day, PotOwned
from rules.habit.record import main_stage
from rules.plan import Plan
from tests.talks import CORPUS

COBBLER = (CORPUS / "recipes" / "river-peach-cobbler.txt").read_text(encoding="utf-8")
TOLD = "took 35 minutes, bottom a bit dark, 45 out and windy, pot read 340"


@pytest.fixture
def store(tmp_path: Path) -> Store:
    times = iter(datetime(2027, 7, day, 19, tzinfo=UTC) for day in range(1, 30))
    return Store(tmp_path / "data", now=lambda: next(times))


@pytest.fixture
def written() -> list[tuple[HabitReport, str | None, str | None]]:
    return []


@pytest.fixture
def session(store: Store, written: list[tuple[HabitReport, str | None, str | None]]) -> Session:
    def export(report: HabitReport, form: str | None, path: str | None) -> str:
        written.append((report, form, path))
        return path or f"log.{form}"

    recipe = read(COBBLER, file="cobbler.txt")
    return Session(recipe, meals=store, rooms=rooms(log=store, export_log=export))


def test_one_sentence_is_weather_and_log(session: Session, store: Store) -> None:
    turn = session.say(TOLD)
    assert turn.did == ("weather", "log")
    assert turn.with_ == {"air_f": 45, "wind": "windy", "minutes": 35, "under": 1, "pot_f": 340}
    assert turn.answer.startswith("Logged. Peach Cobbler for the Last Night on the River: 35 min")
    (logged,) = store.cooks()
    assert (logged.cooked.air_f, logged.cooked.wind, logged.cooked.told.minutes) == (45, "windy", 35)


def test_the_line_holds_the_plan_in_hand_and_the_chart_of_the_day_as_it_was(
    session: Session, store: Store
) -> None:
    """17 and 8 lay there, as planned for a calm 70 °F; a windy 45 °F would have wanted more."""
    session.say(TOLD)
    (logged,) = store.cooks()
    assert (logged.cooked.laid_top, logged.cooked.laid_under) == (17, 8)
    assert logged.cooked.chart_top + logged.cooked.chart_under > 25
    plan = msgspec.json.decode(logged.plan, type=Plan)
    stage = main_stage(plan)
    assert stage is not None
    assert (stage.top, stage.under) == (17, 8)


def test_the_next_plan_says_that_it_goes_by_the_log(session: Session) -> None:
    session.say("took 90 minutes, pot read 300")
    assert session.plan is not None
    why = {reason.rule: reason.because for reason in session.plan.why}
    assert why["habit.heat"].startswith(
        "your log of 1 cook says that your 12-inch shallow pot over briquettes"
    )
    assert "give or take" in why["habit.minutes"]


def test_the_sentence_after_goes_on_with_the_same_cook(session: Session, store: Store) -> None:
    session.say("took 50 minutes")
    session.say("oh, and the bottom was burnt")
    (logged,) = store.cooks()
    assert (logged.cooked.told.minutes, logged.cooked.told.under) == (50, 3)
    session.say("how many briquettes?")
    session.say("took 55 minutes")
    assert len(store.cooks()) == 2


def test_undo_takes_the_line_out_of_the_log(session: Session, store: Store) -> None:
    day = session.day
    session.say("took 50 minutes")
    session.say("and the bottom was burnt")
    session.say("undo")
    assert [one.cooked.told.under for one in store.cooks()] == [None]
    session.say("undo")
    assert store.cooks() == ()
    assert session.day == day


def test_minutes_against_the_plan_are_counted_from_its_end(session: Session, store: Store) -> None:
    stage = main_stage(session.plan) if session.plan else None
    assert stage is not None
    assert stage.minutes is not None
    session.say("took 10 minutes longer")
    (logged,) = store.cooks()
    assert logged.cooked.told.minutes == stage.minutes.high + 10


def test_minutes_that_cannot_be_are_kept_but_teach_nothing(session: Session) -> None:
    turn = session.say("took 300 minutes")
    assert "too far off to count" in turn.answer
    assert session.day.habit is None


def test_a_bare_reading_is_celsius_for_a_metric_cook(session: Session, store: Store) -> None:
    session.say("in grams please")
    session.say("pot read 180")
    (logged,) = store.cooks()
    assert logged.cooked.told.pot_f == 356


def test_without_a_recipe_nothing_is_logged(store: Store) -> None:
    session = Session(meals=store, rooms=rooms(log=store))
    turn = session.say("took 35 minutes")
    assert turn.did == ("log",)
    assert "There is no recipe to log this for" in turn.answer
    assert store.cooks() == ()


def test_the_log_is_shown_forgotten_and_brought_back(session: Session, store: Store) -> None:
    session.say("took 50 minutes")
    assert "1 cook" in session.say("show me my log").answer
    turn = session.say("reset my log")
    assert turn.did == ("forget log",)
    assert store.cooks() == ()
    assert session.day.habit is None
    session.say("undo")
    assert len(store.cooks()) == 1
    assert session.day.habit is not None


def test_the_log_is_exported(
    session: Session, written: list[tuple[HabitReport, str | None, str | None]]
) -> None:
    session.say("took 50 minutes")
    assert session.say("export my log to cooks.csv").answer == "Wrote cooks.csv."
    ((report, form, path),) = written
    assert (len(report.cooks), form, path) == (1, None, "cooks.csv")


def test_what_is_kept_holds_no_habit_and_what_is_opened_gets_todays(session: Session, store: Store) -> None:
    session.say("took 50 minutes")
    session.say("keep this one as Friday")
    assert store.get("Friday").day.habit is None
    session.say("open Friday")
    assert session.day.habit is not None


def test_charcoal_is_told_by_itself(session: Session) -> None:
    turn = session.say("we burn hardwood briquettes")
    assert (turn.did, session.day.burns) == (("charcoal",), "hardwood briquettes")


def test_a_session_without_rooms_hears_the_plan_alone() -> None:
    turn = Session(read(COBBLER), Day(pots=(PotOwned(),))).say("show me my log")
    assert turn.did != ("habit",)


def test_the_report_is_text_markdown_and_a_table(session: Session, store: Store) -> None:
    from assistant.chat.beyond.logbook import report

    session.say(TOLD)
    found = report(store)
    text, page, table = (write(found, Look()) for write in (habit_text, habit_markdown, habit_csv))
    assert "12-inch shallow pot over briquettes" in text
    assert "give or take" in text
    assert page.startswith("# Log of cooks")
    header, row, _ = table.split("\r\n")
    assert len(header.split(",")) == len(row.split(","))
    assert row.startswith("2027-07-01")
