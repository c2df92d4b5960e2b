"""Whole briquettes for a way of cooking on a day."""

from __future__ import annotations

import pytest

from rules.circumstances import Day
from rules.coals.counts import ALL_UNDER, WAYS, coals


def count(
    way: str, temp_f: float | None = None, day: Day | None = None, diameter: int = 12, depth: str = "shallow"
):
    return coals(way, diameter_in=diameter, depth=depth, day=day or Day(), temp_f=temp_f)


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("diameter", [5, 8, 10, 12, 14, 16])
@pytest.mark.parametrize("day", [Day(), Day(air_f=15, wind="windy", ground="snow")], ids=["mild", "rough"])
def test_above_and_below_are_whole_and_add_up(way, diameter, day) -> None:
    its = count(way, day=day, diameter=diameter)
    assert isinstance(its.top, int)
    assert isinstance(its.under, int)
    assert its.top >= 0
    assert its.under >= 0
    assert its.total == its.top + its.under
    assert its.total == pytest.approx(its.exact, abs=0.5 + 1e-9)


@pytest.mark.parametrize("way", sorted(ALL_UNDER))
def test_what_fries_or_boils_has_nothing_on_the_lid(way) -> None:
    assert count(way).top == 0


def test_the_printed_counts_of_the_trade() -> None:
    """12 inches: bake 17 over 8, roast 1:1, a stew at 24 as 8 over 16, hot frying about 30 under."""
    assert (count("bake", 350).top, count("bake", 350).under) == (17, 8)
    assert abs(count("roast", 350).top - count("roast", 350).under) <= 1
    assert (count("bring up").top, count("bring up").under) == (8, 16)
    assert count("fry").under == 30
    assert 12 <= count("gentle fry").under <= 18
    assert 12 <= count("simmer").total <= 15


def test_a_browning_top_has_three_quarters_on_the_lid() -> None:
    its = count("brown top", 375)
    assert its.top / its.total == pytest.approx(0.75, abs=0.02)


def test_damp_ground_adds_below_alone() -> None:
    assert count("bake", 350, Day(ground="snow")).top == 17
    assert count("bake", 350, Day(ground="snow")).under > 8


def test_a_deep_pot_takes_more() -> None:
    assert count("bake", 350, depth="deep").total == round(25 * 1.129)


@pytest.mark.parametrize(
    ("way", "temp_f", "diameter", "rule"),
    [
        ("bake", 350, 12, "coals.chart"),
        ("bake", 360, 12, "coals.between"),
        ("bake", 250, 12, "coals.beyond"),
        ("bake", 350, 5, "coals.small"),
        ("roast", 350, 12, "coals.share"),
        ("fry", None, 12, "coals.diameter"),
    ],
)
def test_a_count_says_where_it_comes_from(way, temp_f, diameter, rule) -> None:
    assert rule in [reason.rule for reason in count(way, temp_f, diameter=diameter).reasons]
