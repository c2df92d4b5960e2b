from __future__ import annotations

import pytest

from rules.because import Ledger
from rules.plan import PotPlan
from rules.pot import minutes_factor
from rules.pot.iron import fill_of, oven
from rules.pot.volume import raw_volume
from rules.recipe import Family
from tests.rules.pot.making import BATTER, items, recipe

MUCH = (*BATTER, *BATTER)


def factor(
    vessel: str | None, diameter_in: int = 12, family: Family = "batter bake", scale: float = 1.0
) -> tuple[float, Ledger]:
    one = recipe(*MUCH, family=family, vessel=vessel)
    weighed = items(one, scale)
    pot = oven(diameter_in, "shallow")
    fill = fill_of(pot, raw_volume(weighed, "batter bake").milliliters or 0)
    ledger = Ledger()
    plan = PotPlan(diameter_in=diameter_in, quarts=pot.quarts, fill=fill)  # type: ignore[arg-type]
    return minutes_factor(one, weighed, family, plan, ledger), ledger


def test_deeper_than_in_the_pan_takes_longer_and_shallower_less() -> None:
    assert factor("11x15 inch pan")[0] > 1.1
    assert factor("8x8 inch pan")[0] < 0.9


def test_the_reason_says_that_it_is_an_estimate() -> None:
    _, ledger = factor("8x8 inch pan")
    (reason,) = ledger.reasons
    assert reason.rule == "pot.minutes"
    assert "estimate" in reason.because


def test_the_factor_is_held_inside_its_limits() -> None:
    """0.7 to 1.6 (handbook, chapter 4)."""
    assert factor("5x5 inch pan", 16)[0] == 1.0, "that pan could not hold it: it was misread"
    assert factor("9x5x4 inch loaf pan", 16)[0] == 0.7
    assert 0.7 <= factor("8x8x3 inch pan", 14)[0] <= 1.6
    assert factor("18x14 inch pan", 10)[0] == 1.6


def test_a_thin_layer_sets_from_its_surface() -> None:
    """Below an inch in pan and pot alike the minutes stay."""
    assert factor("16x12 inch pan", 16)[0] == 1.0


@pytest.mark.parametrize("vessel", [None, "muffin tin", "baking sheet", "a dish"])
def test_without_a_pan_of_known_size_nothing_is_estimated(vessel: str | None) -> None:
    times, ledger = factor(vessel)
    assert (times, ledger.reasons) == (1.0, ())


def test_a_stew_has_no_pan_to_compare() -> None:
    assert factor("9x13 inch pan", family="stew or braise")[0] == 1.0


def test_no_pot_no_factor() -> None:
    one = recipe(*BATTER, vessel="9x13 inch pan")
    assert minutes_factor(one, items(one), "batter bake", None, Ledger()) == 1.0
