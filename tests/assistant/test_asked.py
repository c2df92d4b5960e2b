"""Questions about the log are known by its name; everything else is left alone."""

from __future__ import annotations

import pytest

from assistant.chat.beyond.asked import asked


@pytest.mark.parametrize(
    ("said", "act"),
    [("show me my log", "habit"), ("what have you learned about my pots?", "habit"), ("my log", "habit"),
     ("what does my log say", "habit"), ("reset my log", "forget log"), ("please forget what you have learned", "forget log"),
     ("export my log", "export log"), ("save the log as csv", "export log"), ("write my cooks to cooks.json", "export log")],
)  # fmt: skip
def test_the_log_is_asked_for_by_its_name(said: str, act: str) -> None:
    found = asked(said)
    assert found is not None
    assert found.act == act


def test_an_export_names_its_form_or_its_file() -> None:
    named, formed = asked("write my cooks to cooks.json"), asked("save the log as csv")
    assert named is not None
    assert formed is not None
    assert (named.slots, formed.slots) == ({"path": "cooks.json"}, {"as": "csv"})


@pytest.mark.parametrize(
    "said", ["export json to plan.json", "forget Friday", "put another log on the fire", "forget it"]
)
def test_what_speaks_of_other_things_is_not_about_the_log(said: str) -> None:
    assert asked(said) is None
