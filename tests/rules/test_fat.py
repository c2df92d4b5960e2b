from __future__ import annotations

import pytest

from rules.because import Ledger
from rules.circumstances import Day
from rules.fat import jobs, place
from rules.method import graph
from rules.plan import FatUse
from rules.recipe import Family, Ingredient, Recipe
from tests.build import amount, dish, doing, items, line, minutes, recipe, step


def placed(of: Recipe, family: Family, ledger: Ledger | None = None) -> tuple[FatUse, ...]:
    return place(of, items(of), graph(of), dish(family), Day(), ledger or Ledger())


def goes(of: Recipe, family: Family) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for use in placed(of, family):
        found.setdefault(of.ingredients[use.ingredient].name, []).append(use.goes)
    return found


BUTTER = line("butter", amount(0.5, "cup"))
SOFT = line("butter", amount(0.5, "cup"), state=("softened",))
MELTED = line("butter", amount(0.5, "cup"), state=("melted",))
OIL = line("olive oil", amount(2, "tablespoon"))
REST = (
    line("flour", amount(2, "cup")),
    line("sugar", amount(1, "cup")),
    line("eggs", amount(2)),
    line("milk", amount(1, "cup")),
    line("onion", amount(1)),
    line("broth", amount(4, "cup")),
)


def foods(fat: Ingredient) -> tuple[Ingredient, ...]:
    return (fat, *REST)


def test_fat_that_a_batter_is_poured_over_goes_into_the_hot_pot_first() -> None:
    do = doing(*foods(BUTTER))
    of = recipe(
        *foods(BUTTER),
        steps=(
            step(do("melt", "butter", vessel="baking dish")),
            step(do("mix", "flour", "sugar", "milk", vessel="bowl"), do("pour", things=("batter", "butter"))),
            step(do("bake", minutes=minutes(40))),
        ),
    )
    assert goes(of, "batter bake") == {"butter": ["hot pot first"]}


def test_melted_fat_inside_a_batter_is_stirred_in_and_the_hot_way_is_offered() -> None:
    do = doing(*foods(MELTED))
    of = recipe(
        *foods(MELTED),
        steps=(step(do("mix", "butter", "milk", "eggs", vessel="bowl"), do("add", "flour"), do("bake")),),
    )
    ledger = Ledger()
    uses = placed(of, "batter bake", ledger)
    assert [use.goes for use in uses] == ["stirred in"]
    assert any("hot pot first" in question.text for question in ledger.questions)


@pytest.mark.parametrize("title", ["Peach cobbler", "Cornbread for nine", "Popovers", "Dutch baby"])
def test_the_name_of_the_dish_can_ask_for_the_hot_pot(title: str) -> None:
    do = doing(*foods(MELTED))
    of = recipe(
        *foods(MELTED),
        title=title,
        steps=(step(do("mix", "butter", "milk", "flour", vessel="bowl"), do("bake")),),
    )
    assert goes(of, "batter bake") == {"butter": ["hot pot first"]}


def test_fat_under_onions_browns() -> None:
    do = doing(*foods(OIL))
    of = recipe(
        *foods(OIL),
        steps=(
            step(
                do("heat", "olive oil", vessel="pot"), do("saute", "onion"), do("add", "broth"), do("simmer")
            ),
        ),
    )
    assert goes(of, "soup") == {"olive oil": ["browning"]}


def test_butter_for_a_roux_browns() -> None:
    do = doing(*foods(BUTTER))
    of = recipe(
        *foods(BUTTER),
        steps=(
            step(
                do("melt", "butter", vessel="saucepan"),
                do("mix", "flour", word="stir in"),
                do("other", word="cook"),
            ),
        ),
    )
    assert goes(of, "casserole or layered bake") == {"butter": ["browning"]}


