"""Heat in = heat lost: what cold air, wind and wet ground do to the number of coals (handbook chapter 5).

A pot that holds its temperature loses what the coals give. The pot is a short upright cylinder of dark iron: it
radiates, it warms the air that rises past it, and wind carries more away. Only the ratio of the day's loss to the loss
on a calm day of 70 °F is used; it multiplies the printed count. Plain floats in SI units in, plain floats out.
"""

from __future__ import annotations

import math
from functools import cache

STEFAN_BOLTZMANN = 5.670374e-8  # W/(m2 K4), CODATA 2018, exact by definition
STANDARD_PRESSURE = 101325.0  # Pa
GRAVITY = 9.80665  # m/s2
GAS_CONSTANT_AIR = 287.05  # J/(kg K), U.S. Standard Atmosphere 1976
HEAT_AIR = 1006.0  # J/(kg K), dry air near 350 K
#: Laminar flow along a plate gives way to turbulent flow at this Reynolds number.
TURBULENT_RE = 5e5
INCH = 0.0254  # m, exact by definition
MPH = 0.44704  # m/s, exact by definition


def kelvin(temp_f: float) -> float:
    """Absolute temperature [K] of `temp_f` [°F]."""
    return (temp_f + 459.67) / 1.8


def wind_at(height_m: float, *, speed: float, at_m: float, roughness_m: float) -> float:
    """Wind [m/s] at `height_m` when it blows with `speed` [m/s] at `at_m`: the logarithmic profile.

    Source: WMO Guide to Instruments and Methods of Observation, No. 8, chapter 5 (neutral air), from memory.
    """
    if height_m <= roughness_m:
        return 0.0
    return speed * math.log(height_m / roughness_m) / math.log(at_m / roughness_m)


def air(film_k: float) -> tuple[float, float, float]:
    """Conductivity [W/(m K)], kinematic viscosity [m2/s] and Prandtl number of air at `film_k` [K], sea level.

    Source: U.S. Standard Atmosphere 1976, equations 51 (viscosity) and 53 (conductivity).
    """
    viscosity = 1.458e-6 * film_k**1.5 / (film_k + 110.4)
    conductivity = 2.64638e-3 * film_k**1.5 / (film_k + 245.4 * 10 ** (-12 / film_k))
    density = STANDARD_PRESSURE / (GAS_CONSTANT_AIR * film_k)
    return conductivity, viscosity / density, viscosity * HEAT_AIR / conductivity


def nu_vertical(rayleigh: float, prandtl: float) -> float:
    """Nusselt number of still air along an upright wall, by height.

    Source: Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1323, equation 9.
    """
    spread = (1 + (0.492 / prandtl) ** (9 / 16)) ** (8 / 27)
    return float((0.825 + 0.387 * rayleigh ** (1 / 6) / spread) ** 2)


def nu_facing_up(rayleigh: float) -> float:
    """Nusselt number of still air over a hot plate facing up, by area over perimeter.

    Source: McAdams, Heat Transmission, 3rd ed. (1954).
    """
    return float(0.54 * rayleigh**0.25 if rayleigh <= 1e7 else 0.15 * rayleigh ** (1 / 3))


def nu_facing_down(rayleigh: float) -> float:
    """Nusselt number of still air under a hot plate facing down, by area over perimeter.

    Source: McAdams, Heat Transmission, 3rd ed. (1954).
    """
    return float(0.27 * rayleigh**0.25)


def nu_across(reynolds: float, prandtl: float) -> float:
    """Nusselt number of wind across a cylinder, by diameter.

    Source: Churchill and Bernstein, J. Heat Transfer 99 (1977) 300, equation 4.
    """
    spread = (1 + (0.4 / prandtl) ** (2 / 3)) ** 0.25
    low = 0.62 * reynolds**0.5 * prandtl ** (1 / 3) / spread
    return float(0.3 + low * (1 + (reynolds / 282000) ** (5 / 8)) ** 0.8)


