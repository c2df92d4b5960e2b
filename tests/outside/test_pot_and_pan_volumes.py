"""Camp ovens and kitchen pans against printed capacities.

Sources: "Dutch Oven Sizing - Quarts or Inches?" (n.d.; a Dutch oven class's site, by its name that of Utah Valley
University), read at uvudutchoven.com; "Baking Pan Size Versus Dutch Oven Reference" (n.d., measured from recent
ovens), read at ironcooker.com; "Easy pan substitutions", Time Inc., 2008, read at studylib.net doc 18320804; M.
Parrish, "Know the volume of your baking pans", 27 Sept 2016, read at news-journalonline.com; The Old Farmer's Almanac,
"Pan sizes" (n.d.), read at almanac.com.
"""

from __future__ import annotations

import pytest

from rules.plan import Depth
from rules.pot import oven, read_pan
from rules.pot.iron import volume_at
from rules.units import to


@pytest.mark.parametrize(
    ("diameter_in", "depth", "printed_quarts", "frustum_quarts"),
    [
        (8, "shallow", 2, 2.0),
        (10, "shallow", 4, 3.9),
        (12, "shallow", 6, 6.2),
        (12, "deep", 8, 8.3),
        (14, "shallow", 8, 8.6),
        (14, "deep", 10, 10.4),
        (16, "shallow", 12, 11.5),
    ],
)
def test_the_tapered_pot_holds_its_quarts(
    diameter_in: int, depth: Depth, printed_quarts: float, frustum_quarts: float
) -> None:
    """Capacities as printed in the sizing table: whole quarts of castings, so 8 %. The frustum with a bottom two
    inches less than the rim was computed apart from this code (one decimal)."""
    pot = oven(diameter_in, depth)
    brim = to(volume_at(pot, pot.depth_in), "milliliter", "quart")
    assert printed_quarts == pot.quarts
    assert printed_quarts == pytest.approx(brim, rel=0.08)
    assert frustum_quarts == pytest.approx(brim, abs=0.06)


@pytest.mark.parametrize(("diameter_in", "printed_sq_in"), [(8, 50), (10, 78), (12, 113)])
def test_the_circle_of_the_rim(diameter_in: int, printed_sq_in: float) -> None:
    """As printed for matching pans; 78.5 is printed as 78."""
    assert printed_sq_in == pytest.approx(oven(diameter_in, "shallow").rim_sq_in, abs=0.6)


@pytest.mark.parametrize(
    ("said", "area_sq_in"),
    [
        ("9x13 in pan", 117),
        ("8x8 in pan", 64),
        ("9x9 in pan", 81),
        ("11x7 in pan", 77),
        ("9 in round cake pan", 63.6),
        ("8 in round cake pan", 50.3),
        ("10 in tube pan", 78.5),
        ("8 1/2 x 4 1/2 in loaf pan", 38.3),
        ("15x10x1 in jelly roll pan", 150),
    ],
)
def test_areas_of_pans(said: str, area_sq_in: float) -> None:
    """Areas as listed with the capacities (computed from the nominal size, one decimal)."""
    pan = read_pan(said)
    assert pan is not None
    assert area_sq_in == pytest.approx(pan.area_sq_in, abs=0.06)


@pytest.mark.parametrize(
    ("said", "cups"),
    [
        ("9x13x2 in pan", 14),
        ("8x8x2 in pan", 8),
        ("9x9x2 in pan", 10),
        ("9 in round cake pan", 8),
        ("8 in round cake pan", 6),
        ("9x5x3 in loaf pan", 8),
        ("8x4x2.5 in loaf pan", 6),
        ("9x3 in springform pan", 12),
    ],
)
def test_capacities_of_pans(said: str, cups: float) -> None:
    """Printed cups to the brim against area times depth. The print rounds to even cups and the walls slope or curve,
    more so in a loaf pan: the box of its nominal size may hold up to a fifth more."""
    pan = read_pan(said)
    assert pan is not None
    box = to(pan.area_sq_in * pan.depth_in, "cubic inch", "cup")
    assert 0.9 <= box / cups <= 1.2


def test_a_nine_by_thirteen_recipe_goes_into_a_twelve_inch_pot() -> None:
    """The equivalent as printed in the sizing table."""
    pan = read_pan("9x13 in pan")
    assert pan is not None
    assert oven(12, "shallow").rim_sq_in == pytest.approx(pan.area_sq_in, rel=0.05)
