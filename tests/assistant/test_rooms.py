"""How a room beyond the plan shares a sentence with it."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.chat.acts import Meant
from assistant.chat.beyond.rooms import Host, Opens, Part
from assistant.chat.session import Session
from rules.plan import Plan
from rules.problem import UsageProblem
from rules.recipe import Recipe


class Echo:
    """A room that takes the word echo wherever it stands."""

    is_under_way = False
    says = (("echo", "say it again"),)

    def __init__(self, host: Host, do: Callable[[Host, Plan | None], str]) -> None:
        self._host, self._do = host, do

    def hear(self, utterance: str) -> Part | None:
        if "echo" not in utterance:
            return None
        rest = utterance.replace("echo", "").strip(" ,")
        return Part(
            (Meant(act="echo", slots={"times": 1}),), rest, lambda plan: self._do(self._host, plan), False
        )


def opens(do: Callable[[Host, Plan | None], str]) -> Opens:
    return lambda host: Echo(host, do)


def test_the_plan_hears_the_rest_and_its_acts_come_first(river_recipe: Recipe) -> None:
    turn = Session(river_recipe, rooms=[opens(lambda _host, _plan: "Echoed.")]).say("echo, we will be twelve")
    assert turn.did == ("people", "echo")
    assert turn.with_ == {"people": 12, "times": 1}
    assert turn.answer == "Echoed."
    assert turn.changed


def test_a_question_in_the_rest_is_answered_below(river_recipe: Recipe) -> None:
    turn = Session(river_recipe, rooms=[opens(lambda _host, _plan: "Echoed.")]).say(
        "echo, how many briquettes?"
    )
    assert turn.did == ("coals", "echo")
    assert turn.answer.startswith("Echoed.\n")
    assert "briquettes" in turn.answer


def test_a_rest_that_means_nothing_is_said_and_left(river_recipe: Recipe) -> None:
    turn = Session(river_recipe, rooms=[opens(lambda _host, _plan: "Echoed.")]).say("echo, qwertz asdf yxcv")
    assert turn.did == ("echo",)
    assert 'I did not understand "qwertz asdf yxcv"' in turn.answer


def test_a_problem_is_told_in_its_sentence(river_recipe: Recipe) -> None:
    def stumbles(_host: Host, _plan: Plan | None) -> str:
        raise UsageProblem("--oven", "13", "camp pots come in 12 inches")

    turn = Session(river_recipe, rooms=[opens(stumbles)]).say("echo")
    assert "camp pots come in 12 inches" in turn.answer


def test_the_room_is_told_the_plan_from_before_the_sentence(river_recipe: Recipe) -> None:
    seen: list[Plan | None] = []

    def notes(_host: Host, plan: Plan | None) -> str:
        seen.append(plan)
        return ""

    session = Session(river_recipe, rooms=[opens(notes)])
    before = session.plan
    session.say("echo, we will be twelve")
    assert seen == [before]
    assert session.plan != before


def test_undo_takes_back_what_the_room_did_once(river_recipe: Recipe) -> None:
    undone: list[str] = []

    def changes(host: Host, _plan: Plan | None) -> str:
        host.become(host.recipe, host.day, back=lambda: undone.append("back"))
        return ""

    session = Session(river_recipe, rooms=[opens(changes)])
    session.say("echo")
    session.say("we will be twelve")
    session.say("undo")
    assert undone == []
    session.say("undo")
    session.say("undo")
    assert undone == ["back"]


@pytest.mark.parametrize("said", ["echo", "how many?"])
def test_only_a_sure_part_is_taken_where_a_recipe_may_begin(said: str) -> None:
    assert not Session(rooms=[opens(lambda _host, _plan: "")]).takes_early(said, is_typed=False)
