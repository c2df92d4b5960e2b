"""The camp ovens as iron: capacity, and how deep a volume of food stands in a pot that tapers (handbook chapter 4)."""

from __future__ import annotations

from functools import cache
from math import pi

from rules import table
from rules.plan import Depth
from rules.table import Figure
from rules.units import to


class Oven(table.Row, frozen=True, kw_only=True):
    """A camp oven: rim and bottom diameter, inside depth, capacity, weight with lid."""

    id: str
    diameter_in: int
    depth: Depth
    depth_in: float
    bottom_in: float
    quarts: float
    weight_lb: float
    serves_low: int
    serves_high: int

    @property
    def rim_sq_in(self) -> float:
        """The circle of the rim [sq in], by which the trade matches pans."""
        return pi / 4 * self.diameter_in**2


@cache
def ovens() -> tuple[Oven, ...]:
    """Every camp oven that is sold, smallest first."""
    return tuple(sorted(table.read("ovens.csv", Oven), key=lambda row: (row.quarts, row.diameter_in)))


@cache
def oven(diameter_in: int, depth: Depth) -> Oven:
    """The oven of that diameter; the shallow one where no deep one is sold."""
    rows = {row.depth: row for row in ovens() if row.diameter_in == diameter_in}
    return rows.get(depth) or rows["shallow"]


@cache
def figure(name: str) -> float:
    """A figure of `pot_figures.csv`."""
    return next(row.value for row in table.read("pot_figures.csv", Figure) if row.id == name)


def depth_of(pot: Oven, milliliters: float) -> float:
    """How deep a volume [ml] stands in the pot [in].

    The pot is a frustum: at height h the radius is r0 + k h, so the volume up to there is pi/(3k) ((r0 + k h)^3 -
    r0^3), solved for h. Above the rim the wall is thought on.
    """
    bottom = pot.bottom_in / 2
    slope = (pot.diameter_in / 2 - bottom) / pot.depth_in
    cubic_in = to(milliliters, "milliliter", "cubic inch")
    radius = float((bottom**3 + 3 * slope * cubic_in / pi) ** (1 / 3))
    return max(0.0, (radius - bottom) / slope)


def volume_at(pot: Oven, depth_in: float) -> float:
    """The volume [ml] that stands so deep [in]; the inverse of `depth_of`."""
    bottom = pot.bottom_in / 2
    slope = (pot.diameter_in / 2 - bottom) / pot.depth_in
    cubic_in = pi / (3 * slope) * ((bottom + slope * depth_in) ** 3 - bottom**3)
    return to(cubic_in, "cubic inch", "milliliter")


def fill_of(pot: Oven, milliliters: float) -> float:
    """The share of the inside depth that a volume [ml] reaches; above 1 it runs over."""
    return depth_of(pot, milliliters) / pot.depth_in
