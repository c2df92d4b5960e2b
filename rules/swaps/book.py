"""The book of swaps: which food gives way to which, in what proportion; what leaving one out does."""

from __future__ import annotations

from functools import cache

from rules import table
from rules.foods import Food, catalogue
from rules.recipe import Struct


class SwapRow(table.Row, frozen=True, kw_only=True):
    """One part of a swap: for so much of the food, so much of another; or what is taken from a third."""

    id: str
    swap: str
    foods: tuple[str, ...] = ()
    per: float | None = None
    per_unit: str | None = None
    into: str
    amount: float
    unit: str | None = None
    takes: bool = False


class Exchange(Struct, frozen=True, kw_only=True):
    """A whole swap: the parts that come in, the parts that other ingredients give up."""

    foods: tuple[str, ...]
    per: float
    per_unit: str | None
    parts: tuple[SwapRow, ...]
    takes: tuple[SwapRow, ...]

    @property
    def main(self) -> SwapRow:
        """The part that carries the swap's note and source."""
        return self.parts[0]


class LeaveOut(table.Row, frozen=True, kw_only=True):
    """What a dish loses with a food."""

    id: str
    order: int
    foods: tuple[str, ...] = ()
    trait: str | None = None
    groups: tuple[str, ...] = ()
    effect: str


@cache
def exchanges() -> tuple[Exchange, ...]:
    """Every swap of the book."""
    together: dict[str, list[SwapRow]] = {}
    for row in table.read("swaps.csv", SwapRow):
        together.setdefault(row.swap, []).append(row)
    return tuple(_exchange(rows) for rows in together.values())


def _exchange(rows: list[SwapRow]) -> Exchange:
    head = next(row for row in rows if row.per is not None)
    parts = [row for row in rows if not row.takes]
    return Exchange(
        foods=head.foods,
        per=head.per or 1.0,
        per_unit=head.per_unit,
        parts=(head, *(row for row in parts if row is not head and row.into != head.into)),
        takes=tuple(row for row in rows if row.takes),
    )


def exchange(food: Food | None, into: Food | None) -> Exchange | None:
    """The book's way from one food to another; None where the book has none."""
    if food is None or into is None:
        return None
    ways = [one for one in exchanges() if food.name in one.foods]
    exact = next((one for one in ways if one.main.into == into.name), None)
    return exact or next((one for one in ways if _alike(one, into)), None)


def _alike(one: Exchange, into: Food) -> bool:
    """Whether any oil, or any bean from a can, may stand for the one that the book names."""
    named = catalogue().get(one.main.into)
    same_kind = (named.group, named.form, named.keeps) == (into.group, into.form, into.keeps)
    return same_kind and named.group in ("fat", "acid", "canned", "legume")


def effect_of(food: Food | None) -> LeaveOut | None:
    """What leaving a food out does to the dish; None where the book does not say."""
    if food is None:
        return None
    rows = sorted(table.read("leave_out.csv", LeaveOut), key=lambda row: row.order)
    return next((row for row in rows if _speaks_of(row, food)), None)


def _speaks_of(row: LeaveOut, food: Food) -> bool:
    return food.name in row.foods or row.trait in food.traits or food.group in row.groups
