"""What a method may call a food of the list, and how well some words fit it."""

from __future__ import annotations

import pytest

from assistant.reader.known import ENOUGH, food_of, head_of, is_food, known_as, without_states
from rules.recipe import Amount, Ingredient


def fits(name: str, said: str, *, alternatives: tuple[str, ...] = ()) -> bool:
    known = known_as(0, Ingredient(line=0, text=name, name=name, alternatives=alternatives))
    return known.fit(tuple(said.split()), food_of(said)) >= ENOUGH


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("unsalted butter", "butter"),
        ("chicken thighs", "chicken"),
        ("beef chuck roast", "beef"),
        ("basil leaves", "basil"),
        ("canned tomatoes", "tomato"),
        ("scallions", "green onion"),
        ("sichuan peppercorns", "peppercorn"),
        ("lemon", "lemon juice"),
        ("half & half", "half and half"),
    ],
)
def test_words_that_can_mean_a_food_fit_it(name: str, said: str) -> None:
    assert fits(name, said)


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("chicken stock", "chicken"),
        ("peanut butter", "butter"),
        ("sweet potato", "potato"),
        ("cayenne pepper", "pepper"),
        ("powdered sugar", "sugar"),
        ("flour", "salt"),
    ],
)
def test_another_food_with_a_like_name_does_not(name: str, said: str) -> None:
    known = known_as(0, Ingredient(line=0, text=name, name=name))
    own = known_as(1, Ingredient(line=1, text=said, name=said))
    food = food_of(said)
    assert own.fit(tuple(said.split()), food) > known.fit(tuple(said.split()), food)


def test_what_may_stand_for_it_fits_a_little_less() -> None:
    known = known_as(0, Ingredient(line=0, text="", name="butter", alternatives=("margarine",)))
    assert (
        known.fit(("butter",), food_of("butter")) > known.fit(("margarine",), food_of("margarine")) >= ENOUGH
    )


def test_a_spoonful_wets_no_pan_and_a_cup_does() -> None:
    wine = Ingredient(
        line=0, text="", name="red wine", food="red wine", amounts=(Amount(low=1, high=1, unit="tablespoon"),)
    )
    cup = Ingredient(
        line=0, text="", name="red wine", food="red wine", amounts=(Amount(low=1, high=1, unit="cup"),)
    )
    assert [known_as(0, wine).pours, known_as(0, cup).pours] == [False, True]


def test_heads_states_and_verbs() -> None:
    assert [head_of(("chicken", "breast")), head_of(("olive", "oil"))] == ["chicken", "oil"]
    assert without_states(("melted", "butter")) == ("butter",)
    assert [is_food("butter"), is_food("sprinkle")] == [True, False]
