"""What a sentence tells of a trip, piece by piece, and what is left of it."""

from __future__ import annotations

import tomllib
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.chat.beyond.hearing import hear, left_over
from assistant.chat.beyond.itinerary import pieces
from assistant.chat.beyond.parts import TABLE, Piece, light
from assistant.chat.beyond.trip_asked import begun, of_the_trip
from rules.circumstances import PotOwned
from tests.test_talks import files

KNOWN = frozenset(["chili", "biscuits", "stew", "cornbread", "pot roast", "pancakes", "chowder"])


def knows(said: str) -> bool:
    return said.lower() in KNOWN


def found(said: str, *, is_active: bool = True, last_day: str | None = None) -> tuple[list[Piece], str]:
    hearing = hear(said, TABLE)
    told = pieces(hearing, knows, is_active=is_active, last_day=last_day)
    return told, left_over(hearing, [span for one in told for span in one.spans], light())


def meals(
    said: str, *, is_active: bool = True, last_day: str | None = None
) -> list[tuple[str, str, str, str]]:
    told, _ = found(said, is_active=is_active, last_day=last_day)
    return [
        (one.says["day"], one.says["meal"], one.says["clock"], one.says["dish"])
        for one in told
        if one.what == "meal"
    ]


MEALS = [
    ("Friday supper chili", [("friday", "supper", "18:30", "chili")]),
    ("Friday supper: chili", [("friday", "supper", "18:30", "chili")]),
    ("chili for Friday supper", [("friday", "supper", "18:30", "chili")]),
    ("fri dinner at 7: the chili", [("friday", "dinner", "19:00", "chili")]),
    ("Saturday at 6:30 supper is the pot roast for nine", [("saturday", "supper", "18:30", "pot roast")]),
    ("on Sunday we have pancakes for breakfast at 9", [("sunday", "breakfast", "09:00", "pancakes")]),
    ("Sunday: pancakes for breakfast, chowder for lunch",
     [("sunday", "breakfast", "08:30", "pancakes"), ("sunday", "lunch", "12:30", "chowder")]),
    ("Friday supper chili, Saturday breakfast biscuits",
     [("friday", "supper", "18:30", "chili"), ("saturday", "breakfast", "08:30", "biscuits")]),
    ("Saturday supper the stew and cornbread",
     [("saturday", "supper", "18:30", "stew"), ("saturday", "supper", "18:30", "cornbread")]),
    ("Friday supper 18:00 chili", [("friday", "supper", "18:00", "chili")]),
]  # fmt: skip


@pytest.mark.parametrize(("said", "wanted"), MEALS, ids=[said for said, _ in MEALS])
def test_a_meal_is_a_day_a_name_and_a_dish_in_any_order(said: str, wanted: list[tuple[str, ...]]) -> None:
    assert meals(said) == wanted


@pytest.mark.parametrize(
    "said", ["Friday supper chili", "biscuits for Saturday breakfast", "Friday supper chili and cornbread"]
)
def test_a_trip_begins_with_a_meal_of_a_known_dish(said: str) -> None:
    assert meals(said, is_active=False)


@pytest.mark.parametrize(
    "said",
    ["Friday chili", "supper chili", "Friday supper", "Friday supper at seven", "Friday supper lasagna", "dinner at six",
     "keep it as Friday", "nine of us", "two 12s", "one of us can't have nuts", "it's a 5 hour drive", "we leave at 9"],
)  # fmt: skip
def test_without_a_trip_nothing_less_begins_one(said: str) -> None:
    """A day, a dish or a pot alone is the plan's to hear."""
    assert found(said, is_active=False)[0] == []


def test_a_dish_without_its_day_is_on_the_day_before() -> None:
    assert meals("breakfast biscuits", last_day="saturday") == [
        ("saturday", "breakfast", "08:30", "biscuits")
    ]


def test_an_unknown_dish_is_told_once_there_is_a_trip() -> None:
    assert meals("Friday supper lasagna") == [("friday", "supper", "18:30", "lasagna")]


SENTENCE = "Friday supper chili, Saturday breakfast biscuits, nine of us, two 12s, one of us can't have nuts"


def test_one_sentence_holds_meals_pots_and_people() -> None:
    told, rest = found(SENTENCE, is_active=False)
    assert [one.what for one in told] == ["meal", "meal", "pots", "person"]
    assert told[2].says == {"pot": PotOwned(diameter_in=12, count=2)}
    assert told[3].says == {"name": "one of us", "avoids": ["nuts"]}
    assert rest == "nine of us"