def nu_along(reynolds: float, prandtl: float) -> float:
    """Nusselt number of wind along a flat plate, by length, laminar up to Re 5e5 and mixed beyond.

    Source: Bergman et al., Introduction to Heat Transfer, 6th ed., equations 7.30 and 7.38.
    """
    if reynolds <= TURBULENT_RE:
        return float(0.664 * reynolds**0.5 * prandtl ** (1 / 3))
    return float((0.037 * reynolds**0.8 - 871) * prandtl ** (1 / 3))


def loss(
    *, pot_f: float, air_f: float, wind: float, diameter_m: float, height_m: float, emissivity: float
) -> float:
    """Heat [W] that a pot at `pot_f` [°F] loses to air of `air_f` moving at `wind` [m/s], the ground left out.

    Side, lid and bottom radiate and convect; still air and wind join as the cube root of the sum of cubes (Bergman et
    al., section 9.9, exponent 3).
    """
    pot_k, air_k = kelvin(pot_f), kelvin(air_f)
    conductivity, viscosity, prandtl = air((pot_k + air_k) / 2)
    lift = GRAVITY * 2 / (pot_k + air_k) * abs(pot_k - air_k) * prandtl / viscosity**2
    plate_m = diameter_m / 4  # area over perimeter of a disc
    reynolds = wind * diameter_m / viscosity
    along = nu_along(reynolds, prandtl) * conductivity / diameter_m
    disc = math.pi * diameter_m**2 / 4
    convection = (
        _joined(
            nu_vertical(lift * height_m**3, prandtl) * conductivity / height_m,
            nu_across(reynolds, prandtl) * conductivity / diameter_m if wind else 0.0,
        )
        * math.pi
        * diameter_m
        * height_m
        + _joined(nu_facing_up(lift * plate_m**3) * conductivity / plate_m, along) * disc
        + _joined(nu_facing_down(lift * plate_m**3) * conductivity / plate_m, along) * disc
    )
    surface = math.pi * diameter_m * height_m + 2 * disc
    radiation = emissivity * STEFAN_BOLTZMANN * surface * (pot_k**4 - air_k**4)
    return convection * (pot_k - air_k) + radiation


def _joined(still: float, windy: float) -> float:
    return float((still**3 + windy**3) ** (1 / 3))


def loss_ratio(
    *,
    pot_f: float,
    air_f: float,
    wind: float,
    calm: float,
    diameter_m: float,
    height_m: float,
    emissivity: float,
    wind_most: float,
) -> float:
    """The day's loss over the loss at 70 °F in `calm` air [m/s]; wind's own part held between 1 and `wind_most`."""
    pot = {"pot_f": pot_f, "diameter_m": diameter_m, "height_m": height_m, "emissivity": emissivity}
    cold = loss(air_f=air_f, wind=calm, **pot)
    blown = loss(air_f=air_f, wind=wind, **pot) / cold
    return cold / loss(air_f=70.0, wind=calm, **pot) * min(max(blown, 1.0), wind_most)


def ground_flux(
    *, coals_k: float, ground_k: float, ash: float, effusivity: float | None, seconds: float
) -> float:
    """Mean heat [W/m2] that a bed of coals sends into the ground over `seconds`, through `ash` [W/(m2 K)].

    The ground takes as a half-space does: its resistance to a steady flux is 2 sqrt(t / pi) / effusivity; melting snow
    (`effusivity` None) has none. Source: Carslaw and Jaeger, Conduction of Heat in Solids, section 2.9.
    """
    soil = 0.0 if effusivity is None else 2 * math.sqrt(seconds / math.pi) / effusivity
    return (coals_k - ground_k) / (1 / ash + soil)


def surface_ratio(*, diameter_in: float, bottom_in: float, depth_in: float, deep_in: float) -> float:
    """Outer surface of a deep pot over the shallow one's of the same rim: frustum wall, bottom and lid."""
    return _surface(diameter_in, bottom_in, deep_in) / _surface(diameter_in, bottom_in, depth_in)


@cache
def _surface(diameter: float, bottom: float, depth: float) -> float:
    slant = math.hypot(depth, (diameter - bottom) / 2)
    return math.pi * ((diameter + bottom) / 2 * slant + (diameter**2 + bottom**2) / 4)
