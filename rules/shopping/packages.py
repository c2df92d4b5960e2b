"""Packages as shops sell them: which sizes, how many of each, and in what words."""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import cache
from itertools import product
from operator import mul

from rules import table
from rules.circumstances import Day
from rules.foods import Food
from rules.shopping.words import mass, plural, volume

#: Nouns of packages that are measures themselves.
MEASURES = frozenset({"pound", "pint", "quart", "gallon", "cup"})
#: A second package is carried only when it saves this share of what is needed.
PER_PACKAGE = 0.35
#: Nobody opens a second package for the last hundredth.
SLACK = 0.01
MOST_TRIED = 3


class Package(table.Row, frozen=True, kw_only=True):
    """A size in which foods are sold: `size` in g, ml or pieces; `one` and `many` are its words."""

    id: str
    foods: tuple[str, ...] = ()
    groups: tuple[str, ...] = ()
    keeps: str | None = None
    size: float
    unit: str
    one: str
    many: str


@cache
def packages(food: Food) -> tuple[Package, ...]:
    """The sizes in which a food is sold, smallest first: those named for it, else its group's."""
    rows = table.read("packages.csv", Package)
    named = [row for row in rows if food.name in row.foods]
    fits = named or [row for row in rows if food.group in row.groups and row.keeps == food.keeps]
    return tuple(sorted(fits, key=lambda row: row.size))


def worded(package: Package, count: int, day: Day) -> str:
    """Packages in the cook's own units: "2 16-ounce bottles", "2 bottles of 470 ml"."""
    if day.units == "us" or package.unit == "piece":
        return f"{count} {package.one if count == 1 else package.many}"
    noun = package.one.partition(" (")[0].split()[-1]
    word = "package" if noun in MEASURES else noun
    size = mass(package.size, day) if package.unit == "g" else volume(package.size, day)
    return f"{count} {plural(word, count)} of {size}"


def least_waste(wanted: float, sizes: Sequence[float]) -> tuple[int, ...]:
    """How many of each size (smallest first): the least left over, each package counted as a share of what is wanted."""
    biggest = sizes[-1]
    # Of the biggest size all but one are sure to be needed; the rest is tried out.
    sure = max(0, math.floor(wanted / biggest) - 1)
    best, least = (*(0 for _ in sizes[:-1]), sure + MOST_TRIED), math.inf
    for tried in product(range(MOST_TRIED + 1), repeat=len(sizes)):
        counts = (*tried[:-1], tried[-1] + sure)
        left = sum(map(mul, counts, sizes)) - wanted
        if left < -SLACK * wanted:
            continue
        cost = left + PER_PACKAGE * wanted * sum(counts)
        if cost < least:
            best, least = counts, cost
    return best
