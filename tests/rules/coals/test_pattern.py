"""Where briquettes lie: none overlaps another, none lies outside, and the words say what the places are."""

from __future__ import annotations

import itertools
import math

import pytest

from rules.coals.chart import column
from rules.coals.pattern import Spot, half_sizes, on_lid, pattern, under_pot

DIAMETERS = (5, 8, 10, 12, 14, 16)
COUNTS = (1, 2, 3, 5, 7, 8, 9, 12, 17, 22, 30, 45)


def corners(spot: Spot) -> list[tuple[float, float]]:
    out, along = half_sizes(spot.pose)
    cos, sin = math.cos(spot.turn), math.sin(spot.turn)
    return [
        (spot.x_in + r * cos - a * sin, spot.y_in + r * sin + a * cos)
        for r, a in ((out, along), (out, -along), (-out, -along), (-out, along))
    ]


def apart(one: Spot, other: Spot) -> bool:
    """The separating axis theorem for two rectangles, touching allowed."""
    for spot in (one, other):
        for turn in (spot.turn, spot.turn + math.pi / 2):
            axis = (math.cos(turn), math.sin(turn))
            mine = [x * axis[0] + y * axis[1] for x, y in corners(one)]
            theirs = [x * axis[0] + y * axis[1] for x, y in corners(other)]
            if max(mine) <= min(theirs) + 1e-6 or max(theirs) <= min(mine) + 1e-6:
                return True
    return False


@pytest.mark.parametrize("diameter", DIAMETERS)
@pytest.mark.parametrize("count", COUNTS)
@pytest.mark.parametrize(
    "lay", [on_lid, under_pot, lambda d, n: under_pot(d, n, spread=True)], ids=["lid", "under", "spread"]
)
def test_no_two_overlap_and_none_lies_outside(lay, diameter, count) -> None:
    spots = lay(diameter, count)
    assert len(spots) == count
    for _, layer in itertools.groupby(spots, key=lambda spot: spot.layer):
        here = list(layer)
        assert all(apart(one, other) for one, other in itertools.combinations(here, 2))
        assert all(math.hypot(*corner) <= diameter / 2 + 1e-6 for spot in here for corner in corners(spot))


def test_the_ring_under_the_pot_keeps_half_an_inch_from_the_edge() -> None:
    """Printed: a circle at least half an inch inside the pot's edge."""
    for spot in under_pot(12, 8):
        assert all(math.hypot(*corner) <= 5.5 + 1e-6 for corner in corners(spot))


def test_the_handle_of_the_lid_stays_free() -> None:
    for spot in on_lid(12, 17):
        assert all(math.hypot(*corner) >= 0.9 for corner in corners(spot))


@pytest.mark.parametrize(
    "cell", [cell for d in (8, 10, 12, 14, 16) for cell in column(d)], ids=lambda c: c.id
)
def test_the_charts_counts_lie_in_one_layer(cell) -> None:
    spots = (*on_lid(cell.diameter_in, cell.top), *under_pot(cell.diameter_in, cell.under))
    assert {spot.layer for spot in spots} == {0}


def test_eight_under_a_twelve_inch_pot_are_seven_in_a_ring_and_one_in_the_centre() -> None:
    assert pattern(12, 17, 8).under == "7 in a ring, 1 in the centre"
    assert pattern(12, 17, 8).top == "13 in a ring along the flange, 4 spread inside it"


def test_seven_leave_the_centre_free_and_none_is_said() -> None:
    assert pattern(10, 0, 7).under == "7 in a ring"
    assert pattern(10, 0, 7).top == "none"


@pytest.mark.parametrize("count", COUNTS)
def test_the_words_count_what_lies_there(count) -> None:
    import re

    said = pattern(12, count, count, spread=True)
    for words in (said.top, said.under):
        assert count == sum(map(int, re.findall(r"\d+", words)))


def test_frying_spreads_its_coals_under_the_whole_bottom() -> None:
    assert "inside it" in pattern(12, 0, 15, spread=True).under
    assert "inside it" not in pattern(12, 0, 12).under
