"""The question after a dish in the talk: its own limits, the rest for the plan; and as a command."""

from __future__ import annotations

import json
import tomllib
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest

from assistant import cli
from assistant.chat.beyond import rooms
from assistant.chat.beyond.chooser import asked
from assistant.chat.session import Session
from assistant.keep import Store
from assistant.reader.read import read
from assistant.show.choice import choices_markdown, choices_text
from assistant.show.forms import Look
from rules.choose import Candidate, Means, choose
from rules.circumstances import Day, PotOwned
from tests.talks import CORPUS
from tests.test_talks import files

RECIPES = CORPUS / "recipes"


def recipe(name: str) -> Any:
    return read((RECIPES / f"river-{name}.txt").read_text(encoding="utf-8"), file=name)


@pytest.fixture
def store(tmp_path: Path) -> Store:
    kept = Store(tmp_path / "data", now=lambda: datetime(2027, 7, 1, tzinfo=UTC))
    for name in ("peach-cobbler", "can-chili"):
        kept.keep(name.title(), recipe(name), Day())
    return kept


ASKED = [
    (
        "what can I cook with a 48 quart cooler and 60 briquettes?",
        {"briquettes": 60},
        "with a 48 quart cooler",
    ),
    ("what can we cook with these pots, this cooler, this much charcoal?", {}, ""),
    ("what can I make with a 10 lb bag of charcoal", {"briquettes": 188}, ""),
    ("what can we cook in an hour with 40 coals for nine", {"minutes": 60, "briquettes": 40}, "for nine"),
    ("which of my recipes fit?", {}, ""),
    ("pick a dish without milk or eggs", {"avoids": ["milk", "eggs"]}, ""),
    ("what can we cook? two of us can't have gluten", {"avoids": ["gluten"]}, ""),
    ("suggest something, it's 40 out and windy", {}, "it's 40 out and windy"),
]


@pytest.mark.parametrize(("said", "slots", "rest"), ASKED, ids=[said for said, _, _ in ASKED])
def test_the_limits_are_taken_and_the_rest_is_left(said: str, slots: dict[str, Any], rest: str) -> None:
    found = asked(said)
    assert found is not None
    assert (found.slots, found.rest) == (slots, rest)


@pytest.mark.parametrize(
    "said", ["what can you do?", "what do I do at camp?", "what do I buy?", "how many coals?", ""]
)
def test_other_questions_are_not_its(said: str) -> None:
    assert asked(said) is None


def test_no_sentence_of_the_talks_about_a_plan_asks_for_a_dish() -> None:
    said = [
        turn["said"] for path in files() for turn in tomllib.loads(path.read_text(encoding="utf-8"))["turn"]
    ]
    assert [one for one in said if asked(one) is not None] == []


def test_the_kept_recipes_are_held_against_what_is_said(store: Store) -> None:
    session = Session(meals=store, rooms=rooms(meals=store))
    turn = session.say(
        "what can we cook with two 12s, a 60 quart cooler and 80 briquettes for nine, no nuts?"
    )
    assert set(turn.did[:-1]) == {"people", "cooler"}
    assert turn.did[-1] == "choose"
    assert session.day.people == 9
    assert session.day.cooler_quarts == 60
    assert "of your 80" in turn.answer
    assert "of your 60 in the cooler" in turn.answer
    assert '(kept as "Peach-Cobbler")' in turn.answer


def test_when_nothing_fits_the_missing_thing_is_named(store: Store) -> None:
    turn = Session(meals=store, rooms=rooms(meals=store)).say(
        "what can I cook with a 12 inch pot and 12 briquettes?"
    )
    assert "Nothing fits; one thing is missing for" in turn.answer
    assert "more briquettes" in turn.answer


def test_the_recipe_at_hand_counts_where_it_is_not_kept(tmp_path: Path) -> None:
    empty = Store(tmp_path / "empty", now=lambda: datetime(2027, 7, 1, tzinfo=UTC))
    session = Session(recipe("peach-cobbler"), meals=empty, rooms=rooms(meals=empty))
    turn = session.say("what can I cook?")
    assert turn.did == ("choose",)
    assert "1. Peach Cobbler" in turn.answer


def test_the_choice_is_text_and_markdown() -> None:
    found = choose(
        [Candidate(name="pie", recipe=recipe("peach-cobbler"))], Means(day=Day(pots=(PotOwned(),)))
    )
    text, page = choices_text(found), choices_markdown(found, Look())
    assert text.splitlines()[1].startswith("1. Peach Cobbler")
    assert page.startswith("# What can be cooked")
    assert "briquettes" in text
    assert "briquettes" in page


def test_the_command_chooses_among_files(capsys: pytest.CaptureFixture[str]) -> None:
    paths = [str(RECIPES / f"river-{name}.txt") for name in ("peach-cobbler", "can-chili")]
    told = ["--oven", "12", "--briquettes", "80", "--avoid", "nuts", "--as", "json"]
    assert cli.run(["choose", *paths, *told]) == cli.DONE
    found = json.loads(capsys.readouterr().out)
    assert found["looked_at"] == 2
    assert {one["name"] for one in found["best"]} <= {"river-peach-cobbler", "river-can-chili"}


def test_the_command_says_that_nothing_is_kept(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.run(["choose"]) == cli.DONE
    assert "There is no recipe to choose from" in capsys.readouterr().out


def test_a_wrong_number_is_wrong_usage(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.run(["choose", "--briquettes", "some"]) == cli.WRONG_USAGE
    assert "--briquettes" in capsys.readouterr().err
