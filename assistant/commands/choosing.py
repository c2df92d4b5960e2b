"""Plans in the other direction: `choose`."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated, Any

import typer

from assistant.commands.arguments import Force, Form, Out, takes_a_day
from assistant.commands.makers import reader, store
from assistant.commands.output import show

if TYPE_CHECKING:
    from collections.abc import Iterator

    from rules.choose import Candidate
    from rules.circumstances import Day
else:
    Day = Any  # typer resolves the annotations, and the day itself never comes from the command line


@takes_a_day()
def choose(
    *,
    day: Day,
    files: Annotated[
        list[str] | None,
        typer.Argument(metavar="FILE...", help="Recipe files to choose from; without any, what is kept."),
    ] = None,
    briquettes: Annotated[
        str | None, typer.Option("--briquettes", metavar="N", help="How many briquettes there are.")
    ] = None,
    minutes: Annotated[
        str | None, typer.Option("--minutes", metavar="N", help="Minutes from the first coal to the meal.")
    ] = None,
    avoid: Annotated[
        list[str] | None,
        typer.Option("--avoid", metavar="FOOD", help="What somebody avoids; may be repeated."),
    ] = None,
    form: Form = None,
    out: Out = None,
    force: Force = False,
) -> None:
    """Choose three recipes for these pots, this cooler, this much charcoal."""
    from assistant.options import whole
    from rules.choose import Means
    from rules.choose import choose as chosen

    means = Means(
        day=day,
        briquettes=whole("--briquettes", briquettes, low=0, high=5000) if briquettes is not None else None,
        minutes=whole("--minutes", minutes, high=1440) if minutes is not None else None,
        avoids=tuple(avoid or ()),
    )
    show("choices", chosen(_candidates(files or ()), means), form, out, force, day)


def _candidates(files: list[str] | tuple[()]) -> Iterator[Candidate]:
    """The recipes of the files, or everything that is kept."""
    from pathlib import Path

    from assistant.files import text_of
    from rules.choose import Candidate

    read = reader()
    for file in files:
        yield Candidate(name=Path(file).stem, recipe=read(text_of(file), file))
    if not files:
        kept = store()
        for meal in (kept.get(name) for name in kept.names()):
            yield Candidate(name=meal.name, recipe=meal.recipe, day=meal.day)
