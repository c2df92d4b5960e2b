"""The command line: each command a few lines over the rooms that do the work.

Results go to standard output, messages to standard error. Exit codes: 0 all done, 1 some file failed, 2 wrong usage.
Heavy rooms are imported inside the commands, so that `--help` answers at once.
"""

from __future__ import annotations

import codecs
import difflib
import functools
import gc
import inspect
import io
import os
import shutil
import sys
import time
from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import TYPE_CHECKING, Annotated, Any, get_args

import typer

from assistant import streams
from rules.problem import Problem, UsageProblem

if TYPE_CHECKING:
    from assistant.batch import Maker, Run
    from assistant.chat.session import Session
    from assistant.show.forms import Kind
    from rules.circumstances import Day
    from rules.recipe import Struct
else:
    Day = Any  # typer resolves the annotations, and the day itself never comes from the command line

DONE, FAILED, WRONG_USAGE, INTERRUPTED = 0, 1, 2, 130

app = typer.Typer(
    name="coalside",
    rich_markup_mode=None,
    add_completion=False,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 80},
)

Files = Annotated[
    list[str] | None,
    typer.Argument(
        metavar="FILE...",
        help='Recipe files, folders of them, rows {"id", "text"} in a .jsonl file; - is standard input.',
    ),
]
Jobs = Annotated[str | None, typer.Option("--jobs", metavar="N", help="Work in N processes at once.")]
Cluster = Annotated[
    str | None, typer.Option("--cluster", metavar="ADDRESS", help="Work on the Dask cluster there.")
]
DoneFile = Annotated[
    str | None, typer.Option("--done", metavar="PATH", help="Note there what is done; go on after a stop.")
]
OneFile = Annotated[str, typer.Argument(metavar="FILE", help="A recipe file; - is standard input.")]
Form = Annotated[
    str | None, typer.Option("--as", metavar="FORM", help="text, json, jsonl, md, html, ics or csv.")
]
Out = Annotated[
    str | None,
    typer.Option("--out", metavar="PATH", help="Write to a file, or a file for each recipe into a folder/."),
]
Force = Annotated[bool, typer.Option("--force", help="Let --out write over a file.")]
Unit = Annotated[str | None, typer.Option("--units", metavar="SYSTEM", help="us or metric.")]

#: The options that describe the day, by their name in `assistant.options.day`.
DAY_OPTIONS: dict[str, Any] = {
    "oven": Annotated[
        list[str] | None,
        typer.Option("--oven", metavar="INCHES", help="The pot: 5, 8, 10, 12, 14 or 16; may be repeated."),
    ],
    "deep": Annotated[bool, typer.Option("--deep", help="The pot is a deep one.")],
    "pots": Annotated[str | None, typer.Option("--pots", metavar="N", help="How many such pots come along.")],
    "people": Annotated[str | None, typer.Option("--people", metavar="N", help="How many eat.")],
    "temp": Annotated[
        str | None, typer.Option("--temp", metavar="TEMP", help="Another oven temperature: 375F, 190C.")
    ],
    "eat": Annotated[
        str | None, typer.Option("--eat", metavar="TIME", help="When you eat: 18:30 or 2027-07-03T18:30.")
    ],
    "zone": Annotated[str | None, typer.Option("--zone", metavar="ZONE", help="Time zone: America/Boise.")],
    "air": Annotated[str | None, typer.Option("--air", metavar="TEMP", help="The air: 45F or 7C.")],
    "wind": Annotated[str | None, typer.Option("--wind", metavar="WORD", help="calm, breezy or windy.")],
    "ground": Annotated[str | None, typer.Option("--ground", metavar="WORD", help="dry, damp or snow.")],
    "screen": Annotated[bool, typer.Option("--screen", help="A windscreen stands around the pot.")],
    "elevation": Annotated[
        str | None, typer.Option("--elevation", metavar="HEIGHT", help="7000ft or 2100m.")
    ],
    "trip_hours": Annotated[
        str | None, typer.Option("--trip-hours", metavar="HOURS", help="Hours in the cooler before the meal.")
    ],
    "trip_air": Annotated[
        str | None, typer.Option("--trip-air", metavar="TEMP", help="The air around the cooler: 85F or 29C.")
    ],
    "cooler_quarts": Annotated[
        str | None, typer.Option("--cooler-quarts", metavar="QUARTS", help="The cooler's size: 48, or 45L.")
    ],
    "no_freezer": Annotated[bool, typer.Option("--no-freezer", help="Nothing can be frozen at home.")],
    "no_charcoal": Annotated[bool, typer.Option("--no-charcoal", help="Charcoal is forbidden or not there.")],
    "units": Unit,
}


