"""What the talk needs of the outside: recipes that ship, the log's file, a trip's files."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from assistant.commands import abroad
from assistant.commands.makers import store
from assistant.keep import FILE
from assistant.show.habit import HabitReport
from rules.problem import Problem
from rules.trip.model import Meal, Trip
from tests.talks import CORPUS


def test_every_recipe_of_the_corpus_ships_under_its_plain_name() -> None:
    names = {
        path.stem.removeprefix("river-").replace("-", " ") for path in (CORPUS / "recipes").glob("*.txt")
    }
    assert set(abroad.shipped()) == names
    assert abroad.shipped()["peach cobbler"]().title


def test_a_damaged_store_teaches_nothing_and_stops_nothing() -> None:
    kept, opened = abroad.rooms()
    kept.path.parent.mkdir(parents=True, exist_ok=True)
    kept.path.mkdir()
    assert abroad.learnt(kept) is None
    assert opened
    assert kept.path.name == FILE
    assert store().path == kept.path


@pytest.mark.parametrize(
    ("form", "path", "name"),
    [(None, None, "log-of-cooks.csv"), ("json", None, "log-of-cooks.json"), (None, "mine.md", "mine.md")],
)
def test_the_log_is_written_in_the_form_that_was_said(
    form: str | None, path: str | None, name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert abroad.export_log(HabitReport(), form, path) == name
    assert (tmp_path / name).read_text(encoding="utf-8")


def test_a_trip_is_written_as_its_file_or_in_a_form(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    trip = Trip(
        name="River Weekend",
        meals=(Meal(name="Friday supper", eat="2027-07-02T18:30", recipe=abroad.shipped()["can chili"]()),),
    )
    said = abroad.export_trip(trip, None, None)
    assert (
        said
        == "Wrote river-weekend.toml, with 1 recipe in river-weekend-recipes: coalside trip river-weekend.toml plans it."
    )
    assert abroad.export_trip(trip, "json", None) == "Wrote river-weekend.json."
    assert (
        json.loads((tmp_path / "river-weekend.json").read_text(encoding="utf-8"))["name"] == "River Weekend"
    )
    with pytest.raises(Problem):
        abroad.export_trip(trip, None, None)