def test_butter_for_the_mash_is_stirred_in() -> None:
    mash = (line("potatoes", amount(2, "pound")), BUTTER)
    do = doing(*mash)
    of = recipe(
        *mash,
        steps=(
            step(do("boil", "potatoes", vessel="pot"), do("drain"), do("mash")),
            step(do("add", "butter")),
        ),
    )
    assert goes(of, "boil or steam") == {"butter": ["stirred in"]}


def test_cold_fat_cut_into_flour_is_cut_in_at_home() -> None:
    do = doing(*foods(BUTTER))
    of = recipe(
        *foods(BUTTER),
        steps=(step(do("mix", "flour", vessel="bowl"), do("cut in", "butter"), do("mix", "milk")),),
    )
    assert goes(of, "biscuit or quick bread dough") == {"butter": ["cut in at home"]}


def test_cold_fat_put_with_flour_in_a_pastry_is_cut_in_too() -> None:
    do = doing(*foods(BUTTER))
    of = recipe(
        *foods(BUTTER), steps=(step(do("add", "flour", "butter", vessel="bowl"), do("knead"), do("bake")),)
    )
    assert goes(of, "pastry or pie") == {"butter": ["cut in at home"]}


def test_soft_fat_beaten_with_sugar_is_creamed_at_home() -> None:
    do = doing(*foods(SOFT))
    of = recipe(
        *foods(SOFT),
        steps=(
            step(
                do("beat", "butter", "sugar", vessel="bowl"),
                do("beat", "eggs", word="beat in"),
                do("mix", "flour", word="stir in"),
                do("bake"),
            ),
        ),
    )
    assert goes(of, "cookie") == {"butter": ["creamed at home"]}


def test_oil_in_the_pan_under_a_pizza_greases() -> None:
    pizza = (OIL, line("pizza dough", amount(1)), line("mozzarella", amount(1, "cup")))
    do = doing(*pizza)
    of = recipe(
        *pizza,
        steps=(
            step(do("add", "olive oil", vessel="iron skillet"), do("shape", "pizza dough")),
            step(do("add", "mozzarella"), do("bake")),
        ),
    )
    assert goes(of, "yeast bread") == {"olive oil": ["greasing"]}


def test_fat_that_greases_a_pot_to_brown_in_browns() -> None:
    stew = (OIL, line("beef", amount(1, "pound")))
    do = doing(*stew)
    of = recipe(
        *stew, steps=(step(do("grease", "olive oil", vessel="large pot", word="coat"), do("brown", "beef")),)
    )
    assert goes(of, "stew or braise") == {"olive oil": ["browning"]}


def test_fat_brushed_on_at_the_end_goes_on_top() -> None:
    do = doing(*foods(MELTED))
    of = recipe(
        *foods(MELTED),
        steps=(
            step(do("mix", "flour", "milk", vessel="bowl"), do("bake")),
            step(do("coat", "butter", things=("loaf",), word="brush")),
        ),
    )
    assert goes(of, "yeast bread") == {"butter": ["on top"]}


def test_butter_in_two_jobs_is_divided() -> None:
    do = doing(*foods(BUTTER))
    of = recipe(
        *foods(BUTTER),
        steps=(
            step(do("melt", ("butter", 0.25), vessel="pot"), do("saute", "onion"), do("simmer", "broth")),
            step(do("top", ("butter", 0.75), word="dot")),
        ),
    )
    assert [(use.goes, use.share) for use in placed(of, "soup")] == [("browning", 0.25), ("on top", 0.75)]


def test_a_third_and_smaller_job_is_told_with_the_largest() -> None:
    do = doing(*foods(BUTTER))
    of = recipe(
        *foods(BUTTER),
        steps=(
            step(do("grease", ("butter", 0.1), vessel="tin")),
            step(do("mix", ("butter", 0.6), "flour", "milk", vessel="bowl"), do("bake")),
            step(do("top", ("butter", 0.3))),
        ),
    )
    uses = placed(of, "yeast bread")
    assert {use.goes for use in uses} == {"stirred in", "on top"}
    assert sum(use.share for use in uses) == pytest.approx(1)
    assert any("greasing" in (use.when or "") for use in uses)


