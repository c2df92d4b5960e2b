from __future__ import annotations

import pytest

from rules.because import Ledger
from rules.circumstances import Day
from rules.plan import Purchase
from rules.recipe import Amount, Ingredient
from rules.shopping import shopping
from rules.shopping.words import counted
from tests.build import amount, bake, heat, items, line, pack, recipe


def bought(*lines: Ingredient, day: Day | None = None, scale: float = 1.0) -> dict[str, Purchase]:
    made = recipe(*lines)
    packs = tuple(pack("pantry", index, of=made) for index in range(len(lines)))
    told = shopping(made, items(made, scale), packs, None, day or Day(), Ledger())
    return {purchase.food: purchase for purchase in told}


@pytest.mark.parametrize(
    ("wanted", "buy", "left"),
    [
        (line("eggs", amount(2)), "1 half dozen", "4"),
        (line("eggs", amount(10)), "1 dozen", "2"),
        (line("butter", amount(0.5, "cup")), "1 half pound (2 sticks)", "4 oz"),
        (line("butter", amount(1, "pound")), "1 pound (4 sticks)", None),
        (line("milk", amount(1, "cup")), "1 half pint (1 cup)", None),
        (line("milk", amount(3, "cup")), "1 quart (4 cups)", "1 cup"),
        (line("beer", amount(24, "fluid ounce")), "2 bottles or cans (12 oz)", None),
        (line("tomatoes", amount(1, "can")), "1 can", None),
        (line("tomato paste", amount(2, "can", of=(6, "ounce"))), "2 cans (6 ounces)", None),
        (line("tomatoes", amount(2, "can", of=(28, "ounce"))), "2 cans (28 ounces)", None),
        (line("trout", amount(9, of=(250, "gram"))), "9 trout (250 g each)", None),
        (line("garlic", amount(4, "clove")), "1 head", "about 9 cloves"),
        (line("celery", amount(3, "stalk")), "1 bunch", "about 10 stalks"),
        (line("soy sauce", amount(1, "tablespoon")), "1 10-ounce bottle", "about 1 cup"),
        (line("pickling salt", amount(0.25, "cup")), "1 3-pound box", "2 3/4 lb"),
        (line("flatbreads", amount(18)), "3 packages of 6", None),
        (line("butter", amount(17, "tablespoon")), "1 pound (4 sticks)", "about 7 oz"),
        (line("onions", amount(2), state=("large",)), "2 large onions", None),
        (line("ground beef", amount(1.1, "pound")), "1 1/4 pounds", None),
        (line("tomatoes", amount(8, "pound")), "8 pounds", None),
        (line("cilantro", amount(0.25, "cup")), "1 bunch", "2 oz"),
        # Found by random texts: none of it was divided by nothing.
        (line("bacon", amount(0)), "1 12-ounce package", None),
        # Found by random texts: a crumb of what is sold by the piece is one, and no package was bought for it.
        (line("hot dog buns", amount(1, "gram")), "1 package of 8", "7"),
    ],
    ids=lambda value: value.name if isinstance(value, Ingredient) else None,
)
def test_whole_purchase_units_and_what_is_left(wanted: Ingredient, buy: str, left: str | None) -> None:
    """Packages as US shops sell them (common practice, no source); one package less is never enough."""
    purchase = bought(wanted)[wanted.name]
    assert (purchase.buy, purchase.left_over) == (buy, left)


def test_lines_of_one_food_are_bought_together() -> None:
    told = bought(line("sugar", amount(1, "cup")), line("granulated sugar", amount(2, "tablespoon")))
    assert list(told) == ["sugar"]
    assert told["sugar"].need == "1 cup plus 2 tablespoons"


def test_masses_and_volumes_of_one_food_add_up_apart() -> None:
    told = bought(
        line("butter", amount(4, "tablespoon")),
        line("butter", amount(0.5, "cup")),
        line("butter", amount(100, "gram")),
    )
    assert told["butter"].need == "3/4 cup and 3 1/2 ounces"


