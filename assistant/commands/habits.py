"""The cook's own log without the talk: `habit`."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from assistant.commands.arguments import Force, Form, Out
from assistant.commands.makers import store
from assistant.commands.output import say, show

if TYPE_CHECKING:
    from rules.circumstances import Habit


def habit(
    reset: Annotated[bool, typer.Option("--reset", help="Forget the log and what it taught.")] = False,
    form: Form = None,
    out: Out = None,
    force: Force = False,
) -> None:
    """Show your log of cooks and what it teaches."""
    from assistant.chat.beyond.logbook import report
    from rules.circumstances import Day

    kept = store()
    show("habit", report(kept), form, out, force, Day())
    if reset:
        gone = len(kept.unlog())
        say(
            f"Forgot {'the one cook' if gone == 1 else f'all {gone} cooks'} of the log."
            if gone
            else "There was no log."
        )


def own_habit() -> Habit | None:
    """What the log in the user's folder teaches."""
    from assistant.chat.beyond.logbook import learnt

    return learnt(store())
