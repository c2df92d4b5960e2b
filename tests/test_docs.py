"""Everything a user may type is explained: by --help, and in the README."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
import typer

from assistant import cli

README = (Path(__file__).parent.parent / "README.md").read_text(encoding="utf-8")
GROUP = typer.main.get_command(cli.app)
COMMANDS = dict(GROUP.commands)  # type: ignore[attr-defined]


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_and_option_says_what_it_does(name: str) -> None:
    command = COMMANDS[name]
    assert command.help
    assert command.help.strip().endswith(".")
    for parameter in command.params:
        assert getattr(parameter, "help", None), f"{name} {parameter.name}"


@pytest.mark.parametrize("name", COMMANDS)
def test_help_stays_within_eighty_columns(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.run([name, "--help"]) == cli.DONE
    assert [line for line in capsys.readouterr().out.splitlines() if len(line) > 80] == []


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_stands_in_the_readme(name: str) -> None:
    assert re.search(rf"`coalside {name}\b", README)


def test_every_form_of_output_stands_in_the_readme() -> None:
    from assistant.show.forms import WRITERS

    missing = [form for forms in WRITERS.values() for form in forms if f"`{form}`" not in README]
    assert missing == []
