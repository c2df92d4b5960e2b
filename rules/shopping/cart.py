"""One food's line of the list: what is put into the cart, and what of it is left over."""

from __future__ import annotations

import math
from collections.abc import Sequence

from rules import units
from rules.because import Ledger, Rule
from rules.circumstances import Day
from rules.foods import Food
from rules.plan import Purchase
from rules.shopping.need import Need, added, asked
from rules.shopping.packages import Package, least_waste, packages, worded
from rules.shopping.walk import aisle, likely_at_home
from rules.shopping.words import by_weight, counted, plural, rough_mass, rough_volume, whole
from rules.units import package_size

LEAST_WASTE = Rule(
    id="shopping.packages",
    because="{buy} of {food} covers {need} with the least left over",
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
#: Words of a line that a shopper minds.
SIZES = frozenset({"small", "medium", "large", "extra-large"})
#: Parts of a head, a bunch or a loaf in which a cook counts what is left.
PARTS = frozenset({"clove", "stalk", "rib", "slice", "sprig", "leaf", "sheet", "strip", "rasher"})
#: A rest smaller than this share of its package is none.
NO_REST = 0.04


def purchase_of(need: Need, day: Day, ledger: Ledger) -> Purchase:
    """One food's line of the list."""
    wanted = asked(need, day)
    buy, left = _bought(need, day)
    at_home = likely_at_home(need)
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
        aisle=aisle(need.food).aisle if need.food else None,
        likely_at_home=at_home,
    )


def _bought(need: Need, day: Day) -> tuple[str, str | None]:
    """The packages, and what is left over of them (None where nothing can be said)."""
    food = need.food
    named = _in_named_containers(need, day)
    if named:
        return named, None
    sold = packages(food) if food else ()
    if sold:
        return _in_packages(need, sold, day)
    count = _counted(need)
    if count:
        return _pieces(count, need, day), None
    if need.grams and all(units.is_mass(amount.unit) for amount in need.amounts):
        return by_weight(need.grams, day), None
    if food is not None and food.g_per_piece and need.grams:
        if food.form in ("whole", "leafy"):
            return _by_the_piece(need.grams, food), None
        if food.piece_word in CONTAINERS:
            count = whole(need.grams / food.g_per_piece)
            return f"{count} {plural(food.piece_word or '', count)}", None
    if need.grams:
        return by_weight(need.grams, day), None
    return _unweighed(need, day), None


def _unweighed(need: Need, day: Day) -> str:
    if not need.amounts:
        return "as much as you like"
    is_poured = all(units.is_volume(amount.unit) for amount in need.amounts)
    wanted = asked(need, day).removesuffix(" (optional)")
    if is_poured:
        return f"a package that holds {wanted}"
    is_whole = all(amount.high == int(amount.high) for amount in need.amounts)
    return wanted if is_whole else f"enough for {wanted}"


def _counted(need: Need) -> int | None:
    """Whole pieces, where every line counts them."""
    if not need.amounts or any(amount.unit is not None for amount in need.amounts):
        return None
    return sum(whole(amount.high) for amount in need.amounts)


def _pieces(count: int, need: Need, day: Day) -> str:
    """So many pieces, of the size that the lines tell; of no size where they differ."""
    sizes = dict.fromkeys(word for item in need.items for word in item.ingredient.state if word in SIZES)
    words = sizes if len(sizes) == 1 else {}
    each = dict.fromkeys(
        package_size(amount.package, day.units) for amount in need.amounts if amount.package is not None
    )
    size = f" ({' or '.join(each)} each)" if each else ""
    return " ".join((str(count), *words, counted(need.name, count))) + size


def _in_named_containers(need: Need, day: Day) -> str | None:
    """Cans and bags as the recipe counts them, rounded up to whole ones."""
    if not need.amounts or any(amount.unit not in CONTAINERS for amount in need.amounts):
        return None
    parts = []
    for amount in added(need.amounts):
        count = whole(amount.high)
        size = f" ({package_size(amount.package, day.units)})" if amount.package else ""
        parts.append(f"{count} {plural(amount.unit or '', count)}{size}")
    return " and ".join(parts)


def _in_packages(need: Need, sold: Sequence[Package], day: Day) -> tuple[str, str | None]:
    unit = sold[0].unit
    wanted = _measured(need, unit)
    if not wanted:
        return worded(sold[0], 1, day), None
    counts = least_waste(wanted, [row.size for row in sold])
    words = " and ".join(worded(row, count, day) for row, count in zip(sold, counts, strict=True) if count)
    bought = sum(count * row.size for row, count in zip(sold, counts, strict=True))
    smallest = min(row.size for row, count in zip(sold, counts, strict=True) if count)
    left = bought - wanted
    if left < max(1, NO_REST * smallest):
        return words, None
    return words, _left(left, wanted, unit, need, day)


def _measured(need: Need, unit: str) -> float | None:
    if unit == "ml":
        return need.milliliters
    if unit == "g":
        return need.grams
    count = _counted(need)
    if count:
        return float(count)
    each = need.food.g_per_piece if need.food else None
    return max(1, math.ceil(need.grams / each - 0.05)) if need.grams and each else None


def _left(left: float, wanted: float, unit: str, need: Need, day: Day) -> str:
    """What is left: in pieces where the recipe counts pieces, else as much as an eye can tell."""
    if unit == "piece":
        return f"{left:.0f}"
    words = {amount.unit for amount in need.amounts}
    if len(words) == 1 and words <= PARTS:
        count = round(left / wanted * sum(amount.high for amount in need.amounts))
        if count:
            return f"about {count} {plural(str(*words), count)}"
    return rough_volume(left, day) if unit == "ml" else rough_mass(left, day)


def _by_the_piece(wanted: float, food: Food) -> str:
    each = food.g_per_piece or 1.0
    count = max(1, math.ceil(wanted / each - 0.1))
    word = food.piece_word or ""
    named = food.name.partition(",")[0]
    if word and word not in ("whole", "piece", named, "fruit", "bulb", "medium", "each"):
        return f"{count} {plural(word, count)}"
    return f"{count} {plural(named, count)}"
