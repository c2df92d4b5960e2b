"""How one knows that it is done: the safe inside temperature of what was raw, and the signs of the dish.

Handbook chapter 5 ("always an inside check where one exists") and 7. Safe temperatures are the published chart's; crumb
and custard figures are a doneness, not a safety.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cache

from rules.because import Ledger, Rule
from rules.dish import Dish
from rules.foods import Item
from rules.hazards import hazard_of, raw
from rules.plan import Doneness
from rules.recipe import Recipe
from rules.table import Row, read

SAFE = Rule(
    id="done.safe",
    because="{what} must reach {temp:.0f} °F inside; color and clock do not tell",
)
GROUND_WORDS = frozenset(
    {"ground", "minced", "mince", "hamburger", "burger", "meatball", "sausage", "sausages"}
)


class Safe(Row, frozen=True, kw_only=True):
    """A published safe minimum inside temperature [°F]."""

    id: str
    temp_f: float | None = None
    rest_min: float | None = None
    sign: str


class Sign(Row, frozen=True, kw_only=True):
    """How a kind of dish looks and feels when it is done; a temperature [°F] where one helps."""

    id: str
    what: str
    temp_f: float | None = None
    sign: str


@cache
def safe(key: str) -> Safe:
    """The row of one food."""
    rows: tuple[Safe, ...] = read("safe_temperatures.csv", Safe)
    return next(row for row in rows if row.id == key)


@cache
def signs() -> dict[str, Sign]:
    """The signs by family and kind."""
    return {row.id: row for row in read("doneness.csv", Sign)}


def doneness(recipe: Recipe, items: tuple[Item, ...], dish: Dish, ledger: Ledger) -> tuple[Doneness, ...]:
    """Safe temperatures of what is raw first, then the signs of the dish."""
    found = list(_safe(recipe, items, dish, ledger))
    sign = signs()[_sign_key(recipe, items, dish)]
    found.append(Doneness(what=sign.what, temp_f=sign.temp_f, sign=sign.sign, source=sign.source))
    return tuple(found)


def _safe(recipe: Recipe, items: tuple[Item, ...], dish: Dish, ledger: Ledger) -> Iterator[Doneness]:
    told: set[str] = set()
    for kind in ("poultry", "meat", "fish", "egg"):
        for item in raw(kind, recipe, items, dish):
            key = _key(kind, item, dish)
            if key is None or key in told:
                continue
            told.add(key)
            row = safe(key)
            what = item.ingredient.name if kind != "egg" else "the middle of the dish"
            if row.temp_f is not None:
                ledger.note(SAFE.says("doneness", row, what=what, temp=row.temp_f))
            if key == "meat" and dish.family in SIMMERED:
                # A roast's juices and rest say nothing of meat cut small in a boiling sauce.
                yield Doneness(
                    what=what, temp_f=row.temp_f, sign=signs()["simmered meat"].sign, source=row.source
                )
                continue
            yield Doneness(
                what=what, temp_f=row.temp_f, rest_min=row.rest_min, sign=row.sign, source=row.source
            )


def _key(kind: str, item: Item, dish: Dish) -> str | None:
    """The row for a raw food; eggs count where they make the dish, not in a cake or dough."""
    food = item.food
    name = set(item.ingredient.name.lower().replace("-", " ").split()) | set(item.ingredient.state)
    is_ground = bool(name & GROUND_WORDS) or (food is not None and food.group == "ground meat")
    if kind == "poultry":
        return "ground poultry" if is_ground else "poultry"
    if kind == "meat":
        return "ground meat" if is_ground else "meat"
    if kind == "fish":
        return "shellfish" if food is not None and food.group == "shellfish" else "fish"
    return "egg dish" if dish.family in EGG_DISHES else None


SIMMERED = frozenset({"stew or braise", "pot roast", "soup", "beans or chili"})
EGG_DISHES = frozenset({"custard or pudding", "casserole or layered bake", "pan fry or saute"})


def _sign_key(recipe: Recipe, items: Sequence[Item], dish: Dish) -> str:
    """The row of signs: the family's, or that of a narrower kind."""
    title = (recipe.title or "").lower()
    hazards = {hazard_of(item) for item in items}
    if dish.family == "batter bake" and "cobbler" in title:
        return "cobbler"
    if dish.family == "beans or chili" and not any(_is_dry_bean(item) for item in items):
        return "chili"
    if dish.family == "custard or pudding" and "custard" not in title and "flan" not in title:
        return "pudding"
    if dish.family in ("stew or braise", "pot roast") and _is_tough(items):
        return "tough"
    if dish.family == "roast" and not hazards & {"meat", "poultry", "fish"}:
        return "roast vegetables"
    return dish.family if dish.family in signs() else "other"


def _is_tough(items: Sequence[Item]) -> bool:
    return any(item.food is not None and "tough" in item.food.traits for item in items)


def _is_dry_bean(item: Item) -> bool:
    return item.food is not None and item.food.group == "legume" and item.food.form == "granule"