def takes_a_day(
    *, options: Iterable[str] = DAY_OPTIONS
) -> Callable[[Callable[..., None]], Callable[..., None]]:
    """Give a command the options of the day; it receives them parsed, as its keyword `day`."""

    def adorn(command: Callable[..., None]) -> Callable[..., None]:
        signature = inspect.signature(command, eval_str=True)

        @functools.wraps(command)
        def with_day(**words: Any) -> None:
            from assistant.options import day

            told = {name: words.pop(name) for name in options}
            command(**words, day=day(told))

        own = [parameter for name, parameter in signature.parameters.items() if name != "day"]
        of_the_day = [
            inspect.Parameter(
                name,
                inspect.Parameter.KEYWORD_ONLY,
                default=False if get_args(DAY_OPTIONS[name])[0] is bool else None,
                annotation=DAY_OPTIONS[name],
            )
            for name in options
        ]
        with_day.__signature__ = inspect.Signature([*own, *of_the_day])  # type: ignore[attr-defined]
        with_day.__annotations__ = {parameter.name: parameter.annotation for parameter in [*own, *of_the_day]}
        return with_day

    return adorn


@app.callback(invoke_without_command=True)
def coalside(context: typer.Context) -> None:
    """Turn a kitchen recipe into one for a camp Dutch oven over charcoal.

    Without a command: paste a recipe and talk it through.
    """
    if context.invoked_subcommand is None:
        from pathlib import Path

        import platformdirs

        from assistant.chat.prompt import talk

        terminal = _terminal(None)
        folder = Path(platformdirs.user_state_dir("coalside", appauthor=False))
        is_plain = os.environ.get("TERM") == "dumb" or not sys.stdout.isatty()
        raise typer.Exit(talk(_talk, width=terminal["width"], is_plain=is_plain, state_folder=folder))


def _talk() -> Any:
    """What a talk needs: the session, and how a pasted text is read."""
    from rules.circumstances import Day

    reader = _reader()
    return _session(None, Day(), **_terminal(None)), lambda text: reader(text, "")


@app.command()
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
    _run("recipe", files, _reader, form, out, force, day({"units": units}), spread)


@app.command()
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

    _run("plan", files, lambda: _planner(day), form, out, force, day, run(jobs, cluster, done))


@app.command()
@takes_a_day()
def demo(*, day: Day, form: Form = None, out: Out = None, force: Force = False) -> None:
    """Work out the camp plan of a recipe that ships with coalside."""
    from importlib import resources

    recipe = resources.files("corpus") / "recipes" / DEMO
    with resources.as_file(recipe) as path:
        _say(f"The camp plan of {DEMO}, which ships with coalside; your own: coalside camp FILE")
        _run("plan", [str(path)], lambda: _planner(day), form, out, force, day)


DEMO = "river-peach-cobbler.txt"


@app.command()
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
        plan_of = _planner(day)
        return lambda text, name: reasons_about(plan_of(text, name), " ".join(about))

    _run("why", [file], reasoner, form, out, force, day)


@app.command()
@takes_a_day(options=("oven", "deep", "temp", "air", "wind", "ground", "screen", "elevation", "units"))
def coals(
    *,
    day: Day,
    way: Annotated[str, typer.Option("--for", metavar="WAY", help="bake, roast, simmer or fry.")] = "bake",
    minutes: Annotated[
        str, typer.Option("--minutes", metavar="N", help="How long the coals have to last.")
    ] = "60",
    form: Form = None,
    out: Out = None,
    force: Force = False,
) -> None:
    """Count the briquettes for a pot and a temperature, without a recipe."""
    from assistant.options import coals_for

    _show("coals", coals_for(day, way=way, minutes=minutes), form, out, force, day)


@app.command()
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

    session = _session(_reader()(text_of(file), file), day)
    look = Look(form=chosen("turn", form, out), day=day, **_terminal(out))
    turns = (Result(file=file, thing=session.say(utterance)) for utterance in utterances)
    _write(stream("turn", turns, look, several=len(utterances) > 1), out, force)


def _session(recipe: Any, day: Day, *, width: int = 80, color: bool = False) -> Session:
    """A talk with the store and the writer that it may use."""
    from datetime import UTC, datetime
    from pathlib import Path

    import platformdirs

    from assistant.chat.session import Session
    from assistant.keep import Store
    from assistant.show.forms import Look

    folder = Path(platformdirs.user_data_dir("coalside", appauthor=False))
    store = Store(folder, now=lambda: datetime.now(UTC))
    return Session(recipe, day, meals=store, export=_export, look=Look(width=width, color=color))


def _export(plan: Any, day: Day, form: str | None, path: str | None) -> str:
    """Write a plan for the talk; the name of the file."""
    from pathlib import Path

    from assistant.files import slug, write
    from assistant.show.forms import ENDING_OF, Look, chosen, written

    form = chosen("plan", form, path) if form or path else "md"
    target = Path(path or f"{slug(plan.recipe.title or 'camp plan')}{ENDING_OF[form]}")
    write(target, [written("plan", plan, Look(form=form, day=day))])
    return str(target)


@app.command()
def schema(
    shape: Annotated[str, typer.Argument(metavar="SHAPE", help="recipe, plan or coals.")],
    out: Out = None,
    force: Force = False,
) -> None:
    """Print the JSON Schema of a recipe, a plan or a coal count."""
    from assistant.show.data import json_text
    from assistant.show.schema import schema as schema_of

    _write(iter([json_text(schema_of(shape)) + "\n"]), out, force)


