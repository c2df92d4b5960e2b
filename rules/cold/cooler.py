"""The cooler's budget: what warms it, what the frozen bags and the ice take, how much ice to bring.

Heat comes through the walls, with every opening of the lid and with what goes in warm; it melts ice and thaws bags.
Temperatures in °C, heat in kJ, hours, kilograms. Handbook, section 6.
"""

from __future__ import annotations

import math

from rules.cold.hours import figure
from rules.recipe import Struct

SECONDS_PER_HOUR = 3600
#: The size for which the leak is known [US quarts]; walls grow with the square of the edge, room with its cube.
KNOWN_QUARTS = 48.0
#: The difference between air and inside for which an opening is known [K].
KNOWN_DIFFERENCE = 19.0


class Budget(Struct, frozen=True, kw_only=True):
    """Where the heat of one trip comes from and what takes it [kJ]; `ice_kg` melts, without the margin."""

    leak: float
    openings: float
    warm: float
    bags: float
    ice_kg: float

    @property
    def heat(self) -> float:
        """All that comes in."""
        return self.leak + self.openings + self.warm

    @property
    def taken(self) -> float:
        """What ice and bags take."""
        return self.bags + self.ice_kg * figure("latent_heat").value


def leak_w_per_k(quarts: float, *, known: float | None = None) -> float:
    """Leak of the walls and lid of a chest [W/K], scaled by its surface from a 48-quart one.

    Source: the row `cooler_ua`; K = U A / L, FAO Fisheries Technical Paper 436 (2003), chapter 7.
    """
    of_48 = figure("cooler_ua").value if known is None else known
    return of_48 * float((quarts / KNOWN_QUARTS) ** (2 / 3))


def leak_kj(*, w_per_k: float, air_c: float, inside_c: float, hours: float) -> float:
    """Heat through the walls over a trip [kJ]; none when it is colder outside."""
    return w_per_k * max(0.0, air_c - inside_c) * hours * SECONDS_PER_HOUR / 1000


def openings_kj(*, air_c: float, inside_c: float, hours: float, quarts: float) -> float:
    """Heat that comes in with every opening of the lid [kJ]."""
    each = figure("opening_kj").value * max(0.0, air_c - inside_c) / KNOWN_DIFFERENCE * quarts / KNOWN_QUARTS
    return each * figure("openings_per_day").value * hours / 24


def ice_to_cool(*, kg: float, kj_per_kg_k: float, from_c: float, to_c: float = 0.0) -> float:
    """Ice [kg] that melts to cool food. Source: FAO, quantity of ice required, T0713E chapter 3."""
    return kg * kj_per_kg_k * max(0.0, from_c - to_c) / figure("latent_heat").value


def budget(
    *, quarts: float, air_c: float, hours: float, warm_kj: float, bags_kj: float, w_per_k: float | None = None
) -> Budget:
    """The heat of a trip and the ice that it melts; `bags_kj` is what the frozen bags take on the way."""
    inside = figure("in_cooler").value
    leak = leak_kj(w_per_k=leak_w_per_k(quarts, known=w_per_k), air_c=air_c, inside_c=inside, hours=hours)
    openings = openings_kj(air_c=air_c, inside_c=inside, hours=hours, quarts=quarts)
    heat = leak + openings + warm_kj
    bags = min(bags_kj, heat)
    return Budget(
        leak=leak,
        openings=openings,
        warm=warm_kj,
        bags=bags,
        ice_kg=(heat - bags) / figure("latent_heat").value,
    )


def cold_hours(
    *, ice_kg: float, quarts: float, air_c: float, warm_kj: float = 0.0, bags_kj: float = 0.0
) -> float:
    """Hours until the last ice is gone; infinite in air as cold as the inside."""
    hour = budget(quarts=quarts, air_c=air_c, hours=1.0, warm_kj=0.0, bags_kj=0.0)
    if hour.heat <= 0:
        return math.inf
    return max(0.0, ice_kg * figure("latent_heat").value + bags_kj - warm_kj) / hour.heat


def room_for_ice_kg(*, quarts: float, food_liters: float) -> float:
    """Ice cubes that fit beside the food [kg]."""
    liters = quarts * 0.946353 - food_liters
    return max(0.0, liters) * figure("ice_bulk").value
