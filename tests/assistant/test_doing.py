"""What a verb does at its place: one case a rule."""

from __future__ import annotations

import pytest

from assistant.reader.doing import RULES
from assistant.reader.read import read

FOODS = "2 cups flour\n1/2 cup butter\n1 lb chicken\n1 onion\n2 cups stock\n1 tsp yeast\n1 cup cheese\n1 lemon\n2 tbsp oil\n"
#: The rule that decides, a method, and its last deed.
CASES = [
    ("heats_the_oven", "Set the oven to 350 F.", "preheat"),
    ("turns_the_knob", "Simmer the stock. Turn the heat down.", "other"),
    ("brings", "Bring the stock to a boil.", "boil"),
    ("goes_into_the_cold", "Put the chicken in the fridge.", "chill"),
    ("puts_by", "Chop the onion and set it aside.", "rest"),
    ("goes_on", "Fry the onion in oil. Wait 2 minutes.", "fry"),
    ("rests", "Mix the flour and yeast and leave in a warm place for an hour.", "rise"),
    ("lets", "Let the stock bubble for 5 minutes.", "simmer"),
    ("goes_into_the_oven", "Put the chicken in the oven.", "bake"),
    ("dips", "Dip the onion in boiling water for a minute.", "boil"),
    ("goes_under_the_grill", "Put the chicken under a hot grill.", "broil"),
    ("covers", "Cover the chicken with stock.", "pour"),
    ("tops", "Add the cheese on top.", "top"),
    ("drops_in", "Grate the cheese over the chicken.", "top"),
    ("fats", "Cut the butter into the flour.", "cut in"),
    ("lowers", "Boil the stock over low heat.", "simmer"),
    ("cooks", "Put the chicken in the oven and cook for an hour.", "bake"),
    ("fries", "Fry the onion in deep hot oil.", "deep fry"),
    ("blooms", "Bloom the yeast in water.", "soak"),
    ("dries", "Pat the chicken dry.", "drain"),
]


@pytest.mark.parametrize(("rule", "method", "deed"), CASES, ids=[case[0] for case in CASES])
def test_a_rule_decides_what_the_verb_alone_does_not(rule: str, method: str, deed: str) -> None:
    found = read(f"Supper\n\nIngredients\n\n{FOODS}\nMethod\n\n1. {method}\n")
    assert found.steps[-1].actions[-1].does == deed


def test_every_rule_has_its_case() -> None:
    assert {rule.__name__ for rule in RULES} == {rule for rule, *_ in CASES}


@pytest.mark.parametrize(
    ("method", "deed"),
    [
        ("Heat the oil.", "heat"),
        ("Cut the butter into small pieces.", "chop"),
        ("Bake the chicken 40 minutes. Give it ten minutes.", "rest"),
        ("Bake the chicken 40 minutes. Give it ten minutes more.", "bake"),
        ("Bake the chicken 40 minutes and leave it in there for 10 minutes.", "bake"),
        ("Put an empty pot in the oven.", "heat"),
    ],
)
def test_a_rule_keeps_out_where_it_has_nothing_to_say(method: str, deed: str) -> None:
    found = read(f"Supper\n\nIngredients\n\n{FOODS}\nMethod\n\n1. {method}\n")
    assert found.steps[-1].actions[-1].does == deed
