from __future__ import annotations

from math import pi

import pytest

from rules.pot.iron import depth_of, figure, fill_of, oven, ovens, volume_at


def test_the_shallow_pot_stands_in_where_no_deep_one_is_sold() -> None:
    assert oven(12, "deep").depth_in == 5
    assert oven(16, "deep") == oven(16, "shallow")


def test_a_pot_that_tapers_stands_deeper_than_its_rim_says() -> None:
    twelve = oven(12, "shallow")
    quart_ml = 946.353
    by_the_rim = 57.75 / (pi / 4 * 144)
    assert depth_of(twelve, quart_ml) > by_the_rim


@pytest.mark.parametrize("pot", ovens(), ids=lambda pot: pot.id)
def test_depth_and_volume_are_each_others_inverse(pot: object) -> None:
    for depth in (0.1, 1.0, pot.depth_in):  # type: ignore[attr-defined]
        assert depth_of(pot, volume_at(pot, depth)) == pytest.approx(depth)  # type: ignore[arg-type]


def test_an_empty_pot_has_no_fill_and_a_heaped_one_more_than_its_depth() -> None:
    twelve = oven(12, "shallow")
    assert fill_of(twelve, 0) == 0
    assert fill_of(twelve, volume_at(twelve, twelve.depth_in)) == pytest.approx(1)
    assert fill_of(twelve, 8000) > 1


def test_a_figure_that_no_rule_names_is_an_error() -> None:
    with pytest.raises(StopIteration):
        figure("moon phase")
