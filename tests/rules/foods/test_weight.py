from __future__ import annotations

import pytest

from rules.foods import catalogue, grams, weigh
from rules.foods.weight import g_per_ml, milliliters
from rules.recipe import Amount, Ingredient, Package, Recipe


def amount(
    value: float, unit: str | None = None, *, high: float | None = None, package: Package | None = None
) -> Amount:
    return Amount(low=value, high=high or value, unit=unit, package=package)


def ounces(size: float) -> Package:
    return Package(low=size, high=size, unit="ounce")


@pytest.mark.parametrize(
    ("value", "unit", "food", "mass_g"),
    [
        (2, "cup", "all-purpose flour", 250),
        (1, "stick", "butter", 113),
        (3, None, "egg", 150),
        (2, "clove", "garlic", 6),
        (1, "can", "coconut milk", 400),
        (2, "slice", "bread", 58),
        (1, "head", "cabbage", 908),
        (2, "stalk", "celery", 80),
        (10, "sprig", "parsley", 10),
        (1, "twig", "thyme", 1),
        (1, "packet", "active dry yeast", 7.2),
        (1, "lemon", "lemon juice", 47),
        (1, "pinch", "salt", 0.375),
        (1, "kilogram", "potato", 1000),
        (1, "pound", "ground beef", 453.592),
        (12, "ounce", "pasta", 340.194),
    ],
)
def test_amounts_are_weighed_by_volume_mass_and_piece(
    value: float, unit: str | None, food: str, mass_g: float
) -> None:
    assert mass_g == pytest.approx(grams(amount(value, unit), catalogue().get(food)), rel=1e-3)


def test_a_package_weighs_what_is_written_on_it() -> None:
    cans = amount(2, "can", package=ounces(14))
    assert grams(cans, catalogue().get("tomato, canned")) == pytest.approx(2 * 14 * 28.3495, rel=1e-4)
    assert grams(cans, None) == pytest.approx(2 * 14 * 28.3495, rel=1e-4)


def test_a_bottle_of_so_many_milliliters_is_weighed_by_the_food() -> None:
    bottle = amount(2, "bottle", package=Package(low=33, high=33, unit="centiliter"))
    assert grams(bottle, catalogue().get("beer")) == pytest.approx(660 * 238 / 236.588, rel=1e-3)


def test_a_range_uses_its_middle() -> None:
    assert grams(amount(2, None, high=4), catalogue().get("egg")) == 150


@pytest.mark.parametrize(
    ("value", "unit", "food"),
    [
        (2, "%", "salt"),
        (4, "orange", "jam"),
        (0.75, None, "rolled oats"),
        (1, "inch", "salt"),
        (1, "bowl", None),
    ],
)
def test_what_cannot_be_known_is_none(value: float, unit: str | None, food: str | None) -> None:
    assert grams(amount(value, unit), catalogue().get(food) if food else None) is None


def test_a_size_word_weighs_produce_and_eggs() -> None:
    onion, egg, flour = (catalogue().get(food) for food in ("onion", "egg", "all-purpose flour"))
    small, medium, large = (
        grams(amount(1), onion, sizes=(size,)) or 0 for size in ("small", "medium", "large")
    )
    assert small < medium < large
    assert grams(amount(1), egg, sizes=("large",)) == 50
    assert grams(amount(1, "cup"), flour, sizes=("large",)) == 125


def test_volume_is_read_off_the_measure_or_worked_out_from_the_mass() -> None:
    flour = catalogue().get("all-purpose flour")
    assert milliliters(amount(2, "cup"), None) == pytest.approx(473.176, rel=1e-4)
    assert milliliters(amount(125, "gram"), flour) == pytest.approx(236.588, rel=1e-4)
    assert milliliters(amount(2, "can"), flour) is None
    assert g_per_ml(None) is None


def test_there_is_one_item_for_each_ingredient_scaled() -> None:
    recipe = Recipe(
        ingredients=(
            Ingredient(
                line=0,
                text="2 cups flour",
                name="flour",
                food="all-purpose flour",
                amounts=(amount(2, "cup"),),
            ),
            Ingredient(line=1, text="salt", name="salt", food="salt"),
            Ingredient(line=2, text="1 cup moon dust", name="moon dust", amounts=(amount(1, "cup"),)),
        )
    )
    flour, salt, dust = weigh(recipe, 1.5)
    assert (flour.grams, flour.scale) == (375, 1.5)
    assert (salt.grams, salt.milliliters) == (None, None)
    assert dust.grams is None
    assert dust.milliliters == pytest.approx(1.5 * 236.588, rel=1e-4)


def test_a_weight_beside_the_measure_is_better_than_the_table() -> None:
    line = Ingredient(
        line=0,
        text="4 1/2 dl rice (about 400 g)",
        name="rice",
        food="white rice",
        amounts=(amount(4.5, "deciliter"), amount(400, "gram")),
    )
    (item,) = weigh(Recipe(ingredients=(line,)))
    assert item.grams == 400


def test_a_weight_that_belongs_to_something_else_is_not_taken() -> None:
    line = Ingredient(
        line=0,
        text="2 tbsp lemon juice (from a 500 g bag of lemons)",
        name="lemon juice",
        food="lemon juice",
        amounts=(amount(2, "tablespoon"), amount(500, "gram")),
    )
    (item,) = weigh(Recipe(ingredients=(line,)))
    assert item.grams == pytest.approx(30.5, rel=0.01)


def weighed(food: str, *amounts: Amount) -> tuple[float | None, float | None]:
    ingredient = Ingredient(line=0, text="", name=food, food=food, amounts=amounts)
    (item,) = weigh(Recipe(ingredients=(ingredient,)))
    return item.grams, item.milliliters


def test_what_comes_on_top_is_weighed_with_the_first_amount() -> None:
    spoons = Amount(low=2, high=2, unit="tablespoon", plus=True)
    mass, volume = weighed("all-purpose flour", amount(1, "cup"), spoons)
    alone, room = weighed("all-purpose flour", amount(1, "cup"))
    assert mass is not None
    assert alone is not None
    assert volume is not None
    assert room is not None
    assert mass > alone + 10
    assert volume == pytest.approx(room * 1.125, rel=0.001)


def test_a_weight_before_what_comes_on_top_is_that_of_the_first_amount() -> None:
    on_top = Amount(low=25, high=25, unit="gram", plus=True)
    assert weighed("all-purpose flour", amount(1, "cup"), amount(130, "gram"), on_top)[0] == 155
    assert weighed("all-purpose flour", amount(1, "cup"), on_top, amount(150, "gram"))[0] == 150


def test_the_size_of_each_is_counted_once() -> None:
    count = amount(4, package=Package(low=120, high=120, unit="gram"))
    each = Amount(low=120, high=120, unit="gram", each=True)
    assert weighed("pork chop", count, each)[0] == 480


def test_twenty_olives_are_no_twenty_cans() -> None:
    olive = catalogue().get("olive")
    assert grams(Amount(low=20, high=20), olive) == pytest.approx(80)
    assert grams(Amount(low=1, high=1, unit="can"), olive) == pytest.approx(170)
