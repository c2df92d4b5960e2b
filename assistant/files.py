"""Files in and out: the text of a recipe file, and results written whole or not at all.

What cannot be read is a `FileProblem` whose sentence says what the file seems to be. Nothing here knows recipes.
"""

from __future__ import annotations

import os
import re
import sys
import tempfile
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TextIO

from rules.problem import FileProblem

STANDARD_INPUT = "-"
_NAME_WORD = re.compile(r"[^\W_]+")

#: A recipe is a few kilobytes and a saved page seldom above one megabyte; what is larger is a slip of the hand.
MOST_BYTES = 4 * 1024 * 1024

#: How the first bytes give away files that people take for text.
SIGNATURES = (
    (b"\x89PNG", "a picture"),
    (b"\xff\xd8\xff", "a picture"),
    (b"GIF8", "a picture"),
    (b"RIFF", "a picture or a sound"),
    (b"%PDF", "a PDF"),
    (b"PK\x03\x04", "a word processor's file or an archive"),
    (b"\xd0\xcf\x11\xe0", "a word processor's file"),
    (b"{\\rtf", "a word processor's file"),
    (b"\x1f\x8b", "a compressed file"),
    (b"SQLite format 3", "a data base"),
    (b"\x7fELF", "a program"),
)
BYTE_ORDER_MARKS = ((b"\xff\xfe", "utf-16"), (b"\xfe\xff", "utf-16"))


def text_of(name: str) -> str:
    """The text of a file; `-` is standard input.

    Raises:
        FileProblem: the file is missing, a folder, empty, too large, not allowed, or no text.
    """
    data = _bytes_of(name)
    if not data.strip():
        raise FileProblem(name, "the file is empty", "put the text of a recipe into it")
    if len(data) > MOST_BYTES:
        raise FileProblem(name, "larger than 4 MB", "a recipe is a page of text: cut it out and try again")
    return decoded(data, name)


def checked_text(text: str, name: str) -> str:
    """A text that came without a file of its own.

    Raises:
        FileProblem: it is empty, too large or no text.
    """
    if not text.strip():
        raise FileProblem(name, "the text is empty", "put the text of a recipe into it")
    if "\0" in text:
        raise _not_text(name, "binary data")
    return text


def decoded(data: bytes, name: str) -> str:
    """Bytes as text: UTF-8, UTF-16 with its mark, else the old Western code page.

    Raises:
        FileProblem: the bytes are no text.
    """
    for signature, what in SIGNATURES:
        if data.startswith(signature):
            raise _not_text(name, what)
    for mark, encoding in BYTE_ORDER_MARKS:
        if data.startswith(mark):
            try:
                return data.decode(encoding)
            except UnicodeDecodeError as error:
                raise _not_text(name, "broken") from error
    if b"\0" in data:
        raise _not_text(name, "binary data")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        text = data.decode("cp1252", errors="replace")
    # Old pages hold an odd letter; random bytes hold control characters by the dozen.
    odd = sum(
        1 for character in text if (character < " " and character not in "\t\n\r\f") or character == "\ufffd"
    )
    if odd > len(text) // 100:
        raise _not_text(name, "binary data")
    return text


def _not_text(name: str, what: str) -> FileProblem:
    return FileProblem(
        name, f"not a text file (the first bytes look like {what})", "paste the recipe as text"
    )


def _bytes_of(name: str) -> bytes:
    try:
        if name == STANDARD_INPUT:
            return sys.stdin.buffer.read(MOST_BYTES + 1)
        with Path(name).open("rb") as stream:
            return stream.read(MOST_BYTES + 1)
    except (OSError, ValueError) as error:
        raise unreadable(name, error) from error


def unreadable(name: str, error: OSError | ValueError) -> FileProblem:
    """Why a file cannot be read."""
    if isinstance(error, FileNotFoundError):
        return FileProblem(name, "there is no such file", "check the name and the folder")
    if isinstance(error, IsADirectoryError):
        return FileProblem(name, "this is a folder", "name the files in it")
    if isinstance(error, PermissionError):
        return FileProblem(name, "reading it is not allowed", "check its permissions")
    reason = getattr(error, "strerror", None) or str(error)
    return FileProblem(name, f"it cannot be read ({reason})", "check the name")


@contextmanager
def whole_or_nothing(path: Path, *, force: bool) -> Iterator[TextIO]:
    """A stream that becomes the file when everything was written; until then, and on any error, the old one stays.

    Raises:
        FileProblem: something stands there and `force` is false, or the folder cannot be written.
    """
    name = str(path)
    if path.is_dir():
        raise FileProblem(name, "this is a folder", "name a file")
    if path.exists() and not path.is_file():
        raise FileProblem(name, "this is a device or a pipe", "name a file")
    if path.exists() and not force:
        raise FileProblem(name, "it exists already", "say --force to write over it, or another name")
    try:
        handle, draft = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name[:40]}.", suffix=".part")
    except OSError as error:
        raise FileProblem(
            name, f"it cannot be written ({error.strerror})", "choose another folder"
        ) from error
    try:
        with open(handle, "w", encoding="utf-8", newline="") as stream:  # noqa: PTH123 - it is a handle
            yield stream
            stream.flush()
            os.fsync(handle)
        Path(draft).chmod(_usual_mode(path))
        Path(draft).replace(path)
    except OSError as error:
        raise FileProblem(
            name, f"it cannot be written ({error.strerror})", "make room or choose another folder"
        ) from error
    finally:
        Path(draft).unlink(missing_ok=True)


def write(path: Path, parts: Iterable[str], *, force: bool = False) -> None:
    """Write a text whole or not at all; see `whole_or_nothing`."""
    with whole_or_nothing(path, force=force) as stream:
        stream.writelines(parts)


def slug(title: str) -> str:
    """A title as the name of a file: small letters, digits and hyphens."""
    return "-".join(_NAME_WORD.findall(title.lower()))[:60].rstrip("-") or "camp-plan"


def _usual_mode(path: Path) -> int:
    """The permissions of the file that is replaced, else what the user's mask gives to a new file."""
    if path.exists():
        return path.stat().st_mode & 0o777
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask
