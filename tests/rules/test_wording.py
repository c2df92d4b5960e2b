from __future__ import annotations

import pytest

from rules.recipe import Amount
from rules.wording import listed, mass, measured, short_names
from tests.build import amount, line, pack, recipe


@pytest.mark.parametrize(
    ("names", "told"),
    [
        ([], ""),
        (["milk"], "milk"),
        (["milk", "milk"], "milk"),
        (["milk", "egg"], "milk and egg"),
        (["a", "b", "c", "d", "e"], "a, b, c, d and e"),
        (["a", "b", "c", "d", "e", "f"], "a, b, c, d and 2 more"),
    ],
)
def test_names_stand_in_a_row_that_one_can_read(names: list[str], told: str) -> None:
    assert listed(names) == told


def test_packs_go_by_their_short_names_and_alike_ones_by_their_part() -> None:
    made = recipe(line("flour"), line("oats"), line("berries"))
    packs = (
        pack("dry mix", 0, of=made, label="dry mix of flour", component="cake"),
        pack("dry mix", 1, of=made, label="dry mix of oats", component="topping"),
        pack("wet mix", 2, of=made, label="fruit: berries"),
    )
    assert list(short_names(packs).values()) == ["dry mix (cake)", "dry mix (topping)", "fruit"]


def test_masses_are_told_in_both_units_for_the_us_cook() -> None:
    assert mass(4.0, "us") == "9 lb (4 kg)"
    assert mass(0.7, "us") == "1.5 lb (0.7 kg)"
    assert mass(4.0, "metric") == "4 kg"


@pytest.mark.parametrize(
    ("of", "name", "told"),
    [
        (None, "salt", "salt"),
        (amount(1.5, "cup"), "flour", "1 1/2 cups flour"),
        (amount(4, "clove"), "garlic", "4 cloves of garlic"),
        (amount(2, "inch"), "ginger", "2 inches of ginger"),
        (amount(2, "can", of=(28, "ounce")), "tomatoes", "2 cans of tomatoes (28 ounces each)"),
        (amount(1, "loaf", of=(1, "pound")), "bread", "1 loaf of bread (1 pound)"),
        (amount(2, of=(1.5, "kilogram")), "chickens", "2 chickens (1.5 kg each)"),
        (amount(0, "cup"), "nothing", "nothing"),
    ],
)
def test_a_food_is_told_with_its_amount_as_cooks_say_it(of: Amount | None, name: str, told: str) -> None:
    assert measured(of, name, system="us") == told


def test_a_dish_with_of_in_its_name_keeps_it() -> None:
    made = recipe(line("beans"), line("onions"))
    packs = (
        pack("prepped", 0, of=made, label="Pot of beans made at home"),
        pack("prepped", 1, of=made, label="mix of onions and oil"),
    )
    assert list(short_names(packs).values()) == ["Pot of beans made at home", "mix"]
