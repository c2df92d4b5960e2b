"""Which of several lines of the list a word of the method means, from what stands around it."""

from __future__ import annotations

from assistant.reader.read import read
from rules import method
from rules.recipe import Recipe


def uses(recipe: Recipe) -> list[tuple[str, list[tuple[str, str | None]]]]:
    """Every deed that takes something, with the foods and their states or parts."""
    foods = recipe.ingredients
    return [
        (
            action.word,
            [(foods[u.ingredient].name, foods[u.ingredient].component) for u in action.uses],
        )
        for step in recipe.steps
        for action in step.actions
        if action.uses
    ]


def test_cold_butter_is_not_the_melted_butter_for_the_top() -> None:
    recipe = read(
        "River biscuits\n\n2 cups flour\n1 tbsp baking powder\n6 tbsp cold unsalted butter, cubed\n1 cup milk\n"
        "2 tbsp melted butter\n\nWhisk the flour and baking powder. Work in the cold butter with your fingers. Stir in "
        "the milk. Bake at 450 F for 12 minutes. Brush with the melted butter."
    )
    taken = dict(uses(recipe))
    assert taken["work in"] == [("unsalted butter", None)]
    assert taken["brush"] == [("butter", None)]


def test_an_amount_tells_one_line_from_another() -> None:
    recipe = read(
        "River pudding\n\n8 cups bread cubes\n2 tbsp butter\n1/2 cup butter\n1 cup sugar\n\nMelt the 1/2 cup butter with "
        "the sugar. Grease a dish with the 2 tbsp butter and add the bread."
    )
    foods = recipe.ingredients
    melted = next(action for action in recipe.steps[0].actions if action.does == "melt")
    amounts = [
        foods[use.ingredient].amounts[0].unit for use in melted.uses if "butter" in foods[use.ingredient].name
    ]
    assert amounts == ["cup"]


LAYERED = (
    "River rolls\n\nDough:\n1 cup whole milk\n4 cups flour\n1 egg\n\nIcing:\n1 cup powdered sugar\n2 tbsp milk\n\n"
    "Warm the milk. Beat the milk and the egg into the flour and knead it. Bake at 375 F for 25 minutes.\n"
    "For the icing, stir the sugar with the milk and spread it on."
)


def test_milk_is_that_of_the_part_that_is_being_made() -> None:
    taken = uses(read(LAYERED))
    assert ("whole milk", "dough") in taken[0][1]
    assert ("milk", "icing") in taken[-1][1]
    assert all(("milk", "icing") not in foods for _, foods in taken[:-1])


def test_a_mixture_of_a_food_takes_no_more_of_the_food() -> None:
    recipe = read(
        "River rounds\n\n2 cups flour\n1/2 cup sugar\n1 egg\n1/2 cup milk\n\nStir the flour and sugar together. Beat the "
        "egg with the milk and stir into flour mixture."
    )
    flour = [use for step in recipe.steps for a in step.actions for use in a.uses if use.ingredient == 0]
    assert [use.share for use in flour] == [1.0]


def test_the_wet_meets_the_dry() -> None:
    recipe = read(
        "River cakes\n\n2 cups flour\n2 tsp baking powder\n2 eggs\n1 cup milk\n\nMix the flour and baking powder in a "
        "bowl. Beat the eggs with the milk. Stir the wet into the dry. Bake at 350 F for 30 minutes."
    )
    graph = method.graph(recipe)
    things = {graph.whole(taking.thing) for taking in graph.takings}
    assert len(things) == 1
    joined = [thing.joined_at for thing in graph.things if thing.into is not None]
    stir = [n for n, a in enumerate(a for step in recipe.steps for a in step.actions) if a.word == "stir"]
    assert joined == stir


def test_dry_ingredients_are_those_of_the_part_that_is_begun() -> None:
    recipe = read(
        "River cake\n\nCake\n2 cups flour\n2 tsp baking soda\n4 eggs\n1 cup oil\nFrosting\n8 oz cream cheese\n4 cups "
        "powdered sugar\n\nWhisk flour and soda. In another bowl beat eggs and oil. Stir in the dry ingredients and bake "
        "40 minutes at 350 F.\nBeat the cream cheese and gradually beat in the powdered sugar."
    )
    assert [one.component for one in recipe.ingredients] == ["cake"] * 4 + ["frosting"] * 2
    sugar = [
        (step, use.share)
        for step in recipe.steps
        for a in step.actions
        for use in a.uses
        if use.ingredient == 5
    ]
    assert [share for _, share in sugar] == [1.0]
    assert sugar[0][0] is recipe.steps[-1]


def test_scraping_up_everything_brown_takes_no_food() -> None:
    recipe = read(
        "River stew\n\n2 lb beef\n1 cup wine\n4 carrots\n1 cup peas\n\nBrown the beef in a pot. Pour in the wine and scrape "
        "up everything brown.\nAdd the carrots and simmer 1 hour.\nStir in the peas."
    )
    assert [word for word, _ in uses(recipe)] == ["brown", "pour in", "add", "stir in"]


def test_until_the_mixture_looks_like_crumbs_names_no_other_bowl() -> None:
    recipe = read(
        "River shortcakes\n\n6 peaches, sliced\n1/4 cup sugar\n2 cups flour\n1 tbsp baking powder\n1/2 cup cold butter\n1 "
        "cup milk\n\nCombine the peaches and sugar.\nMix the flour and baking powder. Cut in the butter until the mixture "
        "resembles coarse crumbs. Stir in the milk. Bake at 450 F for 10 minutes."
    )
    graph = method.graph(recipe)
    where = {recipe.ingredients[taking.ingredient].name: taking.thing for taking in graph.takings}
    assert where["butter"] == where["flour"]
    assert where["butter"] != where["peaches"]
