"""The command line: all the commands, how a run begins and how it ends.

Results go to standard output, messages to standard error. Exit codes: 0 all done, 1 some file failed, 2 wrong usage.
Heavy rooms are imported inside the commands, so that `--help` answers at once.
"""

from __future__ import annotations

import codecs
import gc
import io
import os
import sys
from collections.abc import Sequence

import typer

from assistant import streams
from assistant.commands import choosing, habits, questions, recipes, talking, trips
from assistant.commands.output import say
from assistant.commands.usage import DONE, FAILED, INTERRUPTED, WRONG_USAGE, UsageError, usage
from rules.problem import Problem, UsageProblem

app = typer.Typer(
    name="coalside",
    rich_markup_mode=None,
    add_completion=False,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 80},
)
app.callback(invoke_without_command=True)(talking.coalside)
#: In the order in which `--help` lists them.
for command in (
    recipes.read,
    recipes.camp,
    recipes.demo,
    questions.why,
    questions.coals,
    talking.ask,
    choosing.choose,
    habits.habit,
    trips.trip,
    questions.schema,
):
    app.command()(command)


def main() -> None:
    """Run coalside and leave with its exit code."""
    gc.disable()  # what loads at the start stays until the end; `output.make_all` switches it on again for many files
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
        say(str(problem))
        return WRONG_USAGE
    except Problem as problem:
        say(str(problem))
        return FAILED
    except UsageError as error:
        say(usage(error, sys.argv[1:] if arguments is None else arguments))
        return WRONG_USAGE
    except (KeyboardInterrupt, typer.Abort):
        return INTERRUPTED
    except BrokenPipeError:
        return FAILED  # whoever read the output has seen enough
    except Exception as error:
        if os.environ.get("COALSIDE_TRACEBACK"):
            raise
        say(streams.stumble(error))
        return FAILED
