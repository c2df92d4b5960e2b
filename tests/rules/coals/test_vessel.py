"""The iron as wind sees it."""

from __future__ import annotations

import pytest

from rules.coals.vessel import deep_factor, iron


@pytest.mark.parametrize(("diameter", "factor"), [(10, 1.18), (12, 1.13), (14, 1.07)])
def test_a_deep_pot_counts_by_its_surface(diameter, factor) -> None:
    """Handbook chapter 5: 10 in 1.18, 12 in 1.13, 14 in 1.07, computed from the printed depths."""
    assert factor == pytest.approx(deep_factor(diameter, "deep"), abs=0.005)


def test_a_shallow_pot_is_the_charts_pot() -> None:
    assert deep_factor(12, "shallow") == 1


def test_where_no_deep_pot_is_sold_the_shallow_one_stands_for_it() -> None:
    assert iron(16, "deep").depth == "shallow"
    assert deep_factor(16, "deep") == 1
