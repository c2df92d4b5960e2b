"""What is lit and what is brought."""

from __future__ import annotations

from rules.coals.fuel import chimney_min, fuel, reasons
from rules.plan import Batch


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
    assert rules == ["fuel.chimney", "fuel.reserve", "fuel.kind"]
    assert reasons(fuel([])) == ()


def test_a_chimney_is_lit_twenty_minutes_ahead() -> None:
    """Printed: 15 to 20 minutes before they are needed; the longer is planned."""
    assert chimney_min() == 20
