"""Every figure is found with its unit and its source."""

from __future__ import annotations

import pytest

from rules.coals.figures import figure, ground, heat, share, wind


@pytest.mark.parametrize(
    ("key", "unit"),
    [("turn", "min"), ("mass", "g"), ("wind most", "factor"), ("reserve", "share"), ("band", "°F")],
)
def test_a_figure_knows_its_unit_and_source(key, unit) -> None:
    assert figure(key).unit == unit
    assert figure(key).source


def test_a_share_keeps_whole_parts() -> None:
    assert (share("bake").top_parts, share("bake").under_parts) == (2, 1)
    assert (share("simmer").top_parts, share("simmer").under_parts) == (1, 2)
    assert share("fry").top_parts == 0


def test_words_for_wind_and_ground_have_rows() -> None:
    assert [wind(word).speed_mph for word in ("calm", "breezy", "windy")] == [2, 10, 20]
    assert ground("dry").most_factor == 1
    assert ground("snow").effusivity is None


def test_hot_frying_takes_two_and_a_half_coals_an_inch() -> None:
    assert heat("fry").per_inch == 2.5
