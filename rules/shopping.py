"""Shopping: whole purchase units, what the plan needs of each, and what is left over (handbook, section 8).

One line per food, in the order in which a shop is walked, cold food last. What most kitchens have is marked. Sizes of
packages stand in `tables/packages.csv`; produce goes by the piece, meat and cheese by weight. Water is not bought.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import cache
from itertools import product
from operator import mul

from rules import table, units
from rules.because import Ledger, Rule
from rules.circumstances import Day
from rules.foods import Food, Item
from rules.plan import Heat, Pack, Purchase
from rules.recipe import Amount, Recipe, Struct
from rules.recipe import Package as OnePackage
from rules.units import kitchen

LEAST_WASTE = Rule(
    id="shopping.packages",
    because="{buy} of {food} covers {need} with the least left over",
)
FUEL = Rule(
    id="shopping.fuel",
    because="{briquettes} briquettes are {kg:g} kg with the reserve: weigh them or count them into a box",
)

#: Packages that a line names itself.
CONTAINERS = frozenset(
    {
        "can",
        "jar",
        "package",
        "bag",
        "box",
        "bottle",
        "carton",
        "tub",
        "loaf",
        "bunch",
        "head",
        "envelope",
        "packet",
        "tin",
    }
)
#: Nouns of packages that are measures themselves.
MEASURES = frozenset({"pound", "pint", "quart", "gallon", "cup"})
#: Words of a line that a shopper minds.
SIZES = frozenset({"small", "medium", "large", "extra-large"})
#: A second package is carried only when it saves this share of what is needed.
PER_PACKAGE = 0.35
#: Nobody opens a second package for the last hundredth.
SLACK = 0.01
MOST_TRIED = 3
POUND_STEP = 0.25
FUEL_AISLE = "charcoal"
WATER = "water"
OPEN = "as the recipe leaves it open"


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


class Aisle(table.Row, frozen=True, kw_only=True):
    """Where a group of foods stands in the shop; `walked` is the place in the walk."""

    id: str
    group: str | None = None
    keeps: str | None = None
    aisle: str
    walked: int


class Staple(table.Row, frozen=True, kw_only=True):
    """A food, or a group, that most kitchens have up to so many grams."""

    id: str
    food: str | None = None
    group: str | None = None
    up_to_g: float


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
        """The mass [g]; None when one line's is unknown."""
        known = [item.grams for item in self.items if item.ingredient.amounts]
        return sum(mass for mass in known if mass) if known and all(known) else None

    @property
    def milliliters(self) -> float | None:
        """The volume [ml]; None when one line's is unknown."""
        known = [item.milliliters for item in self.items if item.ingredient.amounts]
        return sum(volume for volume in known if volume) if known and all(known) else None


def shopping(
    recipe: Recipe,  # noqa: ARG001 - the rooms are all asked in one way
    items: Sequence[Item],
    packs: Sequence[Pack],
    heat: Heat | None,
    day: Day,
    ledger: Ledger,
) -> tuple[Purchase, ...]:
    """What to buy for this plan, in the order of the shop; the last line is the fuel."""
    needs = needs_of(items, packs)
    lines = sorted(
        (walked(need.food), place, purchase_of(need, day, ledger)) for place, need in enumerate(needs)
    )
    bought = [line for _, _, line in lines]
    if heat:
        fuel = heat.fuel
        ledger.note(FUEL.says("fuel", briquettes=fuel.briquettes, kg=fuel.kg))
        bought.append(
            Purchase(
                food="charcoal briquettes",
                buy=f"a bag of at least {_mass(1000 * fuel.kg, day)}",
                need=f"{fuel.briquettes} briquettes",
                aisle=FUEL_AISLE,
            )
        )
    return tuple(bought)


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
            name=found[0].ingredient.name,
            food=found[0].food,
            items=tuple(found),
            amounts=tuple(amount for item in found for amount in scaled.get(item.index, ())),
        )
        for found in by_food.values()
    ]


def bought_as(name: str) -> str:
    """The food that is bought for this one: an egg for a yolk."""
    as_bought = {row.id: row.food for row in table.read("buys_as.csv", BoughtAs)}
    return as_bought.get(name, name)


def purchase_of(need: Need, day: Day, ledger: Ledger) -> Purchase:
    """One food's line of the list."""
    wanted = asked(need, day)
    buy, left = _bought(need, day)
    at_home = _likely_at_home(need)
    if at_home:
        # Nobody buys a jar for a pinch: what is left of it is of no interest.
        left = None
    if left is not None:
        ledger.note(LEAST_WASTE.says(need.name, buy=buy, food=need.name, need=wanted))
    return Purchase(
        food=need.name,
        buy=buy,
        need=wanted,
        left_over=left,
        aisle=_aisle(need.food).aisle if need.food else None,
        likely_at_home=at_home,
    )


