"""What a pack consists of, for the physics: foods of the catalogue to mass fractions, a pack to mass and thickness."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

from rules import table
from rules.cold.composition import Composition, density, mixture
from rules.cold.freezing import particles_at
from rules.cold.hours import figure
from rules.foods import Food, Item
from rules.plan import Pack

INCH = 0.0254
#: Sugars of these foods are glucose and fructose, of all others sucrose and lactose.
FRUIT_SUGARS = frozenset({"fruit", "vegetable"})


class BagSize(table.Row, frozen=True, kw_only=True):
    """The flat size of a bag that the container's name says."""

    id: str
    word: str
    width_in: float
    length_in: float


@cache
def composition(food: Food) -> Composition | None:
    """Mass fractions of a food of the catalogue; None where its table has no composition."""
    if food.water_pct is None:
        return None
    fibre = food.fiber_pct or 0.0
    parts = {
        "water": food.water_pct,
        "protein": food.protein_pct or 0.0,
        "fat": food.fat_pct or 0.0,
        "carbohydrate": max(0.0, (food.carb_pct or 0.0) - fibre),
        "fibre": fibre,
        "ash": food.ash_pct or 0.0,
        "alcohol": food.alcohol_pct or 0.0,
    }
    total = sum(parts.values())
    if total <= 0:
        return None
    shares = {name: part / total for name, part in parts.items()}
    sugars = min((food.sugars_pct or 0.0) / total, shares["carbohydrate"])
    return Composition(**shares, sugars=sugars, particles=_particles(food, shares, sugars))


def _particles(food: Food, shares: dict[str, float], sugars: float) -> float:
    """Moles dissolved per kilogram: from the measured freezing point, else from sugar, alcohol, salts and acids."""
    if food.freezing_c is not None:
        return particles_at(food.freezing_c, water=shares["water"], sugars=sugars, alcohol=shares["alcohol"])
    sugar = figure("molar_fruit_sugar" if food.group in FRUIT_SUGARS else "molar_sucrose").value
    return (
        1000 * sugars / sugar
        + 1000 * shares["alcohol"] / figure("molar_alcohol").value
        + figure("particles_per_ash").value * shares["ash"]
    )


def of_pack(pack: Pack, items: Sequence[Item]) -> tuple[Composition, float] | None:
    """The composition of a pack and its mass [kg], from those foods whose mass and composition are known."""
    parts = []
    for part in pack.items:
        item = items[part.ingredient]
        made_of = composition(item.food) if item.food else None
        grams = part.grams if part.grams is not None else (item.grams * part.share if item.grams else None)
        if made_of is not None and grams:
            parts.append((made_of, grams))
    if not parts:
        return None
    return mixture(parts), sum(grams for _, grams in parts) / 1000


def thickness(made_of: Composition, kg: float, container: str | None) -> float:
    """Thickness [m] of a pack pressed flat in its bag; without a bag, of a parcel as thick as it is deep."""
    volume = kg / density(made_of, 4.0)
    size = _bag(container)
    least, most = figure("thinnest_mm").value / 1000, figure("thickest_mm").value / 1000
    if size is None:
        return min(most, max(least, float(volume ** (1 / 3)) / 2))
    area = size.width_in * size.length_in * INCH**2 * figure("bag_cover").value
    return min(most, max(least, volume / area))


def _bag(container: str | None) -> BagSize | None:
    rows = table.read("bags.csv", BagSize)
    return next((row for row in rows if container and row.word in container and "bag" in container), None)
