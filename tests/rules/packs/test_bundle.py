from __future__ import annotations

import pytest

from rules.because import Ledger
from rules.circumstances import Day
from rules.method import graph
from rules.packs import divide
from tests.build import amount, dish, doing, items, line, minutes, packed, recipe, step

FOODS = (
    line("flour", amount(2, "cup")),
    line("sugar", amount(1, "cup")),
    line("milk", amount(1.5, "cup")),
    line("tomatoes", amount(2, "can", of=(14, "ounce"))),
    line("plums", amount(2, "pound")),
)
do = doing(*FOODS)
OF = recipe(
    *FOODS,
    steps=(
        step(do("mix", "plums", ("sugar", 0.25), vessel="bowl")),
        step(
            do("mix", "flour", ("sugar", 0.75), "milk", vessel="large bowl"), do("bake", minutes=minutes(30))
        ),
    ),
)


def test_packs_are_numbered_by_kind_in_the_order_of_the_kinds() -> None:
    assert [pack.id for pack in packed(OF, "batter bake")] == ["dry-1", "wet-1", "fresh-1", "pantry-1"]


def test_amounts_are_scaled_and_shared() -> None:
    packs = divide(OF, items(OF, 2.0), graph(OF), dish("batter bake"), Day(), Ledger())
    dry = {item.ingredient: item for item in packs[0].items}
    assert dry[0].amount is not None
    assert dry[0].amount.low == 4
    assert dry[1].share == 0.75
    assert dry[1].amount is not None
    assert dry[1].amount.low == pytest.approx(1.5)
    assert dry[0].grams == pytest.approx(500)


def test_a_pack_of_one_part_names_it() -> None:
    foods = (
        line("oats", amount(1, "cup"), component="topping"),
        line("flour", amount(1, "cup"), component="topping"),
    )
    (pack,) = packed(recipe(*foods), "batter bake")
    assert pack.component == "topping"
    assert pack.label == "dry mix of oats and flour for the topping"


def test_a_pack_travels_as_cold_as_its_coldest_food() -> None:
    foods = (
        line("flour", amount(1, "cup")),
        line("butter", amount(0.5, "cup")),
        line("salt", amount(1, "teaspoon")),
    )
    mix = doing(*foods)
    of = recipe(
        *foods,
        steps=(step(mix("mix", "flour", "salt", vessel="bowl"), mix("cut in", "butter"), mix("bake")),),
    )
    (pack,) = packed(of, "biscuit or quick bread dough", Day(freezer=False))
    assert pack.travels == "cool"
