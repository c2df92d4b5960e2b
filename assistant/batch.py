"""Many recipes, one after the other: what became of each file, as a stream.

A file that fails gives its sentence and the run goes on. Nothing is collected: memory does not grow with the number
of files.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from assistant.files import text_of
from assistant.show.forms import Result
from rules.problem import FileProblem, Problem, UsageProblem
from rules.recipe import Struct

#: Makes something of a recipe's text: called with the text and the file's name.
Maker = Callable[[str, str], Struct]


def results(files: Iterable[str], make: Maker) -> Iterator[Result]:
    """What becomes of each file, in order.

    Raises:
        UsageProblem: a circumstance that cannot be; it would fail every file alike.
    """
    for file in files:
        yield result(file, make)


def result(file: str, make: Maker) -> Result:
    """What becomes of one file."""
    try:
        return Result(file=file, thing=make(text_of(file), file))
    except UsageProblem:
        raise
    except Problem as problem:
        return Result(file=file, problem=str(problem))
    except Exception as error:
        # One odd recipe must not cost the others their plan; the sentence is what a report needs.
        found = f"coalside stumbled over it ({type(error).__name__}: {error})"
        return Result(file=file, problem=str(FileProblem(file, found, "please report this recipe")))
