"""What is made of one recipe, and the job that a worker is handed to make it of many."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from functools import lru_cache

from assistant.batch.sources import Source
from assistant.show.forms import Kind, Look, Result, written
from rules.circumstances import Day
from rules.plan import Plan
from rules.problem import FileProblem, Problem, UsageProblem
from rules.recipe import Recipe, Struct

#: Makes something of a recipe's text: called with the text and the file's name.
Maker = Callable[[str, str], Struct]


class Job(Struct, frozen=True, kw_only=True):
    """What becomes of every recipe, and how it is written; small, and the same for every worker."""

    kind: Kind
    look: Look


def reader() -> Callable[[str, str], Recipe]:
    """Reads a text; loads the reader."""
    from assistant.reader.read import read

    return lambda text, file: read(text, file=file)


def planner(day: Day) -> Callable[[str, str], Plan]:
    """Plans a text for a day; loads the reader and the rules.

    The maker raises FileProblem where there is no recipe in the text.
    """
    read = reader()
    from rules.convert import camp

    def plan(text: str, file: str) -> Plan:
        recipe = read(text, file)
        if not recipe.ingredients and not recipe.steps:
            raise FileProblem(file, "no recipe was found in it", "it needs a list of ingredients or a method")
        return camp(recipe, day)

    return plan


@lru_cache(maxsize=1)
def maker(job: Job) -> Maker:
    """The maker of a job, once in each worker."""
    return reader() if job.kind == "recipe" else planner(job.look.day)


def result(source: Source, make: Maker) -> Result:
    """What becomes of one recipe.

    Raises:
        UsageProblem: a circumstance that cannot be; it would fail every recipe alike.
    """
    if source.problem is not None:
        return Result(file=source.file, problem=source.problem)
    try:
        return Result(file=source.file, thing=make(source.text, source.file))
    except UsageProblem:
        raise
    except Problem as problem:
        return Result(file=source.file, problem=str(problem))
    except Exception as error:
        # One odd recipe must not cost the others their plan; the sentence is what a report needs.
        found = f"coalside stumbled over it ({type(error).__name__}: {error})"
        return Result(
            file=source.file, problem=str(FileProblem(source.file, found, "please report this recipe"))
        )


def forgetful(sources: Iterable[Source], make: Maker) -> Iterator[Result]:
    """What becomes of each recipe; spaCy forgets the words of each when it is done, else they pile up."""
    from assistant.reader.tokens import nlp

    for source in sources:
        with nlp().memory_zone():
            made = result(source, make)
        yield made


def chunk_done(job: Job, chunk: tuple[Source, ...]) -> list[Result]:
    """The results of a chunk, written out already: text is what a worker sends back."""
    return [
        Result(file=made.file, text=written(job.kind, made.thing, job.look), problem=made.problem)
        if made.thing is not None
        else made
        for made in forgetful(chunk, maker(job))
    ]
