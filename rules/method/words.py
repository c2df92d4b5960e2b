"""The words that the method graph goes by, read from `tables/method_words.toml`."""

from __future__ import annotations

from functools import cache, lru_cache

from rules import table
from rules.roles import Role


class Words(table.Row, frozen=True, kw_only=True):
    """A set of words; `roles` are the foods that a thing called so holds."""

    key: str
    words: tuple[str, ...]
    roles: tuple[Role, ...] = ()


@cache
def words(key: str) -> frozenset[str]:
    """The words under a key."""
    return next(frozenset(row.words) for row in _rows() if row.key == key)


@lru_cache(maxsize=1024)
def kind_of(vessel: str) -> str | None:
    """Pot, pan, bowl or tin, by the last word of the vessel."""
    word = head(vessel)
    return next(
        (kind for kind in ("pot", "pan", "bowl", "tin") if {word, word.rstrip("s")} & words(kind)), None
    )


def head(vessel: str) -> str:
    """The last word of a vessel."""
    return vessel.lower().split()[-1] if vessel.split() else ""


def is_place(vessel: str) -> bool:
    """Whether it holds no mixture of its own: an oven (no Dutch one), a fridge, a board."""
    word = head(vessel)
    if word == "oven" and {"dutch", "camp"} & set(vessel.lower().split()):
        return False
    return word in words("place") or word.rstrip("s") in words("place")


@lru_cache(maxsize=1024)
def roles_called(name: str) -> frozenset[Role]:
    """The foods that a thing with this name holds ("batter": flour)."""
    said = set(name.split())
    return frozenset(role for row in _rows() if row.roles and said & set(row.words) for role in row.roles)


@cache
def _rows() -> tuple[Words, ...]:
    return table.read("method_words.toml", Words)
