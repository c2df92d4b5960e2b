"""High ground: where water boils (handbook chapter 5).

The standard atmosphere gives the pressure, the industrial steam formulation the boiling point at that pressure; both
in plain arithmetic. The printed tables (boiling.csv) are the check.
"""

from __future__ import annotations

from functools import lru_cache

from rules.because import Rule
from rules.plan import Reason
from rules.table import Row, read

#: From here on the boiling point is told [ft]: below, it differs from 212 °F by less than a thermometer shows.
TOLD_FROM_FT = 1000.0
BOILS_AT = Rule(
    id="heat.boils-at",
    because="at {feet:,.0f} ft water boils at {temp:.0f} °F: a simmer is cooler there and everything in it takes longer",
)

#: IAPWS-IF97, region 4, coefficients n1 .. n10 of table 34.
_N = (
    0.11670521452767e4,
    -0.72421316703206e6,
    -0.17073846940092e2,
    0.12020824702470e5,
    -0.32325550322333e7,
    0.14915108613530e2,
    -0.48232657361591e4,
    0.40511340542057e6,
    -0.23855557567849,
    0.65017534844798e3,
)
METERS_PER_FOOT = 0.3048  # exact by definition


def pressure_pa(elevation_m: float) -> float:
    """Air pressure [Pa] at a height [m], 0 to 11 km.

    Source: ICAO standard atmosphere, 101325 (1 - 2.25577e-5 h)^5.25588.
    """
    return float(101325 * (1 - 2.25577e-5 * elevation_m) ** 5.25588)


def saturation_k(pascal: float) -> float:
    """The temperature [K] at which water boils under a pressure [Pa].

    Source: IAPWS-IF97 (2007), equation 31, the backward equation of region 4.
    """
    beta = (pascal / 1e6) ** 0.25
    e = beta**2 + _N[2] * beta + _N[5]
    f = _N[0] * beta**2 + _N[3] * beta + _N[6]
    g = _N[1] * beta**2 + _N[4] * beta + _N[7]
    d = 2 * g / (-f - (f**2 - 4 * e * g) ** 0.5)
    return float((_N[9] + d - ((_N[9] + d) ** 2 - 4 * (_N[8] + _N[9] * d)) ** 0.5) / 2)


class BoilingRow(Row, frozen=True, kw_only=True):
    """A printed boiling point [°F] and its height [ft]."""

    id: str
    elevation_ft: float
    boiling_f: float


def boils_at(elevation_ft: float) -> tuple[Reason, ...]:
    """Where water boils on high ground, with the printed figure nearest to it as the source; nothing on low ground."""
    if elevation_ft < TOLD_FROM_FT:
        return ()
    rows: tuple[BoilingRow, ...] = read("boiling.csv", BoilingRow)
    nearest = min(rows, key=lambda row: abs(row.elevation_ft - elevation_ft))
    return (BOILS_AT.says("boil", nearest, feet=elevation_ft, temp=boiling_f(elevation_ft)),)


@lru_cache(maxsize=1024)
def boiling_f(elevation_ft: float) -> float:
    """Where water boils [°F] at a height [ft]."""
    kelvin = saturation_k(pressure_pa(elevation_ft * METERS_PER_FOOT))
    return kelvin * 1.8 - 459.67
