from __future__ import annotations

import msgspec
import pytest

from rules.dish import Evidence
from rules.facts import Facts
from rules.features import FEATURES, features
from rules.method import graph
from rules.recipe import Duration, Ingredient, Oven, Recipe
from rules.table import read
from tests.build import amount, doing, items, line, minutes, recipe, step


def seen(of: Recipe) -> frozenset[str]:
    return features(Facts(of, items(of), graph(of)))


POT = (
    line("olive oil", amount(2, "tablespoon")),
    line("onion", amount(1)),
    line("canned tomatoes", amount(1, "can", of=(14, "ounce"))),
    line("black beans", amount(2, "can", of=(15, "ounce"))),
    line("rice", amount(1, "cup")),
    line("broth", amount(6, "cup")),
)
do = doing(*POT)


def test_every_feature_of_the_table_is_worked_out_and_every_one_worked_out_is_in_the_table() -> None:
    named = {row.feature for row in read("families.toml", Evidence) if row.kind == "seen"}
    assert named == set(FEATURES)


def test_a_salad_meets_no_fire() -> None:
    of = recipe(*POT, steps=(step(do("mix", "black beans", "onion", "olive oil", vessel="bowl")),))
    assert "no fire" in seen(of)


def test_a_few_minutes_in_the_sauce_after_frying_are_a_brief_simmer() -> None:
    from rules.recipe import Duration, Step

    fry = (
        do("heat", "olive oil", vessel="pan"),
        do("saute", "onion"),
        do("add", "canned tomatoes"),
        do("simmer", minutes=minutes(5)),
    )
    of = recipe(
        *POT,
        steps=(
            Step(line=0, text="", actions=fry, durations=(Duration(what="simmer", low_min=5, high_min=5),)),
        ),
    )
    assert {"simmered briefly", "fried somewhere"} <= seen(of)
    assert "simmered long" not in seen(of)


def test_rice_in_broth_is_a_boiled_grain() -> None:
    foods = (POT[0], *POT[4:])
    cook = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(
                cook("heat", "olive oil", vessel="pot"),
                cook("add", "rice", "broth"),
                cook("simmer", minutes=minutes(18)),
            ),
        ),
    )
    assert {"grain boiled", "grain is most of it"} <= seen(of)


def test_nothing_simmers_without_a_liquid() -> None:
    of = recipe(
        *POT[:2], steps=(step(do("heat", "olive oil", vessel="pan"), do("simmer", "onion", word="cook")),)
    )
    assert "simmered" not in seen(of)
    assert "fried and not simmered" in seen(of)


def test_a_joint_for_hours_in_the_oven_is_no_stew_of_cubes() -> None:
    from rules.recipe import Duration, Step

    hours = (Duration(what="bake", low_min=150, high_min=180),)
    for prep, joint in ((None, True), ("cut in 1-inch cubes", False)):
        meat = line("lamb shoulder", amount(3, "pound"), prep=prep)
        act = doing(meat)
        of = recipe(
            meat,
            steps=(
                Step(
                    line=0,
                    text="",
                    actions=(act("add", "lamb shoulder", vessel="pot"), act("bake")),
                    durations=hours,
                ),
            ),
        )
        assert ("joint cooked long" in seen(of)) is joint


def test_a_yeast_dough_in_a_pan_is_a_pan_bread() -> None:
    foods = (
        line("flour", amount(2, "cup")),
        line("instant yeast", amount(1, "teaspoon")),
        line("water", amount(0.75, "cup")),
    )
    act = doing(*foods)
    dough = act("mix", "flour", "instant yeast", "water", vessel="bowl")
    assert "yeast dough in a pan" in seen(recipe(*foods, steps=(step(dough, act("fry", vessel="skillet")),)))
    assert "yeast dough in a pan" not in seen(
        recipe(*foods, oven=Oven(temp_f=450), steps=(step(dough, act("bake")),))
    )


@pytest.mark.parametrize(("hours", "ferments"), [(48, True), (2, False)])
def test_what_stands_for_days_ferments(hours: float, ferments: bool) -> None:
    foods = (line("cabbage", amount(1)), line("sea salt", amount(1, "tablespoon")))
    act = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(act("mix", "cabbage", "sea salt", vessel="jar"), act("rest", minutes=minutes(hours * 60))),
        ),
    )
    assert ("ferments or is jarred" in seen(of)) is ferments


def roasted(*foods: Ingredient, hours: float, covered: bool = True) -> frozenset[str]:
    """Foods put into a baking dish and baked under a lid."""
    act = doing(*foods)
    bake = act("bake", vessel="oven", minutes=minutes(hours * 60))
    if covered:
        bake = msgspec.structs.replace(bake, covered=True)
    names = [food.name for food in foods]
    told = step(act("add", *names, vessel="baking dish"), bake)
    span = Duration(what="bake", low_min=hours * 60, high_min=hours * 60)
    return seen(recipe(*foods, steps=(msgspec.structs.replace(told, durations=(span,)),)))


def test_a_joint_in_liquid_under_a_lid_is_braised_and_a_bare_one_is_not() -> None:
    joint, broth = line("chuck roast", amount(4, "pound")), line("broth", amount(2, "cup"))
    assert {"joint cooked long", "joint braised"} <= roasted(joint, broth, hours=3)
    assert "joint braised" not in roasted(joint, broth, hours=3, covered=False)
    assert "joint braised" not in roasted(joint, hours=3)


def test_cut_meat_for_hours_in_broth_braises_in_the_oven() -> None:
    pork = line("pork shoulder", amount(3, "pound"), prep="cubed")
    broth = line("broth", amount(2, "cup"))
    assert "braised in the oven" in roasted(pork, broth, hours=3)
    assert "braised in the oven" not in roasted(pork, broth, hours=0.5)
    assert "braised in the oven" not in roasted(pork, broth, line("rice", amount(1, "cup")), hours=3)


