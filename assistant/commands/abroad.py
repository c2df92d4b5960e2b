"""What the rooms beyond the plan need of the outside: the store, the recipes that ship, the calendar's day, files."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import TYPE_CHECKING, Any

from assistant.commands.makers import reader, store

if TYPE_CHECKING:
    from datetime import date

    from assistant.chat.beyond.rooms import Opens
    from assistant.keep import Store
    from assistant.show.forms import Kind
    from assistant.show.habit import HabitReport
    from rules.circumstances import Day, Habit
    from rules.recipe import Recipe, Struct
    from rules.trip.model import Trip


def rooms() -> tuple[Store, Sequence[Opens]]:
    """The store, and the rooms of a talk that use it."""
    from assistant.chat.beyond import rooms as opened
    from assistant.chat.beyond.cookbook import Cookbook

    kept = store()
    cookbook = Cookbook(kept, shipped(), _open_file)
    return kept, opened(
        log=kept,
        meals=kept,
        cookbook=cookbook,
        today=_today,
        export_log=export_log,
        export_trip=export_trip,
    )


def learnt(kept: Store) -> Habit | None:
    """What the log teaches; a log that cannot be opened teaches nothing, and says so when it is used."""
    from assistant.chat.beyond.logbook import learnt as of_the_log
    from assistant.keep import KeepProblem

    try:
        return of_the_log(kept)
    except KeepProblem:
        return None


def shipped() -> Mapping[str, Callable[[], Recipe]]:
    """The recipes that come with coalside, by the names of their files: "peach cobbler"."""
    from importlib import resources

    folder = resources.files("corpus") / "recipes"

    def opens(file: Any) -> Callable[[], Recipe]:
        return lambda: reader()(file.read_text(encoding="utf-8"), file.name)

    files = {entry.name: entry for entry in folder.iterdir() if entry.name.endswith(".txt")}
    return {
        name.removeprefix("river-").removesuffix(".txt").replace("-", " "): opens(files[name])
        for name in sorted(files)
    }


def _open_file(name: str) -> Recipe:
    from assistant.files import text_of

    found: Recipe = reader()(text_of(name), name)
    return found


def _today() -> date:
    from datetime import datetime

    return datetime.now().astimezone().date()


def export_log(report: HabitReport, form: str | None, path: str | None) -> str:
    """Write the log for the talk; the name of the file."""
    from rules.circumstances import Day

    return write_form("habit", report, Day(), form or (None if path else "csv"), path, "log of cooks")


def export_trip(trip: Trip, form: str | None, path: str | None) -> str:
    """Write a trip for the talk: as its own file with its recipes, or its plan in a form; what was written, in words."""
    from pathlib import Path

    from assistant.files import slug
    from rules.circumstances import Day
    from rules.trip.plan import plan

    if form is None and (path is None or path.endswith(".toml")):
        return _write_trip(trip, Path(path or f"{slug(trip.name)}.toml"))
    name = write_form("trip", plan(trip), Day(units=trip.units, zone=trip.zone), form, path, trip.name)
    return f"Wrote {name}."


def _write_trip(trip: Trip, path: Any) -> str:
    """The trip's file, read back before it is trusted: a recipe that reads otherwise is told."""
    from assistant.files import write
    from assistant.trip.file import trip_of
    from assistant.trip.write import trip_files
    from rules.because import Ledger
    from rules.trip import times

    leave = times.written(times.leaving(trip, Ledger()))
    files = trip_files(trip, leave, path)
    for target, text in files.items():
        target.parent.mkdir(parents=True, exist_ok=True)
        write(target, [text])
    back = trip_of(str(path), reader())
    other = [
        one.name
        for one, again in zip(trip.meals, back.meals, strict=True)
        if [item.name for item in one.recipe.ingredients] != [item.name for item in again.recipe.ingredients]
    ]
    own = " --own" if trip.habit is not None else ""
    told = f"Wrote {path}, with {_counted(len(files) - 1)} in {path.stem}-recipes: coalside trip {path}{own} plans it."
    return told + (f" Look at the recipe of {other[0]}: it reads otherwise in its file." if other else "")


def write_form(kind: Kind, thing: Struct, day: Day, form: str | None, path: str | None, title: str) -> str:
    """Write something for the talk in a form, to a path or to a file of its title; the name of the file."""
    from pathlib import Path

    from assistant.files import slug, write
    from assistant.show.forms import ENDING_OF, Look, chosen, written

    form = chosen(kind, form, path)
    target = Path(path or f"{slug(title)}{ENDING_OF[form]}")
    write(target, [written(kind, thing, Look(form=form, day=day))])
    return str(target)


def _counted(recipes: int) -> str:
    return "1 recipe" if recipes == 1 else f"{recipes} recipes"
