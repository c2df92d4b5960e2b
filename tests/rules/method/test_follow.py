from __future__ import annotations

from rules.method import Graph, Taking, graph
from rules.method.actions import actions_of
from rules.method.follow import MOST_ACTIONS
from rules.recipe import Recipe
from tests.build import amount, doing, line, minutes, recipe, step

BATTER = (
    line("flour", amount(2, "cup")),
    line("sugar", amount(1, "cup")),
    line("baking powder", amount(2, "teaspoon")),
    line("butter", amount(1, "stick")),
    line("eggs", amount(2)),
    line("milk", amount(1, "cup")),
)
do = doing(*BATTER)

STEW = (
    line("beef chuck", amount(2, "pound")),
    line("flour", amount(0.25, "cup")),
    line("vegetable oil", amount(3, "tablespoon")),
    line("onion", amount(1)),
    line("beef broth", amount(4, "cup")),
    line("thyme", amount(1, "teaspoon")),
)
cook = doing(*STEW)


def taken(of: Recipe, name: str) -> tuple[Graph, Taking]:
    made = graph(of)
    index = next(number for number, one in enumerate(of.ingredients) if one.name == name)
    return made, made.moments(index)[0]


def met(of: Recipe, name: str) -> set[str]:
    """The names of what is in the same group."""
    made, taking = taken(of, name)
    return {of.ingredients[other.ingredient].name for other in made.company(taking)}


def test_a_recipe_without_a_method_has_an_empty_graph() -> None:
    assert graph(recipe(*BATTER)) == Graph()


def test_two_bowls_that_are_poured_together_are_one_mixture() -> None:
    of = recipe(
        *BATTER,
        steps=(
            step(do("mix", "flour", "sugar", "baking powder", vessel="large bowl")),
            step(do("mix", "eggs", "milk", vessel="separate bowl")),
            step(do("pour", things=("wet ingredients", "dry ingredients"), word="pour")),
        ),
    )
    made, flour = taken(of, "flour")
    milk = made.moments(5)[0]
    assert flour.thing != milk.thing
    assert met(of, "milk") == {"flour", "sugar", "baking powder", "eggs", "milk"}


def test_what_is_named_again_is_the_thing_and_not_a_second_taking() -> None:
    of = recipe(
        *STEW,
        steps=(
            step(cook("heat", "vegetable oil", vessel="heavy pot"), cook("brown", "beef chuck")),
            step(cook("add", "beef broth", things=("beef",))),
        ),
    )
    assert len(graph(of).moments(0)) == 1


def test_butter_in_two_pans_is_poured_twice_in_equal_parts() -> None:
    butter = (
        line("butter", amount(2, "tablespoon")),
        line("onion", amount(1)),
        line("beef", amount(1, "pound")),
    )
    fry = doing(*butter)
    of = recipe(
        *butter,
        steps=(
            step(fry("melt", "butter", vessel="pot"), fry("saute", "onion")),
            step(fry("melt", "butter", vessel="frying pan"), fry("brown", "beef")),
        ),
    )
    assert [taking.share for taking in graph(of).moments(0)] == [0.5, 0.5]


def test_shares_that_the_text_states_are_kept_and_the_rest_goes_to_the_last() -> None:
    of = recipe(
        *BATTER,
        steps=(
            step(do("mix", ("sugar", 0.25), "eggs", vessel="bowl")),
            step(do("mix", "flour", ("sugar", 0.5), vessel="large bowl")),
        ),
    )
    assert [taking.share for taking in graph(of).moments(1)] == [0.25, 0.75]


def test_what_was_tossed_in_flour_is_browned_in_the_fat_that_was_heated_for_it() -> None:
    of = recipe(
        *STEW,
        steps=(
            step(cook("mix", "beef chuck", "flour", word="toss")),
            step(cook("heat", "vegetable oil", vessel="heavy pot"), cook("brown", things=("beef",))),
            step(cook("add", "onion"), cook("simmer", minutes=minutes(60))),
        ),
    )
    made, oil = taken(of, "vegetable oil")
    assert oil.hot
    assert made.moments(3)[0].thing == oil.thing


