"""What was said, as slots: figures counted from those before, foods told apart, places found."""

from __future__ import annotations

import pytest

from assistant.chat.acts import understand
from assistant.chat.context import Context
from assistant.reader.read import read
from rules.circumstances import Day, Swap
from tests.talks import CORPUS

ROLLS = read((CORPUS / "recipes" / "river-cinnamon-rolls.txt").read_text(encoding="utf-8"))


def slots(said: str, **more: object) -> dict[str, object]:
    context = Context(recipe=ROLLS, people=12, temp_f=375, pot_in=12, **more)  # type: ignore[arg-type]
    return {name: value for one in understand(said, context) for name, value in one.slots.items()}


@pytest.mark.parametrize(
    ("said", "people"),
    [
        ("there are 6 adults and 4 kids", 10),
        ("6 adults, 4 kids and 2 guests", 12),
        ("me and my wife", 2),
        ("three more are coming", 15),
        ("we lost four", 8),
        ("half the group dropped out", 6),
        ("we doubled our group", 24),
        ("cooking by myself", 1),
    ],
)
def test_people_are_counted_from_those_who_are_there(said: str, people: int) -> None:
    assert slots(said) == {"people": people}


def test_a_few_who_cannot_eat_something_are_no_headcount() -> None:
    assert slots("two of the boys can't do dairy") == {"food": "dairy"}


@pytest.mark.parametrize(
    ("said", "factor"),
    [("let's make two dozen rolls", 2), ("6 rolls", 0.5), ("two thirds of the recipe", 0.6667)],
)
def test_a_number_of_rolls_is_a_factor(said: str, factor: float) -> None:
    """The recipe makes twelve."""
    assert slots(said) == {"factor": factor}


@pytest.mark.parametrize(
    ("said", "clock"),
    [
        ("make it half past", "08:30"),
        ("an hour later", "09:15"),
        ("push dinner back 45 minutes", "09:00"),
        ("half an hour earlier", "07:45"),
        ("let's say 9 instead", "09:00"),
        ("dinner at 9", "21:00"),
    ],
)
def test_a_meal_is_moved_from_the_time_that_was_set(said: str, clock: str) -> None:
    assert slots(said, day=Day(eat="08:15"), last="eat at") == {"clock": clock}


@pytest.mark.parametrize(
    ("said", "air_f"), [("five below", -5), ("it's 10 below freezing", 22), ("in the low forties", 42)]
)
def test_the_air_is_said_in_many_ways(said: str, air_f: float) -> None:
    assert slots(said) == {"air_f": air_f}


@pytest.mark.parametrize(
    ("said", "diameter_in"), [("use a bigger pot", 14), ("a size down", 10), ("a 30 cm pot", 12)]
)
def test_a_pot_is_the_next_size_or_the_nearest(said: str, diameter_in: int) -> None:
    assert slots(said) == {"diameter_in": diameter_in}


def test_deep_not_shallow_is_deep() -> None:
    assert slots("deep, not shallow") == {"depth": "deep"}
    assert slots("not deep, shallow") == {"depth": "shallow"}


def test_whichever_food_is_in_the_recipe_is_the_one_that_goes() -> None:
    assert slots("swap margarine for the butter") == {"from": "butter", "to": "margarine"}
    assert slots("swap the butter for margarine") == {"from": "butter", "to": "margarine"}


def test_only_a_food_that_was_left_out_comes_back_without_an_amount() -> None:
    out = Day(swaps=(Swap(food="pecans"),))
    assert slots("leave the pecans in", day=out) == {"food": "pecans"}
    assert slots("leave the pecans in") == {}


def test_a_bare_why_is_about_the_food_named_before_it() -> None:
    assert slots("the yeast sits alone, why is that?") == {"about": "yeast"}


def test_undo_goes_back_as_far_as_is_said() -> None:
    assert slots("undo") == {}
    assert slots("undo the last two") == {"steps": 2}
    assert slots("undo everything") == {"steps": "all"}
