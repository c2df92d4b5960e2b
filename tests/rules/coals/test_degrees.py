"""Oven temperatures of a step, in the order of the text."""

from __future__ import annotations

import pytest

from rules.coals.degrees import oven_figures, spell_heats
from rules.recipe import Step


def told(text: str, *temps: float) -> Step:
    return Step(line=0, text=text, temps_f=temps)


@pytest.mark.parametrize(
    ("text", "figures"),
    [
        ("Bake at 425 for 15 minutes.", (425,)),
        ("Bake at 425 for 15 minutes, reduce to 350 and bake 40 minutes.", (425, 350)),
        ("Set it in a 425 oven.", (425,)),
        ("Put in a 450 degree oven, then lower to 325.", (450, 325)),
        ("Bake at 180 until golden.", (355,)),
        ("Roast at 200C for an hour.", (390,)),
        ("Cut into 350 g pieces at 2 inches.", ()),
        ("Warm the milk to 110.", ()),
        ("Serve to 300 people.", ()),
    ],
)
def test_bare_figures_count_where_no_unit_is_written(text, figures) -> None:
    assert figures == oven_figures(told(text), 1)


def test_a_figure_with_its_unit_is_enough_for_one_spell() -> None:
    assert oven_figures(told("Bake at 350°F, to 160 inside", 350.0), 1) == (350.0,)


def test_food_temperatures_are_no_ovens() -> None:
    assert oven_figures(told("until it is 165°F inside", 165.0), 1) == ()


def test_each_spell_takes_its_own_figure() -> None:
    assert list(spell_heats(told("Bake at 425 for 15 minutes, reduce to 350 and bake 40."), None, 2)) == [
        425,
        350,
    ]


def test_what_the_oven_is_turned_to_is_for_what_follows() -> None:
    step = told("Bake 15 minutes, then reduce the oven to 425°F.", 425.0)
    assert list(spell_heats(step, 475.0, 1)) == [475.0]
    assert list(spell_heats(step, 475.0, 2)) == [475.0, 425.0]


def test_without_a_figure_the_oven_stays_where_it_stands() -> None:
    assert list(spell_heats(told("Bake 20 minutes."), 350.0, 1)) == [350.0]
    assert list(spell_heats(told("Bake 20 minutes."), None, 1)) == [None]


def test_a_fan_ovens_figure_beside_the_still_ones_is_no_second_spell() -> None:
    step = told("Heat the oven to 200C/fan 180C/gas 6.", 390.0, 355.0)
    assert oven_figures(step, 1) == (390.0,)
    assert oven_figures(told("Bake at 170C fan.", 340.0), 1) == (340.0,)
