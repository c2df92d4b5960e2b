from __future__ import annotations

import pytest

from rules.circumstances import Day
from rules.foods import weigh
from rules.method import graph
from rules.packs.kitchen import Kitchen
from rules.recipe import Family, Recipe
from tests.build import amount, dish, doing, line, minutes, recipe, step


def kitchen(of: Recipe, family: Family, **more: object) -> Kitchen:
    return Kitchen(of, weigh(of), graph(of), dish(family, **more), Day())


def test_flour_that_dusts_the_board_is_not_divided_from_the_dough() -> None:
    foods = (line("flour", amount(3, "cup")), line("milk", amount(1, "cup")))
    do = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(do("grease", ("flour", 0.5), vessel="baking tray", word="dust")),
            step(do("mix", ("flour", 0.5), "milk", vessel="bowl")),
        ),
    )
    assert [portion.share for portion in kitchen(of, "biscuit or quick bread dough").portions] == [1.0, 1.0]


def test_a_lemon_of_which_only_the_juice_is_used_is_a_juice() -> None:
    of = recipe(line("lemon", amount(1), prep="juiced"), line("lemon", amount(1)))
    assert kitchen(of, "no cook").roles == ("juice", "fruit")


@pytest.mark.parametrize(
    ("milk", "curdles"), [("milk", True), ("heavy cream", True), ("buttermilk", False), ("yogurt", False)]
)
def test_milk_curdles_with_acid_and_cultured_milk_does_not(milk: str, curdles: bool) -> None:
    foods = (line(milk, amount(1, "cup")), line("lemon juice", amount(1, "tablespoon")))
    do = doing(*foods)
    of = recipe(*foods, steps=(step(do("mix", milk, "lemon juice", vessel="bowl")),))
    assert kitchen(of, "no cook").curdles(graph(of).takings) is curdles


def test_fruit_stewed_with_its_sugar_for_a_pudding_is_a_compote() -> None:
    foods = (
        line("gooseberries", amount(1, "pint")),
        line("sugar", amount(0.5, "cup")),
        line("beef", amount(1, "pound")),
    )
    do = doing(*foods)
    stewed = recipe(*foods, steps=(step(do("simmer", "gooseberries", vessel="pot"), do("mix", "sugar")),))
    meat = recipe(
        *foods, steps=(step(do("simmer", "gooseberries", "beef", vessel="pot"), do("mix", "sugar")),)
    )
    assert kitchen(stewed, "custard or pudding").is_compote(graph(stewed).takings[0])
    assert not kitchen(meat, "stew or braise").is_compote(graph(meat).takings[0])


def test_only_a_cookie_dough_that_is_chilled_is_made_at_home() -> None:
    foods = (
        line("flour", amount(2, "cup")),
        line("butter", amount(1, "cup")),
        line("sugar", amount(1, "cup")),
    )
    do = doing(*foods)
    mix = do("mix", "flour", "butter", "sugar", vessel="bowl")
    chilled = recipe(*foods, steps=(step(mix, do("chill", minutes=minutes(60)), do("bake")),))
    straight = recipe(*foods, steps=(step(mix, do("bake")),))
    assert kitchen(chilled, "cookie").home_doughs
    assert not kitchen(straight, "cookie").home_doughs
