"""Reading what is no recipe file, and writing whole or not at all."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.files import MOST_BYTES, decoded, slug, text_of, whole_or_nothing, write
from rules.problem import FileProblem


@pytest.mark.parametrize(
    ("content", "sentence"),
    [
        (b"", "{}: the file is empty; put the text of a recipe into it."),
        (b" \n\t\r\n", "{}: the file is empty; put the text of a recipe into it."),
        (
            b"\x89PNG\r\n\x1a\n123",
            "{}: not a text file (the first bytes look like a picture); paste the recipe as text.",
        ),
        (
            b"PK\x03\x04abc",
            "{}: not a text file (the first bytes look like a word processor's file or an archive); paste the recipe as text.",
        ),
        (
            b"flour\0\1\2",
            "{}: not a text file (the first bytes look like binary data); paste the recipe as text.",
        ),
        (
            bytes(range(128, 256)) * 4 + b"\x01" * 90,
            "{}: not a text file (the first bytes look like binary data); paste the recipe as text.",
        ),
        (
            b"a" * (MOST_BYTES + 1),
            "{}: larger than 4 MB; a recipe is a page of text: cut it out and try again.",
        ),
    ],
    ids=["empty", "blank", "picture", "archive", "nul bytes", "random", "too large"],
)
def test_a_file_that_is_no_recipe_gives_one_sentence(tmp_path: Path, content: bytes, sentence: str) -> None:
    path = tmp_path / "odd.txt"
    path.write_bytes(content)
    with pytest.raises(FileProblem) as caught:
        text_of(str(path))
    assert sentence.format(path) == str(caught.value)


def test_a_missing_file_and_a_folder_are_told_apart(tmp_path: Path) -> None:
    with pytest.raises(FileProblem, match="there is no such file; check the name and the folder"):
        text_of(str(tmp_path / "gone.txt"))
    with pytest.raises(FileProblem, match="this is a folder; name the files in it"):
        text_of(str(tmp_path))
    with pytest.raises(FileProblem, match="it cannot be read"):
        text_of("a\0b")


def test_the_usual_encodings_are_read() -> None:
    assert decoded("½ cup crème".encode(), "x") == "½ cup crème"
    assert decoded("½ cup crème".encode("utf-8-sig"), "x") == "½ cup crème"
    assert decoded("½ cup crème".encode("utf-16"), "x") == "½ cup crème"
    assert decoded("½ cup crème".encode("cp1252"), "x") == "½ cup crème"


def test_a_broken_utf_16_file_is_no_text() -> None:
    with pytest.raises(FileProblem, match="broken"):
        decoded(b"\xff\xfea\x00b", "x")


def test_nothing_is_written_over_without_force(tmp_path: Path) -> None:
    path = tmp_path / "plan.md"
    path.write_text("old")
    with pytest.raises(FileProblem, match="it exists already; say --force"):
        write(path, ["new"])
    assert path.read_text() == "old"
    write(path, ["new"], force=True)
    assert path.read_text() == "new"


def test_a_failure_half_way_leaves_the_old_file_and_no_draft(tmp_path: Path) -> None:
    path = tmp_path / "plan.md"
    path.write_text("old")

    def pieces() -> object:
        yield "half"
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        write(path, pieces(), force=True)  # type: ignore[arg-type]
    assert path.read_text() == "old"
    assert [entry.name for entry in tmp_path.iterdir()] == ["plan.md"]


def test_a_written_file_keeps_the_permissions_of_the_one_it_replaces(tmp_path: Path) -> None:
    path = tmp_path / "plan.md"
    path.write_text("old")
    path.chmod(0o640)
    with whole_or_nothing(path, force=True) as stream:
        stream.write("new")
    assert path.stat().st_mode & 0o777 == 0o640


def test_a_folder_that_is_not_there_is_said(tmp_path: Path) -> None:
    with pytest.raises(FileProblem, match="it cannot be written"):
        write(tmp_path / "no" / "plan.md", ["x"])
    with pytest.raises(FileProblem, match="this is a folder; name a file"):
        write(tmp_path, ["x"])


def test_line_ends_are_written_as_they_are(tmp_path: Path) -> None:
    write(tmp_path / "day.ics", ["BEGIN\r\n"])
    assert (tmp_path / "day.ics").read_bytes() == b"BEGIN\r\n"


@pytest.mark.parametrize(
    ("title", "name"), [("Peach Cobbler, for 9!", "peach-cobbler-for-9"), ("../..", "camp-plan")]
)
def test_a_title_becomes_a_harmless_file_name(title: str, name: str) -> None:
    assert name == slug(title)
