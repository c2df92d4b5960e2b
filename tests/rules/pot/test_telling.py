"""The sentences about the pot, word for word where a cook reads them."""

from __future__ import annotations

from rules.because import Ledger
from rules.circumstances import Day, PotOwned
from rules.dish import Dish
from rules.pot import choose
from rules.recipe import Family, Ingredient
from tests.rules.pot.making import BATTER, STEW, items, line, recipe


def told(
    *lines: Ingredient,
    family: Family,
    vessel: str | None = None,
    scale: float = 1.0,
    pots: tuple[PotOwned, ...] = (PotOwned(),),
) -> tuple[dict[str, str], list[str]]:
    """Reasons by rule, and the questions."""
    one = recipe(*lines, family=family, vessel=vessel)
    ledger = Ledger()
    choose(one, items(one, scale), Dish(family=family), Day(pots=pots), ledger)
    return {reason.rule: reason.because for reason in ledger.reasons}, [one.text for one in ledger.questions]


def test_the_match_of_a_pan_is_told_in_square_inches() -> None:
    reasons, _ = told(*BATTER, family="batter bake", vessel="9x13 in pan")
    assert reasons["pot.match"] == (
        "the 9x13 in pan has 117 sq in and a 12-inch pot 113 at the rim: the trade matches a bake by that circle"
    )


def test_several_times_the_recipe_is_several_times_the_pan() -> None:
    reasons, questions = told(*BATTER, family="batter bake", vessel="9x13 in pan", scale=2)
    assert reasons["pot.match"].startswith("2 times the 9x13 in pan has 234 sq in and two 12-inch pots 226")
    assert questions == ["This wants two pots of this size, or a 16-inch pot. What comes along?"]


def test_a_crowd_is_told_of_fewer_and_larger_pots() -> None:
    _, questions = told(*STEW, family="stew or braise", scale=4)
    assert questions == ["This wants four pots of this size, or two deep 14-inch pots. What comes along?"]


def test_too_little_for_the_pot_names_the_pot_that_is_like_the_pan() -> None:
    """A 9x9 pan (81 sq in) is like a 10-inch pot (79)."""
    small = PotOwned(diameter_in=16)
    reasons, _ = told(*BATTER, family="batter bake", vessel="9x9 in pan", pots=(small,))
    assert "take a 10-inch pot, or a tin on a trivet in this one" in reasons["pot.hollow"]


def test_very_little_goes_into_a_tin() -> None:
    reasons, _ = told(line("milk", 0.25, "cup"), family="custard or pudding")
    assert "take a tin on a trivet in this pot" in reasons["pot.hollow"]


def test_the_oil_of_a_pot_is_told_in_quarts() -> None:
    """A third of the depth of a 12-inch pot holds 1.8 quarts."""
    reasons, _ = told(line("vegetable oil"), family="deep fry")
    assert reasons["pot.oil"] == (
        "frying oil takes at most a third of the depth: 1.8 quarts in the 12-inch pot, which boils over if it is more"
    )


def test_a_cabbage_too_tall_for_any_pot_is_cut_up() -> None:
    reasons, _ = told(line("cabbage", 1), line("water", 1, "quart"), family="boil or steam")
    assert reasons["pot.tall"].endswith("so cut it up or press it flat")
