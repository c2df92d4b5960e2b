"""A plan's lists as one table of comma-separated values (RFC 4180), for a spreadsheet.

A cell that a spreadsheet would take for a formula or a date gets an apostrophe in front: recipe text comes from
strangers, and "1/2" is no second of January.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING

from assistant.show import parts, words
from assistant.show.plain import printable
from rules.plan import Plan
from rules.wording import short_names

if TYPE_CHECKING:
    from assistant.show.forms import Look

HEADER = ("list", "where", "item", "amount", "note")
#: What opens a formula, also in the full-width forms that some spreadsheets take for the same.
FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\uff1d", "\uff0b", "\uff0d", "\uff20")


#: What a spreadsheet takes for a date: "1/2", "2027-7-3".
_DATE = re.compile(r"\d{1,4}[/-]\d{1,2}(?:[/-]\d{1,4})?")
#: A bare number with a fraction: "1/2", "1 1/2".
_FRACTION = re.compile(r"(?:(\d{1,6}) )?(\d{1,3})/(\d{1,3})")


def plan_csv(plan: Plan, look: Look) -> str:
    """Shopping, packs and kit in one table; lines end in CRLF as the standard wants."""
    return as_csv((*_shopping(plan), *_packs(plan, look), *_kit(plan)))


def as_csv(rows: Iterable[Sequence[str]], header: Sequence[str] = HEADER) -> str:
    """Rows of cells, each made harmless."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(header)
    for row in rows:
        writer.writerow([harmless(cell) for cell in row])
    return out.getvalue()


def harmless(cell: str) -> str:
    """The cell as text: nothing in it runs, turns the writing direction or breaks the row."""
    text = " ".join(printable(cell).replace("\t", " ").split())
    return f"'{text}" if text.startswith(FORMULA_STARTS) or _DATE.fullmatch(text) else text


def _shopping(plan: Plan) -> Iterator[tuple[str, ...]]:
    for line in plan.shopping:
        note = ", ".join(
            [f"needed: {line.need}"]
            + ([f"left over: {line.left_over}"] if line.left_over else [])
            + (["most kitchens have it"] if line.likely_at_home else [])
        )
        yield "shopping", line.aisle or "", line.food, line.buy, note


def _packs(plan: Plan, look: Look) -> Iterator[tuple[str, ...]]:
    names = short_names(plan.packs)
    for pack in plan.packs:
        note = ", ".join(filter(None, [pack.kind, parts.TRAVELS[pack.travels], pack.container]))
        for item in pack.items:
            ingredient = plan.recipe.ingredients[item.ingredient]
            prepared = f"{ingredient.name}, {ingredient.prep}" if ingredient.prep else ingredient.name
            yield (
                "packing",
                f"{pack.id}: {names[pack.id]}",
                prepared,
                _figure(words.amount(item.amount, look.day.units)),
                note,
            )


def _figure(amount: str) -> str:
    """A bare fraction as the number that a spreadsheet counts with: "1 1/2" is 1.5."""
    found = _FRACTION.fullmatch(amount)
    if found is None or not int(found[3]):
        return amount
    return words.number(int(found[1] or 0) + int(found[2]) / int(found[3]))


def _kit(plan: Plan) -> Iterator[tuple[str, ...]]:
    for where, things in (("home", plan.kit.home), ("camp", plan.kit.camp)):
        for thing in things:
            yield "kit", where, thing, "", ""