@pytest.mark.parametrize(
    ("fat", "family", "where"),
    [
        (OIL, "stew or braise", "browning"),
        (OIL, "no cook", "stirred in"),
        (OIL, "griddle", "greasing"),
        (BUTTER, "biscuit or quick bread dough", "cut in at home"),
        (SOFT, "cookie", "creamed at home"),
        (MELTED, "batter bake", "stirred in"),
        (line("sesame oil", amount(1, "teaspoon")), "pan fry or saute", "stirred in"),
        (line("cooking spray"), "batter bake", "greasing"),
        (line("oil", notes="for frying"), "batter bake", "browning"),
        (line("butter", notes="for the pan"), "batter bake", "greasing"),
        (line("butter", notes="to serve"), "griddle", "on top"),
    ],
)
def test_a_fat_that_no_step_names_does_what_its_line_or_its_kind_of_dish_says(
    fat: Ingredient, family: Family, where: str
) -> None:
    assert goes(recipe(fat), family) == {fat.name: [where]}


def test_fat_of_a_crumble_is_cut_in_whatever_the_dish() -> None:
    crumble = (
        line("butter", amount(0.5, "cup"), component="topping"),
        line("flour", amount(1, "cup"), component="topping"),
        line("plums", amount(2, "pound"), component="fruit"),
    )
    assert goes(recipe(*crumble), "batter bake") == {"butter": ["cut in at home"]}


def test_every_destination_has_its_reason() -> None:
    ledger = Ledger()
    placed(recipe(OIL), "stew or braise", ledger)
    assert {reason.rule for reason in ledger.reasons} == {"fat.browning", "fat.silent"}


def test_only_fats_have_jobs() -> None:
    of = recipe(*REST, line("heavy cream", amount(1, "cup")))
    assert jobs(of, items(of), graph(of), dish("soup")) == ()


def test_butter_that_only_boils_with_sugar_is_stirred_in_and_with_flour_it_is_a_roux() -> None:
    do = doing(*foods(BUTTER))
    syrup = recipe(
        *foods(BUTTER), steps=(step(do("melt", "butter", "sugar", vessel="saucepan"), do("boil")),)
    )
    assert goes(syrup, "yeast bread")["butter"] == ["stirred in"]
    roux = recipe(
        *foods(BUTTER),
        steps=(
            step(do("melt", "butter", vessel="saucepan"), do("add", "flour"), do("fry"), do("add", "milk")),
        ),
    )
    assert goes(roux, "casserole or layered bake")["butter"] == ["browning"]


def test_solid_fat_alone_in_the_pan_of_a_named_dish_goes_into_the_hot_pot() -> None:
    do = doing(*foods(BUTTER))
    of = recipe(
        *foods(BUTTER),
        title="River cornbread",
        steps=(
            step(do("add", "butter", vessel="skillet")),
            step(do("mix", "flour", "milk", "eggs", vessel="bowl"), do("bake")),
        ),
    )
    assert goes(of, "batter bake")["butter"] == ["hot pot first"]


def test_the_little_that_greases_a_tin_is_not_divided_from_measured_butter() -> None:
    do = doing(*foods(SOFT))
    of = recipe(
        *foods(SOFT),
        steps=(
            step(do("grease", "butter", vessel="cake tin")),
            step(do("cream", "butter", "sugar", vessel="bowl"), do("add", "flour"), do("bake")),
        ),
    )
    assert [(use.goes, use.share) for use in placed(of, "batter bake")] == [("creamed at home", 1.0)]


def test_butter_spread_on_the_dish_greases_it() -> None:
    do = doing(*foods(BUTTER))
    of = recipe(
        *foods(BUTTER),
        steps=(
            step(do("spread", "butter", word="butter", vessel="baking dish"), do("add", "milk"), do("bake")),
        ),
    )
    assert goes(of, "custard or pudding")["butter"] == ["greasing"]
