"""The commands as they are declared: which there are, what each takes, what the options of the day become."""

from __future__ import annotations

from typing import Any

import pytest
import typer

from assistant import cli
from assistant.commands.arguments import DAY_OPTIONS, takes_a_day
from rules.circumstances import Day, PotOwned

COMMANDS: dict[str, Any] = typer.main.get_command(cli.app).commands  # type: ignore[attr-defined]


def test_the_commands_stand_in_the_order_of_the_work() -> None:
    assert list(COMMANDS)[:3] == ["read", "camp", "demo"]
    assert set(COMMANDS) >= {"why", "coals", "ask", "schema"}


@pytest.mark.parametrize("name", ["camp", "demo", "why", "ask"])
def test_a_command_over_a_plan_takes_the_whole_day(name: str) -> None:
    assert {parameter.name for parameter in COMMANDS[name].params} >= set(DAY_OPTIONS)


def test_coals_take_nothing_that_needs_a_recipe() -> None:
    taken = {parameter.name for parameter in COMMANDS["coals"].params}
    assert taken & set(DAY_OPTIONS) == {
        *("oven", "deep", "temp", "air", "wind", "ground", "screen", "elevation", "units"),
    }


def test_a_command_receives_the_day_read() -> None:
    received: list[Day] = []

    @takes_a_day(options=("oven", "deep", "people"))
    def command(*, day: Any) -> None:
        received.append(day)

    command(oven=["12"], deep=True, people="9")
    (day,) = received
    assert day.people == 9
    assert day.pots == (PotOwned(diameter_in=12, depth="deep"),)


def test_the_coals_say_how_sure_they_are(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.run(["coals", "--how-sure"]) == 0
    out, _ = capsys.readouterr()
    assert "the one constant fitted to the chart" in out
    assert "12 in, 350 °F: correlations" in out
    assert "kept out of the fit" in out


@pytest.mark.parametrize("name", COMMANDS)
def test_every_option_says_what_it_is_for(name: str) -> None:
    assert not [parameter.name for parameter in COMMANDS[name].params if not parameter.help]
