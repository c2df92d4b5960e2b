"""What a food is made of, and what follows: heat capacity, density, conductivity (handbook, section 6).

The equations of Choi and Okos: each component's property is a polynomial in temperature; a food's is their mean by
mass or by volume. Temperatures in °C, fractions by mass. Source: Choi and Okos (1986), coefficients in
`tables/choi_okos.csv`; mixing rules of the ASHRAE Handbook - Refrigeration 2006, chapter 9.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from typing import Literal

from rules import table
from rules.recipe import Struct

Property = Literal["conductivity", "density", "specific heat"]
Component = Literal["water", "protein", "fat", "carbohydrate", "fibre", "ash", "alcohol", "ice"]
#: The components of an unfrozen food; ice is water that changed.
UNFROZEN: tuple[Component, ...] = ("water", "protein", "fat", "carbohydrate", "fibre", "ash", "alcohol")


class Coefficients(table.Row, frozen=True, kw_only=True):
    """a0 + a1 t + a2 t² of one property of one component, for t [°C] from `low_c` to `high_c`."""

    id: str
    property: Property
    component: Component
    low_c: float
    high_c: float
    a0: float
    a1: float
    a2: float


class Composition(Struct, frozen=True, kw_only=True):
    """Mass fractions of a food, which add up to one; `particles` are moles dissolved per kilogram of the food.

    `carbohydrate` counts sugars and starch without `fibre`; `sugars` is the part of it that dissolves.
    """

    water: float = 0.0
    protein: float = 0.0
    fat: float = 0.0
    carbohydrate: float = 0.0
    fibre: float = 0.0
    ash: float = 0.0
    alcohol: float = 0.0
    sugars: float = 0.0
    particles: float = 0.0


def mixture(parts: Iterable[tuple[Composition, float]]) -> Composition:
    """The composition of foods together; each with its mass, in any one unit."""
    known = [(part, mass) for part, mass in parts if mass > 0]
    total = sum(mass for _, mass in known)
    if not total:
        return Composition()
    return Composition(
        **{
            name: sum(getattr(part, name) * mass for part, mass in known) / total
            for name in Composition.__struct_fields__
        }
    )


@cache
def _rows() -> dict[tuple[Property, Component], tuple[Coefficients, ...]]:
    found: dict[tuple[Property, Component], tuple[Coefficients, ...]] = {}
    for row in table.read("choi_okos.csv", Coefficients):
        key = (row.property, row.component)
        found[key] = tuple(sorted((*found.get(key, ()), row), key=lambda other: other.low_c))
    return found


def of_component(what: Property, component: Component, temp_c: float) -> float:
    """One property of one component: kJ/(kg K), kg/m3 or W/(m K). Beyond its range the nearest end holds."""
    rows = _rows()[what, component]
    row = next((row for row in rows if temp_c <= row.high_c), rows[-1])
    t = min(max(temp_c, row.low_c), row.high_c)
    return row.a0 + row.a1 * t + row.a2 * t * t


def _fractions(food: Composition, ice: float) -> list[tuple[Component, float]]:
    fractions: list[tuple[Component, float]] = [(name, getattr(food, name)) for name in UNFROZEN]
    fractions[0] = ("water", food.water - ice)
    return [(name, share) for name, share in (*fractions, ("ice", ice)) if share > 0]


def specific_heat(food: Composition, temp_c: float, *, ice: float = 0.0) -> float:
    """Heat capacity without latent heat [kJ/(kg K)]; `ice` is the mass fraction frozen. Source: chapter 9, eq. 10."""
    return sum(share * of_component("specific heat", name, temp_c) for name, share in _fractions(food, ice))


def density(food: Composition, temp_c: float, *, ice: float = 0.0) -> float:
    """Density without pores [kg/m3]. Source: chapter 9, eq. 6."""
    volume = sum(share / of_component("density", name, temp_c) for name, share in _fractions(food, ice))
    return 1 / volume if volume else of_component("density", "water", temp_c)


def conductivity_bounds(food: Composition, temp_c: float, *, ice: float = 0.0) -> tuple[float, float]:
    """Conductivity [W/(m K)] with heat along the layers and across them. Source: chapter 9, eqs. 30 and 31."""
    parts = [
        (share / of_component("density", name, temp_c), of_component("conductivity", name, temp_c))
        for name, share in _fractions(food, ice)
    ]
    volume = sum(part for part, _ in parts)
    along = sum(part * k for part, k in parts) / volume
    across = volume / sum(part / k for part, k in parts)
    return along, across


def conductivity(food: Composition, temp_c: float, *, ice: float = 0.0) -> float:
    """The middle of the two bounds [W/(m K)]; measured values lie between them."""
    along, across = conductivity_bounds(food, temp_c, ice=ice)
    return (along + across) / 2
