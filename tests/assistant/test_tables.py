"""The lists as comma-separated values.

Outside: RFC 4180 (lines end in CRLF, quotes doubled, one header, as many fields in every record); the formula signs
are those that OWASP's page "CSV Injection" lists (from memory).
"""

from __future__ import annotations

import csv
import io
import os
import shutil
import subprocess
from pathlib import Path

import pytest
from msgspec.structs import replace

from assistant.show.forms import Look
from assistant.show.tables import FORMULA_STARTS, HEADER, harmless, plan_csv
from rules.plan import PackItem, Plan, Purchase
from rules.recipe import Amount
from tests.assistant import hostile
from tests.assistant.dishes import DAY, TEN, plan_of


def records(text: str) -> list[list[str]]:
    return list(csv.reader(io.StringIO(text, newline="")))


def test_lists_of_a_plan_are_records_of_five_fields(river_plan: Plan) -> None:
    text = plan_csv(river_plan, Look())
    assert text.endswith("\r\n")
    assert text.count("\n") == text.count("\r\n")
    rows = records(text)
    assert tuple(rows[0]) == HEADER
    assert {len(row) for row in rows} == {5}
    assert ["shopping", "dairy", "butter", "1 stick", "needed: 1/2 cup"] in rows
    assert [
        "packing",
        "dry-1: Cobbler, dry",
        "flour",
        "1 1/2 cups",
        "dry mix, no cooling, 1-gallon zipper bag",
    ] in rows
    assert ["kit", "camp", "54 briquettes", "", ""] in rows


def test_every_ingredient_of_every_pack_has_its_record(river_plan: Plan) -> None:
    packing = [row for row in records(plan_csv(river_plan, Look())) if row[0] == "packing"]
    assert len(packing) == sum(len(pack.items) for pack in river_plan.packs)


@pytest.mark.parametrize("cell", ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "＝1", '=HYPERLINK("x")'])
def test_a_formula_is_made_text(cell: str) -> None:
    assert harmless(cell).startswith("'")


@pytest.mark.parametrize("cell", ["1/2", "2-3", "2027-7-3", "7/3/27"])
def test_what_a_spreadsheet_takes_for_a_date_is_made_text(cell: str) -> None:
    """Gnumeric 1.12 reads a bare 1/2 as the second of January of this year (tried)."""
    assert harmless(cell) == f"'{cell}"
    assert harmless(f"{cell} cup") == f"{cell} cup"


def test_half_an_onion_is_a_number(river_plan: Plan) -> None:
    amounts = (Amount(low=0.5, high=0.5), Amount(low=1.5, high=1.5), Amount(low=0.5, high=0.5, unit="cup"))
    items = tuple(PackItem(ingredient=0, share=1, amount=amount) for amount in amounts)
    plan = replace(river_plan, packs=(replace(river_plan.packs[0], items=items),))
    told = [row[3] for row in records(plan_csv(plan, Look())) if row[0] == "packing"]
    assert told == ["0.5", "1.5", "1/2 cup"]


def test_a_spreadsheet_reads_the_same_cells(tmp_path: Path) -> None:
    """Gnumeric opens the tables of ten plans and gives back what is written, cell for cell."""
    ssconvert = shutil.which("ssconvert")
    if ssconvert is None:
        pytest.skip("no Gnumeric on this machine (ssconvert): no spreadsheet reads the table")
    text = "".join(plan_csv(plan_of(dish), Look(day=DAY)) for dish in TEN)
    (tmp_path / "lists.csv").write_text(text, encoding="utf-8", newline="")
    options = "separator=, format=preserve quoting-mode=auto eol=unix"
    subprocess.run(
        [ssconvert, "-T", "Gnumeric_stf:stf_assistant", "-O", options, "lists.csv", "read.csv"],
        cwd=tmp_path,
        env={**os.environ, "HOME": str(tmp_path)},
        check=True,
        capture_output=True,
    )
    assert records((tmp_path / "read.csv").read_text(encoding="utf-8")) == records(text)


def test_commas_quotes_and_line_breaks_stay_in_their_field(river_plan: Plan) -> None:
    odd = replace(river_plan, shopping=(Purchase(food='"thick", cream\nheavy', buy="1", need="1"),))
    assert records(plan_csv(odd, Look()))[1][2] == '"thick", cream heavy'


def test_hostile_cells_are_read_back_as_they_are_meant() -> None:
    """Every cell the csv module reads back is the plan's text, made harmless; none begins a formula."""
    plan = hostile.plan()
    rows = records(plan_csv(plan, Look()))
    assert {len(row) for row in rows} == {5}
    assert not any(cell.startswith(FORMULA_STARTS) for row in rows for cell in row)
    assert [row[2] for row in rows if row[:2] == ["kit", "camp"]] == [
        harmless(thing) for thing in plan.kit.camp
    ]
    assert any(row[2].startswith("'=HYPERLINK(") for row in rows)
    assert not any(hostile.MARK in cell for row in rows for cell in row)
