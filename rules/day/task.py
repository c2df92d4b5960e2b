"""A thing to do, how long it holds both hands, and what is said where one pair of hands does not suffice."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from rules.because import Ledger, Rule
from rules.plan import MomentKind

TWO_AT_ONCE = Rule(
    id="day.two-at-once",
    because="{first} and {second} want both hands in the same minutes: a second cook takes one of them",
)

#: What is done in fewer minutes is done between two turns of what else is at hand.
LONG_WORK = 5.0


class Task(NamedTuple):
    """One thing to do: when [minutes from the meal], what, and how long it holds both hands [min].

    `name` is what it is called where it runs into something else.
    """

    at_min: float
    kind: MomentKind
    do: str
    hands_min: float = 1.0
    name: str = ""


def in_order(tasks: Iterable[Task], ledger: Ledger) -> list[Task]:
    """The tasks as they follow each other; what one cook cannot do at once says so."""
    ordered = sorted(tasks, key=lambda task: task.at_min)
    return [_said(task, ordered[:place], ledger) for place, task in enumerate(ordered)]


def _said(task: Task, before: list[Task], ledger: Ledger) -> Task:
    busy = next(_still_at_hand(task, before), None)
    if busy is None:
        return task
    ledger.note(TWO_AT_ONCE.says("day", first=busy.name, second=task.name))
    return task._replace(do=f"{task.do} A second pair of hands here: {busy.name} goes on meanwhile.")


def _still_at_hand(task: Task, before: list[Task]) -> Iterator[Task]:
    """Long work that was begun earlier and is not over when this long work begins."""
    if task.hands_min < LONG_WORK:
        return
    for other in before:
        if other.hands_min >= LONG_WORK and other.at_min + other.hands_min > task.at_min:
            yield other
