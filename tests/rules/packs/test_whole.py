from __future__ import annotations

import pytest

from rules.circumstances import Day
from tests.build import amount, doing, kinds, line, mates, minutes, packed, reasons, recipe, step

MARINADE = (
    line("chicken thighs", amount(2, "pound"), prep="cut in strips"),
    line("lemon juice", amount(2, "tablespoon")),
    line("olive oil", amount(2, "tablespoon")),
    line("oregano", amount(1, "teaspoon")),
    line("garlic", amount(3, "clove"), prep="minced"),
    line("potatoes", amount(1, "pound")),
    line("cornstarch", amount(1, "teaspoon")),
)
do = doing(*MARINADE)
SKEWERS = recipe(
    *MARINADE,
    steps=(
        step(
            do(
                "mix",
                "chicken thighs",
                "lemon juice",
                "olive oil",
                "oregano",
                "garlic",
                "potatoes",
                "cornstarch",
                vessel="bowl",
            ),
            do("marinate", minutes=minutes(120)),
        ),
        step(do("fry", things=("chicken",), vessel="pan")),
    ),
)


def test_a_marinade_rides_in_the_bag_of_its_meat() -> None:
    packs = packed(SKEWERS, "pan fry or saute")
    assert mates(packs, SKEWERS, "chicken thighs") == [
        {"chicken thighs", "lemon juice", "olive oil", "oregano", "garlic"}
    ]
    assert reasons(SKEWERS, "pan fry or saute", "oregano") == {"prepped.marinade"}


def test_starch_and_vegetables_do_not_ride_with_the_raw_meat() -> None:
    packs = packed(SKEWERS, "pan fry or saute")
    assert "chicken thighs" not in mates(packs, SKEWERS, "cornstarch")[0]
    assert "chicken thighs" not in mates(packs, SKEWERS, "potatoes")[0]


@pytest.mark.parametrize(("day", "travels"), [(Day(), "frozen"), (Day(freezer=False), "cool")])
def test_raw_meat_travels_frozen_where_there_is_a_freezer(day: Day, travels: str) -> None:
    raw = next(pack for pack in packed(SKEWERS, "pan fry or saute", day) if pack.label.startswith("raw"))
    assert raw.travels == travels


def test_every_raw_meat_has_a_pack_of_its_own() -> None:
    foods = (
        line("ground beef", amount(1, "pound")),
        line("ground pork", amount(1, "pound")),
        line("eggs", amount(1)),
    )
    mix = doing(*foods)
    of = recipe(
        *foods, steps=(step(mix("mix", "ground beef", "ground pork", "eggs", vessel="bowl"), mix("bake")),)
    )
    packs = packed(of, "roast")
    assert mates(packs, of, "ground beef") == [{"ground beef"}]
    assert mates(packs, of, "ground pork") == [{"ground pork"}]


def test_a_dredge_of_flour_is_no_marinade() -> None:
    foods = (
        line("chicken wings", amount(2, "pound")),
        line("flour", amount(0.5, "cup")),
        line("paprika", amount(1, "teaspoon")),
    )
    mix = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(
                mix("mix", "chicken wings", "flour", "paprika", vessel="bowl"),
                mix("chill", minutes=minutes(60)),
            ),
        ),
    )
    packs = packed(of, "deep fry")
    assert mates(packs, of, "paprika") == [{"flour", "paprika"}]


def test_a_sour_marinade_waits_apart_from_fish() -> None:
    foods = (
        line("trout", amount(2, "pound")),
        line("lemon juice", amount(2, "tablespoon")),
        line("soy sauce", amount(2, "tablespoon")),
    )
    mix = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(
                mix("mix", "trout", "lemon juice", "soy sauce", vessel="dish"),
                mix("marinate", minutes=minutes(30)),
            ),
        ),
    )
    packs = packed(of, "roast")
    assert mates(packs, of, "trout") == [{"trout"}]
    assert mates(packs, of, "lemon juice") == [{"lemon juice", "soy sauce"}]
    assert reasons(of, "roast", "lemon juice") == {"wet.fish-acid"}


