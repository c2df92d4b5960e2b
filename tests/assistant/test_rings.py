"""The drawing of the coals: as many signs as briquettes, inside the rim, the same left and right."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.show.rings import COAL, COLUMNS, ROWS, levels
from rules.circumstances import DIAMETERS_IN
from rules.coals.pattern import pattern


@given(st.sampled_from(DIAMETERS_IN), st.integers(0, 40), st.integers(0, 40), st.booleans())
def test_every_briquette_has_its_sign(diameter_in: int, top: int, under: int, is_spread: bool) -> None:
    lid, floor = levels(diameter_in, top, under, pattern(diameter_in, top, under, spread=is_spread))
    assert (sum(row.count(COAL) for row in lid), sum(row.count(COAL) for row in floor)) == (top, under)
    assert {len(row) for row in (*lid, *floor)} == {COLUMNS}
    assert (len(lid), len(floor)) == (ROWS, ROWS)


def test_a_ring_of_seven_with_one_in_the_centre() -> None:
    """Under a 12-inch pot at 350 °F lie 8; the printed pattern is a ring of seven and one in the middle."""
    _, floor = levels(12, 17, 8, pattern(12, 17, 8))
    assert floor[ROWS // 2][COLUMNS // 2] == COAL
    assert all(abs(row.index(COAL) - (COLUMNS - 1 - row.rindex(COAL))) <= 2 for row in floor if COAL in row)


@pytest.mark.parametrize("is_spread", [True, False])
def test_the_drawing_follows_the_words(is_spread: bool) -> None:
    said = pattern(12, 0, 30, spread=is_spread)
    other = pattern(12, 0, 30, spread=not is_spread)
    assert said == other or levels(12, 0, 30, said) != levels(12, 0, 30, other)
