"""What the catalogue says of foods: the classification that safety and packing rest on."""

from __future__ import annotations

import pytest

from rules.foods import catalogue


@pytest.mark.parametrize(
    ("food", "surely"),
    [
        ("mayonnaise", {"egg"}),
        ("soy sauce", {"soybeans", "wheat"}),
        ("hoisin sauce", {"soybeans", "wheat"}),
        ("white sauce", {"milk", "wheat"}),
        ("bread", {"wheat"}),
        ("pasta", {"wheat"}),
        ("worcestershire sauce", {"fish"}),
        ("bouillon cube", set()),
        ("chicken broth", set()),
        ("spice blend", set()),
        ("tomato sauce", set()),
        ("pepperoni", set()),
        ("coconut milk", set()),
        ("shredded coconut", set()),
        ("vegan butter", set()),
        ("peanut butter", {"peanuts"}),
        ("tahini", {"sesame"}),
    ],
)
def test_allergens_are_those_that_every_make_holds(food: str, surely: set[str]) -> None:
    """The examples of the handbook, chapter 9, and their like; coconut is no tree nut for labelling (FDA, 2025)."""
    assert set(catalogue().get(food).allergens) == surely


@pytest.mark.parametrize(
    "food", ["bouillon cube", "chicken broth", "pork sausage", "dark chocolate", "granola"]
)
def test_what_the_usual_make_may_hold_is_left_to_the_label(food: str) -> None:
    assert catalogue().get(food).may_hold


def test_no_allergen_is_both_sure_and_possible() -> None:
    assert not [food.name for food in catalogue() if set(food.allergens) & set(food.may_hold)]


def test_milk_eggs_and_fish_are_never_missing_from_their_own_group() -> None:
    lacking = {
        food.name
        for food in catalogue()
        for group, allergen in (("dairy", "milk"), ("egg", "egg"), ("fish", "fish"), ("pasta", "wheat"))
        if food.group == group and allergen not in food.allergens
    }
    assert lacking <= {"powdered coffee creamer", "rice noodles", "rice paper", "gluten-free pasta", "gnocchi",
                       "potato dumplings", "rice cake, korean", "konjac noodles"}  # fmt: skip


@pytest.mark.parametrize(
    ("food", "hazard"),
    [
        ("ground beef", "meat"),
        ("bacon", "meat"),
        ("chicken thigh", "poultry"),
        ("shrimp", "fish"),
        ("egg", "egg"),
        ("all-purpose flour", "flour"),
        ("pizza dough", "flour"),
        ("cooked chicken", None),
        ("ham", None),
        ("pepperoni", None),
        ("tuna, canned", None),
        ("chicken broth", None),
        ("hard-boiled egg", None),
    ],
)
def test_a_raw_hazard_is_named_and_cooked_food_has_none(food: str, hazard: str | None) -> None:
    assert catalogue().get(food).raw_hazard == hazard


def test_traits_answer_what_the_rules_ask() -> None:
    get = catalogue().get
    assert get("baking soda").is_leavener
    assert not get("baking soda").is_yeast
    assert get("instant yeast").is_yeast
    assert not get("sourdough starter").is_yeast
    assert get("lemon juice").is_acid
    assert get("buttermilk").is_cultured
    assert get("onion").is_hardy
    assert not get("lettuce").is_hardy
    assert get("mushroom").browns_when_cut
    assert get("basil").is_fresh_herb
    assert get("dried basil").is_dried_herb
    assert get("beer").is_drink_alcohol
    assert not get("vanilla extract").is_drink_alcohol
    assert get("pork chop").is_raw_meat
    assert not get("egg").is_raw_meat


@pytest.mark.parametrize(
    "food", ["egg", "mayonnaise", "sour cream", "lettuce", "cucumber", "potato", "cream cheese"]
)
def test_what_the_handbook_says_freezes_badly_does(food: str) -> None:
    """Handbook, chapter 2."""
    assert catalogue().get(food).freezes == "badly"


def test_only_dry_kidney_beans_are_the_poisonous_ones() -> None:
    """Red and white ones alike, never cans (handbook, chapter 9)."""
    marked = {food.name for food in catalogue() if "raw kidney bean" in food.traits}
    assert marked == {"kidney bean, dry", "cannellini bean, dry"}


def test_components_never_add_up_to_more_than_the_food() -> None:
    """Rounding of the source allows 1.5 g in 100 g; fiber and sugars are inside the carbohydrate."""
    for food in catalogue():
        parts = (
            food.water_pct,
            food.fat_pct,
            food.protein_pct,
            food.carb_pct,
            food.ash_pct,
            food.alcohol_pct,
        )
        assert sum(part or 0 for part in parts) <= 101.5, food.name


def test_a_name_is_spoken_state_first() -> None:
    assert catalogue().get("kidney bean, canned").spoken == "canned kidney bean"
    assert catalogue().get("butter").spoken == "butter"
