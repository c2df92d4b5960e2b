"""Where water boils; the printed tables and the steam library stand in tests/outside."""

from __future__ import annotations

import pytest

from rules.coals.highground import boiling_f, boils_at, pressure_pa, saturation_k


def test_sea_level_is_the_standard_atmosphere() -> None:
    assert pressure_pa(0) == 101325


@pytest.mark.parametrize(("pascal", "kelvin"), [(0.1e6, 372.755919), (1e6, 453.035632), (10e6, 584.149488)])
def test_the_backward_equation_gives_its_own_check_values(pascal, kelvin) -> None:
    """IAPWS-IF97 (2007 release), table 36, all printed digits."""
    assert kelvin == pytest.approx(saturation_k(pascal), abs=5e-7)


def test_water_boils_cooler_the_higher_one_camps() -> None:
    points = [boiling_f(float(feet)) for feet in range(-1000, 15000, 1000)]
    assert points == sorted(points, reverse=True)


def test_the_boiling_point_is_told_on_high_ground_with_a_printed_figure_beside_it() -> None:
    (reason,) = boils_at(7000)
    assert reason.rule == "heat.boils-at"
    assert "199 °F" in reason.because
    assert "FoodSafety.gov" in reason.source
    assert boils_at(500) == ()
