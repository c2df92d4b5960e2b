"""The drawn coals lie where `rules.coals.pattern` lays them: read back from the picture."""

from __future__ import annotations

import math
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.show.drawing import SCALE, level_drawing
from assistant.show.rings import laid
from rules.circumstances import DIAMETERS_IN
from rules.coals.pattern import Spot, on_lid, pattern, under_pot


def places(svg: str) -> list[tuple[float, float, float]]:
    """The coals of a picture: x, y [in] and turn [°] as the pattern counts them."""
    found = []
    for coal in ElementTree.fromstring(svg).iter("rect"):
        moved, turned = coal.get("transform", "").split(") ")
        x, y = map(float, moved.removeprefix("translate(").split())
        turn = float(turned.removeprefix("rotate(").removesuffix(")"))
        found.append((x / SCALE, -y / SCALE, -turn))
    return found


@given(st.sampled_from(DIAMETERS_IN), st.integers(0, 40), st.booleans())
@settings(max_examples=60)
def test_positions_are_those_of_the_pattern(diameter_in: int, count: int, spread: bool) -> None:
    for spots, is_lid in (
        (on_lid(diameter_in, count), True),
        (under_pot(diameter_in, count, spread=spread), False),
    ):
        drawn = places(level_drawing(spots, diameter_in, "coals", is_lid=is_lid))
        wanted = [(spot.x_in, spot.y_in, math.degrees(spot.turn)) for spot in spots]
        assert len(drawn) == count
        for seen, spot in zip(drawn, wanted, strict=True):
            assert seen == pytest.approx(spot, abs=0.051)  # the picture is written to a tenth of a unit


def test_two_of_three_on_the_lid_is_what_the_chart_prints() -> None:
    """A 12-inch pot at 350 °F has 17 on the lid and 8 under: the printed chart, as rules/tables/coal_chart.csv quotes it."""
    lid, floor = laid(12, 17, 8, pattern(12, 17, 8))
    assert len(places(level_drawing(lid, 12, "lid", is_lid=True))) == 17
    assert len(places(level_drawing(floor, 12, "floor", is_lid=False))) == 8


def test_lid_and_pot_turn_opposite_ways_by_the_third_that_the_words_say() -> None:
    lid = level_drawing((), 12, "lid", is_lid=True, turn="clockwise")
    pot = level_drawing((), 12, "pot", is_lid=False, turn="counter-clockwise")
    ends = []
    for svg in (lid, pot):
        path = next(p for p in ElementTree.fromstring(svg).iter("path")).get("d", "").split()
        (x0, y0), (x1, y1) = map(float, path[1:3]), map(float, path[-2:])
        from_, to = math.degrees(math.atan2(x0, -y0)), math.degrees(math.atan2(x1, -y1))
        ends.append(to - from_)
    assert ends == pytest.approx([120, -120], abs=1)


def test_the_picture_says_what_it_shows_and_markup_in_it_stays_text() -> None:
    svg = level_drawing(
        (Spot(x_in=0, y_in=0, turn=0, pose="flat", place="centre"),), 12, '1 <coal> "here"', is_lid=False
    )
    root = ElementTree.fromstring(svg)
    assert (root.get("role"), root.get("aria-label")) == ("img", '1 <coal> "here"')


def test_nothing_is_drawn_outside_the_picture() -> None:
    for diameter in DIAMETERS_IN:
        half = float(level_drawing((), diameter, "", is_lid=True).split('viewBox="')[1].split()[2]) / 2
        reach = max(
            math.hypot(x, y)
            for x, y, _ in places(level_drawing(on_lid(diameter, 20), diameter, "", is_lid=True))
        )
        assert (reach + math.hypot(1, 1)) * SCALE <= half + 0.1 * SCALE
