"""Foods that only the method names: which of them the cook takes, and with what amount."""

from __future__ import annotations

import pytest

from assistant.reader.read import read
from rules.recipe import Ingredient


def added(step: str, title: str = "River Pot") -> list[Ingredient]:
    recipe = read(f"{title}\n\nIngredients\n\n1 lb chicken\n1 lb pasta\n1 cup stock\n\nMethod\n\n1. {step}\n")
    return [ingredient for ingredient in recipe.ingredients if ingredient.from_ == "method"]


@pytest.mark.parametrize(
    ("step", "name", "amount"),
    [
        ("Boil the pasta in 4 quarts of water.", "water", (4, "quart")),
        ("Fry the chicken in 2 tablespoons olive oil.", "olive oil", (2, "tablespoon")),
        ("Season the chicken with paprika.", "paprika", None),
        ("Add a pinch of cinnamon.", "cinnamon", (1, "pinch")),
    ],
)
def test_what_the_method_takes_becomes_an_ingredient(
    step: str, name: str, amount: tuple[float, str] | None
) -> None:
    (found,) = added(step)
    assert found.name == name
    assert [(stated.low, stated.unit) for stated in found.amounts] == ([amount] if amount else [])


@pytest.mark.parametrize(
    "step",
    [
        "Mix to a batter like thick cream.",
        "Pour off the butter.",
        "Simmer to a thick tomato sauce.",
        "Rinse the chicken under water.",
        "Fish out the chicken.",
        "Do not add the vinegar.",
        "Roll into walnut-sized balls.",
    ],
)
def test_what_is_only_spoken_of_does_not(step: str) -> None:
    assert added(step) == []


def test_what_is_served_beside_may_be_left_out() -> None:
    (rice,) = added("Simmer the chicken in the stock. Serve with rice.")
    assert (rice.name, rice.optional, rice.notes) == ("rice", True, "to serve")
