"""The one reader of `tables/`: files of figures become typed rows that remember where they stand.

A table is a CSV file (one header line) or a TOML file (an array `row`). Its row type is a frozen struct that names
the columns; the last three columns of every table are `note`, `basis` and `source`. A row knows its file and line, so
that a Reason can quote it. Column names mean the same in every table: `tables/columns.toml` says what, in which unit
and within which range; `check` holds a table against it.
"""

from __future__ import annotations

import csv
import re
import tomllib
from collections.abc import Iterable, Iterator
from functools import cache
from importlib import resources
from typing import Any, Literal, TypeVar, cast, get_type_hints

import msgspec

from rules.problem import Problem
from rules.recipe import Struct

Basis = Literal["published", "computed", "common practice", "from memory"]
LIST_SEPARATOR = ";"


class Row(Struct, frozen=True, kw_only=True):
    """A row of a table. `file` and `line` (from 1, as people count) say where it stands."""

    file: str
    line: int
    note: str | None = None
    basis: Basis
    source: str


class Figure(Row, frozen=True, kw_only=True):
    """One figure by its name, in the unit that its row names."""

    id: str
    value: float
    unit: str


R = TypeVar("R", bound=Row)


class TableError(Problem):
    """A cell that cannot be: file, line, column, what stands there, what is wanted."""

    def __init__(self, file: str, *, line: int, column: str, found: str, wanted: str) -> None:
        super().__init__(file, line, column, found, wanted)
        self.file = file
        self.line = line
        self.column = column
        self.found = found
        self.wanted = wanted

    def sentence(self) -> str:
        """Say where and what: coal_chart.csv, line 14, column temp_f: "35O" is not a number."""
        end = "" if self.wanted.endswith("?") else "."
        return (
            f'{self.file}, line {self.line}, column {self.column}: "{self.found}" is not {self.wanted}{end}'
        )


class Column(Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """What a column name means, everywhere: its unit and the plausible range of its figures."""

    meaning: str
    unit: str | None = None
    low: float | None = None
    high: float | None = None


def text_of(name: str) -> str:
    """The text of a file in `tables/`."""
    return resources.files("rules").joinpath("tables", name).read_text(encoding="utf-8")


@cache
def columns() -> dict[str, Column]:
    """Every column name with its meaning."""
    return msgspec.convert(tomllib.loads(text_of("columns.toml")), dict[str, Column])


def read(name: str, row_type: type[R]) -> tuple[R, ...]:
    """All rows of a table, typed; each table is read once.

    Raises:
        TableError: for the first cell that is not what `row_type` wants.
    """
    return cast("tuple[R, ...]", _kept(name, row_type))


@cache
def figures(*names: str) -> dict[str, Figure]:
    """The figures of some tables by their names."""
    return {row.id: row for name in names for row in read(name, Figure)}


@cache
def _kept(name: str, row_type: type[Row]) -> tuple[Row, ...]:
    # Apart from `read`, because a cached generic function loses the type of its rows.
    return parse(name, text_of(name), row_type)


def parse(name: str, text: str, row_type: type[R]) -> tuple[R, ...]:
    """The rows of a table's text; `read` is this over the shipped files."""
    return tuple(_typed(name, line, cells, row_type) for line, cells in _raw(name, text))


def check(rows: Iterable[Row]) -> list[TableError]:
    """Every figure outside the range that `columns.toml` gives for its column, and every unexplained column."""
    faults = []
    known = columns()
    for row in rows:
        for name in row.__struct_fields__:
            value = getattr(row, name)
            column = known.get(name)
            if column is None:
                faults.append(_fault(row, name, value, "a column that columns.toml explains"))
            elif isinstance(value, int | float) and not isinstance(value, bool):
                low = column.low if column.low is not None else value
                high = column.high if column.high is not None else value
                if not low <= value <= high:
                    faults.append(_fault(row, name, value, f"within {low:g} to {high:g}"))
    return faults


def _fault(row: Row, column: str, found: object, wanted: str) -> TableError:
    return TableError(row.file, line=row.line, column=column, found=str(found), wanted=wanted)


def _raw(name: str, text: str) -> Iterator[tuple[int, dict[str, Any]]]:
    if name.endswith(".toml"):
        # TOML keeps no line numbers; the number of the row serves people as well.
        yield from enumerate(tomllib.loads(text)["row"], start=1)
        return
    reader = csv.reader(text.splitlines())
    header = next(reader)
    for row in reader:
        if len(row) > len(header):
            raise TableError(
                name, line=reader.line_num, column=header[-1], found=row[len(header)], wanted="in a column"
            )
        if row:
            yield reader.line_num, {column: cell for column, cell in zip(header, row, strict=False) if cell}


def _typed(name: str, line: int, cells: dict[str, Any], row_type: type[R]) -> R:
    found = {**cells, "file": name, "line": line}
    for column in _lists(row_type) & cells.keys():
        if isinstance(found[column], str):
            found[column] = [part.strip() for part in found[column].split(LIST_SEPARATOR) if part.strip()]
    unknown = next((column for column in found if column not in row_type.__struct_fields__), None)
    if unknown:
        raise TableError(name, line=line, column=unknown, found=unknown, wanted="a column of this table")
    try:
        return msgspec.convert(found, row_type, strict=False)
    except msgspec.ValidationError as error:
        raise _misread(name, line, cells, str(error)) from error


def _misread(name: str, line: int, cells: dict[str, Any], said: str) -> TableError:
    """The checker's complaint as a sentence about the table."""
    column = said.rpartition("$.")[2].rstrip("`").partition("[")[0] if "$." in said else ""
    missing = re.search(r"required field `(\w+)`", said)
    if missing:
        return TableError(
            name, line=line, column=missing[1], found="", wanted="a value; the cell may not stay empty"
        )
    found = str(cells.get(column, ""))
    if "`int" in said or "`float" in said:
        hint = "; did a letter slip in?" if re.search(r"\d[A-Za-z]|[A-Za-z]\d", found) else ""
        wanted = f"a {'whole ' if '`float' not in said else ''}number{hint}"
    elif "`bool" in said:
        wanted = "true or false"
    elif "enum" in said:
        wanted = "one of the words that this column takes"
    else:
        wanted = f"right ({said.partition(' - at')[0]})"
    return TableError(name, line=line, column=column, found=found, wanted=wanted)


@cache
def _lists(row_type: type[Row]) -> frozenset[str]:
    """The columns of a row that hold lists; asked once a type, because reading hints is slow."""
    hints = get_type_hints(row_type)
    return frozenset(column for column, hint in hints.items() if "tuple" in str(hint))
