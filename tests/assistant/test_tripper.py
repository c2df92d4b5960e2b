"""A trip in the talk: told in sentences, planned, asked about, undone, written; at a prompt under fifteen sentences."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from datetime import UTC, date, datetime
from pathlib import Path

import pexpect
import pytest

from assistant.chat.beyond import rooms
from assistant.chat.beyond.cookbook import Cookbook
from assistant.chat.session import Session
from assistant.commands.abroad import export_trip, shipped
from assistant.commands.makers import reader
from assistant.keep import Store
from assistant.trip.file import trip_of
from assistant.trip.write import trip_files
from rules.circumstances import Day
from rules.trip.model import Trip
from rules.trip.plan import plan
from tests.assistant.test_prompt import MAIN
from tests.talks import CORPUS

ROOT = CORPUS.parent
WEEKEND = [
    "Friday supper chili, Saturday breakfast biscuits, nine of us, two 12s, one of us can't have nuts",
    "Saturday supper the stew and cornbread",
    "Sunday: pancakes for breakfast, chowder for lunch",
    "we leave Friday at 9 and it's a 4 hour drive",
    "we have the 60 quart cooler",
    "it's 75 out and breezy",
]


@pytest.fixture
def store(tmp_path: Path) -> Store:
    return Store(tmp_path / "data", now=lambda: datetime(2027, 6, 30, tzinfo=UTC))


@pytest.fixture
def session(store: Store) -> Session:
    return Session(
        meals=store,
        rooms=rooms(
            log=store,
            meals=store,
            cookbook=Cookbook(store, shipped()),
            today=lambda: date(2027, 6, 30),
            export_trip=export_trip,
        ),
    )


@pytest.fixture
def told(session: Session) -> Session:
    for said in WEEKEND:
        assert "not understood" not in session.say(said).did
    return session


def test_one_sentence_begins_a_trip(session: Session) -> None:
    turn = session.say(WEEKEND[0])
    assert turn.did == ("people", "trip meal", "trip pots", "trip person")
    assert "Friday supper at 18:30: Can-Opener Chili." in turn.answer
    assert "Saturday breakfast at 08:30: Buttermilk Biscuits." in turn.answer
    assert "two 12-inch pots" in turn.answer
    assert session.day.people == 9


def test_the_weekend_is_planned_from_a_blank_start(told: Session) -> None:
    answer = told.say("plan the trip").answer
    assert "people 9" in answer
    assert "we leave Fri 2 Jul 09:00" in answer
    assert "meals 5" in answer
    assert "dishes 6" in answer
    for meal in (
        "Fri 2 Jul 18:30",
        "Sat 3 Jul 08:30",
        "Sat 3 Jul 18:30",
        "Sun 4 Jul 08:30",
        "Sun 4 Jul 12:30",
    ):
        assert meal in answer
    assert "carbon monoxide" in answer


def test_the_answers_are_those_of_the_plan_of_the_trips_file(told: Session, tmp_path: Path) -> None:
    """The trip that was told, written and read back plans to the same briquettes and the same shopping list."""
    path = tmp_path / "trip.toml"
    assert told.say(f"save the trip as {path}").answer.startswith(f"Wrote {path}, with 6 recipes")
    again = plan(trip_of(str(path), reader()))
    assert again.fuel is not None
    assert f"Bring {again.fuel.briquettes} briquettes" in told.say("charcoal for the trip").answer
    shopping = told.say("shopping for the trip").answer
    assert all(line.food in shopping for line in again.shopping)


@pytest.mark.parametrize(
    ("said", "holds"),
    [
        ("what do we pack for the trip?", "Fire box"),
        ("how much ice for the trip?", "of ice"),
        ("who can eat what on the trip?", "one of us"),
        ("what do we do at home for the trip?", "Shop for everything"),
        ("calendar of the trip", "Fri 2 Jul"),
        ("pots of the trip", "12-inch"),
        ("what do we buy?", "onion"),
        ("how many briquettes?", "the reserve"),
    ],
)
def test_each_side_of_the_trip_is_answered(told: Session, said: str, holds: str) -> None:
    turn = told.say(said)
    assert turn.did == ("trip show",)
    assert holds.lower() in turn.answer.lower()


def test_meals_are_moved_dropped_and_put_back(told: Session) -> None:
    assert told.say("move Saturday supper to 7").answer == "Saturday supper is at 19:00 now."
    assert told.say("drop Sunday lunch").answer == "Sunday lunch is dropped."
    assert "dishes 5" in told.say("plan the trip").answer
    told.say("undo")
    assert "dishes 6" in told.say("plan the trip").answer
    assert "19:00" in told.say("plan the trip").answer
    assert told.say("drop Monday supper").answer == "There is no meal on Monday supper."


def test_a_dish_that_nobody_knows_is_told_and_the_one_at_hand_is_this_one(told: Session) -> None:
    turn = told.say("Monday supper lasagna")
    assert 'I know no recipe called "lasagna"' in turn.answer
    path = CORPUS / "recipes" / "river-peach-cobbler.txt"
    told.load(reader()(path.read_text(encoding="utf-8"), path.name))
    assert "Peach Cobbler" in told.say("Monday supper this one").answer
    assert "dishes 7" in told.say("plan the trip").answer


def test_a_question_about_the_dish_at_hand_stays_about_the_dish(told: Session) -> None:
    path = CORPUS / "recipes" / "river-peach-cobbler.txt"
    told.load(reader()(path.read_text(encoding="utf-8"), path.name))
    assert told.say("how many briquettes?").did == ("coals",)
    assert told.say("what do we buy?").did == ("shopping",)


def test_a_kept_recipe_is_cooked_as_it_was_settled(session: Session, store: Store, tmp_path: Path) -> None:
    path = CORPUS / "recipes" / "river-peach-cobbler.txt"
    recipe = reader()(path.read_text(encoding="utf-8"), path.name)
    store.keep("Rosa's cobbler", recipe, Day(temp_f=375))
    session.say("Friday supper Rosa's cobbler")
    session.say(f"save the trip as {tmp_path / 'trip.toml'}")
    (meal,) = trip_of(str(tmp_path / "trip.toml"), reader()).meals
    assert meal.temp_f == 375


def test_a_new_trip_forgets_the_old_one_until_undone(told: Session) -> None:
    assert told.say("new trip called Canyon").answer.startswith("Canyon begins.")
    assert told.say("plan the trip").answer.startswith("The trip has no meal yet.")
    told.say("undo")
    assert "dishes 6" in told.say("plan the trip").answer


def test_with_no_trip_a_question_about_one_is_the_plans(session: Session) -> None:
    assert "trip show" not in session.say("plan the trip").did


def test_the_file_of_a_trip_is_read_back_as_the_same_trip(told: Session, tmp_path: Path) -> None:
    path = tmp_path / "weekend.toml"
    told.say("Ada can't have milk")
    told.say(f"save the trip as {path}")
    trip = trip_of(str(path), reader())
    assert isinstance(trip, Trip)
    assert (trip.people, trip.drive_hours, trip.leave) == (9, 4, "2027-07-02T09:00")
    assert [(pot.diameter_in, pot.count) for pot in trip.pots] == [(12, 2)]
    assert [(one.name, one.avoids) for one in trip.persons] == [("one of us", ("nuts",)), ("Ada", ("milk",))]
    assert [meal.eat for meal in trip.meals][:2] == ["2027-07-02T18:30", "2027-07-03T08:30"]
    files = trip_files(trip, str(trip.leave), path)
    assert files[path] == path.read_text(encoding="utf-8")


def test_a_file_that_stands_there_is_not_written_over(told: Session, tmp_path: Path) -> None:
    path = tmp_path / "trip.toml"
    path.write_text("mine", encoding="utf-8")
    assert "trip.toml" in told.say(f"save the trip as {path}").answer
    assert path.read_text(encoding="utf-8") == "mine"


@pytest.fixture
def terminal(tmp_path: Path) -> Iterator[pexpect.spawn[str]]:
    kept = {
        name: value
        for name, value in os.environ.items()
        if not name.startswith(("XDG", "NO_COLOR", "COLUMNS"))
    }
    child: pexpect.spawn[str] = pexpect.spawn(
        sys.executable,
        MAIN,
        env={
            **kept,
            "HOME": str(tmp_path),
            "TERM": "xterm-256color",
            "PROMPT_TOOLKIT_NO_CPR": "1",
            "PYTHONPATH": str(ROOT),
        },
        dimensions=(60, 100),
        encoding="utf-8",
        timeout=60,
        cwd=str(tmp_path),
    )
    child.delaybeforesend = None
    child.expect("camp>")
    yield child
    child.close(force=True)


PROMPT = [
    (WEEKEND[0], "Friday supper at 18:30: Can-Opener Chili"),
    (WEEKEND[1], "PAN CORNBREAD"),
    (WEEKEND[2], "6 dishes so far"),
    (WEEKEND[3], "The drive takes 4 hours"),
    (WEEKEND[4], "A cooler of 60 quarts"),
    (WEEKEND[5], "breezy"),
    ("plan the trip", "dishes 6"),
    ("shopping for the trip", "ground beef"),
    ("how much ice for the trip?", "of ice"),
    ("save the trip as trip.toml", "Wrote trip.toml, with 6 recipes"),
    ("save the trip as trip.ics", "Wrote trip.ics"),
    ("save the trip as booklet.html", "Wrote booklet.html"),
]


def test_at_the_prompt_a_trip_takes_fewer_than_fifteen_sentences(
    terminal: pexpect.spawn[str], tmp_path: Path
) -> None:
    """From a blank start to the plan, the shopping list, the trip's file, its calendar and its booklet."""
    assert len(PROMPT) < 15
    for said, answer in PROMPT:
        terminal.send(said + "\r")
        terminal.expect(answer)
        terminal.expect("camp>")
    terminal.send("\x04")
    terminal.expect(pexpect.EOF)
    written = sorted(path.name for path in tmp_path.iterdir() if path.suffix)
    assert written == ["booklet.html", "trip.ics", "trip.toml"]
    assert "BEGIN:VEVENT" in (tmp_path / "trip.ics").read_text(encoding="utf-8")
    assert len(plan(trip_of(str(tmp_path / "trip.toml"), reader())).dishes) == 6


