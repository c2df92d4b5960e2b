"""The word tables of the reader, as data: one TOML file a subject, read once and checked against its type.

Nothing here decides anything. A newcomer adds a spelling in a `.toml` file without touching Python.
"""

from __future__ import annotations

from functools import cache
from importlib import resources
from typing import TypeVar

import msgspec

T = TypeVar("T")


@cache
def load(name: str, shape: type[T]) -> T:
    """The table `name` ("units.toml") as `shape`, a msgspec struct or a plain type.

    Raises:
        msgspec.ValidationError: the file holds a key or a value that `shape` does not have.
    """
    text = resources.files(__name__).joinpath(name).read_text(encoding="utf-8")
    return msgspec.toml.decode(text, type=shape)


class Group(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """Words that mean the same to the reader, with a line that says what they have in common."""

    what: str
    words: tuple[str, ...]


@cache
def groups(name: str) -> dict[str, tuple[str, ...]]:
    """The words of a table of groups, by the group's id: `[id]`, `what = "…"`, `words = ["…"]`."""
    return {label: group.words for label, group in load(name, dict[str, Group]).items()}
