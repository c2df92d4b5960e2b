"""Eggs against the US weight classes.

Sources: US Department of Agriculture weight classes (ounces per dozen in the shell, minimum), read at eggsafety.org
and smartkitchen.com; edible masses by class believed USDA FoodData Central, from memory, unverified, but large (50 g)
and extra large (56 g), which stand in USDA SR28, NDB 01123; white and yolk of a large egg: 30 + 20 g as printed in
"How much is 1 egg in gram" (n.d.), read at ntro.it.com, 33 and 17 g in USDA SR28.
"""

from __future__ import annotations

import pytest

from rules.foods import catalogue, grams
from rules.recipe import Amount
from rules.units import to

CLASSES = [
    ("jumbo", 30, 63),
    ("extra large", 27, 56),
    ("large", 24, 50),
    ("medium", 21, 44),
    ("small", 18, 38),
]
ONE = Amount(low=1, high=1)


def egg(size: str) -> float:
    mass = grams(ONE, catalogue().get("egg"), sizes=(size,))
    assert mass is not None
    return mass


@pytest.mark.parametrize(("size", "dozen_oz", "edible_g"), CLASSES)
def test_an_egg_weighs_what_its_class_holds(size: str, dozen_oz: float, edible_g: float) -> None:
    """Tolerance: the printed gram."""
    assert edible_g == pytest.approx(egg(size), abs=0.6)


@pytest.mark.parametrize(("size", "dozen_oz", "edible_g"), CLASSES)
def test_the_shell_is_about_an_eighth_of_the_class_minimum(
    size: str, dozen_oz: float, edible_g: float
) -> None:
    """The shell and its membranes are 9 to 12 % of an egg (from memory); a class minimum is a little below the mean
    egg, so the edible part is 86 to 92 % of it."""
    in_the_shell = to(dozen_oz / 12, "ounce", "gram")
    assert 0.86 <= egg(size) / in_the_shell <= 0.92


def test_white_and_yolk_make_the_egg() -> None:
    white, yolk = (grams(ONE, catalogue().get(food)) or 0 for food in ("egg white", "egg yolk"))
    assert white + yolk == pytest.approx(egg("large"), abs=0.5)
    assert (pytest.approx(white, abs=3.5), pytest.approx(yolk, abs=3.5)) == (30, 20)


def test_a_beaten_large_egg_is_three_and_a_quarter_tablespoons() -> None:
    """ "A little about chicken eggs" (2013), read at diab2cook.blogspot.com: 3.25 tbsp (46 ml); printed to a quarter."""
    tablespoon = grams(Amount(low=1, high=1, unit="tablespoon"), catalogue().get("egg")) or 0
    assert egg("large") / tablespoon == pytest.approx(3.25, abs=0.13)
