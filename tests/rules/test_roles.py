from __future__ import annotations

import pytest

from rules.foods import catalogue
from rules.recipe import Ingredient
from rules.roles import BODY, DRY, role_of


def named(name: str) -> Ingredient:
    return Ingredient(line=0, text=name, name=name)


@pytest.mark.parametrize(
    ("food", "role"),
    [
        ("baking powder", "leavener"),
        ("active dry yeast", "yeast"),
        ("sourdough starter", "culture"),
        ("all-purpose flour", "flour"),
        ("cornstarch", "starch"),
        ("cumin", "spice"),
        ("dried oregano", "spice"),
        ("basil", "herb"),
        ("butter", "fat"),
        ("evaporated milk", "shelf milk"),
        ("milk", "milk"),
        ("greek yogurt", "cultured"),
        ("mayonnaise", "mayonnaise"),
        ("tomato, canned", "can"),
        ("honey", "syrup"),
        ("rhubarb", "fruit"),
        ("lentil", "grain"),
        ("water", "water"),
        ("ground beef", "meat"),
        ("bacon", "cured meat"),
        ("raisin", "mix-in"),
    ],
)
def test_a_food_of_the_catalogue_has_its_role(food: str, role: str) -> None:
    assert role_of(named("x"), catalogue().get(food)) == role


def test_every_food_of_the_catalogue_has_a_role() -> None:
    unknown = [food.name for food in catalogue() if role_of(named("x"), food) == "unknown"]
    assert unknown == []


@pytest.mark.parametrize(
    ("name", "role"),
    [
        ("river blend seasoning", "spice"),
        ("smoked moose sausage", "meat"),
        ("food-grade lye", "caustic"),
        ("cloudberry syrup", "syrup"),
        ("grandmother's secret", "unknown"),
    ],
)
def test_an_unknown_food_is_judged_by_its_last_telling_word(name: str, role: str) -> None:
    assert role_of(named(name)) == role


def test_tea_ground_to_powder_is_mixed_dry() -> None:
    tea = catalogue().get("tea")
    assert role_of(named("green tea powder"), tea) == "dry good"
    assert role_of(named("black tea"), tea) == "drink"


def test_what_gives_a_dry_mix_its_body_is_dry() -> None:
    assert BODY <= DRY
