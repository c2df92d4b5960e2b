"""Freezing: where it begins, how much is ice, how much heat, how long (handbook, section 6).

Sugar, alcohol and salts lower the point at which a food begins to freeze, and hold on to some of its water; what
freezes out leaves the rest more concentrated. From that follow the ice at a temperature and the heat content, and
from the heat content the hours in the freezer. Temperatures in °C, heat in kJ/kg, lengths in m, times in seconds.
"""

from __future__ import annotations

import math
from functools import lru_cache

from rules.cold.composition import Composition, specific_heat
from rules.cold.hours import figure

#: Heat contents are counted from here; below it hardly anything changes.
REFERENCE_C = -40.0
#: A food that would begin to freeze only below this never freezes at home.
NEVER_C = -60.0


def bound_water(food: Composition) -> float:
    """Mass fraction of water that never freezes: held by protein, sugar and alcohol.

    Source: protein, Schwartzberg (1976), ASHRAE Handbook - Refrigeration 2006 chapter 9 eq. 3; sugar and alcohol fitted
    to the freezing points of their solutions, believed CRC Handbook.
    """
    held = figure("bound_by_protein").value * food.protein + _held_by_solutes(food)
    return min(held, food.water)


def _held_by_solutes(food: Composition) -> float:
    return figure("bound_by_sugar").value * food.sugars + figure("bound_by_alcohol").value * food.alcohol


def freezing_point(food: Composition) -> float:
    """Where the food begins to freeze [°C]: the molal depression of what is dissolved in its free water.

    Source: -1.858 K kg/mol, Korean J. Food Preservation 23(3):438, 2016; free water as in `bound_water`.
    """
    free = food.water - _held_by_solutes(food)
    if free <= 0 or food.particles <= 0:
        return NEVER_C if free <= 0 else 0.0
    return max(-figure("molal_depression").value * food.particles / free, NEVER_C)


def particles_at(freezing_c: float, *, water: float, sugars: float = 0.0, alcohol: float = 0.0) -> float:
    """The dissolved particles [mol/kg of food] that make a food freeze at `freezing_c`; the inverse of the above."""
    free = water - figure("bound_by_sugar").value * sugars - figure("bound_by_alcohol").value * alcohol
    return max(0.0, -freezing_c / figure("molal_depression").value * max(free, 0.0))


def ice_fraction(food: Composition, temp_c: float) -> float:
    """Mass fraction of ice at `temp_c`: free water freezes out until the rest freezes no more at this temperature.

    Source: ideal dilution, ASHRAE Handbook - Refrigeration 2006 chapter 9 eq. 4.
    """
    begins = freezing_point(food)
    if temp_c >= begins or temp_c >= 0:
        return 0.0
    return max(0.0, (food.water - bound_water(food)) * (1 - begins / temp_c))


def ice_fraction_of_flesh(*, water: float, freezing_c: float, temp_c: float) -> float:
    """Mass fraction of ice in meat, fish and plants by an empirical curve, which the conductivity is taken with.

    Source: Tchigeov (1979), ASHRAE Handbook - Refrigeration 2006 chapter 9 eq. 5.
    """
    if temp_c >= freezing_c:
        return 0.0
    return min(water, 1.105 * water / (1 + 0.7138 / math.log(freezing_c - temp_c + 1)))


@lru_cache(maxsize=4096)
def enthalpy(food: Composition, temp_c: float) -> float:
    """Heat content [kJ/kg] counted from -40 °C: the warming of every component and the melting of its ice."""
    ice = ice_fraction(food, temp_c)
    coldest = ice_fraction(food, REFERENCE_C)
    molten = (coldest - ice) * figure("latent_heat").value
    return _warming(food, temp_c) + molten


def _warming(food: Composition, temp_c: float) -> float:
    """Heat [kJ/kg] to warm from -40 °C without melting: Simpson's rule on each side of the freezing point."""
    begins = min(max(freezing_point(food), REFERENCE_C), 0.0)
    spans = [(REFERENCE_C, min(temp_c, begins))]
    if temp_c > begins:
        spans.append((begins, min(temp_c, 0.0)))
        spans.append((0.0, max(temp_c, 0.0)))
    return sum(_simpson(food, low, high) for low, high in spans if high > low)


def _simpson(food: Composition, low: float, high: float, pieces: int = 6) -> float:
    # Both ends from inside the span: at its ends the specific heat of water and the share of ice may jump.
    step = (high - low) / pieces
    nudge = 1e-9 * max(1.0, high - low)
    total = 0.0
    for number in range(pieces + 1):
        t = min(max(low + number * step, low + nudge), high - nudge)
        weight = 1 if number in (0, pieces) else 4 if number % 2 else 2
        total += weight * specific_heat(food, t, ice=ice_fraction(food, t))
    return total * step / 3


def temperature(food: Composition, heat_kj: float) -> float:
    """The temperature [°C] at which the heat content is `heat_kj`; the inverse of `enthalpy`, by bisection."""
    low, high = REFERENCE_C, 120.0
    for _ in range(50):
        middle = (low + high) / 2
        if enthalpy(food, middle) < heat_kj:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def latent_heat(food: Composition) -> float:
    """Heat [kJ/kg] that all its water takes to melt. Source: chapter 9, 334 kJ for each kilogram of water."""
    return food.water * figure("latent_heat").value
