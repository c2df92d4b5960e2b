"""What an earlier run has done already, so that a broken run goes on where it stopped.

A file of done recipes has one row for each: its name and, where the results go to a file, how long that file was
then. A row is written after its result. What an interrupted run left behind half written is cut off, and what failed
is not in it: it is tried again.
"""

from __future__ import annotations

import hashlib
import re
import sys
from array import array
from bisect import bisect_left
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import Self

import msgspec

from assistant.batch.run import Run
from assistant.batch.sources import Source
from assistant.batch.work import Job
from assistant.show.data import json_line
from assistant.show.forms import Result
from assistant.show.forms import stream as stream_of
from rules.problem import FileProblem, UsageProblem
from rules.recipe import Struct


class DoneRow(Struct, frozen=True):
    """A recipe that is done; `end` is the length of the file of results after it [bytes], -1 where there is none."""

    file: str
    end: int = -1


class Done:
    """The recipes that are done. Their names are remembered as 8 bytes each: 8 MB for a million."""

    def __init__(self, path: Path) -> None:
        """Read what is done, if anything.

        Raises:
            FileProblem: the file is there and is no file of done recipes, or cannot be read or written.
        """
        self.path = path
        #: the length that the file of results had when the last recipe was done [bytes]
        self.end = 0
        self._keys = array("Q")
        whole = 0
        try:
            if path.exists():
                if not path.is_file():
                    raise FileProblem(str(path), "this is no file", "name another for --done")
                with path.open("rb") as stream:
                    for line in stream:
                        if line.endswith(b"\n"):
                            whole += len(line)
                            row = msgspec.json.decode(line, type=DoneRow)
                            self._keys.append(_key(row.file))
                            self.end = max(self.end, row.end)
            self._stream = path.open("ab")
            self._stream.truncate(whole)
        except msgspec.MsgspecError as error:
            found = f"this is no file of done recipes ({error})"
            raise FileProblem(str(path), found, "name another for --done") from error
        except OSError as error:
            raise FileProblem(
                str(path), f"it cannot be written ({error.strerror})", "name another"
            ) from error
        self._keys = array("Q", sorted(self._keys))

    def __len__(self) -> int:
        return len(self._keys)

    def __contains__(self, file: str) -> bool:
        key = _key(file)
        place = bisect_left(self._keys, key)
        return place < len(self._keys) and self._keys[place] == key

    def left(self, sources: Iterable[Source]) -> Iterator[Source]:
        """The recipes that are not done yet."""
        return (source for source in sources if source.file not in self)

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self._stream.close()

    def note(self, file: str, end: int = -1) -> None:
        """Add a recipe that is done now."""
        self._stream.write(json_line(DoneRow(file=file, end=end)).encode() + b"\n")
        self._stream.flush()


def _key(file: str) -> int:
    # The row of a name with half a surrogate pair holds U+FFFD in its place.
    written = re.sub("[\ud800-\udfff]", "\ufffd", file).encode()
    return int.from_bytes(hashlib.blake2b(written, digest_size=8).digest())


def go_on(
    sources: Iterable[Source],
    made_of: Callable[[Iterable[Source]], Iterable[Result]],
    job: Job,
    run: Run,
    out: str | None,
) -> None:
    """Make and write what is not done yet, noting each recipe after its result.

    Results follow each other as rows: `out` is added to, not replaced; None is standard output.

    Raises:
        UsageProblem: another form than rows.
        FileProblem: a file cannot be read or written.
    """
    if job.look.form != "jsonl":
        raise UsageProblem("--done", run.done or "", "results that are added to come as rows: say --as jsonl")
    with Done(Path(run.done or "")) as done:
        made = made_of(done.left(sources))
        if out is None:
            for result in made:
                sys.stdout.write(_row_of(result, job))
                sys.stdout.flush()
                _note(done, result)
        else:
            _add(made, Path(out), done, job)


def _add(made: Iterable[Result], out: Path, done: Done, job: Job) -> None:
    if out.exists() and not out.is_file():
        raise FileProblem(str(out), "this is no file", "name another for --out")
    try:
        with out.open("ab") as stream:
            # Rows that were written but not noted: their recipes are done again.
            stream.truncate(done.end)
            for result in made:
                stream.write(_row_of(result, job).encode())
                stream.flush()
                _note(done, result, stream.tell())
    except OSError as error:
        found = f"it cannot be written ({error.strerror})"
        raise FileProblem(str(out), found, "make room, then say the same again: it goes on") from error


def _row_of(result: Result, job: Job) -> str:
    return "".join(stream_of(job.kind, [result], job.look, several=False))


def _note(done: Done, result: Result, end: int = -1) -> None:
    if result.problem is None:
        done.note(result.file, end)
