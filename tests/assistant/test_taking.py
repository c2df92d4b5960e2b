"""What each deed takes of the list, and what it only speaks of."""

from __future__ import annotations

import pytest

from assistant.reader.read import read


def taken(foods: str, *steps: str) -> list[list[tuple[str, float]]]:
    told = read(
        f"Pot\n\nIngredients\n\n{foods}\n\nMethod\n\n" + "\n".join(f"1. {step}" for step in steps) + "\n"
    )
    return [
        [(told.ingredients[use.ingredient].name, use.share) for use in action.uses]
        for step in told.steps
        for action in step.actions
    ]


def test_what_was_cut_goes_in_with_the_next_deed() -> None:
    assert taken("2 onions\n1 cup stock", "Chop the onions and add to the stock.") == [
        [("onions", 1)],
        [("stock", 1), ("onions", 1)],
    ]


def test_half_now_leaves_half_for_later() -> None:
    assert taken("1 cup cheese", "Stir in half the cheese.", "Top with the remaining cheese.") == [
        [("cheese", 0.5)],
        [("cheese", 1)],
    ]


@pytest.mark.parametrize("verb", ["Discard", "Remove", "Fish out"])
def test_what_is_taken_out_is_not_taken(verb: str) -> None:
    assert (
        taken("2 bay leaves\n1 cup stock", "Simmer the stock and bay leaves.", f"{verb} the bay leaves.")[1]
        == []
    )


def test_seasoning_takes_the_salt_and_pepper_that_nothing_else_names() -> None:
    assert taken("1 lb trout\nsalt\npepper", "Season the trout.") == [
        [("trout", 1), ("salt", 1), ("pepper", 1)]
    ]


def test_all_of_a_part_goes_in_by_its_name() -> None:
    foods = "1 lb trout\n\nGlaze:\n1 cup sugar\n1 lemon"
    assert taken(foods, "Stir the glaze together.")[0] == [("sugar", 1), ("lemon", 1)]
