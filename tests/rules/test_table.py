from __future__ import annotations

import pytest

from rules.table import Row, TableError, check, parse


class Coal(Row, frozen=True, kw_only=True):
    id: str
    temp_f: float
    oven_in: int | None = None
    aliases: tuple[str, ...] = ()


HEAD = "id,temp_f,oven_in,aliases,note,basis,source\n"


def test_cells_become_the_types_of_the_row() -> None:
    (row,) = parse("coal.csv", HEAD + "bake,350,12,one;two,,published,a chart\n", Coal)
    assert (row.id, row.temp_f, row.oven_in, row.aliases) == ("bake", 350.0, 12, ("one", "two"))
    assert row.note is None
    assert row.source == "a chart"


def test_a_row_remembers_where_it_stands() -> None:
    rows = parse("coal.csv", HEAD + "a,1,,,,published,x\nb,2,,,,published,x\n", Coal)
    assert [(row.file, row.line) for row in rows] == [("coal.csv", 2), ("coal.csv", 3)]


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        (
            HEAD + "bake,35O,12,,,published,x\n",
            'coal.csv, line 2, column temp_f: "35O" is not a number; did a letter slip in?',
        ),
        (
            "id,temp_f,heat,note,basis,source\nbake,350,1,,published,x\n",
            'coal.csv, line 2, column heat: "heat" is not a column of this table.',
        ),
        (
            HEAD + "bake,350,12,,,hearsay,x\n",
            'coal.csv, line 2, column basis: "hearsay" is not one of the words that this column takes.',
        ),
        (
            HEAD + "bake,350,12,,,published,a chart, one page\n",
            'coal.csv, line 2, column source: " one page" is not in a column.',
        ),
    ],
    ids=["not a number", "unknown column", "unknown basis", "a comma without quotes"],
)
def test_a_wrong_cell_is_named_with_file_line_and_column(text: str, sentence: str) -> None:
    with pytest.raises(TableError) as problem:
        parse("coal.csv", text, Coal)
    assert str(problem.value) == sentence


def test_a_toml_table_is_read_like_a_csv_one() -> None:
    text = '[[row]]\nid = "bake"\ntemp_f = 350\naliases = ["x"]\nbasis = "published"\nsource = "a chart"\n'
    (row,) = parse("coal.toml", text, Coal)
    assert row.aliases == ("x",)


def test_a_figure_outside_the_range_of_its_column_is_a_fault() -> None:
    rows = parse("coal.csv", HEAD + "bake,3500,12,,,published,x\n", Coal)
    assert [(fault.column, fault.found) for fault in check(rows) if fault.column == "temp_f"] == [
        ("temp_f", "3500.0")
    ]