def _reader() -> Callable[[str, str], Any]:
    from assistant.batch.work import reader

    return reader()


def _planner(day: Day) -> Callable[[str, str], Any]:
    from assistant.batch.work import planner

    return planner(day)


def _show(kind: Kind, thing: Struct, form: str | None, out: str | None, force: bool, day: Day) -> None:
    """Write one result that came from no file."""
    from assistant.show.forms import Look, chosen, written

    look = Look(form=chosen(kind, form, out), day=day, **_terminal(out))
    _write(iter([written(kind, thing, look)]), out, force)


def _run(
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
    look = Look(form=chosen(kind, form, out), day=day, **_terminal(out))
    run = run or Run()
    several = is_many(list(files))
    check_place(look.form, out, several=several)
    progress = Progress(sys.stderr, time.monotonic, _say, draws=several and not sys.stdout.isatty())
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
        _write(stream(kind, made, look, several=several), out, force)
    else:
        from assistant.batch.done import go_on

        go_on(
            sources(files), lambda left: progress.counted(results(left, job, run, make=make)), job, run, out
        )
    progress.clear()
    if progress.failed:
        raise typer.Exit(FAILED)


def _terminal(out: str | None) -> dict[str, Any]:
    """Width and colours of standard output: 80 columns at most, plain when piped or where NO_COLOR is set."""
    on_terminal = out is None and sys.stdout.isatty()
    columns = shutil.get_terminal_size().columns if on_terminal else 80
    colorful = on_terminal and not os.environ.get("NO_COLOR") and os.environ.get("TERM") not in ("dumb", None)
    return {"width": max(40, min(80, columns)), "color": colorful}


def _write(pieces: Iterator[str], out: str | None, force: bool) -> None:
    if out is None:
        for piece in pieces:
            sys.stdout.write(piece)
            sys.stdout.flush()
        return
    from pathlib import Path

    from assistant.files import write

    write(Path(out), pieces, force=force)


def _say(sentence: str) -> None:
    from assistant.show.plain import one_line

    print(one_line(sentence, most=600), file=sys.stderr, flush=True)


#: The base of all of typer's usage errors, by way of the one that it exports.
_UsageError: type[Exception] = typer.BadParameter.__mro__[1]


def _usage(error: Any, arguments: Sequence[str]) -> str:
    """Typer's usage error in one sentence of our own."""
    command = (
        error.ctx.command_path if error.ctx else " ".join(["coalside", *filter(str.isalpha, arguments[:1])])
    )
    found, near = getattr(error, "option_name", None), getattr(error, "possibilities", None)
    if found and near is not None:
        alike = difflib.get_close_matches(found, near, 3, 0)
        alike.sort(key=lambda option: option[:3] != found[:3])
        hint = f"did you mean {alike[0]}" if alike else f"{command} --help lists all"
        return f"{found}: there is no such option; {hint}."
    if error.ctx and hasattr(error.ctx.command, "commands") and arguments:
        return _no_command(arguments[0], error.ctx.command.commands)
    message = error.format_message().rstrip(".")
    return f"{command}: {message[:1].lower()}{message[1:]}; {command} --help says more."


def _no_command(word: str, commands: Iterable[str]) -> str:
    if os.path.isfile(word):  # noqa: PTH113 - pathlib would be loaded for this alone
        return f"coalside: that is a file; coalside camp {word} plans it."
    near = difflib.get_close_matches(word, list(commands), 1)
    hint = f"did you mean {near[0]}? " if near else ""
    return f"coalside: there is no command {word}; {hint}coalside --help lists all."


def main() -> None:
    """Run coalside and leave with its exit code."""
    gc.disable()  # what loads at the start stays until the end; `_run` switches it on again for many files
    streams.open_what_is_closed()
    from assistant.show.plain import in_ascii

    codecs.register_error("in ascii", in_ascii)
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="in ascii")
    code = run()
    try:
        sys.stdout.flush()
        sys.stderr.flush()
    except OSError:
        code = code or FAILED
    if "joblib" in sys.modules:
        sys.exit(code)  # it has folders and processes to put away
    # Taking thousands of words and modules apart one by one, only to end, would take a tenth of a second.
    os._exit(code)


def run(arguments: Sequence[str] | None = None) -> int:
    """Run one command; the exit code."""
    try:
        code = app(args=arguments, prog_name="coalside", standalone_mode=False)
        return code if isinstance(code, int) else DONE
    except UsageProblem as problem:
        _say(str(problem))
        return WRONG_USAGE
    except Problem as problem:
        _say(str(problem))
        return FAILED
    except _UsageError as error:
        _say(_usage(error, sys.argv[1:] if arguments is None else arguments))
        return WRONG_USAGE
    except (KeyboardInterrupt, typer.Abort):
        return INTERRUPTED
    except BrokenPipeError:
        return FAILED  # whoever read the output has seen enough
    except Exception as error:
        if os.environ.get("COALSIDE_TRACEBACK"):
            raise
        _say(streams.stumble(error))
        return FAILED
