from __future__ import annotations

import pytest

from rules.dish import Evidence
from rules.facts import Facts
from rules.features import FEATURES, features
from rules.method import graph
from rules.recipe import Oven, Recipe
from rules.table import read
from tests.build import amount, doing, items, line, minutes, recipe, step


def seen(of: Recipe) -> frozenset[str]:
    return features(Facts(of, items(of), graph(of)))


POT = (
    line("olive oil", amount(2, "tablespoon")),
    line("onion", amount(1)),
    line("canned tomatoes", amount(1, "can", of=(14, "ounce"))),
    line("black beans", amount(2, "can", of=(15, "ounce"))),
    line("rice", amount(1, "cup")),
    line("broth", amount(6, "cup")),
)
do = doing(*POT)


def test_every_feature_of_the_table_is_worked_out_and_every_one_worked_out_is_in_the_table() -> None:
    named = {row.feature for row in read("families.toml", Evidence) if row.kind == "seen"}
    assert named == set(FEATURES)


def test_a_salad_meets_no_fire() -> None:
    of = recipe(*POT, steps=(step(do("mix", "black beans", "onion", "olive oil", vessel="bowl")),))
    assert "no fire" in seen(of)


def test_a_few_minutes_in_the_sauce_after_frying_are_a_brief_simmer() -> None:
    from rules.recipe import Duration, Step

    fry = (
        do("heat", "olive oil", vessel="pan"),
        do("saute", "onion"),
        do("add", "canned tomatoes"),
        do("simmer", minutes=minutes(5)),
    )
    of = recipe(
        *POT,
        steps=(
            Step(line=0, text="", actions=fry, durations=(Duration(what="simmer", low_min=5, high_min=5),)),
        ),
    )
    assert {"simmered briefly", "fried somewhere"} <= seen(of)
    assert "simmered long" not in seen(of)


def test_rice_in_broth_is_a_boiled_grain() -> None:
    foods = (POT[0], *POT[4:])
    cook = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(
                cook("heat", "olive oil", vessel="pot"),
                cook("add", "rice", "broth"),
                cook("simmer", minutes=minutes(18)),
            ),
        ),
    )
    assert {"grain boiled", "grain is most of it"} <= seen(of)


def test_nothing_simmers_without_a_liquid() -> None:
    of = recipe(
        *POT[:2], steps=(step(do("heat", "olive oil", vessel="pan"), do("simmer", "onion", word="cook")),)
    )
    assert "simmered" not in seen(of)
    assert "fried and not simmered" in seen(of)


def test_a_joint_for_hours_in_the_oven_is_no_stew_of_cubes() -> None:
    from rules.recipe import Duration, Step

    hours = (Duration(what="bake", low_min=150, high_min=180),)
    for prep, joint in ((None, True), ("cut in 1-inch cubes", False)):
        meat = line("lamb shoulder", amount(3, "pound"), prep=prep)
        act = doing(meat)
        of = recipe(
            meat,
            steps=(
                Step(
                    line=0,
                    text="",
                    actions=(act("add", "lamb shoulder", vessel="pot"), act("bake")),
                    durations=hours,
                ),
            ),
        )
        assert ("joint cooked long" in seen(of)) is joint


def test_a_yeast_dough_in_a_pan_is_a_pan_bread() -> None:
    foods = (
        line("flour", amount(2, "cup")),
        line("instant yeast", amount(1, "teaspoon")),
        line("water", amount(0.75, "cup")),
    )
    act = doing(*foods)
    dough = act("mix", "flour", "instant yeast", "water", vessel="bowl")
    assert "yeast dough in a pan" in seen(recipe(*foods, steps=(step(dough, act("fry", vessel="skillet")),)))
    assert "yeast dough in a pan" not in seen(
        recipe(*foods, oven=Oven(temp_f=450), steps=(step(dough, act("bake")),))
    )


@pytest.mark.parametrize(("hours", "ferments"), [(48, True), (2, False)])
def test_what_stands_for_days_ferments(hours: float, ferments: bool) -> None:
    foods = (line("cabbage", amount(1)), line("sea salt", amount(1, "tablespoon")))
    act = doing(*foods)
    of = recipe(
        *foods,
        steps=(
            step(act("mix", "cabbage", "sea salt", vessel="jar"), act("rest", minutes=minutes(hours * 60))),
        ),
    )
    assert ("ferments or is jarred" in seen(of)) is ferments