def test_pastry_is_made_at_home_with_its_water() -> None:
    foods = (
        line("flour", amount(2, "cup")),
        line("butter", amount(1, "cup")),
        line("water", amount(0.25, "cup")),
        line("eggs", amount(1)),
    )
    mix = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(
                mix("mix", "flour", vessel="bowl"),
                mix("cut in", "butter"),
                mix("add", "water"),
                mix("chill", minutes=minutes(60)),
            ),
            step(mix("roll", things=("dough",)), mix("coat", "eggs", word="brush"), mix("bake")),
        ),
    )
    packs = packed(of, "pastry or pie")
    assert mates(packs, of, "flour") == [{"flour", "butter", "water"}]
    assert kinds(packs, of)["flour"] == {"prepped"}
    assert kinds(packs, of)["eggs"] == {"fresh"}


@pytest.mark.parametrize(("wait", "kind"), [(12 * 60, "prepped"), (90, "dry mix")])
def test_a_yeast_dough_that_rises_overnight_is_made_at_home(wait: float, kind: str) -> None:
    foods = (
        line("bread flour", amount(4, "cup")),
        line("instant yeast", amount(1, "teaspoon")),
        line("water", amount(1.5, "cup")),
    )
    mix = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(
                mix("mix", "bread flour", "instant yeast", "water", vessel="bowl"),
                mix("rise", minutes=minutes(wait)),
                mix("bake"),
            ),
        ),
    )
    packs = packed(of, "yeast bread", yeasted=True)
    assert kinds(packs, of)["bread flour"] == {kind}


def test_a_ferment_is_made_at_home_as_a_whole() -> None:
    foods = (
        line("cabbage", amount(1)),
        line("sea salt", amount(1, "tablespoon")),
        line("water", amount(1, "cup")),
    )
    of = recipe(*foods)
    packs = packed(of, "preserve or ferment")
    assert mates(packs, of, "cabbage") == [{"cabbage", "sea salt", "water"}]


def test_a_dip_of_yoghurt_is_mixed_at_home() -> None:
    foods = (
        line("greek yogurt", amount(2, "cup")),
        line("cucumber", amount(1), prep="grated"),
        line("garlic", amount(1, "clove")),
    )
    mix = doing(*foods)
    of = recipe(*foods, steps=(step(mix("mix", "greek yogurt", "cucumber", "garlic", vessel="bowl")),))
    packs = packed(of, "no cook")
    assert mates(packs, of, "greek yogurt") == [{"greek yogurt", "cucumber", "garlic"}]
    assert reasons(of, "no cook", "garlic") == {"prepped.mix"}


def test_a_dip_with_raw_egg_is_not() -> None:
    foods = (
        line("ricotta", amount(2, "cup")),
        line("eggs", amount(1)),
        line("oregano", amount(1, "teaspoon")),
    )
    mix = doing(*foods)
    of = recipe(*foods, steps=(step(mix("mix", "ricotta", "eggs", "oregano", vessel="bowl")),))
    assert kinds(packed(of, "no cook"), of)["eggs"] == {"fresh"}


def test_what_wants_a_machine_is_mixed_at_home_can_and_all() -> None:
    foods = (
        line("chickpeas", amount(1, "can")),
        line("tahini", amount(0.25, "cup")),
        line("lemon juice", amount(1, "tablespoon")),
    )
    mix = doing(*foods)
    of = recipe(
        *foods, steps=(step(mix("add", "chickpeas", "tahini", "lemon juice", vessel="food processor")),)
    )
    assert mates(packed(of, "no cook"), of, "chickpeas") == [{"chickpeas", "tahini", "lemon juice"}]


def test_water_is_drawn_at_camp() -> None:
    of = recipe(line("water", amount(4, "cup")))
    assert [(pack.kind, pack.travels) for pack in packed(of, "soup")] == [("water", "camp")]


