"""Recipes in, recipes or plans out: `read`, `camp`, `demo`."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from assistant.commands.arguments import Cluster, DoneFile, Files, Force, Form, Jobs, Out, Unit, takes_a_day
from assistant.commands.makers import planner, reader
from assistant.commands.output import make_all, say

if TYPE_CHECKING:
    from rules.circumstances import Day
else:
    Day = Any  # typer resolves the annotations, and the day itself never comes from the command line


#: What `demo` cooks.
DEMO = "river-peach-cobbler.txt"


def read(
    files: Files = None,
    form: Form = None,
    out: Out = None,
    force: Force = False,
    units: Unit = None,
    jobs: Jobs = None,
    cluster: Cluster = None,
    done: DoneFile = None,
) -> None:
    """Show a recipe as it was read."""
    from assistant.options import day, run

    spread = run(jobs, cluster, done)
    make_all("recipe", files, reader, form, out, force, day({"units": units}), spread)


@takes_a_day()
def camp(
    *,
    day: Day,
    files: Files = None,
    form: Form = None,
    out: Out = None,
    force: Force = False,
    jobs: Jobs = None,
    cluster: Cluster = None,
    done: DoneFile = None,
) -> None:
    """Work out the camp plan: packs, pot, coals, cold, timeline, lists."""
    from assistant.options import run

    make_all("plan", files, lambda: planner(day), form, out, force, day, run(jobs, cluster, done))


@takes_a_day()
def demo(*, day: Day, form: Form = None, out: Out = None, force: Force = False) -> None:
    """Work out the camp plan of a recipe that ships with coalside."""
    from importlib import resources

    recipe = resources.files("corpus") / "recipes" / DEMO
    with resources.as_file(recipe) as path:
        say(f"The camp plan of {DEMO}, which ships with coalside; your own: coalside camp FILE")
        make_all("plan", [str(path)], lambda: planner(day), form, out, force, day)
