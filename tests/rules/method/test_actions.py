from __future__ import annotations

from rules.method.actions import actions_of
from rules.recipe import Action, Recipe, Step, Use


def test_actions_are_numbered_over_all_steps() -> None:
    bake = Action(does="fry", word="bake")
    steps = (
        Step(line=0, text="Stir. Bake.", actions=(Action(does="mix", word="stir"), bake)),
        Step(line=1, text="Salt", uses=(1, 0)),
        Step(line=2, text="Nothing to do"),
    )
    found = list(actions_of(Recipe(steps=steps)))
    assert [(at, step) for at, step, _ in found] == [(0, 0), (1, 0), (2, 1)]
    # A verb of one meaning keeps it, and a step without deeds adds what it uses.
    assert [action.does for _, _, action in found] == ["mix", "bake", "add"]
    assert found[2][2].uses == (Use(ingredient=1), Use(ingredient=0))
