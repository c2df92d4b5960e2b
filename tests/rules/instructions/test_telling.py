from __future__ import annotations

from rules.instructions.telling import Coals, clean
from rules.plan import Doneness
from rules.recipe import Action, Deed
from tests.build import bake, heat


def act(does: Deed) -> Action:
    return Action(does=does, word=does)


def test_the_coals_of_a_stage_are_told_once() -> None:
    coals = Coals(heat(bake()))
    assert coals.before(act("mix")) == ""
    assert coals.before(act("bake")) == "with 8 coals under the pot and 17 on the lid, "
    assert coals.before(act("bake")) == ""


def test_without_coals_nothing_is_lit() -> None:
    coals = Coals(None)
    assert coals.lighting() == ()
    assert coals.doneness() == ()
    assert coals.before(act("bake")) == ""


def test_the_sign_of_doneness_comes_with_its_degrees_and_its_rest() -> None:
    done = Doneness(what="chicken", temp_f=165, rest_min=5, sign="the juice runs clear", source="a table")
    (said,) = Coals(heat(bake(), doneness=(done,))).doneness()
    assert (
        said
        == "Look before you serve. Chicken: the juice runs clear (165 °F inside), after 5 minutes of rest."
    )


def test_what_is_said_twice_in_a_row_is_said_once() -> None:
    assert clean(["Stir.", "Stir.", "", "Bake it.", "Bake it for 20 minutes."]) == [
        "Stir.",
        "Bake it for 20 minutes.",
    ]


def test_two_different_sentences_both_stay() -> None:
    assert clean(["Stir.", "Serve."]) == ["Stir.", "Serve."]