def test_what_nobody_can_weigh_is_bought_as_a_package_that_holds_it() -> None:
    told = bought(line("dragon fruit jam", amount(1, "cup"), food=""))
    assert told["dragon fruit jam"].buy == "a package that holds 1 cup"


def test_a_rest_smaller_than_a_spoon_is_none() -> None:
    assert bought(line("chocolate chips", amount(2, "cup")))["chocolate chips"].left_over is None


def test_ice_for_the_cooler_is_bought_before_the_fuel() -> None:
    made = recipe(line("milk", amount(1, "cup")))
    packs = (pack("fresh", 0, of=made, travels="cool"),)
    told = shopping(made, items(made), packs, heat(bake()), Day(), Ledger(), ice_kg=4.0)
    assert [line.food for line in told][-2:] == ["ice for the cooler", "charcoal briquettes"]
    assert told[-2].buy == "bags of 9 lb (4 kg) in all"


def test_yolks_are_bought_as_eggs() -> None:
    told = bought(line("eggs", amount(3)), line("egg yolk", amount(2)))
    assert told["eggs"].buy == "1 half dozen"
    assert told["eggs"].left_over == "1"


def test_water_is_drawn_and_not_bought() -> None:
    assert bought(line("water", amount(1, "cup"))) == {}


def test_a_metric_cook_gets_metric_packages() -> None:
    told = bought(line("butter", amount(100, "gram")), day=Day(units="metric"))
    assert told["butter"].buy == "1 package of 230 g"
    assert told["butter"].left_over == "130 g"


def test_what_most_kitchens_have_is_marked_up_to_a_limit() -> None:
    assert bought(line("salt", amount(1, "teaspoon")))["salt"].likely_at_home
    assert not bought(line("flour", amount(9, "cup")))["flour"].likely_at_home
    assert not bought(line("chicken thighs", amount(1, "pound")))["chicken thighs"].likely_at_home


def test_the_list_walks_the_shop_and_takes_cold_food_last() -> None:
    told = bought(
        line("frozen peas", amount(1, "cup")),
        line("milk", amount(1, "cup")),
        line("rice", amount(1, "cup")),
        line("onions", amount(1)),
        line("ground beef", amount(1, "pound")),
    )
    assert list(told) == ["onions", "rice", "ground beef", "milk", "frozen peas"]


def test_an_open_amount_is_said_and_nothing_is_invented() -> None:
    told = bought(line("butter"), line("dragon fruit jam", food="", optional=True))
    assert told["butter"].need == "as the recipe leaves it open"
    assert told["butter"].left_over is None
    assert told["dragon fruit jam"].buy == "as much as you like"
    assert told["dragon fruit jam"].need.endswith("(optional)")


def test_the_last_line_is_the_fuel() -> None:
    made = recipe(line("rice", amount(1, "cup")))
    told = shopping(made, items(made), (pack("pantry", 0, of=made),), heat(bake()), Day(), Ledger())
    assert told[-1].food == "charcoal briquettes"
    assert told[-1].need == "30 briquettes"


def test_enough_is_bought_for_the_high_end_of_a_range() -> None:
    wide = Amount(low=2, high=5, unit="cup")
    assert bought(line("milk", wide))["milk"].buy == "1 half pint (1 cup) and 1 quart (4 cups)"


@pytest.mark.parametrize(
    ("name", "count", "said"),
    [("egg", 1, "1 egg"), ("lemon", 3, "3 lemons"), ("carrots", 1, "1 carrot"), ("trout", 4, "4 trout")],
)
def test_one_is_one_and_many_are_many(name: str, count: int, said: str) -> None:
    assert f"{count} {counted(name, count)}" == said


def test_zest_is_bought_on_its_fruit() -> None:
    told = bought(line("lemon zest", amount(1, "teaspoon")), line("lemons", amount(2)))
    assert list(told) == ["lemons"]
    assert list(bought(line("egg yolk", amount(2)))) == ["egg, for egg yolk"]
