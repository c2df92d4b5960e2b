"""What a cook tells after the meal: which pieces of a sentence are the log's, and which are left for the plan."""

from __future__ import annotations

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.chat.beyond.asked import asked
from assistant.chat.beyond.hearing import hear
from assistant.chat.beyond.log import told
from tests.test_talks import files

MINUTE = [
    ("took 35 minutes", 35),
    ("it took 35 min", 35),
    ("It took an hour and a half", 90),
    ("took an hour and ten", 70),
    ("took an hour", 60),
    ("took half an hour", 30),
    ("took three quarters of an hour", 45),
    ("took 1 1/4 hours", 75),
    ("took 2 hours 10 minutes in the end", 130),
    ("was done after 1h20", 80),
    ("that took forty-five minutes", 45),
    ("done in only 30 minutes", 30),
    ("baked it for 50 minutes", 50),
    ("log: 40 min", 40),
    ("pulled it off, took 55 mins", 55),
]


@pytest.mark.parametrize(("said", "minutes"), MINUTE, ids=[said for said, _ in MINUTE])
def test_minutes_are_read_as_people_say_them(said: str, minutes: float) -> None:
    found = told(said)
    assert found is not None
    assert found.slots == {"minutes": minutes}


@pytest.mark.parametrize(
    ("said", "more"),
    [("took 10 minutes longer", 10), ("10 minutes longer than planned", 10), ("needed 10 more minutes", 10),
     ("took 5 minutes less", -5), ("was done after 5 minutes less than you said", -5)],
)  # fmt: skip
def test_minutes_may_be_told_against_the_plan(said: str, more: float) -> None:
    found = told(said)
    assert found is not None
    assert found.slots == {"minutes_more": more}


FACE = [
    ("bottom a bit dark", {"under": 1}),
    ("the bottom was a little burnt", {"under": 2}),
    ("top pale", {"top": -2}),
    ("the top came out slightly pale", {"top": -1}),
    ("bottom very dark", {"under": 3}),
    ("burnt the bottom", {"under": 3}),
    ("a bit dark on the bottom", {"under": 1}),
    ("both sides golden brown", {"top": 0, "under": 0}),
    ("top and bottom just right", {"top": 0, "under": 0}),
    ("the top was not brown", {"top": -2}),
    ("the bottom wasn't burnt", {"under": 0}),
    ("came out a bit pale", {"top": -1, "under": -1}),
    ("top perfect, bottom scorched", {"top": 0, "under": 3}),
]


@pytest.mark.parametrize(("said", "faces"), FACE, ids=[said for said, _ in FACE])
def test_darkness_is_told_of_a_face(said: str, faces: dict[str, int]) -> None:
    found = told(said)
    assert found is not None
    assert found.slots == faces


@pytest.mark.parametrize(
    ("said", "slots"),
    [("pot read 340", {"pot_bare": 340}), ("the thermometer said 340 F", {"pot_f": 340}),
     ("inside was reading 180 C", {"pot_f": 356}), ("the oven read 340", {"pot_bare": 340}), ("it read 375 degrees", {"pot_bare": 375}),
     ("the pot was at 325 °F", {"pot_f": 325})],
)  # fmt: skip
def test_a_reading_is_a_figure_that_a_pot_can_have(said: str, slots: dict[str, float]) -> None:
    found = told(said)
    assert found is not None
    assert found.slots == slots


def test_the_weather_is_left_for_the_plan() -> None:
    found = told("took 35 minutes, bottom a bit dark, it's 45 out and windy, pot read 340")
    assert found is not None
    assert found.slots == {"minutes": 35, "under": 1, "pot_bare": 340}
    assert found.rest == "it's 45 out and windy"


@pytest.mark.parametrize(
    ("said", "rest"),
    [("dinner at 6, took 35 minutes", "dinner at 6"), ("took 35 minutes at 45 degrees outside", "at 45 degrees outside"),
     ("we were nine and it took an hour", "we were nine"), ("took an hour, how many coals was that", "how many coals was that")],
)  # fmt: skip
def test_whatever_else_is_said_is_left(said: str, rest: str) -> None:
    found = told(said)
    assert found is not None
    assert found.rest == rest


def test_coals_and_charcoal_are_told_beside_a_piece_of_the_log() -> None:
    found = told("over lump charcoal, 20 on top and 10 under, took 50 minutes")
    assert found is not None
    assert found.slots == {"charcoal": "lump charcoal", "top_coals": 20, "under_coals": 10, "minutes": 50}
    assert found.rest == ""


@pytest.mark.parametrize(
    "said",
    ["it's 45 out and windy", "45 out and windy", "bake it at 375", "bake it for 40 minutes", "how long does it take?",
     "how long did it take", "why did the bottom burn?", "what if it took 50 minutes?", "it's a two day drive",
     "17 on top and 8 below", "how many on the bottom?", "is the top brown?", "dinner at half past six",
     "will the bottom burn", "a 12 inch pot", "double it", "", "?", "the pot is a deep one", "30 hours in the cooler",
     "bake it 10 minutes longer than it says", "it needed 30 hours in the cooler", "took 6 hours to get there", "the oven was 375",
     "the recipe said 375", "leave it in 20 minutes more", "it took two days", "took 2 hours of driving", "top with cheese"],
)  # fmt: skip
def test_what_is_asked_or_wished_is_no_log(said: str) -> None:
    assert told(said) is None


TURNS = [turn["said"] for path in files() for turn in tomllib.loads(path.read_text(encoding="utf-8"))["turn"]]


def test_no_sentence_of_the_talks_about_a_plan_is_taken_for_the_logs() -> None:
    """Every act that is published keeps its sentences, those kept apart included."""
    assert len(TURNS) > 350
    assert [said for said in TURNS if told(said) is not None or asked(said) is not None] == []


@given(
    st.text(max_size=300)
    | st.lists(
        st.sampled_from(
            [
                "took",
                "35",
                "minutes",
                "an",
                "hour",
                "and",
                "half",
                "bottom",
                "a",
                "bit",
                "dark",
                "pot",
                "read",
                "340",
                "over",
                ",",
                ".",
                "?",
                "on",
                "top",
            ]
        )
    ).map(" ".join)
)
def test_nothing_that_can_be_said_breaks_the_hearing(said: str) -> None:
    found = told(said)
    asked(said)
    if found is not None:
        assert found.slots
        hearing = hear(said, "log.toml")
        assert all(word in hearing.text for word in found.rest.replace(",", " ").split())
