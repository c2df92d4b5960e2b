"""The temperature that a recipe's oven means."""

from __future__ import annotations

import pytest

from rules.because import Ledger
from rules.circumstances import Day
from rules.coals.oven import oven_aim, oven_words, worded
from rules.dish import Dish
from rules.recipe import Oven, Recipe, Step


def aim(oven: Oven | None, day: Day | None = None, family: str = "batter bake", **dish):
    ledger = Ledger()
    found = oven_aim(Recipe(oven=oven), Dish(family=family, **dish), (), day or Day(), ledger)
    return found, [reason.rule for reason in ledger.reasons], ledger.questions


@pytest.mark.parametrize(
    ("stated", "temp_f"),
    [
        ("a slow oven", 325),
        ("in a moderate oven", 350),
        ("a moderately hot oven", 375),
        ("a very hot oven", 450),
        ("gas mark 4", 350),
        ("Gas 6", 400),
        ("regulo mark 1/2", 350),
    ],
)
def test_words_and_marks_take_their_temperature_from_the_table(stated, temp_f) -> None:
    row = worded(stated)
    if stated.startswith("regulo"):
        assert row is None or row.temp_f < temp_f
    else:
        assert row is not None
        assert temp_f == row.temp_f


def test_a_figure_of_the_text_is_taken_as_it_is() -> None:
    found, rules, questions = aim(Oven(temp_f=375.0))
    assert (found.temp_f, rules, questions) == (375, ["oven.figure"], ())


def test_a_fan_oven_means_twenty_five_degrees_more() -> None:
    found, rules, questions = aim(Oven(temp_f=325.0, fan=True))
    assert (found.temp_f, found.more_f) == (350, 25)
    assert rules == ["oven.fan"]
    assert questions


def test_a_word_is_said_to_be_a_guess_and_asked() -> None:
    found, rules, questions = aim(Oven(stated="a slow oven"))
    assert (found.temp_f, rules) == (325, ["oven.word"])
    assert questions[0].default == "325 °F"


def test_the_hottest_oven_is_asked() -> None:
    found, rules, questions = aim(Oven(stated="oven to max temp"))
    assert (found.temp_f, rules) == (500, ["oven.hottest"])
    assert questions


@pytest.mark.parametrize(
    ("family", "temp_f"), [("batter bake", 350), ("custard or pudding", 325), ("soup", 350)]
)
def test_without_a_word_the_family_decides_and_asks(family, temp_f) -> None:
    found, rules, questions = aim(None, family=family)
    assert (found.temp_f, rules) == (temp_f, ["oven.usual"])
    assert questions[0].about == "temperature"


def test_what_the_cook_asks_for_goes_before_the_text() -> None:
    found, rules, questions = aim(Oven(temp_f=375.0), Day(temp_f=400))
    assert (found.temp_f, found.is_asked, rules, questions) == (400, True, ["oven.asked"], ())


def test_high_ground_offers_more_heat_for_what_rises() -> None:
    assert "oven.high-ground" in aim(Oven(temp_f=350.0), Day(elevation_ft=7000), leavened=True)[1]
    assert "oven.high-ground" not in aim(Oven(temp_f=350.0), Day(elevation_ft=7000))[1]


def test_every_word_lies_in_its_own_range() -> None:
    assert all(row.low_f <= row.temp_f <= row.high_f for row in oven_words().values())


def test_a_still_ovens_figure_beside_a_fan_ovens_is_taken_as_it_is() -> None:
    """ "200C/180C fan": 390 and 355 °F."""
    made = Recipe(oven=Oven(temp_f=390.0, fan=True), steps=(Step(line=0, text="", temps_f=(390.0, 355.0)),))
    assert oven_aim(made, Dish(family="casserole or layered bake"), (), Day(), Ledger()).temp_f == 390
