"""Many files: each gets its result, a bad one costs the others nothing, and nothing is collected."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.batch import results
from rules.problem import BrokenInvariant, UsageProblem
from rules.recipe import Recipe


def named(text: str, file: str) -> Recipe:
    if "odd" in text:
        raise KeyError("salt")
    if "broken" in text:
        raise BrokenInvariant(file, "nothing is lost")
    if "usage" in text:
        raise UsageProblem("--oven", "13", "no")
    return Recipe(title=text, file=file)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    for text in ("pie", "odd", "broken", "usage"):
        (tmp_path / text).write_text(text)
    return tmp_path


def test_a_fault_is_a_sentence_and_the_run_goes_on(folder: Path) -> None:
    files = [str(folder / name) for name in ("odd", "broken", "gone", "pie")]
    odd, broken, gone, pie = results(files, named)
    assert (
        odd.problem == f"{files[0]}: coalside stumbled over it (KeyError: 'salt'); please report this recipe."
    )
    assert broken.problem is not None
    assert "nothing is lost" in broken.problem
    assert gone.problem == f"{files[2]}: there is no such file; check the name and the folder."
    assert pie.problem is None
    assert pie.thing == Recipe(title="pie", file=files[3])


def test_a_day_that_cannot_be_stops_the_run(folder: Path) -> None:
    with pytest.raises(UsageProblem):
        list(results([str(folder / "usage")], named))


def test_files_are_looked_at_one_by_one(folder: Path) -> None:
    """A thousand files in a row need no more room than one: the names themselves may come as a stream."""
    taken: list[int] = []

    def names() -> Iterator[str]:
        for number in range(1000):
            taken.append(number)
            yield str(folder / "pie")

    stream = results(names(), named)
    next(stream)
    next(stream)
    assert taken == [0, 1]
