"""The talk's words and patterns, as data: one TOML file a subject, read once and checked against its type.

A newcomer adds a way of asking in a `.toml` file without touching Python; `words.toml` says what the signs mean.
"""

from __future__ import annotations

from functools import cache
from importlib import resources
from typing import TypeVar

import msgspec

T = TypeVar("T")
#: The files that hold words and not acts.
OTHERS = ("topics.toml", "values.toml", "words.toml")


@cache
def load(name: str, shape: type[T]) -> T:
    """The table `name` ("values.toml") as `shape`, a msgspec struct or a plain type.

    Raises:
        msgspec.ValidationError: the file holds a key or a value that `shape` does not have.
    """
    return msgspec.toml.decode(text(name), type=shape)


def text(name: str) -> str:
    """The text of a table."""
    return resources.files("assistant.chat").joinpath("acts", name).read_text(encoding="utf-8")


@cache
def files() -> tuple[str, ...]:
    """The names of the files with acts, in order."""
    names = (
        entry.name
        for entry in resources.files("assistant.chat").joinpath("acts").iterdir()
        if entry.name.endswith(".toml")
    )
    return tuple(sorted(name for name in names if name not in OTHERS))
