"""What meets what: the ways in which a method speaks of things without naming them, one sentence each."""

from __future__ import annotations

import pytest

from assistant.reader.read import read
from rules import method
from rules.method import Graph
from rules.recipe import Recipe


def followed(foods: str, *steps: str) -> tuple[Recipe, Graph]:
    recipe = read("River dish\n\n" + foods.replace("; ", "\n") + "\n\n" + "\n".join(steps))
    return recipe, method.graph(recipe)


def ends(found: tuple[Recipe, Graph]) -> dict[str, int]:
    """The last thing that each food ends in."""
    recipe, graph = found
    return {recipe.ingredients[taking.ingredient].name: graph.whole(taking.thing) for taking in graph.takings}


@pytest.mark.parametrize(
    ("foods", "steps"),
    [
        # "it" is what was tossed
        ("2 lb beef; 1/4 cup flour; 2 tbsp oil", ("Toss the beef in the flour and brown it in the oil in a pot.",)),
        # what is at hand goes over what is taken
        ("8 chicken thighs; 1/2 cup yogurt; 1 tsp cumin", ("Mix the yogurt and cumin. Pour over the chicken in a bag.",)),
        # what was cooked before goes into what is at hand
        (
            "1 lb macaroni; 2 tbsp butter; 2 cups milk; 2 cups cheddar",
            ("Boil the macaroni.", "Melt the butter in a pot, add the milk and simmer. Stir in the cheddar and the macaroni.",),
        ),
        # what was made last goes over what was made before
        (
            "2 lb potatoes; 1 cup cream; 1 cup crumbs; 2 tbsp butter",
            ("Lay the potatoes in a dish and pour over the cream.", "Mix the crumbs with the butter. Scatter over.", "Bake 1 hour."),
        ),
        # a greased dish takes what is spread in it
        (
            "6 apples; 1/2 cup sugar; 1 tbsp butter",
            ("Butter a baking dish with the butter. Toss the apples with the sugar; spread in the dish. Bake 40 minutes.",),
        ),
        # a well is made in the flour
        (
            "3 cups flour; 1 tsp soda; 2 cups buttermilk; 1 tbsp honey",
            ("Mix the flour and soda.", "Stir the honey into the buttermilk, make a well and pour it in. Bake 40 minutes."),
        ),
        # the chicken is the thighs, and not the stock
        (
            "2 lb chicken thighs; 2 tbsp oil; 1 onion; 4 cups chicken stock",
            ("Season the chicken.", "Heat the oil in a pot and brown the chicken.", "Add the onion and chicken stock. Simmer 40 minutes."),
        ),
        # flour dusted on the tin is flour of the dough
        (
            "3 cups flour; 1 tbsp baking powder; 1 cup milk",
            ("Mix the flour and baking powder. Stir in the milk. Drop by large spoonfuls onto a sheet. Bake 12 minutes.",),
        ),
    ],
)  # fmt: skip
def test_all_foods_end_in_one_pot(foods: str, steps: tuple[str, ...]) -> None:
    found = followed(foods, *steps)
    assert len(set(ends(found).values())) == 1
    assert len(ends(found)) == len(foods.split("; "))


def test_what_goes_over_another_goes_into_it_and_not_the_other_way_round() -> None:
    recipe, graph = followed(
        "1 cup flour; 1 cup milk; 1 can pineapple; 1/2 cup brown sugar",
        "Sprinkle the brown sugar in a pan and lay the pineapple on it.",
        "Beat the flour with the milk. Pour the batter over the pineapple.",
        "Bake 40 minutes.",
    )
    where = {recipe.ingredients[taking.ingredient].name: taking.thing for taking in graph.takings}
    assert graph.whole(where["flour"]) == where["pineapple"]


def test_water_for_skewers_is_theirs_alone() -> None:
    recipe, graph = followed(
        "2 lb chicken thighs; 1 cup yogurt; 2 peppers",
        "Mix the yogurt with the chicken and marinate overnight.",
        "Soak wooden skewers in water for 30 minutes.",
        "Thread on the chicken and the peppers. Grill 10 minutes.",
    )
    where = {recipe.ingredients[taking.ingredient].name: taking.thing for taking in graph.takings}
    assert where["water"] not in {where["chicken thighs"], where["peppers"]}
    assert graph.whole(where["peppers"]) == graph.whole(where["chicken thighs"])


def test_a_cover_of_slices_is_food_and_a_lid_is_none() -> None:
    recipe, graph = followed(
        "4 salmon fillets; 1 lemon, sliced",
        "Lay the salmon in a dish and cover with the lemon. Cover and bake 15 minutes.",
    )
    lemon = next(t for t in graph.takings if recipe.ingredients[t.ingredient].name == "lemon")
    assert lemon.laid
    assert any(event.does == "cover" for event in graph.things[graph.whole(lemon.thing)].events)