def asked(need: Need, day: Day) -> str:
    """What the plan needs, in the recipe's own measures; lines of one food add up where their units are alike."""
    total: dict[tuple[str | None, object], Amount] = {}
    for amount in need.amounts:
        key = (amount.unit, amount.package)
        other = total.get(key)
        low, high = (other.low, other.high) if other else (0.0, 0.0)
        total[key] = Amount(
            low=low + amount.low, high=high + amount.high, unit=amount.unit, package=amount.package
        )
    words = " and ".join(kitchen(amount, units=day.units) for amount in total.values()) or OPEN
    return f"{words} (optional)" if all(item.ingredient.optional for item in need.items) else words


# What to put in the cart


def _bought(need: Need, day: Day) -> tuple[str, str | None]:
    """The packages, and what is left over of them (None where nothing can be said)."""
    food = need.food
    named = _in_named_containers(need, day)
    if named:
        return named, None
    sold = _packages(food) if food else ()
    if sold:
        return _in_packages(need, sold, day)
    counted = _counted(need)
    if counted:
        sizes = " ".join(
            dict.fromkeys(word for item in need.items for word in item.ingredient.state if word in SIZES)
        )
        return f"{counted} {sizes} {need.name}".replace("  ", " "), None
    if need.grams and all(units.is_mass(amount.unit) for amount in need.amounts):
        return _by_weight(need.grams, day), None
    if food is not None and food.g_per_piece and food.form in ("whole", "leafy") and need.grams:
        return _by_the_piece(need.grams, food)
    if food is not None and food.piece_word in CONTAINERS and food.g_per_piece and need.grams:
        count = _ceil(need.grams / food.g_per_piece)
        return f"{count} {_plural(food.piece_word or '', count)}", None
    if need.grams:
        return _by_weight(need.grams, day), None
    return "as much as you like" if not need.amounts else asked(need, day), None


def _counted(need: Need) -> int | None:
    """Whole pieces, where every line counts them."""
    if not need.amounts or any(amount.unit is not None for amount in need.amounts):
        return None
    return sum(_ceil(amount.high) for amount in need.amounts)


def _in_named_containers(need: Need, day: Day) -> str | None:
    """Cans and bags as the recipe counts them, rounded up to whole ones."""
    if not need.amounts or any(amount.unit not in CONTAINERS for amount in need.amounts):
        return None
    counts: dict[str, float] = {}
    for amount in need.amounts:
        size = f" ({_size(amount.package, day)})" if amount.package else ""
        counts[f"{amount.unit}{size}"] = counts.get(f"{amount.unit}{size}", 0.0) + amount.high
    parts = []
    for words, count in counts.items():
        word, space, size = words.partition(" ")
        parts.append(f"{_ceil(count)} {_plural(word, _ceil(count))}{space}{size}")
    return " and ".join(parts)


def _size(package: OnePackage, day: Day) -> str:
    return kitchen(Amount(low=package.high, high=package.high, unit=package.unit), units=day.units)


@cache
def _packages(food: Food) -> tuple[Package, ...]:
    """The sizes in which a food is sold, smallest first: those named for it, else its group's."""
    rows = table.read("packages.csv", Package)
    named = [row for row in rows if food.name in row.foods]
    fits = named or [row for row in rows if food.group in row.groups and row.keeps == food.keeps]
    return tuple(sorted(fits, key=lambda row: row.size))


def _in_packages(need: Need, sold: Sequence[Package], day: Day) -> tuple[str, str | None]:
    unit = sold[0].unit
    wanted = _measured(need, unit)
    if wanted is None:
        return _worded(sold[0], 1, day), None
    counts = _least_waste(wanted, [row.size for row in sold])
    words = " and ".join(_worded(row, count, day) for row, count in zip(sold, counts, strict=True) if count)
    left = sum(count * row.size for row, count in zip(sold, counts, strict=True)) - wanted
    return words, _left(left, unit, day)


def _worded(package: Package, count: int, day: Day) -> str:
    """Packages in the cook's own units: "2 16-ounce bottles", "2 bottles of 470 ml"."""
    if day.units == "us" or package.unit == "piece":
        return f"{count} {package.one if count == 1 else package.many}"
    noun = package.one.partition(" (")[0].split()[-1]
    word = "package" if noun in MEASURES else noun
    size = _mass(package.size, day) if package.unit == "g" else _volume(package.size, day)
    return f"{count} {_plural(word, count)} of {size}"


def _measured(need: Need, unit: str) -> float | None:
    if unit == "ml":
        return need.milliliters
    if unit == "g":
        return need.grams
    counted = _counted(need)
    if counted:
        return float(counted)
    each = need.food.g_per_piece if need.food else None
    return math.ceil(need.grams / each - 0.05) if need.grams and each else None


