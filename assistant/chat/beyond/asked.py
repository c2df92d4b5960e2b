"""Questions about the log: what it taught, its reset, its export to a file."""

from __future__ import annotations

from typing import Literal, NamedTuple

from assistant.chat.beyond.hearing import PATH, Hearing, hear
from assistant.chat.values import table as value_words

TABLE = "asked.toml"


class HabitAsked(NamedTuple):
    """What is asked about the log, with form and path of an export."""

    act: Literal["habit", "forget log", "export log"]
    slots: dict[str, str]


def asked(utterance: str) -> HabitAsked | None:
    """What a sentence asks about the log; None where it asks nothing of it.

    A verb begins the sentence and the log follows it, or something was "learned": "show me my log", "forget what you
    have learned".
    """
    hearing = hear(utterance, TABLE)
    groups = [
        found.group for place in range(len(hearing.words)) for found in hearing.marks.get(place, ())[:1]
    ]
    of_the_log = "log" in groups or "learnt" in groups
    if not of_the_log or not hearing.words:
        return None
    first = _first_verb(hearing)
    if first == "reset":
        return HabitAsked("forget log", {})
    if first == "export" and "log" in groups:
        return HabitAsked("export log", form_and_path(hearing))
    whole = hearing.phrase(0, "log")
    is_alone = whole is not None and whole.end == len(hearing.words) and whole.end > 1
    if is_alone or first in ("show", "what") or "learnt" in groups:
        return HabitAsked("habit", {})
    return None


def _first_verb(hearing: Hearing) -> str | None:
    """The group of the first verb, behind words of politeness."""
    for place in range(min(4, len(hearing.words))):
        found = hearing.phrase(place, "reset", "export", "show", "what")
        if found is not None:
            return found.group
    return None


def form_and_path(hearing: Hearing) -> dict[str, str]:
    """The form and the path that a sentence names."""
    slots = {}
    path = PATH.search(hearing.text)
    if path is not None:
        slots["path"] = path[0]
        return slots
    for form, spoken in value_words().forms.items():
        if any(word in spoken for word in hearing.words):
            slots["as"] = form
    return slots