def test_lye_never_rides_with_food() -> None:
    foods = (
        line("flour", amount(4, "cup")),
        line("water", amount(1, "cup")),
        line("lye", amount(0.25, "cup")),
    )
    mix = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(
                mix("mix", "flour", "water", "lye", vessel="bowl"),
                mix("rise", minutes=minutes(600)),
                mix("bake"),
            ),
        ),
    )
    assert mates(packed(of, "yeast bread", yeasted=True), of, "lye") == [{"lye"}]


def test_cooked_chicken_is_no_raw_meat() -> None:
    of = recipe(line("cooked chicken", amount(2, "cup")))
    (pack,) = packed(of, "casserole or layered bake")
    assert (pack.kind, pack.travels) == ("prepped", "cool")


def test_meat_that_is_cooked_already_has_a_cold_bag_of_its_own() -> None:
    foods = (line("cooked chicken", amount(2, "cup")), line("chicken stock", amount(4, "cup")))
    boil = doing(*foods)
    of = recipe(*foods, steps=(step(boil("add", "chicken stock", "cooked chicken", vessel="pot")),))
    packs = packed(of, "soup")
    assert kinds(packs, of)["cooked chicken"] == {"prepped"}
    assert mates(packs, of, "cooked chicken") == [{"cooked chicken"}]
    assert reasons(of, "soup", "cooked chicken") == {"prepped.cooked-meat"}


def test_lye_travels_away_from_all_food() -> None:
    foods = (
        line("bread flour", amount(4, "cup")),
        line("lye", amount(2, "tablespoon")),
        line("water", amount(4, "cup")),
    )
    dip = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(dip("mix", "bread flour", "water", vessel="bowl")),
            step(dip("mix", "lye", vessel="pot"), dip("bake")),
        ),
    )
    packs = packed(of, "yeast bread")
    assert mates(packs, of, "lye") == [{"lye"}]
    assert reasons(of, "yeast bread", "lye") == {"pantry.caustic"}


def test_bread_that_joins_the_meat_after_its_wait_does_not_undo_the_marinade() -> None:
    foods = (
        line("chicken thighs", amount(2, "pound")),
        line("plain yogurt", amount(1, "cup")),
        line("cumin", amount(1, "teaspoon")),
        line("flatbreads", amount(8)),
    )
    do = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(
                do("mix", "plain yogurt", "cumin", vessel="bowl"),
                do("add", "chicken thighs"),
                do("marinate", minutes=minutes(240, what="marinate")),
            ),
            step(do("shape", "flatbreads", word="thread")),
            step(do("grill", minutes=minutes(10))),
        ),
    )
    assert mates(packed(of, "grill or smoke"), of, "chicken thighs") == [
        {"chicken thighs", "plain yogurt", "cumin"}
    ]


def test_ham_that_is_diced_is_cut_at_home_and_a_whole_one_travels_as_it_comes() -> None:
    for prep, kind in (("diced", "prepped"), (None, "fresh")):
        ham = line("ham", amount(8, "ounce"), prep=prep)
        of = recipe(ham, steps=(step(doing(ham)("fry", "ham", vessel="pan")),))
        (pack,) = packed(of, "pan fry or saute")
        assert (pack.kind, pack.travels) == (kind, "cool")
    assert "prepped.cured-meat" in reasons(
        recipe(line("ham", amount(8, "ounce"), prep="diced")), "pan fry or saute", "ham"
    )


@pytest.mark.parametrize(("raised", "kind"), [(True, "dry mix"), (False, "prepped")])
def test_a_crust_with_baking_powder_meets_its_milk_only_at_camp(raised: bool, kind: str) -> None:
    powder = (line("baking powder", amount(1, "tablespoon")),) if raised else ()
    foods = (
        line("flour", amount(2, "cup")),
        *powder,
        line("butter", amount(6, "tablespoon"), state=("cold",)),
        line("milk", amount(0.75, "cup")),
    )
    cook = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(
                cook("mix", *(food.name for food in foods[:-2]), vessel="bowl"),
                cook("cut in", "butter"),
                cook("mix", "milk", word="stir in"),
            ),
            step(cook("bake", minutes=minutes(25))),
        ),
    )
    assert kinds(packed(of, "pastry or pie"), of)["flour"] == {kind}
