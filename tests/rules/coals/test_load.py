"""The food in a pot as heat sees it."""

from __future__ import annotations

import pytest

from rules.circumstances import Day
from rules.coals.counts import coals
from rules.coals.figures import figure
from rules.coals.fire import Fire, Pot, laid, over
from rules.coals.load import load, planned
from rules.convert import camp
from rules.foods import weigh
from tests.rules.coals.making import CAKE, STEW, recipe


def test_a_watery_stew_takes_more_heat_a_degree_than_flour_and_sugar() -> None:
    stew, cake = load(weigh(STEW)), load(weigh(CAKE))
    assert stew is not None
    assert cake is not None
    assert 1500 < cake.j_kg_k < 2800 < stew.j_kg_k < 4200


def test_water_takes_what_water_takes() -> None:
    """4.18 kJ/(kg K) at 55 °C in any steam table; Choi and Okos' polynomial lies within 0.5 %."""
    pot = load(weigh(recipe({"water": (2, "quart")})))
    assert pot is not None
    assert pot.j_kg_k == pytest.approx(4183, rel=5e-3)
    assert pot.kg == pytest.approx(1.89, abs=0.03)


def test_two_pots_share_the_food() -> None:
    one, two = load(weigh(STEW)), load(weigh(STEW), pots=2)
    assert one is not None
    assert two is not None
    assert two.kg == pytest.approx(one.kg / 2)
    assert two.j_kg_k == one.j_kg_k


def test_food_of_unknown_make_counts_as_moist_and_too_little_of_it_as_unknown() -> None:
    strange = recipe({"zzyx": (1, "pound")})
    found = load(weigh(strange))
    assert found is not None
    assert found.j_kg_k == figure("food heat").value
    assert load(weigh(recipe({"zzyx": (1, None), "qwwx": (2, None), "water": (1, "cup")}))) is None


def test_what_a_plan_packs_is_the_food_of_its_recipe() -> None:
    plan = camp(STEW)
    packed, whole = planned(plan), load(weigh(STEW), pots=plan.pot.count if plan.pot else 1)
    assert packed is not None
    assert whole is not None
    assert packed.kg == pytest.approx(whole.kg, rel=0.05)
    assert packed.j_kg_k == pytest.approx(whole.j_kg_k, rel=0.05)


def test_a_weight_of_part_of_the_food_is_no_weight_of_the_pot() -> None:
    half = load(weigh(recipe({"ground beef": (1, "pound"), "zzyx": (4, None)})))
    assert half is not None
    assert not half.is_all
    day, its = Day(), coals("bake", diameter_in=12, depth="shallow", day=Day(), temp_f=350)
    fire = laid(Fire(at_min=0.0, iron_f=340, food_f=60), its.total)
    body = over("bake", "bake", its, fire, Pot(diameter_in=12, depth="shallow", load=half), day).body
    usual = over("bake", "bake", its, fire, Pot(diameter_in=12, depth="shallow"), day).body
    assert body == usual


def test_spice_without_a_weight_leaves_the_pot_weighed() -> None:
    whole = load(weigh(recipe({"water": (2, "quart"), "cinnamon": (1, None), "ginger": (1, None)})))
    assert whole is not None
    assert whole.is_all
