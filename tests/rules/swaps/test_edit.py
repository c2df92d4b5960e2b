from __future__ import annotations

from rules.recipe import Action, Ingredient, Recipe, Step, Use
from rules.swaps.edit import changed


def line(name: str) -> Ingredient:
    return Ingredient(line=0, text=name, name=name)


RECIPE = Recipe(
    ingredients=(line("flour"), line("milk"), line("nuts")),
    steps=(
        Step(
            line=3,
            text="Mix all, top with the nuts.",
            uses=(0, 1, 2),
            actions=(
                Action(does="mix", word="mix", uses=(Use(ingredient=0), Use(ingredient=1))),
                Action(does="top", word="top", uses=(Use(ingredient=2, share=0.5),)),
            ),
        ),
    ),
)


def used(recipe: Recipe) -> list[list[str]]:
    step = recipe.steps[0]
    names = [one.name for one in recipe.ingredients]
    return [[names[use] for use in step.uses]] + [
        [names[use.ingredient] for use in one.uses] for one in step.actions
    ]


def test_taking_one_out_moves_the_others_up() -> None:
    assert used(changed(RECIPE, instead={0: None})) == [["milk", "nuts"], ["milk"], ["nuts"]]


def test_replacing_one_keeps_its_place() -> None:
    assert used(changed(RECIPE, instead={1: line("water")})) == [
        ["flour", "water", "nuts"],
        ["flour", "water"],
        ["nuts"],
    ]


def test_one_added_beside_another_is_used_where_that_is_used() -> None:
    both = changed(RECIPE, instead={1: line("dry milk")}, beside=[(1, line("water"))])
    assert used(both) == [["flour", "dry milk", "water", "nuts"], ["flour", "dry milk", "water"], ["nuts"]]
    assert [one.name for one in both.ingredients] == ["flour", "dry milk", "nuts", "water"]


def test_one_added_beside_one_that_left_takes_its_uses() -> None:
    assert used(changed(RECIPE, instead={2: None}, beside=[(2, line("seeds"))]))[2] == ["seeds"]
