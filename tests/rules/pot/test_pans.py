from __future__ import annotations

from math import pi

import pytest

from rules.pot import pan_of, read_pan
from rules.recipe import Oven, Recipe


@pytest.mark.parametrize(
    ("said", "shape", "area_sq_in"),
    [
        ("9x13 inch pan", "rectangle", 117),
        ("a 9 x 13 baking dish", "rectangle", 117),
        ("13-by-9-inch pan", "rectangle", 117),
        ("20x30cm tin", "rectangle", 93),
        ("a 30 x 20 cm baking dish", "rectangle", 93),
        ("deep roasting tin, about 30 x 40 cm", "rectangle", 186),
        ("greased nine-inch square pan", "rectangle", 81),
        ("8 inch square tin", "rectangle", 64),
        ("23 cm pie dish", "pie", pi / 4 * (23 / 2.54) ** 2),
        ("9-inch round cake pan", "round", 63.6),
        ("deep 10-inch round dish", "round", 78.5),
        ("8 1/2 x 4 1/2 inch loaf pan", "loaf", 38.25),
        ("12-inch cast iron skillet", "skillet", 113.1),
        ("8 inch springform pan", "springform", 50.3),
        ("2-quart casserole", "rectangle", 57.75),
        ("2.5 litre ovenproof dish", "rectangle", 76.3),
    ],
)
def test_the_size_of_a_pan_is_read(said: str, shape: str, area_sq_in: float) -> None:
    pan = read_pan(said)
    assert pan is not None
    assert not pan.assumed
    assert (pan.shape, pan.area_sq_in) == (shape, pytest.approx(area_sq_in, rel=0.01))


@pytest.mark.parametrize(
    ("said", "shape", "area_sq_in"),
    [("muffin tin", "muffin", 71.3), ("a loaf tin", "loaf", 45), ("a pie plate", "pie", 63.6)],
)
def test_a_kind_of_pan_without_a_size_is_the_usual_one_and_says_so(
    said: str, shape: str, area_sq_in: float
) -> None:
    pan = read_pan(said)
    assert pan is not None
    assert pan.assumed
    assert (pan.shape, pan.area_sq_in) == (shape, pytest.approx(area_sq_in, rel=0.01))


@pytest.mark.parametrize(
    "said", ["a dish", "buttered pans", "the oven", "99x99 inch pan", "", "1x1 in dish", "x" * 5000]
)
def test_words_that_tell_no_size_give_no_pan(said: str) -> None:
    assert read_pan(said) is None


def test_the_pan_of_a_recipe_is_the_vessel_of_its_oven() -> None:
    pan = pan_of(Recipe(oven=Oven(vessel="9x13 in pan")))
    assert pan is not None
    assert pan.said == "9x13 in pan"
    assert pan_of(Recipe()) is None
    assert pan_of(Recipe(oven=Oven(temp_f=350))) is None
