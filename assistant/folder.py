"""Results into a folder: a file for each recipe, named after it, each written whole or not at all.

A page, a calendar and a table are documents of their own; several of them in one file would be none.
"""

from __future__ import annotations

import os
import re
import unicodedata
from collections.abc import Iterable, Iterator
from pathlib import Path

from assistant.files import STANDARD_INPUT, slug, write
from assistant.show.forms import ENDING_OF, Kind, Look, Result, written
from rules.problem import FileProblem, Problem, UsageProblem

#: Forms of which each result needs a file of its own.
ALONE = frozenset({"html", "ics", "csv"})
#: Names that some systems keep for devices, whatever the ending.
_DEVICES = re.compile(r"con|prn|aux|nul|com\d|lpt\d")
_TEXT_ENDING = re.compile(r"\.(?:txt|text|md|html?|recipe)$", re.IGNORECASE)


def is_folder(out: str | None) -> bool:
    """Whether the place to write to is a folder: one that is there, or a name that ends as a folder's does."""
    return out is not None and (out.endswith(("/", os.sep)) or Path(out).is_dir())


def check_place(form: str, out: str | None, *, several: bool) -> None:
    """See that several documents do not go into one file.

    Raises:
        UsageProblem: they would.
    """
    if several and form in ALONE and not is_folder(out):
        option, found = ("--out", out) if out else ("--as", form)
        raise UsageProblem(
            option, found, f"each recipe makes a file of its own; name a folder: --out cards/ --as {form}"
        )


def into_folder(
    results: Iterable[Result], out: str, kind: Kind, look: Look, *, force: bool = False
) -> Iterator[Result]:
    """Write each result and pass it on; one that cannot be written becomes its sentence, and the run goes on.

    Raises:
        FileProblem: the folder cannot be made.
    """
    folder = Path(out)
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise FileProblem(out, f"it cannot be made ({error.strerror})", "name another folder") from error
    taken: dict[str, int] = {}
    for result in results:
        if result.problem is not None:
            yield result
            continue
        path = folder / f"{_unlike(taken, safe_name(result))}{ENDING_OF[look.form]}"
        text = result.text if result.text is not None else _text(result, kind, look)
        try:
            write(path, [text], force=force)
        except Problem as problem:
            yield Result(file=result.file, problem=str(problem))
        else:
            yield result


def safe_name(result: Result) -> str:
    """The name of a result's file without its ending: small letters, digits and hyphens, on every system."""
    name = _TEXT_ENDING.sub("", Path(result.file).name)
    if result.file == STANDARD_INPUT:
        recipe = getattr(result.thing, "recipe", result.thing)
        name = getattr(recipe, "title", None) or ""
    name = slug(unicodedata.normalize("NFC", name))
    return f"{name}-plan" if _DEVICES.fullmatch(name) else name


def _text(result: Result, kind: Kind, look: Look) -> str:
    return written(kind, result.thing, look) if result.thing is not None else ""


def _unlike(taken: dict[str, int], name: str) -> str:
    """The name, with a number behind it when it was used before."""
    number = taken[name] = taken.get(name, 0) + 1
    if number == 1:
        return name
    return _unlike(taken, f"{name}-{number}")