@pytest.mark.parametrize(
    ("said", "what", "says"),
    [
        ("Ada can't have milk or eggs", "person", {"name": "Ada", "avoids": ["milk", "eggs"]}),
        ("two of us don't eat pork", "person", {"name": "two of us", "avoids": ["pork"]}),
        ("Ben is vegetarian", "person", {"name": "Ben", "avoids": ["vegetarian"]}),
        ("Ada is gluten free", "person", {"name": "Ada", "avoids": ["gluten"]}),
        ("it's a 5 hour drive", "drive", {"drive_hours": 5}),
        ("the drive is three and a half hours", "drive", {"drive_hours": 3.5}),
        ("we leave Friday at 9", "leave", {"leave_day": "friday", "leave_clock": "09:00"}),
        ("leaving thursday evening", "leave", {"leave_day": "thursday", "leave_clock": "18:30"}),
        ("move Friday supper to 7", "move", {"day": "friday", "meal": "supper", "clock": "19:00"}),
        ("Friday supper at 7", "move", {"day": "friday", "meal": "supper", "clock": "19:00"}),
        ("drop Sunday lunch", "drop", {"day": "sunday", "meal": "lunch"}),
        ("cancel Sunday", "drop", {"day": "sunday"}),
    ],
)  # fmt: skip
def test_the_rest_of_a_trip_is_told_in_any_sentence(said: str, what: str, says: dict[str, Any]) -> None:
    told, rest = found(said)
    assert [(one.what, one.says) for one in told] == [(what, says)]
    assert rest == ""


def test_two_coolers_are_the_trips_and_one_is_the_plans_too() -> None:
    for said, quarts in (
        ("we take two coolers, 48 and 25 quarts", [48, 25]),
        ("two 48 quart coolers", [48, 48]),
        ("a 48 quart cooler and a 25 quart chest", [48, 25]),
    ):
        told, rest = found(said)
        assert [one.quarts for piece in told for one in piece.says["coolers"]] == quarts
        assert rest == ""
    assert found("we have the 60 quart cooler") == ([], "we have the 60 quart cooler")


@pytest.mark.parametrize(
    "said",
    [
        "it's 45 out and windy",
        "we're at 7000 ft",
        "how many briquettes?",
        "no nuts",
        "we will be twelve",
        "undo",
    ],
)
def test_what_is_the_plans_stays_the_plans_on_a_trip(said: str) -> None:
    assert found(said)[0] == []


def test_no_sentence_of_the_talks_about_a_plan_tells_of_a_trip() -> None:
    """With every word taken for a known dish, and no trip at hand."""
    said = [
        turn["said"] for path in files() for turn in tomllib.loads(path.read_text(encoding="utf-8"))["turn"]
    ]
    heard = [(one, hear(one, TABLE)) for one in said]
    assert [one for one, row in heard if begun(row)] == []
    assert [
        one for one, row in heard if pieces(row, lambda _: True, is_active=False) and not _is_other(one)
    ] == []


def _is_other(said: str) -> bool:
    """Sentences that the room never takes: they ask, or keep, open and save."""
    row = hear(said, TABLE)
    return bool(row.phrase(0, "other") or row.phrase(0, "ask") or row.words[-1] == "?")


@given(
    st.text(max_size=200)
    | st.lists(
        st.sampled_from(
            [*SENTENCE.split(), "and", ",", "at", "7", "drop", "leave", "drive", "hours", "to", "is"]
        ),
        max_size=25,
    ).map(" ".join)
)
def test_nothing_that_can_be_said_breaks_the_hearing(said: str) -> None:
    hearing = hear(said, TABLE)
    for is_active in (True, False):
        for piece in pieces(hearing, knows, is_active=is_active):
            assert all(0 <= start < end <= len(hearing.words) for start, end in piece.spans)
    of_the_trip(hearing)
    begun(hearing)


MORE = [
    ("Saturday dinner is chicken and stew", [("saturday", "dinner", "18:30", "chicken and stew")]),
    ("on Saturday evening stew, cornbread on the side",
     [("saturday", "evening", "18:30", "stew"), ("saturday", "evening", "18:30", "cornbread")]),
    ("add biscuits to Saturday supper", [("saturday", "supper", "18:30", "biscuits")]),
    ("Saturday supper also cornbread", [("saturday", "supper", "18:30", "cornbread")]),
    ("Friday supper for eleven: chili", [("friday", "supper", "18:30", "chili")]),
    ("Sunday brunch pancakes at 10", [("sunday", "brunch", "10:00", "pancakes")]),
]  # fmt: skip


@pytest.mark.parametrize(("said", "wanted"), MORE, ids=[said for said, _ in MORE])
def test_dishes_go_over_an_and_and_for_eleven_counts_eaters(said: str, wanted: list[tuple[str, ...]]) -> None:
    told = pieces(hear(said, TABLE), lambda name: knows(name) or name == "chicken and stew", is_active=True)
    assert [tuple(one.says[key] for key in ("day", "meal", "clock", "dish")) for one in told] == wanted


def test_a_dish_may_come_instead_of_what_stood_there() -> None:
    ((piece,), rest) = found("Saturday breakfast biscuits instead of pancakes")
    assert piece.says["instead"] is True
    assert rest == ""


@pytest.mark.parametrize(
    ("said", "hours"),
    [("five hours in the car", 5), ("it takes 3 hours to drive there", 3), ("drive is about 5 hours", 5)],
)
def test_the_drive_is_told_in_many_ways(said: str, hours: float) -> None:
    assert [one.says for one in found(said)[0]] == [{"drive_hours": hours}]
