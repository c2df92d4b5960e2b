from __future__ import annotations

from rules.method import graph
from tests.build import amount, doing, line, minutes, recipe, step

POT = (
    line("sausage", amount(1, "pound")),
    line("onion", amount(1)),
    line("paprika", amount(1, "teaspoon")),
    line("cayenne pepper", amount(0.25, "teaspoon")),
    line("olives", amount(1, "cup"), optional=True),
)
do = doing(*POT)


def guessed(of: object) -> dict[str, int]:
    return {of.ingredients[taking.ingredient].name: taking.step for taking in graph(of).guesses}  # type: ignore[attr-defined]


def test_a_food_enters_in_the_step_whose_words_name_it() -> None:
    of = recipe(
        *POT,
        steps=(
            step(do("saute", "onion"), text="Cook the onion."),
            step(
                do("mix", "paprika"),
                do("simmer", minutes=minutes(20)),
                text="Season with paprika; the sausage goes in.",
            ),
        ),
    )
    assert guessed(of)["sausage"] == 1


def test_raw_meat_that_no_step_names_enters_at_the_first_fire() -> None:
    of = recipe(
        *POT,
        steps=(
            step(do("mix", "paprika")),
            step(do("fry", "onion"), text="Fry the onion."),
            step(do("simmer")),
        ),
    )
    assert guessed(of)["sausage"] == 1


def test_any_other_food_enters_with_the_one_before_it_in_the_list() -> None:
    of = recipe(
        *POT,
        steps=(
            step(do("saute", "sausage", "onion"), text="Fry."),
            step(do("add", "paprika"), do("simmer"), text="Add it."),
        ),
    )
    assert guessed(of)["cayenne pepper"] == 1


def test_pepper_alone_is_black_pepper_and_no_cayenne() -> None:
    of = recipe(
        *POT,
        steps=(
            step(do("saute", "sausage", "onion", "paprika"), text="Fry."),
            step(do("season"), text="Salt and pepper to taste."),
        ),
    )
    assert guessed(of)["cayenne pepper"] == 0


def test_an_optional_food_is_not_guessed_from_its_neighbour() -> None:
    of = recipe(
        *POT, steps=(step(do("saute", "sausage", "onion", "paprika", "cayenne pepper"), text="Fry."),)
    )
    assert "olives" not in guessed(of)


def test_nothing_is_guessed_where_nothing_is_done() -> None:
    assert graph(recipe(*POT)).guesses == ()
