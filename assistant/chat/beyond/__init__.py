"""What can be said beyond one plan: the log of cooks and what it taught, what to cook, a whole trip.

These acts are heard before those of the plan, each in its own narrow words, and take only the pieces of a sentence
that are theirs; what is left is heard as ever.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import date

from assistant.chat.beyond.chooser import Chooser, Meals
from assistant.chat.beyond.cookbook import Cookbook
from assistant.chat.beyond.logbook import ExportHabit, Log, Logbook
from assistant.chat.beyond.rooms import Opens
from assistant.chat.beyond.tripper import ExportTrip, Tripper


def rooms(
    *,
    log: Log | None = None,
    meals: Meals | None = None,
    cookbook: Cookbook | None = None,
    today: Callable[[], date] | None = None,
    export_log: ExportHabit | None = None,
    export_trip: ExportTrip | None = None,
) -> Sequence[Opens]:
    """The rooms of a talk, in the order in which they hear a sentence; one without what it needs stays shut."""
    opened: list[Opens] = []
    if log is not None:
        opened.append(lambda host: Logbook(host, log, export_log))
    if meals is not None:
        opened.append(lambda host: Chooser(host, meals))
    if cookbook is not None and today is not None:
        opened.append(lambda host: Tripper(host, cookbook, today, export_trip))
    return tuple(opened)
