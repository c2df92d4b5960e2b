from __future__ import annotations

import pytest

from rules.cold.composition import Composition, mixture
from rules.cold.contents import composition, of_pack, thickness
from rules.cold.freezing import freezing_point
from rules.foods import catalogue
from tests.build import amount, items, line, pack, recipe


def test_the_fractions_of_every_food_add_up_to_one() -> None:
    for food in catalogue():
        made_of = composition(food)
        if made_of is not None:
            parts = (
                made_of.water,
                made_of.protein,
                made_of.fat,
                made_of.carbohydrate,
                made_of.fibre,
                made_of.ash,
            )
            assert sum(parts) + made_of.alcohol == pytest.approx(1.0)
            assert made_of.sugars <= made_of.carbohydrate + 1e-9


def test_a_measured_freezing_point_is_kept() -> None:
    for food in catalogue():
        made_of = composition(food)
        if made_of is not None and food.freezing_c is not None and made_of.water > 0.4:
            assert freezing_point(made_of) == pytest.approx(food.freezing_c, abs=1e-6)


def test_a_pack_mixes_its_foods_by_mass() -> None:
    made = recipe(line("water", amount(100, "gram")), line("sugar", amount(100, "gram")))
    found = of_pack(pack("wet mix", 0, 1, of=made), items(made))
    assert found is not None
    syrup, kg = found
    assert kg == pytest.approx(0.2)
    assert syrup.water == pytest.approx(0.5, abs=0.001)
    assert syrup.sugars == pytest.approx(0.5, abs=0.01)


def test_nothing_mixes_to_nothing() -> None:
    assert mixture([]) == Composition()


@pytest.mark.parametrize(
    ("kg", "container", "low_mm", "high_mm"),
    [
        # A kilogram in a gallon bag covers 60 square inches or more: an inch.
        (1.0, "1-gallon zipper bag", 10, 30),
        (1.0, "1-quart zipper bag", 30, 60),
        (0.01, "1-gallon zipper bag", 10, 10),
        (9.0, "1-gallon zipper bag", 70, 70),
        (1.0, None, 40, 60),
    ],
)
def test_thickness_follows_the_bag(kg: float, container: str | None, low_mm: float, high_mm: float) -> None:
    assert low_mm <= 1000 * thickness(Composition(water=1.0), kg, container) <= high_mm
