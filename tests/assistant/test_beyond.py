"""All rooms beyond the plan together: which of them hears a sentence, and that none takes what is the plan's."""

from __future__ import annotations

import tomllib
from datetime import UTC, date, datetime
from pathlib import Path

import pytest

from assistant.chat.beyond import rooms
from assistant.chat.beyond.cookbook import Cookbook
from assistant.chat.session import Session
from assistant.commands.abroad import shipped
from assistant.commands.makers import reader
from assistant.keep import Store
from tests.talks import CORPUS
from tests.test_talks import files

RECIPES = CORPUS / "recipes"


@pytest.fixture
def session(tmp_path: Path) -> Session:
    store = Store(tmp_path, now=lambda: datetime(2027, 6, 30, tzinfo=UTC))
    path = RECIPES / "river-peach-cobbler.txt"
    return Session(
        reader()(path.read_text(encoding="utf-8"), path.name),
        meals=store,
        rooms=rooms(
            log=store, meals=store, cookbook=Cookbook(store, shipped()), today=lambda: date(2027, 6, 30)
        ),
    )


@pytest.mark.parametrize(
    ("said", "did"),
    [
        ("took 35 minutes, bottom a bit dark, 45 out and windy, pot read 340", ("weather", "log")),
        ("it's 45 out and windy", ("weather",)),
        ("show me my log", ("habit",)),
        ("what can I cook with 60 briquettes?", ("choose",)),
        ("Friday supper chili, nine of us", ("people", "trip meal")),
        ("nine of us", ("people",)),
        ("two 12s", ("pot",)),
        ("one of us can't have nuts", ("leave out",)),
        ("it's a two day drive", ("trip",)),
        ("save it as html", ("export",)),
        ("how much ice?", ("cold",)),
    ],
)
def test_each_sentence_is_heard_by_the_room_that_it_is_for(
    session: Session, said: str, did: tuple[str, ...]
) -> None:
    assert session.say(said).did == did


def test_no_room_takes_a_sentence_of_the_talks(session: Session) -> None:
    """Those kept apart included: each is asked of all rooms while a recipe is talked about."""
    said = [
        turn["said"] for path in files() for turn in tomllib.loads(path.read_text(encoding="utf-8"))["turn"]
    ]
    assert len(said) > 350
    assert [one for one in said if session.takes_early(one, is_typed=True)] == []


def test_a_room_without_what_it_needs_stays_shut(tmp_path: Path) -> None:
    store = Store(tmp_path, now=lambda: datetime(2027, 6, 30, tzinfo=UTC))
    assert len(rooms()) == 0
    assert len(rooms(log=store)) == 1
    assert len(rooms(log=store, meals=store)) == 2


def test_help_lists_what_can_be_said_to_every_room(session: Session) -> None:
    told = session.say("what can you do?").answer
    for example in ("show me my log", "what can I cook in an hour?", "Friday supper chili", "plan the trip"):
        assert example in told


@pytest.mark.parametrize(
    "said", ["show me my log", "what can I cook in an hour?", "Friday supper chili", "reset my log"]
)
def test_what_help_offers_is_heard(session: Session, said: str) -> None:
    assert session.takes_early(said, is_typed=True)
