"""Where results go: standard output or files, one by one as they come; messages go to standard error."""

from __future__ import annotations

import gc
import os
import shutil
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from typing import TYPE_CHECKING, Any

import typer

from assistant.commands.usage import FAILED
from rules.problem import UsageProblem

if TYPE_CHECKING:
    from assistant.batch import Maker, Run
    from assistant.show.forms import Kind
    from rules.circumstances import Day
    from rules.recipe import Struct


def show(kind: Kind, thing: Struct, form: str | None, out: str | None, force: bool, day: Day) -> None:
    """Write one result that came from no file."""
    from assistant.show.forms import Look, chosen, written

    look = Look(form=chosen(kind, form, out), day=day, **terminal(out))
    write_out(iter([written(kind, thing, look)]), out, force)


def make_all(
    kind: Kind,
    files: Sequence[str] | None,
    maker: Callable[[], Maker],
    form: str | None,
    out: str | None,
    force: bool,
    day: Day,
    run: Run | None = None,
) -> None:
    """Make something of every file, write it as it comes, and leave with the exit code that is due.

    `maker` loads the rooms that do the work, once the usage is known to be right; with several workers, they load them.
    """
    from assistant.batch import Job, Progress, Run, is_many, results, sources
    from assistant.folder import check_place, into_folder, is_folder
    from assistant.show.forms import Look, chosen, stream

    if not files:
        raise UsageProblem("FILE", "(none)", "name a recipe file, or - for standard input")
    look = Look(form=chosen(kind, form, out), day=day, **terminal(out))
    run = run or Run()
    several = is_many(list(files))
    check_place(look.form, out, several=several)
    progress = Progress(sys.stderr, time.monotonic, say, draws=several and not sys.stdout.isatty())
    make = None if run.is_spread else maker()
    gc.freeze()  # what is loaded now stays; only what the recipes leave behind is looked through
    gc.enable()
    job = Job(kind=kind, look=look)
    if out is not None and is_folder(out):
        made = results(sources(files), job, run, make=make)
        for _ in progress.counted(into_folder(made, out, kind, look, force=force)):
            pass
    elif run.done is None:
        made = progress.counted(results(sources(files), job, run, make=make))
        write_out(stream(kind, made, look, several=several), out, force)
    else:
        from assistant.batch.done import go_on

        go_on(
            sources(files), lambda left: progress.counted(results(left, job, run, make=make)), job, run, out
        )
    progress.clear()
    if progress.failed:
        raise typer.Exit(FAILED)


def terminal(out: str | None) -> dict[str, Any]:
    """Width and colours of standard output: 80 columns at most, plain when piped or where NO_COLOR is set."""
    on_terminal = out is None and sys.stdout.isatty()
    columns = shutil.get_terminal_size().columns if on_terminal else 80
    colorful = on_terminal and not os.environ.get("NO_COLOR") and os.environ.get("TERM") not in ("dumb", None)
    return {"width": max(40, min(80, columns)), "color": colorful}


def write_out(pieces: Iterator[str], out: str | None, force: bool) -> None:
    """Write text piece by piece to a file, or to standard output as it comes."""
    if out is None:
        for piece in pieces:
            sys.stdout.write(piece)
            sys.stdout.flush()
        return
    from pathlib import Path

    from assistant.files import write

    write(Path(out), pieces, force=force)


def say(sentence: str) -> None:
    """Tell something beside the results, on standard error."""
    from assistant.show.plain import one_line

    print(one_line(sentence, most=600), file=sys.stderr, flush=True)
