"""How many times the recipe, and what is counted whole."""

from __future__ import annotations

import pytest

from assistant.reader.read import read
from rules.because import Ledger
from rules.circumstances import Day
from rules.convert import camp
from rules.pot import scaling

BUNS = "Buns\n\n{serves}\n\n2 cups flour\n1 egg\n1 cup milk\n\nMix the flour with the egg and the milk. Bake at 350F for 20 minutes.\n"


@pytest.mark.parametrize(
    ("serves", "people", "factor"),
    [
        ("Serves 9 to 10", 9, 1.0),
        ("Serves 8-9", 9, 1.0),
        ("Serves 8", 9, 1.125),
        ("Serves 9 hungry paddlers", 18, 2.0),
        ("Serves 4 to 6", 10, 2.0),
    ],
)
def test_a_span_of_servings_that_holds_the_people_is_taken_once(
    serves: str, people: int, factor: float
) -> None:
    recipe = read(BUNS.format(serves=serves))
    assert factor == pytest.approx(scaling(recipe, Day(people=people), Ledger()))


def test_eggs_in_the_packs_are_whole() -> None:
    plan = camp(read(BUNS.format(serves="Serves 8")), Day(people=9))
    egg = next(index for index, item in enumerate(plan.recipe.ingredients) if item.name == "egg")
    amounts = [item.amount for pack in plan.packs for item in pack.items if item.ingredient == egg]
    assert [amount.high for amount in amounts if amount] == [1.0]
