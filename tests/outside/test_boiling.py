"""Where water boils, against printed tables and the steam library.

Tables: "High-altitude cooking" (credited there to NOAA and NASA), Wikipedia, n.d.; FoodSafety.gov, "Safe Cooking at High
Altitudes"; New Mexico State University Extension, Guide E-215 (pressures). Library: iapws (IAPWS-IF97).
"""

from __future__ import annotations

import pytest
from iapws import IAPWS97

from rules.coals.highground import boiling_f, pressure_pa, saturation_k


@pytest.mark.parametrize(
    ("feet", "printed_f"),
    [
        (0, 212), (500, 211.1), (1000, 210.2), (2000, 208.4), (5000, 203), (6000, 201.1), (8000, 197.4), (10000, 193.6),
        (12000, 189.8), (14000, 185.9), (15000, 184.1), (7500, 198),
    ],
)  # fmt: skip
def test_boiling_point_of_the_printed_tables(feet: float, printed_f: float) -> None:
    """Tolerance 0.6 °F: the table follows its own rule of thumb and differs from its formulas by as much."""
    assert printed_f == pytest.approx(boiling_f(feet), abs=0.6)


@pytest.mark.parametrize("meters", [0, 1500, 3000, 5000])
def test_boiling_point_of_the_steam_library(meters: float) -> None:
    """Within 0.1 °C at the pressure of the standard atmosphere; the same equation, so in truth far closer."""
    pascal = pressure_pa(meters)
    library = IAPWS97(P=pascal / 1e6, x=0).T
    assert library == pytest.approx(saturation_k(pascal), abs=1e-4)
    assert library - 273.15 == pytest.approx((boiling_f(meters / 0.3048) - 32) / 1.8, abs=0.1)


@pytest.mark.parametrize(("meters", "hpa"), [(0, 1013.250), (1500, 845.597), (3000, 701.211)])
def test_pressure_of_the_standard_atmosphere(meters: float, hpa: float) -> None:
    """ICAO atmosphere as computed by a library; 0.2 hPa: ours takes geometric for geopotential height."""
    assert hpa == pytest.approx(pressure_pa(meters) / 100, abs=0.2)


@pytest.mark.parametrize(("feet", "psi"), [(0, 14.7), (5000, 12.28), (10000, 10.2)])
def test_pressure_of_the_extension_guide(feet: float, psi: float) -> None:
    """New Mexico State University, Guide E-215; tolerance 0.1 psi: it disagrees with the standard atmosphere by 0.09."""
    assert psi == pytest.approx(pressure_pa(feet * 0.3048) / 6894.757, abs=0.1)