def test_one_dish_takes_anothers_place(told: Session) -> None:
    told.say("Saturday breakfast the egg bake instead of biscuits")
    answer = told.say("plan the trip").answer
    assert "dishes 6" in answer
    assert "Buttermilk Biscuits" not in answer


def test_a_trip_is_forgotten_until_undone(told: Session) -> None:
    assert told.say("forget the trip").answer.startswith("The trip is forgotten")
    told.say("undo")
    assert "dishes 6" in told.say("plan the trip").answer


def test_one_meal_of_the_trip_is_opened_cooked_and_logged(told: Session, store: Store) -> None:
    """The dish is planned in the trip's circumstances, and what is told after it is logged with that plan."""
    turn = told.say("open Saturday breakfast")
    assert turn.did == ("trip open",)
    assert turn.answer.startswith("Saturday breakfast. Buttermilk Biscuits")
    assert told.day.people == 9
    assert told.day.wind == "breezy"
    assert told.say("took 24 minutes, top a bit pale").did == ("log",)
    (logged,) = store.cooks()
    assert (logged.cooked.dish, logged.cooked.wind) == ("Buttermilk Biscuits", "breezy")
    assert "go by your own log" in told.say("plan the trip").answer
    assert told.say("open Saturday supper cornbread").answer.startswith("Saturday supper. PAN CORNBREAD")


def test_a_kept_name_is_opened_as_ever(told: Session, store: Store) -> None:
    for name in ("Friday", "Saturday breakfast"):
        store.keep(name, shipped()["can chili"](), Day())
        assert told.say(f"open {name}").did == ("open",)
    assert told.say("open Monday").did != ("trip open",)
