"""The fire carried from stage to stage."""

from __future__ import annotations

import msgspec
import pytest

from rules.circumstances import Day
from rules.coals.counts import coals
from rules.coals.fire import (
    Bed,
    Fire,
    Pot,
    after_fresh,
    fed,
    laid,
    left_by,
    minutes_until,
    over,
    put_back,
    raked,
    trimmed,
)
from rules.coals.glow import ember
from rules.coals.load import Load

POT = Pot(diameter_in=12, depth="shallow", load=Load(kg=2.0, j_kg_k=3500.0))
COLD = Fire(at_min=0.0, iron_f=70.0)


def bake(fire: Fire, kind: str = "bake"):
    its = coals("bake", diameter_in=12, depth="shallow", day=Day(), temp_f=350)
    return over(kind, "bake", its, fire, POT, Day())


def test_a_fire_without_coals_is_lit_for_what_is_wanted() -> None:
    fire, lit = fed(COLD, 25, 0, ember())
    assert lit == 25
    assert fire.bed == (Bed(count=25, since_min=0.0),)


def test_a_few_missing_coals_are_not_worth_a_chimney() -> None:
    fire = Fire(at_min=30.0, iron_f=350, bed=(Bed(count=25, since_min=0.0),))
    assert fed(fire, 25, 25, ember())[1] == 0
    older = Fire(at_min=50.0, iron_f=350, bed=(Bed(count=25, since_min=0.0),))
    assert fed(older, 25, 25, ember())[1] >= 6


def test_the_oldest_coals_are_taken_away_first() -> None:
    fire = Fire(at_min=40.0, iron_f=350, bed=(Bed(count=20, since_min=0.0), Bed(count=8, since_min=30.0)))
    left = trimmed(fire, 13)
    assert (left.lying, left.waiting) == (13, 15)
    assert {part.since_min: part.count for part in left.bed} == {30.0: 8, 0.0: 5}


def test_what_was_taken_away_burns_on_aside_and_goes_back_before_anything_is_lit() -> None:
    fire = trimmed(Fire(at_min=10.0, iron_f=350, bed=(Bed(count=30, since_min=0.0),)), 15)
    later = msgspec.structs.replace(fire, at_min=20.0)
    fed_again, lit = fed(later, 24, 30, ember())
    assert (fed_again.lying, fed_again.waiting, lit) == (24, 6, 0)
    assert put_back(fire, 15) == fire


def test_a_boil_is_fed_for_what_its_coals_will_give_on_the_way() -> None:
    fire = Fire(at_min=35.0, iron_f=350, bed=(Bed(count=24, since_min=0.0),))
    assert fed(fire, 24, 30, ember())[1] == 0
    assert fed(fire, 24, 30, ember(), later_min=15.0)[1] > 5


def test_what_is_spent_is_raked_out() -> None:
    fire = Fire(at_min=95.0, iron_f=350, bed=(Bed(count=20, since_min=0.0), Bed(count=8, since_min=60.0)))
    assert raked(fire).bed == (Bed(count=8, since_min=60.0),)


def test_an_empty_pot_is_warmed_without_food_and_a_bake_has_it() -> None:
    fire = laid(COLD, 25)
    warm, full = bake(fire, "warm"), bake(fire)
    assert warm.body.food_j_k == warm.body.contact_w_k == 0
    assert full.body.food_j_k == 2.0 * 3500


def test_a_stage_leaves_the_pot_as_warm_as_it_got_and_the_coals_older() -> None:
    fire = laid(COLD, 25)
    this = bake(fire)
    left = left_by(this, "bake", fire, 30.0, [(20.0, 6.0)])
    assert left.at_min == 30.0
    assert left.iron_f == pytest.approx(after_fresh(this, 30.0, [(20.0, 6.0)]).iron_f)
    assert left.food_f == pytest.approx(after_fresh(this, 30.0, [(20.0, 6.0)]).food_f)
    assert left.bed[-1] == Bed(count=6.0, since_min=20.0)
    again = bake(left)
    assert again.start.iron_f == left.iron_f
    assert again.start.heat_w == pytest.approx(after_fresh(this, 30.0, [(20.0, 6.0)]).heat_w)


def test_a_moment_is_found_on_the_closed_form() -> None:
    this = bake(laid(COLD, 25), "warm")
    at = minutes_until(this, lambda state: state.iron_f >= 300, 60.0)
    assert after_fresh(this, at).iron_f == pytest.approx(300, abs=1)
    assert minutes_until(this, lambda state: state.iron_f >= 3000, 60.0) == 60.0
    assert minutes_until(this, lambda state: state.iron_f >= 60, 60.0) == 0.0


def test_a_bake_that_has_to_come_up_gets_a_fresh_chimney_where_the_coals_have_begun_to_fade() -> None:
    old = Fire(at_min=50.0, iron_f=220, food_f=212, bed=(Bed(count=30, since_min=0.0),))
    fire, lit = fed(old, 25, 30, ember(), is_fresh=True)
    assert (lit, fire.lying, fire.waiting) == (25, 25, 30)
    young = Fire(at_min=10.0, iron_f=220, food_f=212, bed=(Bed(count=30, since_min=0.0),))
    fire, lit = fed(young, 25, 30, ember(), is_fresh=True)
    assert (lit, fire.lying) == (0, 25)