def test_a_vessel_of_another_name_holds_something_else_until_it_is_named_again() -> None:
    of = recipe(
        *STEW,
        steps=(
            step(cook("heat", "vegetable oil", vessel="skillet"), cook("fry", "onion")),
            step(cook("boil", "beef broth", vessel="saucepan")),
            step(cook("add", "thyme", vessel="skillet")),
        ),
    )
    made, thyme = taken(of, "thyme")
    assert thyme.thing == made.moments(2)[0].thing
    assert thyme.thing != made.moments(4)[0].thing


def test_the_pan_means_the_skillet_of_before() -> None:
    of = recipe(
        *STEW,
        steps=(
            step(cook("heat", "vegetable oil", vessel="large skillet"), cook("fry", "onion")),
            step(cook("add", "thyme", vessel="pan")),
        ),
    )
    made, thyme = taken(of, "thyme")
    assert thyme.thing == made.moments(2)[0].thing


def test_what_is_taken_up_goes_into_the_next_deed() -> None:
    of = recipe(
        *BATTER,
        steps=(
            step(do("mix", "flour", "milk", vessel="bowl")),
            step(do("other", "eggs", word="take"), do("mix", word="stir in")),
        ),
    )
    assert "eggs" in met(of, "flour")


def test_a_part_of_the_dish_that_is_spoken_of_as_one_is_taken_as_one() -> None:
    loaf = (
        line("ground beef", amount(2, "pound")),
        line("ketchup", amount(0.5, "cup"), component="glaze"),
        line("brown sugar", amount(2, "tablespoon"), component="glaze"),
    )
    make = doing(*loaf)
    of = recipe(
        *loaf,
        steps=(
            step(make("shape", "ground beef", makes="loaf", vessel="baking pan")),
            step(make("mix", things=("glaze",), word="stir"), make("bake", minutes=minutes(60))),
        ),
    )
    assert met(of, "ketchup") >= {"ketchup", "brown sugar"}


def test_a_dough_that_was_formed_takes_its_filling_without_mixing_it_in() -> None:
    pie = (
        line("flour", amount(2, "cup"), component="crust"),
        line("butter", amount(1, "cup"), component="crust"),
        line("apples", amount(3, "pound"), component="filling"),
        line("sugar", amount(0.5, "cup"), component="filling"),
    )
    make = doing(*pie)
    of = recipe(
        *pie,
        steps=(
            step(make("mix", "flour"), make("cut in", "butter"), make("chill", minutes=minutes(60))),
            step(make("mix", "apples", "sugar", things=("filling",), word="toss")),
            step(make("roll", things=("dough",)), make("bake", minutes=minutes(50))),
        ),
    )
    assert met(of, "apples") == {"apples", "sugar"}


def test_actions_are_numbered_through_the_whole_method() -> None:
    of = recipe(*BATTER, steps=(step(do("mix", "flour"), do("add", "milk")), step(do("bake"))))
    assert [(at, number) for at, number, _ in actions_of(of)] == [(0, 0), (1, 0), (2, 1)]


def test_a_step_whose_deeds_are_unread_adds_all_that_it_uses() -> None:
    from rules.recipe import Step

    of = recipe(*BATTER, steps=(Step(line=0, text="flour and milk", uses=(0, 5)),))
    assert met(of, "flour") == {"flour", "milk"}


def test_a_text_of_thousands_of_deeds_is_followed_so_far_and_loses_no_food() -> None:
    foods = (line("flour", amount(2, "cup")), line("milk", amount(1, "cup")))
    do = doing(*foods)
    many = step(*(do("mix", "flour", vessel="bowl") for _ in range(MOST_ACTIONS)), do("add", "milk"))
    found = graph(recipe(*foods, steps=(many,)))
    assert len(found.moments(0)) == MOST_ACTIONS
    assert found.moments(1) == ()
    assert [taking.ingredient for taking in found.guesses] == [1]
