"""Several meals joined up: `trip`."""

from __future__ import annotations

from typing import Annotated

import typer

from assistant.commands.arguments import Force, Form, Out
from assistant.commands.makers import reader
from assistant.commands.output import show


def trip(
    file: Annotated[str, typer.Argument(metavar="TRIP.toml", help="A trip file; - is standard input.")],
    form: Form = None,
    out: Out = None,
    force: Force = False,
    own: Annotated[bool, typer.Option("--own", help="Plan by what your own log of cooks teaches.")] = False,
) -> None:
    """Plan a whole trip: one shop, one cooler, one fire, one calendar; html is a booklet."""
    from assistant.show.forms import chosen
    from assistant.trip.file import trip_of
    from rules.circumstances import Day
    from rules.trip.plan import plan

    chosen("trip", form, out)  # a form that there is not is told before anything is read
    told = trip_of(file, reader())
    if own:
        from msgspec.structs import replace

        from assistant.commands.habits import own_habit

        told = replace(told, habit=own_habit())
    show("trip", plan(told), form, out, force, Day(units=told.units))
