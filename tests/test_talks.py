"""Conversations over the corpus recipes: what each utterance asks for, held against the chat's engine.

A third of the talks stands in `corpus/talks/kept_apart/`, chosen by the hash of the file's name. Whoever writes
patterns for the chat does not read those; so the figures of that third tell how it does with words it never saw.
"""

from __future__ import annotations

import hashlib
from pathlib import Path
from typing import Any

import msgspec
import pytest

from rules.recipe import Struct

TALKS = Path(__file__).parent.parent / "corpus" / "talks"
RECIPES = TALKS.parent / "recipes"

#: The acts of the chat and the slots of each, as published.
ACTS: dict[str, set[str]] = {
    "camp": set(),
    "people": {"people"},
    "scale": {"factor"},
    "pot": {"diameter_in", "depth", "count"},
    "temperature": {"temp_f"},
    "weather": {"air_f", "wind"},
    "elevation": {"feet"},
    "eat at": {"clock"},
    "trip": {"hours"},
    "swap": {"from", "to"},
    "leave out": {"food"},
    "add": {"food", "amount"},
    "mixes": set(),
    "fresh": set(),
    "fat": set(),
    "coals": set(),
    "turning": set(),
    "doneness": set(),
    "cold": set(),
    "steps": {"where"},
    "timeline": set(),
    "shopping": set(),
    "kit": set(),
    "labels": set(),
    "cautions": set(),
    "allergens": set(),
    "why": {"about"},
    "show": {"what"},
    "export": {"as", "path"},
    "keep": {"name"},
    "kept": {"name"},
    "open": {"name"},
    "forget": {"name"},
    "fire ban": {"allowed"},
    "cooler": {"quarts"},
    "undo": set(),
    "units": {"units"},
    "new": set(),
    "help": set(),
    "not understood": set(),
}


class WantedTurn(Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """One utterance. `or_` lists acts that are as right; a slot's list holds values that are each right."""

    said: str
    did: tuple[str, ...]
    with_: dict[str, Any] = msgspec.field(name="with", default_factory=dict)
    or_: tuple[tuple[str, ...], ...] = msgspec.field(name="or", default=())


class Talk(Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A conversation over one recipe; what is said carries from turn to turn."""

    recipe: str
    turn: tuple[WantedTurn, ...]


def files() -> list[Path]:
    return sorted(TALKS.rglob("*.toml"))


def talk(path: Path) -> Talk:
    return msgspec.toml.decode(path.read_bytes(), type=Talk)


@pytest.mark.parametrize("path", files(), ids=lambda path: path.stem)
def test_a_talk_speaks_of_published_acts_and_slots(path: Path) -> None:
    conversation = talk(path)
    assert (RECIPES / conversation.recipe).exists()
    for turn in conversation.turn:
        for acts in (turn.did, *turn.or_):
            assert acts
            assert set(acts) <= ACTS.keys()
        assert turn.with_.keys() <= set().union(*(ACTS[act] for act in turn.did))


def test_the_talks_are_many_and_use_every_act() -> None:
    turns = [turn for path in files() for turn in talk(path).turn]
    assert len(files()) >= 60
    assert len(turns) >= 400
    assert {act for turn in turns for act in turn.did} == ACTS.keys()


def test_a_third_is_kept_apart_by_the_hash_of_its_name() -> None:
    for path in files():
        apart = int(hashlib.sha256(path.name.encode()).hexdigest(), 16) % 3 == 0
        assert apart == (path.parent.name == "kept_apart"), path.name
