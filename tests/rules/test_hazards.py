from __future__ import annotations

import pytest

from rules import hazards
from rules.recipe import Action, Family, Ingredient, Step
from tests.build import act, amount, dish, items, line, recipe, step


def raw(
    kind: hazards.Kind, *lines: Ingredient, steps: tuple[Step, ...] = (), family: Family = "stew or braise"
) -> list[str]:
    made = recipe(*lines, steps=steps, family=family)
    return [item.ingredient.name for item in hazards.raw(kind, made, items(made), dish(family))]


@pytest.mark.parametrize("name", ["bacon", "beef chuck roast", "italian sausage", "pork belly", "oxtail"])
def test_bacon_and_fresh_sausage_are_raw_meat(name: str) -> None:
    assert raw("meat", line(name)) == [name]


@pytest.mark.parametrize(
    "name", ["pepperoni", "ham", "smoked sausage", "chicken broth", "beef bouillon cube", "hot dog"]
)
def test_cooked_and_cured_meat_and_stock_are_not(name: str) -> None:
    assert raw("meat", line(name)) == []
    assert raw("poultry", line(name)) == []


def test_shellfish_is_raw_fish() -> None:
    assert raw("fish", line("shrimp"), line("tuna", amount(1, "can"))) == ["shrimp"]


def test_meat_bought_cooked_is_not_raw_but_meat_that_the_cook_cooks_is() -> None:
    assert raw("poultry", line("chicken breast", state=("cooked",))) == []
    assert raw("meat", line("bacon", prep="cooked and crumbled")) == ["bacon"]


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        ("reindeer meat", "meat"),
        ("brown beer", "drink"),
        ("spicy chicken seasoning", None),
        ("turkey-style seitan", None),
        ("root beer", None),
        ("mystery powder", None),
    ],
)
def test_a_food_that_nobody_knows_is_judged_by_the_words_of_its_name(name: str, kind: str | None) -> None:
    made = recipe(line(name, food=""))
    assert hazards.hazard_of(items(made)[0]) == kind


def test_eggs_are_handled_raw_unless_they_are_boiled_in_the_shell() -> None:
    assert raw("egg", line("eggs")) == ["eggs"]
    assert raw("egg", line("eggs", prep="hard-boiled")) == []
    assert raw("egg", line("eggs"), steps=(step(act("boil", 0), act("peel", 0), act("chop", 0)),)) == []
    assert raw("egg", line("eggs"), steps=(step(act("beat", 0), act("boil", 0)),)) == ["eggs"]


FLOUR = line("flour", amount(0.25, "cup"))
BUTTER = line("butter", amount(2, "tablespoon"))
BEEF = line("beef stew meat", amount(2, "pound"))
MILK = line("milk", amount(1, "cup"))


@pytest.mark.parametrize(
    ("actions", "lines"),
    [
        pytest.param((act("melt", 1), act("add", 0)), (FLOUR, BUTTER), id="roux"),
        pytest.param(
            (act("saute", 1), act("mix", 0, word="stir in")), (FLOUR, BUTTER), id="flour on the onions"
        ),
        pytest.param((act("mix", 0, 1, vessel="small bowl"), act("boil")), (FLOUR, MILK), id="slurry"),
        pytest.param(
            (act("mix", 0, things=("batter",), vessel="bowl"), act("boil")),
            (FLOUR, MILK),
            id="slurry like a batter",
        ),
    ],
)
def test_a_roux_and_a_boiled_slurry_are_no_raw_flour(
    actions: tuple[Action, ...], lines: tuple[Ingredient, ...]
) -> None:
    assert raw("flour", *lines, steps=(step(*actions),)) == []


@pytest.mark.parametrize(
    ("actions", "lines"),
    [
        pytest.param((act("coat", 0, 1, word="dredge"), act("brown", 1)), (FLOUR, BEEF), id="dredging"),
        pytest.param(
            (act("mix", 0, 1, word="toss"), act("brown", 1)), (FLOUR, BEEF), id="meat tossed in flour"
        ),
        pytest.param(
            (act("mix", 0, 1), act("boil")), (FLOUR, line("egg", amount(1))), id="egg and flour dumplings"
        ),
        pytest.param((act("mix", 0, makes="dough"),), (FLOUR,), id="a dough"),
        pytest.param((act("knead", 0),), (FLOUR,), id="kneaded"),
        pytest.param(
            (act("top", 0, 1, 2),), (FLOUR, BUTTER, line("sugar", amount(1, "cup"))), id="a crumble"
        ),
    ],
)
def test_dredging_and_dough_in_a_stew_are_raw_flour(
    actions: tuple[Action, ...], lines: tuple[Ingredient, ...]
) -> None:
    assert "flour" in raw("flour", *lines, steps=(step(*actions),))


@pytest.mark.parametrize(
    "family", ["batter bake", "yeast bread", "griddle", "deep fry", "cookie", "pastry or pie"]
)
def test_flour_of_a_baking_family_is_raw_flour(family: Family) -> None:
    assert raw("flour", FLOUR, family=family) == ["flour"]


def test_flour_of_a_part_that_is_a_dough_is_raw_flour_and_that_of_its_sauce_is_not() -> None:
    of_sauce = line("flour", component="stew")
    of_dough = line("all-purpose flour", component="topping")
    powder = line("baking powder", component="topping")
    assert raw("flour", of_sauce, of_dough, powder) == ["all-purpose flour"]


def test_a_dough_bought_ready_is_raw_flour_wherever_it_goes() -> None:
    assert raw("flour", line("pizza dough"), family="casserole or layered bake") == ["pizza dough"]


@pytest.mark.parametrize(
    ("bean", "is_dry"),
    [
        (line("kidney beans", amount(2, "can")), False),
        (line("red kidney beans", amount(1, "can", of=(15, "ounce"))), False),
        (line("kidney beans", amount(2, "cup"), state=("dried",)), True),
        (line("cannellini beans", amount(1, "pound"), state=("dried",)), True),
        (line("cannellini beans", amount(1, "can")), False),
        (line("black beans", amount(1, "pound"), state=("dried",)), False),
        (line("kidney beans", amount(2, "cup"), state=("cooked",)), False),
    ],
    ids=lambda value: value if isinstance(value, bool) else None,
)
def test_only_dry_red_or_white_kidney_beans_count(bean: Ingredient, is_dry: bool) -> None:
    made = recipe(bean)
    assert bool(hazards.dry_kidney_beans(made, items(made))) is is_dry


def test_kidney_beans_that_the_method_soaks_are_dry() -> None:
    made = recipe(line("kidney beans", amount(2, "cup")), steps=(step(act("soak", 0), act("simmer", 0)),))
    assert len(hazards.dry_kidney_beans(made, items(made))) == 1


def test_raw_food_that_only_the_method_handles_is_named() -> None:
    made = recipe(line("flour"), steps=(step(act("coat", 0, word="dunk", things=("chicken", "batter"))),))
    assert hazards.only_named("poultry", made, items(made)) == ("chicken",)
    with_it = recipe(line("chicken thighs"), steps=made.steps)
    assert hazards.only_named("poultry", with_it, items(with_it)) == ()
