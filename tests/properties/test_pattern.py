"""Every lid and every pot has room for every count that a plan may ask, without two coals in one place."""

from __future__ import annotations

import itertools
import math

from hypothesis import given, settings
from hypothesis import strategies as st

from rules.circumstances import DIAMETERS_IN
from rules.coals.figures import figure
from rules.coals.pattern import Spot, on_lid, under_pot
from tests.rules.coals.test_pattern import apart, corners

diameters = st.sampled_from(DIAMETERS_IN)
counts = st.integers(0, 90)


def laid_well(spots: tuple[Spot, ...], count: int, *, outer: float, hole: float) -> None:
    assert len(spots) == count
    for _, layer in itertools.groupby(spots, key=lambda spot: spot.layer):
        here = list(layer)
        assert all(apart(one, other) for one, other in itertools.combinations(here, 2))
        reach = [math.hypot(*corner) for spot in here for corner in corners(spot)]
        assert max(reach) <= outer + 1e-6
        assert min(reach) >= hole - 1e-6


@given(diameters, counts)
@settings(max_examples=150, deadline=None)
def test_on_a_lid_none_overlaps_none_lies_outside_and_the_handle_is_free(diameter: int, count: int) -> None:
    spots = on_lid(diameter, count)
    if spots:
        laid_well(spots, count, outer=diameter / 2, hole=figure("lid handle").value)


@given(diameters, counts, st.booleans())
@settings(max_examples=150, deadline=None)
def test_under_a_pot_none_overlaps_and_all_lie_inside_its_shadow(
    diameter: int, count: int, spread: bool
) -> None:
    spots = under_pot(diameter, count, spread=spread)
    if spots:
        laid_well(spots, count, outer=diameter / 2 - figure("rim gap").value, hole=0.0)
    layers = [spot.layer for spot in spots]
    assert layers == sorted(layers)
