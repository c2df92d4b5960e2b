from __future__ import annotations

import pytest

from rules.instructions.words import amount_of, joined, sentence, sign_of, time_of, with_state
from rules.plan import PackItem
from rules.recipe import Action, Duration
from tests.build import amount, line


@pytest.mark.parametrize(
    ("food", "said"),
    [
        (line("flour", amount(2, "cup")), "2 cups flour"),
        (line("garlic", amount(3, "clove")), "3 cloves of garlic"),
        (line("tomatoes", amount(2, "can", of=(14, "ounce"))), "2 cans of tomatoes (14 ounces each)"),
        (line("eggs", amount(3)), "3 eggs"),
        (line("salt"), "salt"),
        (line("bay leaf", amount(2, "leaf")), "2 bay leaf"),
    ],
)
def test_an_amount_is_said_as_people_say_it(food: object, said: str) -> None:
    item = PackItem(ingredient=0, share=1.0, amount=food.amounts[0] if food.amounts else None)  # type: ignore[attr-defined]
    assert amount_of(item, food, "us") == said  # type: ignore[arg-type]


def test_the_state_in_which_a_food_goes_in_is_told() -> None:
    assert (
        with_state("1/2 cup butter", line("butter", state=("unsalted", "melted")))
        == "1/2 cup butter (melted)"
    )
    assert with_state("1 cup milk", line("milk", state=("whole",))) == "1 cup milk"


@pytest.mark.parametrize(
    ("low", "high", "said"),
    [
        (20, 25, " for 20 to 25 minutes"),
        (1, 1, " for 1 minute"),
        (0.5, 0.5, " for 30 seconds"),
        (90, 90, " for 1 1/2 hours"),
        (240, 300, " for 4 to 5 hours"),
        (0, 0, ""),
    ],
)
def test_times_are_told_in_seconds_minutes_or_hours(low: float, high: float, said: str) -> None:
    span = Duration(what="other", low_min=low, high_min=high)
    assert time_of(Action(does="bake", word="bake", minutes=span)) == said


def test_the_sign_to_wait_for_follows_after_a_comma() -> None:
    assert sign_of(Action(does="bake", word="bake", until="until golden")) == ", until golden"
    assert sign_of(Action(does="bake", word="bake")) == ""


def test_lists_and_sentences_are_tidy() -> None:
    assert joined(["a", "", "b", "a", "c"]) == "a, b and c"
    assert sentence("  stir   in the milk , ") == "Stir in the milk."
    assert sentence("") == ""
