"""A file for each recipe in a folder: names that every system takes, nothing lost, nothing overwritten."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.folder import check_place, into_folder, is_folder, safe_name
from assistant.show.forms import Look, Result
from rules.circumstances import Day
from rules.plan import Plan
from rules.problem import FileProblem, UsageProblem

LOOK = Look(form="html", day=Day(eat="18:30"))


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def test_each_recipe_has_its_file_named_after_it(tmp_path: Path, river_plan: Plan) -> None:
    results = [
        Result(file=file, thing=river_plan)
        for file in ("a/Friday stew.txt", "b/friday STEW.txt", "nul.txt", "-")
    ]
    done = list(into_folder(results, f"{tmp_path}/cards/", "plan", LOOK))
    assert [result.problem for result in done] == [None] * 4
    assert names(tmp_path / "cards") == [
        "friday-stew-2.html",
        "friday-stew.html",
        "gravel-bar-peach-cobbler.html",
        "nul-plan.html",
    ]
    assert (tmp_path / "cards/nul-plan.html").read_text(encoding="utf-8").startswith("<!DOCTYPE html>")


def test_a_file_that_stands_there_is_told_and_the_others_are_written(
    tmp_path: Path, river_plan: Plan
) -> None:
    (tmp_path / "one.html").write_text("kept")
    results = [Result(file="one.txt", thing=river_plan), Result(file="two.txt", thing=river_plan)]
    first, second = into_folder(results, str(tmp_path), "plan", LOOK)
    assert first.problem is not None
    assert "it exists already" in first.problem
    assert second.problem is None
    assert (tmp_path / "one.html").read_text() == "kept"
    list(into_folder(results, str(tmp_path), "plan", LOOK, force=True))
    assert (tmp_path / "one.html").read_text(encoding="utf-8") != "kept"


def test_a_recipe_that_failed_leaves_no_file(tmp_path: Path) -> None:
    (only,) = into_folder([Result(file="x.txt", problem="x.txt: empty.")], str(tmp_path), "plan", LOOK)
    assert only.problem == "x.txt: empty."
    assert names(tmp_path) == []


def test_a_folder_that_cannot_be_made_says_so(tmp_path: Path) -> None:
    (tmp_path / "cards").write_text("a file")
    with pytest.raises(FileProblem, match="it cannot be made"):
        list(into_folder([], f"{tmp_path}/cards/more/", "plan", LOOK))


@given(st.text(min_size=1, max_size=80))
def test_a_name_is_safe_whatever_the_file_is_called(file: str) -> None:
    name = safe_name(Result(file=file))
    assert name
    assert len(name.encode()) <= 248
    assert not set(name) & set('/\\:*?"<>|. \t\n\0')
    assert not name.startswith("-")


def test_a_place_is_a_folder_by_its_end_or_by_being_one(tmp_path: Path) -> None:
    assert is_folder("cards/")
    assert is_folder(str(tmp_path))
    assert not is_folder("cards.html")
    assert not is_folder(None)


def test_several_pages_do_not_go_into_one_file() -> None:
    with pytest.raises(UsageProblem, match="--out cards/ --as html"):
        check_place("html", "cards.html", several=True)
    check_place("html", "cards/", several=True)
    check_place("html", "card.html", several=False)
    check_place("md", "all.md", several=True)
