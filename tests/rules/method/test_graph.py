from __future__ import annotations

import pytest

from rules.method import graph
from rules.method.graph import parts
from tests.build import amount, doing, line, minutes, recipe, step

FOODS = (
    line("flour", amount(2, "cup")),
    line("milk", amount(1, "cup")),
    line("onion", amount(1)),
    line("cheese", amount(1, "cup")),
)
do = doing(*FOODS)
OF = recipe(
    *FOODS,
    steps=(
        step(do("chop", "onion"), do("grate", "cheese")),
        step(do("mix", "flour", "milk", vessel="bowl")),
        step(do("saute", "onion", vessel="skillet")),
        step(do("add", things=("batter",), vessel="baking dish"), do("bake", minutes=minutes(30))),
    ),
)


def test_handwork_stays_with_the_food_and_is_no_taking() -> None:
    made = graph(OF)
    assert made.handled(2, "chop")
    assert made.handled(3, "grate")
    assert made.moments(3) == ()


def test_what_happens_later_to_a_food_follows_it_into_other_things() -> None:
    made = graph(OF)
    assert [event.does for event in made.after(made.moments(0)[0])][-1] == "bake"


def test_every_deed_is_counted() -> None:
    made = graph(OF)
    assert made.count("chop", "grate") == 2
    assert made.count("simmer") == 0


def test_the_whole_of_a_thing_is_the_last_one_it_ends_in() -> None:
    made = graph(OF)
    flour = made.moments(0)[0]
    assert made.whole(made.whole(flour.thing)) == made.whole(flour.thing)


@pytest.mark.parametrize(
    ("does", "word", "parted"),
    [("simmer", "simmer", True), ("bake", "bake", True), ("other", "cook", True), ("deglaze", "deglaze", False),
     ("add", "add", False), ("other", "check", False)],
)  # fmt: skip
def test_cooking_parts_what_enters_before_from_what_enters_after(does: str, word: str, parted: bool) -> None:
    assert parts(does, word) is parted  # type: ignore[arg-type]
