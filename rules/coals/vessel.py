"""The iron: depth, taper and weight of the camp pots, for heat and wind (handbook chapters 4 and 5)."""

from __future__ import annotations

from functools import cache

from rules.coals.balance import surface_ratio
from rules.plan import Depth
from rules.table import Row, read


class Iron(Row, frozen=True, kw_only=True):
    """A camp pot as iron: inside depth, bottom diameter, weight with its lid."""

    id: str
    diameter_in: int
    depth: Depth
    depth_in: float
    bottom_in: float
    weight_lb: float


@cache
def iron(diameter_in: int, depth: Depth) -> Iron:
    """The pot of that diameter; the shallow one where no deep one is sold."""
    every: tuple[Iron, ...] = read("pot_iron.csv", Iron)
    rows = [row for row in every if row.diameter_in == diameter_in]
    return next((row for row in rows if row.depth == depth), rows[-1])


@cache
def deep_factor(diameter_in: int, depth: Depth) -> float:
    """How much more surface a deep pot has than the shallow one that the chart means; 1.0 for a shallow pot."""
    shallow, this = iron(diameter_in, "shallow"), iron(diameter_in, depth)
    return surface_ratio(
        diameter_in=diameter_in,
        bottom_in=shallow.bottom_in,
        depth_in=shallow.depth_in,
        deep_in=this.depth_in,
    )
