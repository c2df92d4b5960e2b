"""The minutes that pot and food need to come to their heat."""

from __future__ import annotations

import pytest

from rules.because import Ledger
from rules.circumstances import Day
from rules.coals.burn import after
from rules.coals.counts import coals
from rules.coals.drafts import Draft
from rules.coals.fire import Bed, Fire, Pot, laid, over
from rules.coals.load import Load
from rules.coals.warming import (
    WARM_WITHIN_F,
    brought_up,
    come_up,
    is_too_cool,
    is_too_hot,
    one_fewer,
    warmed,
    why_come_down,
)
from tests.rules.coals.making import CAKE, heat

WARM = Draft(kind="warm", way="bake", low_min=10, high_min=10, temp_f=350, look="warm")
FAT = Draft(kind="heat fat", way="bake", low_min=3, high_min=5, temp_f=350, look="heat fat")
BAKE = Draft(kind="bake", way="bake", low_min=30, high_min=35, temp_f=350, look="bake")
BOIL = Draft(kind="boil", way="bring up", low_min=10, high_min=15, look="bring up")
POT = Pot(diameter_in=12, depth="shallow", load=Load(kg=2.0, j_kg_k=3500.0))


def stood(draft: Draft, *, diameter: int = 12, day: Day | None = None, kg: float = 2.0, iron_f: float = 70.0):
    day = day or Day()
    its = coals(draft.way, diameter_in=diameter, depth="shallow", day=day, temp_f=draft.temp_f)
    pot = Pot(diameter_in=diameter, depth="shallow", load=Load(kg=kg, j_kg_k=3500.0))
    is_in = draft.kind in ("bake", "boil")
    fire = laid(Fire(at_min=0.0, iron_f=iron_f, food_f=60.0 if is_in else None), its.total)
    return over(draft.kind, draft.way, its, fire, pot, day)


@pytest.mark.parametrize("diameter", [8, 10, 12, 14, 16])
def test_a_pot_is_warmed_until_its_iron_is_near_its_aim(diameter) -> None:
    this = stood(WARM, diameter=diameter)
    minutes = warmed(WARM, [BAKE], this).high_min
    # Whole minutes: half a minute is five degrees at the most.
    assert after(this.start, this.body, this.ember, minutes).iron_f == pytest.approx(
        350 - WARM_WITHIN_F, abs=5
    )
    assert after(this.start, this.body, this.ember, minutes).iron_f > this.low_f
    assert 12 <= minutes <= 25


def test_what_the_fat_is_heated_counts_as_warming() -> None:
    this = stood(WARM)
    assert warmed(WARM, [FAT, BAKE], this).high_min == warmed(WARM, [BAKE], this).high_min - 5


def test_the_reason_says_what_the_printed_ten_minutes_would_leave() -> None:
    ledger = Ledger()
    heat(CAKE, "batter bake", ledger=ledger)
    (reason,) = [reason for reason in ledger.reasons if reason.rule == "heat.warm"]
    assert "after the 10 that are printed" in reason.because
    assert "Arkansas" in reason.source


def test_a_pot_that_comes_from_the_boil_is_brought_to_the_heat_of_its_bake() -> None:
    cool = stood(BAKE, iron_f=225.0)
    assert is_too_cool(BAKE, cool)
    coming = come_up(BAKE, cool)
    assert (coming.kind, coming.look, coming.temp_f) == ("warm", "come up", 350)
    come = after(cool.start, cool.body, cool.ember, coming.high_min)
    assert come.iron_f == pytest.approx(350 - WARM_WITHIN_F, abs=5)
    assert not is_too_cool(BAKE, stood(BAKE, iron_f=340.0))


def test_more_food_takes_longer_to_boil_and_hot_iron_helps() -> None:
    def minutes(kg: float, iron_f: float = 70.0) -> float:
        return brought_up(BOIL, stood(BOIL, kg=kg, iron_f=iron_f), lambda _: ()).high_min

    assert 5 < minutes(1.0) < minutes(4.0) <= 65
    assert minutes(3.0, iron_f=350.0) < minutes(3.0)


def test_fresh_coals_bring_a_slow_pot_to_the_boil_sooner() -> None:
    this = stood(BOIL, kg=5.0)
    alone = brought_up(BOIL, this, lambda _: ())
    helped = brought_up(BOIL, this, lambda _: [(20.0, 15.0)])
    assert helped.high_min < alone.high_min


def test_wind_and_cold_do_not_shorten_the_warming_below_what_the_iron_needs() -> None:
    day = Day(air_f=20, wind="windy")
    this = stood(WARM, day=day, iron_f=20.0)
    minutes = warmed(WARM, [BAKE], this).high_min
    assert after(this.start, this.body, this.ember, minutes).iron_f > this.low_f


def test_a_pot_that_comes_from_a_hotter_bake_is_given_its_minutes_to_come_down() -> None:
    (reason,) = why_come_down(BAKE, stood(BAKE, iron_f=425.0))
    assert reason.rule == "heat.come-down"
    assert why_come_down(BAKE, stood(BAKE, iron_f=360.0)) == ()


def test_food_that_is_hot_already_takes_fewer_coals_than_the_chart() -> None:
    its = coals("bake", diameter_in=12, depth="shallow", day=Day(), temp_f=350)
    bed = (Bed(count=its.total, since_min=0.0),)
    cold, hot = (
        over("bake", "bake", its, Fire(at_min=18.0, iron_f=335, food_f=food_f, bed=bed), POT, Day())
        for food_f in (60.0, 212.0)
    )
    assert not is_too_hot(BAKE, cold)
    assert is_too_hot(BAKE, hot)
    fewer = one_fewer(its)
    assert (fewer.total, fewer.top, fewer.under) == (24, 16, 8)


def test_a_pot_that_comes_from_a_hot_oven_is_given_ten_minutes_to_come_down() -> None:
    its = coals("bake", diameter_in=12, depth="shallow", day=Day(), temp_f=350)
    fire = laid(Fire(at_min=0.0, iron_f=385, food_f=150), its.total - 3)
    assert not is_too_hot(BAKE, over("bake", "bake", its, fire, POT, Day()))
    hotter = laid(Fire(at_min=0.0, iron_f=475, food_f=200), its.total)
    assert is_too_hot(BAKE, over("bake", "bake", its, hotter, POT, Day()))
