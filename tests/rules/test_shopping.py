from __future__ import annotations

import pytest

from rules.because import Ledger
from rules.circumstances import Day
from rules.plan import Purchase
from rules.recipe import Ingredient
from rules.shopping import shopping
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
        (line("onions", amount(2), state=("large",)), "2 large onions", None),
        (line("ground beef", amount(1.1, "pound")), "1 1/4 pounds", None),
        (line("tomatoes", amount(8, "pound")), "8 pounds", None),
        (line("cilantro", amount(0.25, "cup")), "1 bunch", "1 oz"),
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
    assert told["sugar"].need == "1 cup and 2 tablespoons"


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
