"""What the plan needs of each food: the lines of one food together, their amounts added up where they can be."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from msgspec.structs import replace

from rules import table, units
from rules.circumstances import Day
from rules.foods import Food, Item
from rules.plan import Pack
from rules.recipe import Amount, Struct
from rules.units import kitchen

WATER = "water"
OPEN = "as the recipe leaves it open"


class BoughtAs(table.Row, frozen=True, kw_only=True):
    """A food that is bought as another one."""

    id: str
    food: str


class Need(Struct, frozen=True, kw_only=True):
    """All that the plan needs of one food."""

    name: str
    food: Food | None
    items: tuple[Item, ...]
    amounts: tuple[Amount, ...]

    @property
    def grams(self) -> float | None:
        """The mass [g] at the high end of the amounts; None when one line's is unknown."""
        return _sum((item.grams, item) for item in self.items if item.ingredient.amounts)

    @property
    def milliliters(self) -> float | None:
        """The volume [ml] at the high end of the amounts; None when one line's is unknown."""
        return _sum((item.milliliters, item) for item in self.items if item.ingredient.amounts)


def _sum(measured: Iterable[tuple[float | None, Item]]) -> float | None:
    total = 0.0
    for measure, item in measured:
        if not measure:
            return None
        amount = item.ingredient.amounts[0]
        # A line is weighed in the middle of its range.
        # Nothing of a food is nothing, whatever its range.
        total += measure * 2 * amount.high / (amount.low + amount.high) if amount.high else 0.0
    return total or None


def needs_of(items: Sequence[Item], packs: Sequence[Pack]) -> list[Need]:
    """One need per food, in the order of the recipe; water is drawn, not bought."""
    scaled: dict[int, list[Amount]] = {}
    for pack in packs:
        for part in pack.items:
            if part.amount is not None:
                scaled.setdefault(part.ingredient, []).append(part.amount)
    by_food: dict[str, list[Item]] = {}
    for item in items:
        name = item.food.name if item.food else item.ingredient.name
        if name != WATER:
            by_food.setdefault(bought_as(name), []).append(item)
    return [
        Need(
            name=_called(bought, found),
            food=found[0].food,
            items=tuple(found),
            amounts=tuple(amount for item in found for amount in scaled.get(item.index, ())),
        )
        for bought, found in by_food.items()
    ]


def _called(bought: str, found: Sequence[Item]) -> str:
    """The recipe's word for it; what is bought as something else says so: "egg, for egg yolks"."""
    name = found[0].ingredient.name
    as_itself = [item.ingredient.name for item in found if item.food is None or item.food.name == bought]
    return as_itself[0] if as_itself else f"{bought}, for {name}"


def bought_as(name: str) -> str:
    """The food that is bought for this one: an egg for a yolk."""
    as_bought = {row.id: row.food for row in table.read("buys_as.csv", BoughtAs)}
    return as_bought.get(name, name)


def asked(need: Need, day: Day) -> str:
    """What the plan needs, in the recipe's own measures; what can be added up is added up."""
    words = " and ".join(_said(amount, day) for amount in added(need.amounts)) or OPEN
    return f"{words} (optional)" if all(item.ingredient.optional for item in need.items) else words


def _said(amount: Amount, day: Day) -> str:
    """A count says the size of each: "9 (250 g each)"."""
    if amount.unit is None and amount.package is not None:
        bare = Amount(low=amount.low, high=amount.high, approx=amount.approx)
        return f"{kitchen(bare, units=day.units)} ({units.package_size(amount.package, day.units)} each)"
    return kitchen(amount, units=day.units)


def added(amounts: Sequence[Amount]) -> Iterator[Amount]:
    """What is told alike in one amount each; a shop wants no "about"."""
    for amount in units.by_kind(amounts).values():
        yield replace(amount, approx=False)