def _least_waste(wanted: float, sizes: Sequence[float]) -> tuple[int, ...]:
    """How many of each size (smallest first): the least left over, each package counted as a share of what is wanted."""
    biggest = sizes[-1]
    # Of the biggest size all but one are sure to be needed; the rest is tried out.
    sure = max(0, math.floor(wanted / biggest) - 1)
    best, least = (*(0 for _ in sizes[:-1]), sure + MOST_TRIED), math.inf
    for tried in product(range(MOST_TRIED + 1), repeat=len(sizes) - 1):
        missing = wanted - sum(map(mul, tried, sizes))
        # Of the biggest size as few as will do; one more only leaves more over.
        counts = (*tried, max(sure, math.ceil((missing - SLACK * wanted) / biggest)))
        left = counts[-1] * biggest - missing
        cost = left + PER_PACKAGE * wanted * sum(counts)
        if cost < least:
            best, least = counts, cost
    return best


def _left(left: float, unit: str, day: Day) -> str | None:
    if left < 1:
        return None
    if unit == "piece":
        return f"{left:.0f}"
    if unit == "ml":
        return _volume(left, day)
    return _mass(left, day)


def _by_the_piece(wanted: float, food: Food) -> tuple[str, str | None]:
    each = food.g_per_piece or 1.0
    count = max(1, math.ceil(wanted / each - 0.1))
    word = food.piece_word or ""
    named = food.name.partition(",")[0]
    if word and word not in ("whole", "piece", named, "fruit", "bulb", "medium", "each"):
        return f"{count} {_plural(word, count)}", None
    return f"{count} {_plural(named, count)}", None


def _by_weight(wanted: float, day: Day) -> str:
    """Meat, fish and what is weighed at the counter, up to the next quarter pound or 50 grams."""
    if day.units == "metric":
        return _mass(math.ceil(wanted / 50 - 0.02) * 50, day)
    pounds = math.ceil(units.to(wanted, "gram", "pound") / POUND_STEP - 0.02) * POUND_STEP
    return kitchen(Amount(low=pounds, high=pounds, unit="pound"), units="us")


def _likely_at_home(need: Need) -> bool:
    food = need.food
    if food is None:
        return False
    for row in table.read("staples.csv", Staple):
        if row.food == food.name or (row.group == food.group and food.keeps == "shelf"):
            return need.grams is None or need.grams <= row.up_to_g
    return False


# The walk


@cache
def _aisle(food: Food) -> Aisle:
    rows = table.read("aisles.csv", Aisle)
    fits = [
        row
        for row in rows
        if (row.group in (None, food.group))
        and (row.keeps in (None, food.keeps))
        and (row.group or row.keeps)
    ]
    # The most telling row: frozen food stands in the freezer whatever it is, then group with keeping, then group.
    return max(fits, key=lambda row: (row.keeps == "frozen", row.group is not None, row.keeps is not None))


def walked(food: Food | None) -> int:
    """The food's place in the walk through the shop."""
    return _aisle(food).walked if food else 0


# Words


def _ceil(count: float) -> int:
    return max(1, math.ceil(count - 0.02))


def _plural(word: str, count: int) -> str:
    if count == 1:
        return word
    if word.endswith(("s", "x", "ch", "sh")) or word in ("tomato", "potato", "mango"):
        return f"{word}es"
    if word.endswith("y") and word[-2:-1] not in "aeiou":
        return f"{word[:-1]}ies"
    if word in ("loaf", "leaf", "half"):
        return f"{word[:-1]}ves"
    return f"{word}s"


def _mass(grams: float, day: Day) -> str:
    if day.units == "metric":
        return f"{grams / 1000:.2g} kg" if grams >= 1000 else f"{_round(grams)} g"
    ounces = units.to(grams, "gram", "ounce")
    return f"{ounces / 16:.2g} lb" if ounces >= 16 else f"{max(1, round(ounces))} oz"


def _volume(milliliters: float, day: Day) -> str:
    if day.units == "metric":
        return f"{milliliters / 1000:.2g} l" if milliliters >= 1000 else f"{_round(milliliters)} ml"
    cups = units.to(milliliters, "milliliter", "cup")
    if cups >= 0.25:
        return kitchen(Amount(low=cups, high=cups, unit="cup"), units="us")
    spoons = units.to(milliliters, "milliliter", "tablespoon")
    return kitchen(Amount(low=spoons, high=spoons, unit="tablespoon"), units="us")


def _round(figure: float) -> int:
    return int(round(figure, -1)) if figure >= 100 else max(1, round(figure / 5) * 5)
