"""What a match holds: its values, what the saying sets by itself, and the slots that are told."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.chat.lexicon import Word
from assistant.chat.patterns import Found
from assistant.chat.slots import KINDS
from assistant.chat.values import Value

Slots = dict[str, object]
Told = Iterable[tuple[str, Slots]]


def value_of(match: Found, slot: str) -> Value | None:
    """The value in a slot, if a word of the sentence fills it."""
    word = match.slots.get(slot)
    return word.value(KINDS[slot]) if isinstance(word, Word) else None


def number_of(match: Found, slot: str) -> float | None:
    """The figure in a slot."""
    value = value_of(match, slot)
    return float(value.value) if value is not None else None


def set_by(match: Found, slot: str) -> str | None:
    """What the saying itself sets: "half of it" the factor."""
    said = match.slots.get(slot)
    return said if isinstance(said, str) else None


def whole(value: float) -> float | int:
    """The figure as it is printed: whole where it is, else with one decimal."""
    return int(value) if value == int(value) else round(value, 1)
