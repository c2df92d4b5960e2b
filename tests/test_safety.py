"""Every figure of food safety that the rooms speak stands in a table, with a published source beside it."""

from __future__ import annotations

import ast
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

from rules import table
from rules.coals.doneness import Safe
from rules.cold.hours import ColdFigure

RULES = Path(__file__).parent.parent / "rules"
#: Rooms that speak of keeping, thawing, eating and what can hurt; the rooms of heat speak of pots and weather.
ROOMS = sorted(
    {
        *(RULES / "cold").rglob("*.py"),
        *(RULES / "day").rglob("*.py"),
        *(RULES / "packs").rglob("*.py"),
        *(RULES / "instructions").rglob("*.py"),
        *(
            RULES / f"{room}.py"
            for room in ("cautions", "hazards", "allergens", "labels", "kit", "waits", "safety")
        ),
    }
)
#: A limit as it is said: a temperature, or a length of time in figures.
SAID = re.compile(r"(?<![\d.])(\d+(?:\.\d+)?)\s?(°F|minutes?|hours?|days?)\b|(?<![\d.])(\d+(?:\.\d+)?)\s?°F")
WORDS = re.compile(r"\b(one|two|three|four|five) hours?\b", re.IGNORECASE)
NUMBERS = {"one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0, "five": 5.0}
UNITS = {"min": "minute", "h": "hour", "d": "day", "°F": "°F"}
#: What the cautions and the reader are told twice, and is no limit of safety.
NO_LIMIT = {
    ("rules/cold/raw_days.py", "24 hour"),
}


def strings(path: Path) -> Iterator[tuple[int, str]]:
    """The texts of a file that a reader may see: every string but the docstrings, f-strings piece by piece."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    docs = {
        id(node.body[0].value)
        for node in ast.walk(tree)
        if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef)
        and node.body
        and isinstance(node.body[0], ast.Expr)
    }
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in docs:
            yield node.lineno, node.value


def limits(text: str) -> Iterator[str]:
    """The limits that a text states, as "40 °F", "30 minute", "2 hour"."""
    for figure, unit, degrees in SAID.findall(text):
        yield f"{float(figure or degrees):g} {(unit or '°F').rstrip('s')}"
    for word in WORDS.findall(text):
        yield f"{NUMBERS[word.lower()]:g} hour"


def published() -> set[str]:
    """The limits of the tables whose source is published."""
    rows: list[tuple[float, str, str]] = [
        (row.value, row.unit, row.basis) for row in table.read("safety_figures.csv", table.Figure)
    ]
    rows += [(row.value, row.unit, row.basis) for row in table.read("cold_figures.csv", ColdFigure)]
    rows += [(row.temp_f, "°F", row.basis) for row in table.read("safe_temperatures.csv", Safe) if row.temp_f]
    return {f"{value:g} {UNITS.get(unit, unit)}" for value, unit, basis in rows if basis == "published"}


@pytest.mark.parametrize("path", ROOMS, ids=lambda path: path.relative_to(RULES).as_posix())
def test_a_limit_that_a_room_speaks_stands_in_a_table_with_its_published_source(path: Path) -> None:
    name = path.relative_to(RULES.parent).as_posix()
    known = published()
    strays = [
        f"line {line}: {limit}"
        for line, text in strings(path)
        for limit in limits(text)
        if limit not in known and (name, limit) not in NO_LIMIT
    ]
    assert not strays, f"{name} speaks figures of its own"


def test_every_figure_of_safety_is_published() -> None:
    for row in table.read("safety_figures.csv", table.Figure):
        assert row.basis == "published", row
        assert len(row.source) > 20, row


@pytest.mark.parametrize(
    ("file", "key"),
    [
        ("safe_temperatures.csv", None),
        ("altitude_leavener.csv", None),
        ("alcohol_left.csv", None),
    ],
)
def test_tables_of_safety_name_their_publisher(file: str, key: str | None) -> None:
    rows = (RULES / "tables" / file).read_text(encoding="utf-8").splitlines()[1:]
    assert rows
    assert all("published" in row or "computed" in row for row in rows)


#: Cautions whose figures nobody was found to have printed; they say so.
FROM_MEMORY = {"caution.raw-egg.uncooked", "caution.home-canning", "caution.home-ferment"}


def test_a_caution_with_a_figure_in_it_names_who_printed_it() -> None:
    told = tomllib.loads((RULES / "tables" / "cautions.toml").read_text(encoding="utf-8"))
    rows = next(rows for rows in told.values() if isinstance(rows, list))
    seen = 0
    for row in rows:
        if list(limits(row["text"])) and row["id"] not in FROM_MEMORY:
            seen += 1
            assert row["basis"] == "published", row["id"]
            assert "no source" not in row["source"], row["id"]
    assert seen >= 8


def test_the_scan_sees_limits() -> None:
    told = "at 40 °F for 30 minutes, two hours, or 3.5 days"
    assert list(limits(told)) == ["40 °F", "30 minute", "3.5 day", "2 hour"]
