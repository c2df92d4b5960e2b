"""The talk: at the prompt when no command is named, and `ask` without a prompt."""

from __future__ import annotations

import os
import sys
from typing import TYPE_CHECKING, Annotated, Any

import typer

from assistant.commands.abroad import learnt, rooms, write_form
from assistant.commands.arguments import Force, Form, OneFile, Out, takes_a_day
from assistant.commands.makers import reader
from assistant.commands.output import terminal, write_out

if TYPE_CHECKING:
    from assistant.chat.session import Session
    from rules.circumstances import Day
else:
    Day = Any  # typer resolves the annotations, and the day itself never comes from the command line


def coalside(context: typer.Context) -> None:
    """Turn a kitchen recipe into one for a camp Dutch oven over charcoal.

    Without a command: paste a recipe and talk it through.
    """
    if context.invoked_subcommand is None:
        from pathlib import Path

        import platformdirs

        from assistant.chat.prompt import talk

        width = int(terminal(None)["width"])
        folder = Path(platformdirs.user_state_dir("coalside", appauthor=False))
        is_plain = os.environ.get("TERM") == "dumb" or not sys.stdout.isatty()
        raise typer.Exit(talk(_talk, width=width, is_plain=is_plain, state_folder=folder))


def _talk() -> Any:
    """What a talk needs: the session, and how a pasted text is read."""
    from rules.circumstances import Day

    read = reader()
    return new_session(None, Day(), **terminal(None)), lambda text: read(text, "")


@takes_a_day()
def ask(
    file: OneFile,
    utterances: Annotated[list[str], typer.Argument(metavar="SENTENCE...", help="What you say, in order.")],
    *,
    day: Day,
    form: Form = None,
    out: Out = None,
    force: Force = False,
) -> None:
    """Talk about a plan without the prompt: one answer for each sentence."""
    from assistant.files import text_of
    from assistant.show.forms import Look, Result, chosen, stream

    session = new_session(reader()(text_of(file), file), day)
    look = Look(form=chosen("turn", form, out), day=day, **terminal(out))
    turns = (Result(file=file, thing=session.say(utterance)) for utterance in utterances)
    write_out(stream("turn", turns, look, several=len(utterances) > 1), out, force)


def new_session(recipe: Any, day: Day, *, width: int = 80, color: bool = False) -> Session:
    """A talk with the store and the writers that it may use."""
    import msgspec

    from assistant.chat.session import Session
    from assistant.show.forms import Look

    kept, opened = rooms()
    return Session(
        recipe,
        msgspec.structs.replace(day, habit=day.habit or learnt(kept)),
        meals=kept,
        export=_export,
        look=Look(width=width, color=color),
        rooms=opened,
    )


def _export(plan: Any, day: Day, form: str | None, path: str | None) -> str:
    """Write a plan for the talk; the name of the file."""
    title = plan.recipe.title or "camp plan"
    return write_form("plan", plan, day, form or (None if path else "md"), path, title)
