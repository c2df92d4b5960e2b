"""The marks of a line: bullets and numbers, levels, quoting; figures that only look like numbers of a list."""

from __future__ import annotations

import pytest

from assistant.reader.marks import mark


@pytest.mark.parametrize(
    ("raw", "bullet", "level", "body"),
    [
        ("- 2 eggs", "-", 0, "2 eggs"),
        ("\u2022 2 eggs", "-", 0, "2 eggs"),
        ("- [ ] 2 eggs", "-", 0, "2 eggs"),
        ("> * 2 eggs", "-", 0, "2 eggs"),
        ("1. Mix", "1", 0, "Mix"),
        ("2) Mix", "1", 0, "Mix"),
        ("**3.** Mix", "1", 0, "Mix"),
        ("Step 4: Mix", "1", 0, "Mix"),
        ("a) Mix", "1", 0, "Mix"),
        ("## Dough", "", 2, "Dough"),
        ("**Dough**", "", 7, "Dough"),
        ("*Dough*", "", 7, "Dough"),
        ("| 2 | eggs |", "-", 0, "2 eggs"),
        ("|---|---|", "", 0, ""),
        ("-----", "", 0, ""),
        ("![squares](https://river.example/s.png)", "", 0, ""),
        ("*Best with fresh milk.*", "", 0, "Best with fresh milk."),
    ],
)
def test_a_line_is_taken_apart(raw: str, bullet: str, level: int, body: str) -> None:
    found = mark(0, raw)
    assert (found.bullet, found.level, found.body) == (bullet, level, body)


@pytest.mark.parametrize(
    "raw", ["2 eggs", "(2) 14 oz cans beans", "2 - eggs", "1.5 cups milk", "1 (14 oz) can"]
)
def test_a_count_is_no_number_of_a_list(raw: str) -> None:
    assert mark(0, raw).bullet == ""


def test_two_columns_are_kept_apart_and_a_name_with_its_amount_is_not() -> None:
    assert mark(0, "500 g mince        60 g butter").body == "500 g mince; 60 g butter"
    assert mark(0, "Mince              500 g").body == "Mince 500 g"


def test_an_indent_counts_its_tabs_as_four() -> None:
    assert [mark(0, raw).indent for raw in ("- a", "  - a", "\t- a")] == [0, 2, 4]
