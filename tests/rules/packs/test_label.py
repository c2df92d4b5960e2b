from __future__ import annotations

import pytest

from rules.packs.label import listing
from tests.build import amount, doing, line, minutes, packed, recipe, step


@pytest.mark.parametrize(
    ("names", "said"),
    [
        (["flour"], "flour"),
        (["flour", "salt"], "flour and salt"),
        (["a", "b", "c", "d"], "a, b, c and d"),
        (["a", "b", "c", "d", "e"], "a, b, c and 2 more"),
    ],
)
def test_a_label_lists_a_few_and_counts_the_rest(names: list[str], said: str) -> None:
    assert listing(names) == said


def test_labels_say_what_a_pack_is() -> None:
    foods = (
        line("beef chuck", amount(2, "pound"), prep="cubed"),
        line("onion", amount(2), prep="chopped"),
        line("paprika", amount(1, "teaspoon")),
        line("cumin", amount(1, "teaspoon")),
        line("mustard", amount(1, "tablespoon")),
        line("honey", amount(1, "tablespoon")),
    )
    do = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(do("brown", "beef chuck", vessel="pot"), do("saute", "onion")),
            step(do("add", "paprika", "cumin"), do("simmer", minutes=minutes(90))),
            step(do("mix", "mustard", "honey", word="stir in")),
        ),
    )
    labels = {pack.label for pack in packed(of, "stew or braise")}
    assert {
        "raw beef chuck",
        "cut onion",
        "seasoning: paprika and cumin",
        "sauce: mustard and honey",
    } <= labels


def test_berries_are_not_said_to_be_cut() -> None:
    (pack,) = packed(recipe(line("blueberries", amount(2, "cup"))), "batter bake")
    assert pack.label == "blueberries"
