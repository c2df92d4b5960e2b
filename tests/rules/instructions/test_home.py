from __future__ import annotations

from rules.because import Ledger
from rules.circumstances import Day
from rules.instructions import write
from rules.method import graph
from rules.packs import divide
from rules.recipe import Family, Recipe
from tests.build import amount, dish, doing, items, line, minutes, recipe, step


def home(of: Recipe, family: Family, day: Day | None = None) -> tuple[str, ...]:
    made, day = graph(of), day or Day()
    packs = divide(of, items(of), made, dish(family), day, Ledger())
    return write(of, items(of), made, dish(family), packs, (), None, None, day, Ledger())[0]


def test_each_bag_is_told_with_its_amounts_its_container_and_its_id() -> None:
    of = recipe(line("flour", amount(2, "cup")), line("baking powder", amount(1, "tablespoon")))
    assert home(of, "batter bake") == (
        "Measure 2 cups flour and 1 tablespoon baking powder into a 1-quart zipper bag (dry-1), close it and shake it "
        "until it is one colour.",
        "Put a spoonful of butter or oil for the pot into a small bag of its own.",
        "Label every pack: what it is, the date, what is added at camp.",
    )


def test_metric_cooks_are_told_metric_amounts() -> None:
    of = recipe(line("flour", amount(2, "cup")))
    assert "250 g flour" in home(of, "batter bake", Day(units="metric"))[0]


def test_every_preparation_has_its_own_verb() -> None:
    foods = (
        line("onion", amount(2), prep="chopped"),
        line("garlic", amount(3, "clove"), prep="minced"),
        line("carrots", amount(4), prep="cut in coins"),
    )
    act = doing(*foods)
    of = recipe(*foods, steps=(step(act("add", "onion", "garlic", "carrots", vessel="pot"), act("simmer")),))
    assert home(of, "soup")[0] == (
        "Chop 2 onion, mince 3 cloves of garlic and wash and cut 4 carrots (cut in coins); bag them together (prepped-1)."
    )


def test_raw_meat_is_cut_on_its_own_board_and_frozen() -> None:
    steps = home(recipe(line("beef chuck", amount(2, "pound"), prep="cubed")), "stew or braise")
    assert "on a board of its own" in steps[0]
    assert "wash board, knife and hands" in steps[0]
    assert steps[1] == "Freeze prepped-1 lying flat; hard before the cooler is packed."


def test_a_marinade_is_mixed_before_the_meat_goes_in() -> None:
    foods = (line("chicken thighs", amount(1, "pound")), line("lemon juice", amount(1, "tablespoon")))
    act = doing(*foods)
    of = recipe(
        *foods, steps=(step(act("mix", "chicken thighs", "lemon juice", vessel="bowl"), act("marinate")),)
    )
    assert home(of, "roast")[0].startswith("Mix 1 tablespoon lemon juice; turn 1 pound chicken thighs in it")


def test_fat_is_cut_in_cold() -> None:
    foods = (line("flour", amount(2, "cup")), line("butter", amount(0.5, "cup")))
    act = doing(*foods)
    of = recipe(*foods, steps=(step(act("mix", "flour"), act("cut in", "butter"), act("bake")),))
    assert "cutting the cold butter in" in home(of, "biscuit or quick bread dough")[0]


def test_what_is_bought_frozen_is_not_frozen_at_home() -> None:
    steps = home(recipe(line("frozen peas", amount(1, "cup"))), "soup")
    assert steps == ()


def test_rice_that_the_list_wants_cooked_is_cooked_and_cooled_at_home() -> None:
    of = recipe(line("rice", amount(2, "cup"), food="cooked rice", state=("cooked",)))
    assert home(of, "pan fry or saute")[0].startswith("Cook and cool at once 2 cups rice")


def test_the_sauce_is_poured_the_fruit_pressed_flat() -> None:
    foods = (line("plums", amount(2, "pound"), prep="sliced"), line("sugar", amount(0.5, "cup")), line("soy sauce", amount(2, "tablespoon")), line("honey", amount(1, "tablespoon")))  # fmt: skip
    act = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(act("mix", "plums", "sugar", vessel="bowl"), act("bake", minutes=minutes(30))),
            step(act("mix", "soy sauce", "honey", vessel="small bowl")),
        ),
    )
    text = " ".join(home(of, "batter bake"))
    assert "press it flat and squeeze the air out" in text
    assert "Pour 2 tablespoons soy sauce and 1 tablespoon honey into a small screw-top bottle" in text


def test_ham_is_cut_and_citrus_is_no_berry() -> None:
    foods = (line("ham", amount(8, "ounce"), prep="diced"), line("lemons", amount(2)))
    act = doing(*foods)
    of = recipe(
        *foods,
        steps=(step(act("fry", "ham", vessel="pan")), step(act("chop", "lemons"), act("add", "lemons"))),
    )
    told = " ".join(home(of, "pan fry or saute"))
    assert "Dice 8 ounces ham" in told
    assert "Wash and cut 2 lemons" in told
