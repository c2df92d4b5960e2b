"""Batter over hot fat: the method's words for it, told in several ways, all mean the hot pot first."""

from __future__ import annotations

import pytest

from assistant.reader.read import read
from rules.circumstances import Day
from rules.convert import camp

CAKE = """Pear Slump

1/2 cup butter
2 cups flour
1 cup sugar
1 tablespoon baking powder
2 cups milk
4 pears, sliced

{melt}
Whisk the flour, sugar and baking powder with the milk in a bowl.
{pour}
Bake at 350F for 45 minutes.
"""


@pytest.mark.parametrize(
    ("melt", "pour"),
    [
        (
            "Put the butter in a 9x13 inch pan and set the pan in the oven until it is melted and sizzling.",
            "Pour the batter over the hot butter. Spoon the pears over the top.",
        ),
        (
            "Melt the butter in a 9x13 inch pan in the oven.",
            "Pour the batter over the melted butter, then the pears. Do not stir.",
        ),
        (
            "Lay the butter in a deep roasting tin and let it melt in the oven.",
            "Pour the batter into the foaming butter and scatter the pears on top.",
        ),
    ],
)
def test_batter_poured_over_hot_butter_means_the_hot_pot_first(melt: str, pour: str) -> None:
    recipe = read(CAKE.format(melt=melt, pour=pour))
    plan = camp(recipe, Day())
    butter = next(index for index, item in enumerate(recipe.ingredients) if item.name == "butter")
    assert {use.goes for use in plan.fat if use.ingredient == butter} == {"hot pot first"}


def test_butter_melted_and_poured_into_the_batter_is_stirred_in() -> None:
    """The other way round: nothing is poured over the fat."""
    recipe = read(
        CAKE.format(
            melt="Melt the butter and let it cool.",
            pour="Stir the butter and the pears into the batter. Pour it into a greased pan.",
        )
    )
    plan = camp(recipe, Day())
    butter = next(index for index, item in enumerate(recipe.ingredients) if item.name == "butter")
    assert "stirred in" in {use.goes for use in plan.fat if use.ingredient == butter}
