"""What heat and wind see of a camp pot: its surface, deep or shallow (handbook chapter 5)."""

from __future__ import annotations

from functools import cache

from rules.coals.balance import surface_ratio
from rules.plan import Depth
from rules.pot import Oven, oven


@cache
def iron(diameter_in: int, depth: Depth) -> Oven:
    """The pot of that diameter; the shallow one where no deep one is sold."""
    return oven(diameter_in, depth)


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
