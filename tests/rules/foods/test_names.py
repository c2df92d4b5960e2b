from __future__ import annotations

import pytest

from rules.foods.names import plain, singular, singulars, words_of


@pytest.mark.parametrize(
    ("written", "spelled"),
    [
        ("All-Purpose Flour", "all purpose flour"),
        ("baker’s ammonium", "bakers ammonium"),
        ("crème fraîche", "creme fraiche"),
        ("jalapeño", "jalapeno"),
        ("tomato, canned", "tomato canned"),
        ("  half & half ", "half half"),
        ("smørrebrød", "smorrebrod"),
        ("", ""),
    ],
)
def test_names_are_compared_without_case_accents_and_punctuation(written: str, spelled: str) -> None:
    assert plain(written) == spelled


@pytest.mark.parametrize(
    ("plural", "one"),
    [
        ("tomatoes", "tomato"),
        ("berries", "berry"),
        ("leaves", "leaf"),
        ("radishes", "radish"),
        ("peaches", "peach"),
        ("boxes", "box"),
        ("eggs", "egg"),
        ("chilies", "chili"),
        ("cookies", "cookie"),
        ("anchovies", "anchovy"),
        ("molasses", "molasses"),
        ("asparagus", "asparagus"),
        ("hummus", "hummus"),
        ("swiss", "swiss"),
        ("peas", "pea"),
        ("gas", "gas"),
    ],
)
def test_a_plural_gives_its_singular_and_other_words_stay(plural: str, one: str) -> None:
    assert singular(plural) == one


def test_every_word_of_a_name_is_put_in_the_singular() -> None:
    assert singulars("chicken breasts with olives") == "chicken breast with olive"


def test_a_word_has_one_part_to_play() -> None:
    assert not words_of("state") & words_of("joins")
    assert not words_of("part") & words_of("changes")
    assert "chopped" in words_of("state")
    assert "vegan" in words_of("changes")
