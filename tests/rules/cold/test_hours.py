from __future__ import annotations

import pytest

from rules.circumstances import Day
from rules.cold.hours import air_f, celsius, cooler_quarts, figure, in_cooler


def test_what_the_cook_says_counts_and_the_table_fills_in() -> None:
    assert in_cooler(Day(trip_hours=30)) == 30
    assert in_cooler(Day()) == figure("trip_hours").value
    assert cooler_quarts(Day(cooler_quarts=60)) == 60
    assert cooler_quarts(Day()) == 48


def test_a_cold_morning_at_camp_does_not_make_a_cold_road() -> None:
    assert air_f(Day(air_f=35)) == 70
    assert air_f(Day(air_f=88)) == 88
    assert air_f(Day(air_f=88, trip_air_f=60)) == 60


@pytest.mark.parametrize(("fahrenheit", "centigrade"), [(32, 0), (212, 100), (-40, -40)])
def test_fixed_points_of_the_two_scales(fahrenheit: float, centigrade: float) -> None:
    """Exact by definition."""
    assert celsius(fahrenheit) == pytest.approx(centigrade)


def test_a_figure_without_a_range_is_its_own_range() -> None:
    only = figure("latent_heat")
    assert only.least == only.value == only.most
    assert figure("in_cooler").least < figure("in_cooler").value < figure("in_cooler").most