def test_fish_is_baked_where_it_is_most_of_the_dish() -> None:
    fish, beans = line("salmon fillets", amount(2, "pound")), line("asparagus", amount(1, "pound"))
    assert "fish baked" in roasted(fish, beans, hours=0.3)
    assert "fish baked" not in roasted(fish, line("potatoes", amount(5, "pound")), hours=0.3)
    assert "fish baked" not in roasted(fish, line("cheddar", amount(1, "cup")), hours=0.3)


def test_juice_with_the_fruit_makes_no_dough_of_crumbs() -> None:
    crumbs = (
        line("apples", amount(6)),
        line("lemon juice", amount(0.25, "cup")),
        line("flour", amount(1, "cup")),
        line("butter", amount(0.5, "cup")),
    )
    act = doing(*crumbs)
    of = recipe(
        *crumbs,
        steps=(
            step(act("mix", "apples", "lemon juice", vessel="baking dish")),
            step(act("mix", "flour", vessel="bowl"), act("cut in", "butter")),
            step(act("top", things=("crumbs", "apples")), act("bake", vessel="oven")),
        ),
    )
    assert "dough by weight" not in seen(of)


@pytest.mark.parametrize(
    ("meat", "prep", "joint"),
    [
        ("chuck roast", None, True),
        ("pork shoulder", "trimmed", True),
        ("chuck roast", "cut into 2-inch cubes", False),
        ("stewing beef", None, False),
    ],
)
def test_a_joint_that_simmers_for_hours_is_no_cut_meat(meat: str, prep: str | None, joint: bool) -> None:
    piece = msgspec.structs.replace(line(meat, amount(4, "pound")), prep=prep)
    foods = (piece, line("broth", amount(1, "cup")))
    act = doing(*foods)
    span = Duration(what="simmer", low_min=180, high_min=180)
    told = step(act("brown", meat, vessel="dutch oven"), act("simmer", "broth", minutes=minutes(180)))
    of = recipe(*foods, steps=(msgspec.structs.replace(told, durations=(span,)),))
    assert ("joint simmered long" in seen(of)) is joint


@pytest.mark.parametrize(("sugar", "cookie"), [(1.0, True), (0.05, False)])
def test_a_sweet_stiff_biscuit_is_a_cookie(sugar: float, cookie: bool) -> None:
    foods = (
        line("flour", amount(1, "cup")),
        line("sugar", amount(sugar, "cup")),
        line("butter", amount(0.5, "cup")),
        line("milk", amount(1, "tablespoon")),
    )
    act = doing(*foods)
    told = step(act("mix", "flour", "sugar", "butter", "milk"), act("shape"), act("bake", vessel="oven"))
    of = recipe(*foods, title="River biscuits", oven=Oven(temp_f=325), steps=(told,))
    assert ("sweet biscuit" in seen(of)) is cookie


def test_sweet_rice_in_much_milk_is_a_pudding_and_savoury_rice_is_none() -> None:
    rice, milk, sugar = (
        line("rice", amount(0.5, "cup")),
        line("milk", amount(1, "quart")),
        line("sugar", amount(0.25, "cup")),
    )
    onion = line("onion", amount(1))
    for foods, pudding in (
        ((rice, milk, sugar), True),
        ((rice, milk, sugar, onion), False),
        ((rice, milk), False),
    ):
        act = doing(*foods)
        told = step(
            act("add", *[food.name for food in foods], vessel="baking dish"), act("bake", vessel="oven")
        )
        assert ("milk pudding" in seen(recipe(*foods, oven=Oven(temp_f=300), steps=(told,)))) is pudding


def test_what_is_steamed_is_no_flat_bread() -> None:
    foods = (line("flour", amount(2, "cup")), line("milk", amount(2, "cup")))
    act = doing(*foods)
    mix = act("mix", "flour", "milk", vessel="bowl")
    assert "flour in a pan" in seen(recipe(*foods, steps=(step(mix, act("fry", vessel="skillet")),)))
    assert "flour in a pan" not in seen(recipe(*foods, steps=(step(mix, act("steam", vessel="kettle")),)))


def test_pieces_of_meat_arranged_in_a_dish_are_no_layers_and_stuffed_vegetables_are() -> None:
    foods = (line("chicken thighs", amount(8)), line("lemon", amount(1)), line("bell peppers", amount(6)))
    act = doing(*foods)
    bake = act("bake", vessel="oven")
    laid = recipe(
        *foods,
        oven=Oven(temp_f=425),
        steps=(step(act("layer", "chicken thighs", vessel="baking dish"), bake),),
    )
    stuffed = recipe(*foods, oven=Oven(temp_f=350), steps=(step(act("fill", "bell peppers"), bake),))
    assert "assembled and baked" not in seen(laid)
    assert "assembled and baked" in seen(stuffed)


def test_shanks_in_broth_are_braised_and_couscous_beside_them_is_not_baked() -> None:
    shanks = msgspec.structs.replace(line("lamb shanks", amount(4)))
    broth = line("broth", amount(3, "cup"))
    couscous = line("couscous", amount(2, "cup"))
    assert "braised in the oven" in roasted(shanks, broth, hours=2.5)
    assert "joint cooked long" not in roasted(shanks, broth, hours=2.5)
    act = doing(shanks, broth, couscous)
    bake = act("bake", vessel="oven", minutes=minutes(150))
    told = step(act("add", "lamb shanks", "broth", vessel="pot"), bake, act("serve", "couscous"))
    assert "grain or cheese baked" not in seen(
        recipe(shanks, broth, couscous, oven=Oven(temp_f=325), steps=(told,))
    )
