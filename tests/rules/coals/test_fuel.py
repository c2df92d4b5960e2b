"""What is lit and what is brought."""

from __future__ import annotations

from rules.because import Ledger
from rules.coals.fuel import chimney_min, fuel, reasons, stacked
from rules.plan import Batch, Minutes, PotPlan, Refresh, Stage
from tests.rules.coals.making import CAKE, heat


def test_the_reserve_is_a_quarter_rounded_up() -> None:
    total = fuel([Batch(light_at_min=-20, count=25), Batch(light_at_min=25, count=18)])
    assert (total.lit, total.reserve, total.briquettes) == (43, 11, 54)
    assert total.kg == 1.3


def test_lightings_stand_in_order_and_empty_ones_are_none() -> None:
    total = fuel(
        [Batch(light_at_min=10, count=5), Batch(light_at_min=-20, count=9), Batch(light_at_min=0, count=0)]
    )
    assert [batch.light_at_min for batch in total.batches] == [-20, 10]


def test_fuel_says_why() -> None:
    rules = [reason.rule for reason in reasons(fuel([Batch(light_at_min=-20, count=8)]))]
    assert rules == ["fuel.chimney", "fuel.loads", "fuel.reserve", "fuel.kind"]
    assert reasons(fuel([])) == ()


def test_a_chimney_is_lit_twenty_minutes_ahead() -> None:
    """Printed: 15 to 20 minutes before they are needed; the longer is planned."""
    assert chimney_min() == 20


def test_pounds_and_kilograms_are_one_mass() -> None:
    """A briquette of 0.8488 oz (24.1 g): 19 to the pound, as weighed."""
    total = fuel([Batch(light_at_min=-20, count=76)])
    assert (total.briquettes, total.lb, total.kg) == (95, 5.0, 2.3)


def test_what_a_chimney_does_not_hold_is_another_load() -> None:
    """A large chimney, full: 90 briquettes."""
    total = fuel([Batch(light_at_min=-60, count=100), Batch(light_at_min=-20, count=20)])
    assert total.chimney_loads == 3


BAKE = Stage(
    kind="bake",
    top=17,
    under=8,
    minutes=Minutes(low=40, high=50),
    refresh=(Refresh(at_min=-30, light_at_min=-50, top=5, under=2),),
)


def test_pots_of_one_bake_may_stand_on_one_another() -> None:
    """The lid's coals of the lower are those under the upper: its 8 and the 2 that renew them are spared."""
    spared, (reason,) = stacked([BAKE], 2)
    assert spared == 10
    assert reason.rule == "fuel.stacked"
    assert "17 coals on a lid are the 8 wanted" in reason.because
    assert stacked([BAKE], 3)[0] == 20
    assert stacked([BAKE], 4)[0] == 20  # three high at most: two stacks


def test_an_open_pan_or_a_lid_with_too_few_coals_carries_nothing() -> None:
    assert stacked([BAKE], 1) == (0, ())
    assert stacked([Stage(kind="brown", under=30), BAKE], 2) == (0, ())
    assert stacked([Stage(kind="roast", top=12, under=13)], 2) == (0, ())


def test_a_cake_for_twenty_says_what_stacking_spares() -> None:
    ledger = Ledger()
    plan, _ = heat(CAKE, "batter bake", pot=PotPlan(diameter_in=12, quarts=6, count=2), ledger=ledger)
    assert plan is not None
    assert plan.fuel.stacked_saves >= 8
    assert "fuel.stacked" in [reason.rule for reason in ledger.reasons]
