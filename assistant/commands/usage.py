"""The ways a command ends: exit codes, and typer's usage errors in one sentence of our own."""

from __future__ import annotations

import difflib
import os
from collections.abc import Iterable, Sequence
from typing import Any

import typer

DONE, FAILED, WRONG_USAGE, INTERRUPTED = 0, 1, 2, 130

#: The base of all of typer's usage errors, by way of the one that it exports.
UsageError: type[Exception] = typer.BadParameter.__mro__[1]


def usage(error: Any, arguments: Sequence[str]) -> str:
    """Typer's usage error in one sentence of our own."""
    command = (
        error.ctx.command_path if error.ctx else " ".join(["coalside", *filter(str.isalpha, arguments[:1])])
    )
    found, near = getattr(error, "option_name", None), getattr(error, "possibilities", None)
    if found and near is not None:
        alike = difflib.get_close_matches(found, near, 3, 0)
        alike.sort(key=lambda option: option[:3] != found[:3])
        hint = f"did you mean {alike[0]}" if alike else f"{command} --help lists all"
        return f"{found}: there is no such option; {hint}."
    if error.ctx and hasattr(error.ctx.command, "commands") and arguments:
        return _no_command(arguments[0], error.ctx.command.commands)
    message = error.format_message().rstrip(".")
    return f"{command}: {message[:1].lower()}{message[1:]}; {command} --help says more."


def _no_command(word: str, commands: Iterable[str]) -> str:
    if os.path.isfile(word):  # noqa: PTH113 - pathlib would be loaded for this alone
        return f"coalside: that is a file; coalside camp {word} plans it."
    near = difflib.get_close_matches(word, list(commands), 1)
    hint = f"did you mean {near[0]}? " if near else ""
    return f"coalside: there is no command {word}; {hint}coalside --help lists all."
