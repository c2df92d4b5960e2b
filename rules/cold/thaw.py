"""Thawing: how long a flat frozen bag stays frozen in the cooler, in ice water, in cold water and in the open.

"Mostly thawed" is soft with a core of ice. The hours come from the enthalpy method in `slab`. Temperatures in °C,
lengths in m. Handbook, section 6.
"""

from __future__ import annotations

import math

from rules.cold.composition import Composition
from rules.cold.freezing import enthalpy, freezing_point
from rules.cold.hours import ColdFigure, figure
from rules.cold.slab import thaw_hours
from rules.plan import BagState, Hours

#: Above its freezing point by this much a food is thawed through [K].
JUST_ABOVE = 0.05


def thaw_heat(food: Composition, *, from_c: float) -> float:
    """Heat [kJ/kg] from the freezer's temperature until the last ice is gone; none where nothing froze."""
    return max(enthalpy(food, freezing_point(food) + JUST_ABOVE) - enthalpy(food, from_c), 0.0)


def thaw_range(
    food: Composition, *, thickness: float, around: tuple[float, float], h: ColdFigure, from_c: float
) -> Hours | None:
    """The hours to mostly thawed, from the warmest air and best contact to the coldest and poorest; None: never."""
    share = figure("mostly_thawed")
    warm, cold = max(around), min(around)
    low = thaw_hours(food, thickness=thickness, around_c=warm, h=h.most, from_c=from_c, share=share.least)
    if math.isinf(low):
        return None
    high = thaw_hours(food, thickness=thickness, around_c=cold, h=h.least, from_c=from_c, share=share.most)
    # The edge of the range may lie where nothing thaws; then twice the middle stands for "very long".
    middle = thaw_hours(
        food, thickness=thickness, around_c=(warm + cold) / 2, h=h.value, from_c=from_c, share=share.value
    )
    return Hours(low=low, high=min(high, 2 * middle))


def state_after(hours: float, thaw: Hours | None) -> BagState:
    """How a bag is after so many hours in the cooler."""
    if thaw is None or hours < thaw.low / 2:
        return "frozen"
    return "thawed" if hours >= thaw.high else "part thawed"
