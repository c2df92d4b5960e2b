"""What can be said beyond one plan: the log of cooks and what it taught, what to cook, a whole trip.

These acts are heard before those of the plan, each in its own narrow words, and take only the pieces of a sentence
that are theirs; what is left is heard as ever.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.chat.beyond.chooser import Chooser, Meals
from assistant.chat.beyond.logbook import ExportHabit, Log, Logbook
from assistant.chat.beyond.rooms import Opens


def rooms(
    *, log: Log | None = None, meals: Meals | None = None, export_log: ExportHabit | None = None
) -> Sequence[Opens]:
    """The rooms of a talk, in the order in which they hear a sentence; those without their store stay shut."""
    opened: list[Opens] = []
    if log is not None:
        opened.append(lambda host: Logbook(host, log, export_log))
    if meals is not None:
        opened.append(lambda host: Chooser(host, meals))
    return tuple(opened)
