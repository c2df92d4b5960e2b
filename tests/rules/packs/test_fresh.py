from __future__ import annotations

import pytest

from rules.circumstances import Day
from rules.recipe import Ingredient
from tests.build import amount, doing, line, mates, packed, reasons, recipe, step


def placed(food: Ingredient, *, day: Day | None = None, family: str = "stew or braise") -> tuple[str, str]:
    do = doing(food)
    of = recipe(food, steps=(step(do("add", food.name, vessel="pot"), do("simmer")),))
    (pack,) = packed(of, family, day)  # type: ignore[arg-type]
    return pack.kind, pack.travels


@pytest.mark.parametrize(
    ("food", "where"),
    [
        (line("eggs", amount(3)), ("fresh", "cool")),
        (line("milk", amount(1, "cup")), ("fresh", "cool")),
        (line("buttermilk", amount(1, "cup")), ("fresh", "cool")),
        (line("evaporated milk", amount(1, "can")), ("pantry", "shelf")),
        (line("hard-boiled egg", amount(2)), ("prepped", "cool")),
        (line("cheddar cheese", amount(8, "ounce")), ("fresh", "cool")),
        (line("cheddar cheese", amount(2, "cup"), prep="shredded"), ("prepped", "cool")),
        (line("onion", amount(2), prep="chopped"), ("prepped", "cool")),
        (line("onion", amount(2)), ("pantry", "shelf")),
        (line("mushrooms", amount(8, "ounce"), prep="sliced"), ("fresh", "cool")),
        (line("apples", amount(3), prep="sliced"), ("pantry", "shelf")),
        (line("kale", amount(1, "bunch")), ("fresh", "cool")),
        (line("parsley", amount(1, "bunch"), prep="chopped"), ("fresh", "cool")),
        (line("frozen peas", amount(1, "cup")), ("fresh", "frozen")),
        (line("potatoes", amount(2, "pound"), prep="cubed"), ("prepped", "cool")),
        (line("potatoes", amount(2, "pound")), ("pantry", "shelf")),
        (line("crushed tomatoes", amount(1, "can")), ("pantry", "shelf")),
        (line("rice", amount(1, "cup")), ("pantry", "shelf")),
        (line("rice", amount(1, "cup"), food="cooked rice"), ("prepped", "cool")),
        (line("beer", amount(1, "bottle")), ("pantry", "shelf")),
        (line("tofu", amount(1, "package")), ("fresh", "cool")),
        (line("olives", amount(0.5, "cup")), ("pantry", "shelf")),
        (line("grandmother's secret", food=""), ("pantry", "shelf")),
    ],
    ids=lambda value: value.name if isinstance(value, Ingredient) else str(value[0]),
)  # fmt: skip
def test_each_food_travels_as_a_cook_would_send_it(food: Ingredient, where: tuple[str, str]) -> None:
    assert placed(food) == where


def test_cut_potatoes_stay_whole_when_the_trip_is_longer_than_a_day() -> None:
    food = line("potatoes", amount(2, "pound"), prep="cubed")
    assert placed(food, day=Day(trip_hours=40)) == ("pantry", "shelf")


def test_cut_vegetables_that_enter_together_share_a_bag() -> None:
    foods = (
        line("onion", amount(1), prep="diced"),
        line("celery", amount(2), prep="sliced"),
        line("garlic", amount(2, "clove"), prep="minced"),
    )
    do = doing(*foods)
    of = recipe(
        *foods,
        steps=(step(do("saute", "onion", "celery", vessel="pot")), step(do("add", "garlic"), do("simmer"))),
    )
    packs = packed(of, "soup")
    assert mates(packs, of, "onion") == [{"onion", "celery"}]
    assert mates(packs, of, "garlic") == [{"garlic"}]


def test_potatoes_under_water_share_their_bag_with_nothing() -> None:
    foods = (line("carrots", amount(3), prep="sliced"), line("potatoes", amount(2, "pound"), prep="cubed"))
    do = doing(*foods)
    of = recipe(*foods, steps=(step(do("add", "carrots", "potatoes", vessel="pot"), do("boil")),))
    packs = packed(of, "soup")
    assert mates(packs, of, "potatoes") == [{"potatoes"}]
    assert (
        next(pack for pack in packs if "potatoes" in pack.label).make_ahead
        == "the day before, under cold water"
    )


def test_butter_in_two_jobs_is_two_pieces() -> None:
    foods = (
        line("butter", amount(3, "tablespoon")),
        line("onion", amount(1)),
        line("bread", amount(4, "slice")),
    )
    do = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(do("melt", ("butter", 0.5), vessel="pot"), do("saute", "onion")),
            step(do("spread", ("butter", 0.5), things=("bread",), word="spread")),
        ),
    )
    butter = [pack for pack in packed(of, "soup") if pack.label == "butter"]
    assert [item.share for pack in butter for item in pack.items] == [0.5, 0.5]


@pytest.mark.parametrize(
    ("food", "rule"),
    [
        (line("hard-boiled egg", amount(2)), "prepped.boiled-egg"),
        (line("mushrooms", amount(8, "ounce"), prep="sliced"), "fresh.browns"),
        (line("mayonnaise", amount(0.5, "cup")), "fresh.opened"),
        (line("rice", amount(2, "cup"), food="cooked rice"), "prepped.cooked"),
        (line("grandmother's secret", food=""), "pantry.unknown"),
    ],
    ids=lambda value: value.name if isinstance(value, Ingredient) else value,
)
def test_the_reason_says_why_it_travels_so(food: Ingredient, rule: str) -> None:
    do = doing(food)
    of = recipe(food, steps=(step(do("add", food.name, vessel="bowl")),))
    assert reasons(of, "no cook", food.name) == {rule}
