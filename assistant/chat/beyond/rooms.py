"""How a room beyond the plan takes part in a talk: it hears a sentence first, takes its own piece, leaves the rest.

A session is handed its rooms; it is the `Host` in which they work. What a room does can be undone like any change.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import NamedTuple, Protocol

from assistant.chat.acts import CHANGES, NOT_UNDERSTOOD, Meant
from assistant.chat.changes import changed_parts
from assistant.chat.context import Context
from assistant.show.kinds import Turn
from assistant.show.plain import one_line, printable
from rules.circumstances import Day
from rules.plan import Plan
from rules.problem import Problem
from rules.recipe import Recipe


class Host(Protocol):
    """The talk as a room sees it."""

    @property
    def recipe(self) -> Recipe | None:
        """The recipe that is talked about."""
        ...

    @property
    def day(self) -> Day:
        """The circumstances so far."""
        ...

    @property
    def turns(self) -> int:
        """How many sentences were said."""
        ...

    def safe_plan(self) -> Plan | None:
        """The plan as it stands, None where none can be made."""
        ...

    def context(self) -> Context:
        """What a sentence about the plan is understood against."""
        ...

    def of_the_plan(self, utterance: str) -> Turn:
        """Hear a sentence with the plan's own ears alone."""
        ...

    def become(self, recipe: Recipe | None, day: Day, *, back: Callable[[], None] | None = None) -> None:
        """Go on with another recipe or day; `back` is called when this is undone."""
        ...


class Part(NamedTuple):
    """What a room takes of a sentence: its acts, the rest, and what to do, given the plan before the sentence.

    `is_sure` is false for a sentence that could as well be the first line of a recipe.
    """

    meant: tuple[Meant, ...]
    rest: str
    do: Callable[[Plan | None], str]
    is_sure: bool = True


class Room(Protocol):
    """A room beyond the plan."""

    @property
    def says(self) -> Sequence[tuple[str, str]]:
        """What can be said to it: an example, and what that does."""
        ...

    @property
    def is_under_way(self) -> bool:
        """Whether it is being talked about, so that a sentence is a sentence even before there is a recipe."""
        ...

    def hear(self, utterance: str) -> Part | None:
        """What of a sentence is this room's; None where nothing is."""
        ...


#: A rest that means nothing is only spoken of when it has so many words, or a figure.
WORTH_SAYING = 3
#: Makes a room for a talk.
Opens = Callable[[Host], Room]


def turn(host: Host, utterance: str, part: Part) -> Turn:
    """A turn in which a room has a part: the plan hears the rest first, for the day may be in it."""
    before = host.safe_plan()
    rest = host.of_the_plan(part.rest) if part.rest else None
    told: list[str] = []
    did: tuple[str, ...] = ()
    slots: Mapping[str, object] = {}
    if rest is not None and rest.did == (NOT_UNDERSTOOD,):
        if len(part.rest.split()) >= WORTH_SAYING or any(sign.isdigit() for sign in part.rest):
            told.append(f'I did not understand "{one_line(part.rest, most=60)}", and left it.')
    elif rest is not None:
        did, slots = rest.did, rest.with_
        if not set(rest.did) <= CHANGES:
            told.append(rest.answer)
    try:
        told.insert(0, part.do(before))
    except Problem as problem:
        told.insert(0, str(problem))
    return Turn(
        said=utterance,
        did=(*did, *(one.act for one in part.meant)),
        with_={**slots, **{name: value for one in part.meant for name, value in one.slots.items()}},
        answer=printable("\n".join(line for line in told if line)),
        changed=changed_parts(before, host.safe_plan()),
        file=host.recipe.file if host.recipe else None,
    )
