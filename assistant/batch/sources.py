"""Where recipes come from: files, folders, patterns, rows of JSON, standard input; one after the other, as a stream.

A source that cannot be read is a source with a sentence in place of its text, so that one bad file costs the others
nothing. Names of one folder are sorted, hence held together (some 100 bytes each); nothing else is collected.
"""

from __future__ import annotations

import glob
import os
import sys
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import BinaryIO

import msgspec

from assistant.files import MOST_BYTES, STANDARD_INPUT, checked_text, text_of, unreadable
from rules.problem import FileProblem, Problem
from rules.recipe import Struct

#: Files with these endings are taken from a folder; any file may be named by itself.
ENDINGS = (".txt", ".text", ".md", ".markdown", ".recipe")
ROW_ENDINGS = (".jsonl", ".ndjson")
WANTED_ROW = 'one JSON object a line, as {"id": "pie", "text": "…"}'


class Source(Struct, frozen=True, kw_only=True):
    """A recipe's name and text, or the sentence that says why there is no text."""

    file: str
    text: str = ""
    problem: str | None = None


class Row(msgspec.Struct, frozen=True):
    """A recipe in a file of rows; other fields are passed over."""

    text: str
    id: str | int | None = None


_ROWS = msgspec.json.Decoder(Row)


def sources(names: Iterable[str]) -> Iterator[Source]:
    """Every recipe behind the names, in their order; folders and patterns in the order of the alphabet."""
    for name in names:
        if name == STANDARD_INPUT:
            yield from _standard_input()
        elif Path(name).is_dir():
            yield from _folder(name)
        elif _is_pattern(name):
            yield from _pattern(name)
        else:
            yield from _file(name)


def is_many(names: list[str]) -> bool:
    """Whether more than one recipe may stand behind the names; looks at standard input without taking from it."""
    if len(names) != 1:
        return len(names) > 1
    name = names[0]
    if name == STANDARD_INPUT:
        return _starts_a_row(sys.stdin.buffer.peek(1)) if hasattr(sys.stdin.buffer, "peek") else False
    return name.lower().endswith(ROW_ENDINGS) or _is_pattern(name) or Path(name).is_dir()


def _starts_a_row(head: bytes) -> bool:
    return head.lstrip().startswith(b"{") and b'"text"' in head


def _is_pattern(name: str) -> bool:
    return glob.has_magic(name) and not os.path.lexists(name)


def _file(name: str) -> Iterator[Source]:
    if name.lower().endswith(ROW_ENDINGS):
        try:
            with Path(name).open("rb") as stream:
                yield from _rows(stream, name)
        except OSError as error:
            yield Source(file=name, problem=str(unreadable(name, error)))
        return
    try:
        yield Source(file=name, text=text_of(name))
    except Problem as problem:
        yield Source(file=name, problem=str(problem))


def _standard_input() -> Iterator[Source]:
    stream = sys.stdin.buffer
    if hasattr(stream, "peek") and _starts_a_row(stream.peek(1)):
        yield from _rows(stream, STANDARD_INPUT)
    else:
        yield from _file(STANDARD_INPUT)


def _folder(name: str) -> Iterator[Source]:
    """The recipes of a folder and of the folders in it; what begins with a dot is passed over."""
    found = False
    for path in _paths(name):
        found = True
        yield from _file(path)
    if not found:
        wanted = f"put files into it that end in {', '.join(ENDINGS + ROW_ENDINGS)}"
        yield Source(file=name, problem=str(FileProblem(name, "no recipe is in this folder", wanted)))


def _paths(folder: str) -> Iterator[str]:
    try:
        with os.scandir(folder) as entries:
            inside = sorted(
                (entry.name, entry.is_dir(follow_symlinks=False))
                for entry in entries
                if not entry.name.startswith(".")
            )
    except OSError:
        return
    for name, is_folder in inside:
        path = os.path.join(folder, name)  # noqa: PTH118 - a million paths; the string is what is wanted
        if is_folder:
            yield from _paths(path)
        elif name.lower().endswith(ENDINGS + ROW_ENDINGS):
            yield path


def _pattern(pattern: str) -> Iterator[Source]:
    names = sorted(glob.iglob(pattern, recursive=True))  # noqa: PTH207 - patterns may begin at the root
    if not names:
        problem = FileProblem(pattern, "no file fits this pattern", "check the name and the folder")
        yield Source(file=pattern, problem=str(problem))
    for name in names:
        yield from _folder(name) if Path(name).is_dir() else _file(name)


def _rows(stream: BinaryIO, name: str) -> Iterator[Source]:
    """The rows of a file; a row is called by its `id`, else by its number."""
    number = 0
    while line := stream.readline(MOST_BYTES + 1):
        number += 1
        whole = len(line) <= MOST_BYTES
        while not whole and not line.endswith(b"\n"):  # the rest of a row that is too long
            line = stream.readline(MOST_BYTES + 1) or b"\n"
        if line.strip() or not whole:
            yield _row(line, whole, name, number)


def _row(line: bytes, whole: bool, name: str, number: int) -> Source:
    called = f"{name}#{number}"
    try:
        if not whole:
            raise FileProblem(called, "this row is larger than 4 MB", "a recipe is a page of text")
        row = _ROWS.decode(line)
        if row.id is not None:
            called = f"{name}#{row.id}"
        return Source(file=called, text=checked_text(row.text, called))
    except msgspec.MsgspecError as error:
        said = str(FileProblem(called, f"this row cannot be read ({error})", f"write {WANTED_ROW}"))
        return Source(file=called, problem=said)
    except Problem as problem:
        return Source(file=called, problem=str(problem))
