"""The coal plan as a whole."""

from __future__ import annotations

import math

import msgspec
import pytest

from rules.because import Ledger
from rules.circumstances import Day
from rules.plan import PotPlan
from rules.recipe import Duration, Oven
from tests.rules.coals.making import CAKE, STEW, action, heat, kinds, recipe, step


def test_a_cake_over_coals() -> None:
    """12 inches, 350 °F, printed as 17 over 8; first look at two thirds of the low end; turned every ten minutes."""
    plan, why_not = heat(CAKE, "batter bake")
    assert why_not is None
    assert kinds(plan.stages) == ["light", "warm", "bake"]
    bake = plan.stages[-1]
    assert (bake.top, bake.under, bake.temp_f) == (17, 8, 350)
    assert (bake.turn_every_min, bake.first_look_min, bake.starts_at_min) == (10, 20, -45)
    assert bake.pattern.under == "7 in a ring, 1 in the centre"
    assert bake.look_for
    light, warm, _ = plan.stages
    assert light.starts_at_min + 20 == warm.starts_at_min == -45 - warm.minutes.high
    assert (warm.top, warm.under) == (17, 8)


def test_fuel_adds_up_and_covers_every_stage() -> None:
    plan, _ = heat(STEW, "stew or braise")
    assert plan.fuel.lit == sum(batch.count for batch in plan.fuel.batches)
    assert plan.fuel.reserve == math.ceil(plan.fuel.lit / 4)
    assert plan.fuel.briquettes == plan.fuel.lit + plan.fuel.reserve
    assert plan.fuel.lit >= max(stage.top + stage.under for stage in plan.stages)


def test_a_long_stew_is_renewed_and_says_so() -> None:
    ledger = Ledger()
    plan, _ = heat(STEW, "stew or braise", ledger=ledger)
    simmer = plan.stages[-1]
    assert simmer.kind == "simmer"
    assert len(simmer.refresh) >= 2
    assert all(simmer.starts_at_min <= more.at_min < 0 for more in simmer.refresh)
    assert "coals.renew" in [reason.rule for reason in ledger.reasons]


def test_stages_stand_in_the_order_of_the_clock() -> None:
    plan, _ = heat(STEW, "stew or braise")
    starts = [stage.starts_at_min for stage in plan.stages]
    assert starts == sorted(starts)
    assert all(start < 0 for start in starts)


def test_reasons_of_a_count_name_their_stage() -> None:
    ledger = Ledger()
    heat(CAKE, "batter bake", ledger=ledger)
    about = {reason.about for reason in ledger.reasons if reason.rule == "coals.chart"}
    assert about == {"warm", "bake"}
    assert "look.first" in [reason.rule for reason in ledger.reasons]


@pytest.mark.parametrize("family", ["no cook", "preserve or ferment", "grill or smoke"])
def test_where_charcoal_has_no_part_one_sentence_says_so(family) -> None:
    plan, why_not = heat(recipe({"cabbage": (1, "head")}, step(action("mix"))), family)
    assert plan is None
    assert why_not
    assert why_not.endswith(".")


def test_a_fire_ban_is_said_first_and_a_stew_goes_on_a_stove() -> None:
    plan, why_not = heat(STEW, "stew or braise", Day(charcoal=False))
    assert plan is None
    assert why_not.startswith("Charcoal is not allowed today")
    assert "stove" in why_not
    assert "simmer 120 to 150 minutes" in why_not


def test_a_bake_is_never_guessed_on_a_stove() -> None:
    _, why_not = heat(CAKE, "batter bake", Day(charcoal=False))
    assert "cannot be guessed on a stove" in why_not


def test_high_ground_makes_a_simmer_longer_and_leaves_the_coals_alone() -> None:
    """FoodSafety.gov: above 3000 ft a quarter more time."""
    ledger = Ledger()
    low, high = (heat(STEW, "stew or braise", Day(elevation_ft=feet), ledger=ledger)[0] for feet in (0, 7000))
    assert high.stages[-1].minutes.low == 1.25 * low.stages[-1].minutes.low
    assert (high.stages[-1].top, high.stages[-1].under) == (low.stages[-1].top, low.stages[-1].under)
    assert high.stages[-1].temp_f == 199
    assert {"heat.high-ground", "heat.boils-at"} <= {reason.rule for reason in ledger.reasons}


def test_cold_and_wind_take_more_coals_and_earlier_looks() -> None:
    mild, _ = heat(CAKE, "batter bake")
    rough, _ = heat(CAKE, "batter bake", Day(air_f=30, wind="windy"))
    assert rough.stages[-1].top + rough.stages[-1].under > 25
    assert rough.stages[-1].first_look_min < mild.stages[-1].first_look_min


def test_two_pots_have_coals_each() -> None:
    ledger = Ledger()
    one, _ = heat(CAKE, "batter bake")
    two, _ = heat(CAKE, "batter bake", pot=PotPlan(diameter_in=12, quarts=6, count=2), ledger=ledger)
    assert two.fuel.lit == 2 * one.fuel.lit
    assert two.stages[-1].top == one.stages[-1].top
    assert "fuel.pots" in [reason.rule for reason in ledger.reasons]


def test_without_a_pot_a_twelve_inch_one_is_taken() -> None:
    assert heat(CAKE, "batter bake", pot=None)[0] == heat(CAKE, "batter bake")[0]


def test_the_rest_of_the_text_and_of_the_meat_goes_before_the_meal() -> None:
    rest = step(times=[Duration(what="rest", low_min=15, high_min=15)])
    rested = msgspec.structs.replace(CAKE, steps=(*CAKE.steps, rest))
    assert heat(rested, "batter bake")[0].stages[-1].starts_at_min == -50


def test_a_dish_that_the_method_never_heats_says_so() -> None:
    assert (
        heat(recipe({"water": (1, "cup")}, step(action("mix"))), "other")[1]
        == "The method heats nothing, so no coals are planned."
    )


def test_a_roast_has_its_thermometer_and_its_rest() -> None:
    made = recipe(
        {"pork loin": (4, "pound")},
        step(action("roast", "roast", 0, minutes=(80, 90))),
        oven=Oven(temp_f=350.0),
    )
    plan, _ = heat(made, "roast")
    assert plan.stages[-1].kind == "roast"
    assert abs(plan.stages[-1].top - plan.stages[-1].under) <= 1
    assert (plan.doneness[0].temp_f, plan.doneness[0].rest_min) == (145, 3)
