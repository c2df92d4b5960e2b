"""Answers without a talk: `why`, `coals`, `schema`."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated, Any

import typer

from assistant.commands.arguments import Force, Form, OneFile, Out, takes_a_day
from assistant.commands.makers import planner
from assistant.commands.output import make_all, show, write_out

if TYPE_CHECKING:
    from assistant.batch import Maker
    from rules.circumstances import Day
else:
    Day = Any  # typer resolves the annotations, and the day itself never comes from the command line


@takes_a_day()
def why(
    file: OneFile,
    about: Annotated[list[str], typer.Argument(metavar="ABOUT...", help="A food, count, time or caution.")],
    *,
    day: Day,
    form: Form = None,
    out: Out = None,
    force: Force = False,
) -> None:
    """Give the reasons for one ingredient, count, time or caution."""
    from assistant.chat.reasons import reasons_about

    def reasoner() -> Maker:
        plan_of = planner(day)
        return lambda text, name: reasons_about(plan_of(text, name), " ".join(about))

    make_all("why", [file], reasoner, form, out, force, day)


@takes_a_day(options=("oven", "deep", "temp", "air", "wind", "ground", "screen", "elevation", "units"))
def coals(
    *,
    day: Day,
    way: Annotated[str, typer.Option("--for", metavar="WAY", help="bake, roast, simmer or fry.")] = "bake",
    minutes: Annotated[
        str, typer.Option("--minutes", metavar="N", help="How long the coals have to last.")
    ] = "60",
    how_sure: Annotated[
        bool, typer.Option("--how-sure", help="Print how physics and printed figures agree, and where not.")
    ] = False,
    form: Form = None,
    out: Out = None,
    force: Force = False,
) -> None:
    """Count the briquettes for a pot and a temperature, without a recipe."""
    from assistant.options import coals_for
    from rules.coals.misfit import lines

    if how_sure:
        write_out(iter(["\n".join(lines()) + "\n"]), out, force)
        return
    show("coals", coals_for(day, way=way, minutes=minutes), form, out, force, day)


def schema(
    shape: Annotated[str, typer.Argument(metavar="SHAPE", help="recipe, plan, coals or trip.")],
    out: Out = None,
    force: Force = False,
) -> None:
    """Print the JSON Schema of a recipe, a plan, a coal count or a trip."""
    from assistant.show.data import json_text
    from assistant.show.schema import schema as schema_of

    write_out(iter([json_text(schema_of(shape)) + "\n"]), out, force)
