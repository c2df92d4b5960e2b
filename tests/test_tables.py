"""Every table that ships: each cell typed, each figure plausible, each column explained, each row sourced."""

from __future__ import annotations

import csv
import importlib
import re
import tomllib
from pathlib import Path
from typing import Any

import pytest

from rules.foods import catalogue
from rules.table import Figure, Row, TableError, check, columns, parse, read

ROOT = Path(__file__).parent.parent
TABLES = ROOT / "rules" / "tables"
NAMES = sorted(path.name for path in TABLES.iterdir() if path.name != "columns.toml")
READ = re.compile(r'read\(\s*"([\w.]+)",\s*(\w+)\s*\)')
FIGURES = re.compile(r'figures\(\s*("[\w.", ]+")\s*\)')
BROKEN = tomllib.loads((ROOT / "tests" / "broken_tables" / "messages.toml").read_text(encoding="utf-8"))[
    "broken"
]


def readers() -> dict[str, type[Row]]:
    """The row type by which the rules read each table."""
    found: dict[str, type[Row]] = {}
    for path in sorted((ROOT / "rules").rglob("*.py")):
        for name, row_type in READ.findall(path.read_text(encoding="utf-8")):
            found.setdefault(name, getattr(importlib.import_module(module_of(path)), row_type))
        for names in FIGURES.findall(path.read_text(encoding="utf-8")):
            found |= dict.fromkeys(re.findall(r'"([^"]+)"', names), Figure)
    return found


def module_of(path: Path) -> str:
    return ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")


def evidence() -> set[str]:
    """Tables that no rule reads: the measurements that figures of other tables were fitted to, held by a test."""
    outside = "".join(path.read_text(encoding="utf-8") for path in (ROOT / "tests" / "outside").glob("*.py"))
    return {name for name, _ in READ.findall(outside)} - set(ROW_TYPES)


def other_readers() -> dict[str, type[Row]]:
    """Tables whose name is a constant of their module."""
    found: dict[str, type[Row]] = {}
    for path in sorted((ROOT / "rules").rglob("*.py")):
        text = path.read_text(encoding="utf-8")
        for name in re.findall(r'"([\w.]+\.(?:csv|toml))"', text):
            rows = [
                value
                for value in vars(importlib.import_module(module_of(path))).values()
                if isinstance(value, type) and issubclass(value, Row) and value not in (Row, Figure)
            ]
            fitting = [row_type for row_type in rows if fits(name, row_type)]
            if fitting:
                found.setdefault(name, fitting[0])
    return found


def fits(name: str, row_type: type[Row]) -> bool:
    if not (TABLES / name).exists():
        return False
    try:
        read(name, row_type)
    except TableError:
        return False
    return True


ROW_TYPES = other_readers() | readers()
TYPED = [name for name in NAMES if name in ROW_TYPES]


def raw(name: str) -> list[dict[str, Any]]:
    text = (TABLES / name).read_text(encoding="utf-8")
    if name.endswith(".toml"):
        rows: list[dict[str, Any]] = tomllib.loads(text)["row"]
        return rows
    return list(csv.DictReader(text.splitlines()))


def test_every_table_is_read_by_a_rule_or_holds_the_evidence_for_another() -> None:
    assert set(NAMES) - set(ROW_TYPES) - evidence() == set()


@pytest.mark.parametrize("name", TYPED)
def test_every_cell_has_its_type(name: str) -> None:
    assert read(name, ROW_TYPES[name])


@pytest.mark.parametrize("name", TYPED)
def test_every_figure_is_plausible_and_every_column_explained(name: str) -> None:
    assert [str(fault) for fault in check(read(name, ROW_TYPES[name]))] == []


@pytest.mark.parametrize("name", NAMES)
def test_a_table_starts_with_its_key_and_ends_with_note_basis_and_source(name: str) -> None:
    if name.endswith(".toml"):
        assert all(list(row)[-1] == "source" for row in raw(name))
        return
    header = next(csv.reader((TABLES / name).read_text(encoding="utf-8").splitlines()))
    assert header[-3:] == ["note", "basis", "source"]


@pytest.mark.parametrize("name", NAMES)
def test_no_key_stands_twice(name: str) -> None:
    # The rows of a TOML table may be told apart by their place alone (the first that fits decides).
    keys = [next(iter(row.values())) for row in raw(name) if name.endswith(".csv") or "id" in row]
    assert sorted(keys, key=str) == sorted(set(keys), key=str)


@pytest.mark.parametrize("name", TYPED)
def test_every_row_says_honestly_where_it_comes_from(name: str) -> None:
    for row in read(name, ROW_TYPES[name]):
        where = f"{row.file}, line {row.line}"
        assert row.source.strip(), where
        assert not re.search(r"(^|\s)/(work|home|tmp|root)/", row.source), where
        if row.basis == "published":
            assert not row.source.startswith(("from memory", "common practice")), where
        if row.basis == "from memory":
            assert "memory" in row.source, where
        if row.basis == "common practice":
            assert re.search("common practice|^ours|^handbook", row.source), where


def test_no_column_is_explained_that_no_table_has() -> None:
    had = {field for row_type in ROW_TYPES.values() for field in row_type.__struct_fields__}
    had |= {column for name in evidence() for row in raw(name) for column in row}
    assert set(columns()) - had == set()


@pytest.mark.parametrize(
    ("name", "column"),
    [
        ("food_heads.csv", "food"),
        ("leave_out.csv", "foods"),
        ("packages.csv", "foods"),
        ("pieces.csv", "food"),
        ("sizes.csv", "food"),
        ("swaps.csv", "foods"),
        ("swaps.csv", "into"),
        ("tall_foods.csv", "food"),
    ],
)
def test_a_food_that_a_table_names_is_in_the_catalogue(name: str, column: str) -> None:
    known = {food.name for food in catalogue()}
    named = [getattr(row, column) for row in read(name, ROW_TYPES[name])]
    foods = {food for cell in named if cell for food in ([cell] if isinstance(cell, str) else cell)}
    assert foods - known == set()


@pytest.mark.parametrize("broken", BROKEN, ids=lambda broken: broken["file"])
def test_a_broken_table_causes_its_message(broken: dict[str, str]) -> None:
    """The messages are pinned word for word: they are all that the person who edits a table sees."""
    text = (ROOT / "tests" / "broken_tables" / broken["file"]).read_text(encoding="utf-8")
    row_type = ROW_TYPES[broken["like"]]
    try:
        faults = check(parse(broken["file"], text, row_type))
    except TableError as problem:
        faults = [problem]
    assert [str(fault) for fault in faults] == [broken["says"]]
