from __future__ import annotations

import pytest

from rules.because import Ledger
from rules.circumstances import Day, PotOwned
from rules.dish import Dish
from rules.plan import PotPlan
from rules.pot import choose
from rules.recipe import Family, Ingredient
from tests.rules.pot.making import BATTER, STEW, items, line, recipe

TWELVE = (PotOwned(),)


def chosen(
    *lines: Ingredient,
    family: Family,
    pots: tuple[PotOwned, ...] = TWELVE,
    vessel: str | None = None,
    scale: float = 1.0,
) -> tuple[PotPlan | None, Ledger]:
    one = recipe(*lines, family=family, vessel=vessel)
    ledger = Ledger()
    return choose(one, items(one, scale), Dish(family=family), Day(pots=pots), ledger), ledger


def rules_of(ledger: Ledger) -> set[str]:
    return {reason.rule for reason in ledger.reasons}


@pytest.mark.parametrize("family", ["no cook", "preserve or ferment", "grill or smoke"])
def test_some_dishes_need_no_pot(family: Family) -> None:
    assert chosen(*BATTER, family=family)[0] is None


def test_without_a_word_about_pots_a_twelve_inch_one_is_taken_and_asked_about() -> None:
    pot, ledger = chosen(*STEW, family="stew or braise", pots=())
    assert pot is not None
    assert (pot.diameter_in, pot.depth, pot.quarts, pot.count) == (12, "shallow", 6, 1)
    assert [question.default for question in ledger.questions] == ["one 12-inch camp oven, shallow"]


def test_a_pan_is_matched_by_the_circle_of_the_rim() -> None:
    """9x13 in = 117 sq in goes to the 12-inch pot's 113, 8x8 = 64 to the 10-inch pot's 79 (handbook, chapter 4)."""
    owned = (PotOwned(diameter_in=10), PotOwned(diameter_in=12), PotOwned(diameter_in=14))
    wide, ledger = chosen(*BATTER, family="batter bake", vessel="9x13 inch pan", pots=owned)
    small, _ = chosen(*BATTER, family="batter bake", vessel="8x8 inch pan", pots=owned)
    assert wide is not None
    assert small is not None
    assert (wide.diameter_in, small.diameter_in) == (12, 10)
    assert "pot.match" in rules_of(ledger)


def test_a_stew_takes_the_smallest_pot_that_holds_it() -> None:
    owned = (PotOwned(diameter_in=16), PotOwned(diameter_in=14), PotOwned(), PotOwned(diameter_in=8))
    pot, _ = chosen(*STEW, family="stew or braise", pots=owned)
    assert pot is not None
    assert (pot.diameter_in, pot.count) == (12, 1)


def test_too_much_for_one_pot_is_split_and_more_pots_are_asked_for() -> None:
    pot, ledger = chosen(*STEW, family="stew or braise", scale=2.5)
    assert pot is not None
    assert pot.count > 1
    assert pot.fill is not None
    assert pot.fill <= 0.8
    assert {"pot.split", "pot.fill"} <= rules_of(ledger)
    assert "pots of this size" in ledger.questions[0].text


def test_pots_that_are_there_raise_no_question() -> None:
    _, ledger = chosen(*STEW, family="stew or braise", scale=2, pots=(PotOwned(count=3),))
    assert ledger.questions == ()


def test_a_little_over_the_limit_is_no_reason_for_a_second_fire() -> None:
    for tenth in range(10, 30):
        pot, ledger = chosen(*STEW, family="stew or braise", scale=tenth / 10)
        assert pot is not None
        if pot.count == 1 and pot.fill is not None and pot.fill > 0.77:
            assert "pot.brim" in rules_of(ledger)
            return
    pytest.fail("no scale of the stew came to the brim")


def test_a_loaf_of_batter_is_little_for_a_big_pot() -> None:
    pot, ledger = chosen(*BATTER, family="batter bake", scale=0.4, vessel="9x5 loaf pan")
    assert pot is not None
    assert "pot.hollow" in rules_of(ledger)
    assert "take an 8-inch pot, or a tin on a trivet" in ledger.questions[0].text


def test_a_batter_stays_below_half_and_a_casserole_below_two_thirds() -> None:
    for family, most in (("batter bake", 0.5), ("casserole or layered bake", 0.67), ("soup", 0.75)):
        for scale in (1, 2, 4, 8):
            pot, _ = chosen(*BATTER, family=family, scale=scale)  # type: ignore[arg-type]
            assert pot is not None
            assert pot.fill is not None
            assert pot.fill <= most + 0.05 + 0.005


def test_an_unknown_amount_leaves_the_fill_open_and_asks() -> None:
    pot, ledger = chosen(*STEW, line("cabbage"), family="stew or braise")
    assert pot is not None
    assert pot.fill is None
    assert "without an amount for cabbage" in ledger.questions[0].text


def test_a_recipe_without_amounts_asks_whether_it_fits() -> None:
    _, ledger = chosen(line("cabbage", notes="to serve"), family="soup")
    assert ledger.questions[0].text.startswith(
        "How full the pot gets cannot be told: the recipe states no amounts."
    )


def test_a_whole_chicken_is_too_tall_for_a_shallow_pot() -> None:
    _, shallow = chosen(line("whole chicken", 1), family="roast")
    _, deep = chosen(line("whole chicken", 1), family="roast", pots=(PotOwned(depth="deep"),))
    _, jointed = chosen(line("whole chicken", 1, prep="jointed"), family="roast")
    (reason,) = [one for one in shallow.reasons if one.rule == "pot.tall"]
    assert "take a deep 12-inch pot or cut it up" in reason.because
    assert "pot.tall" not in rules_of(deep) | rules_of(jointed)


def test_frying_oil_is_told_how_much_at_most() -> None:
    pot, ledger = chosen(line("vegetable oil"), family="deep fry")
    assert pot is not None
    assert pot.fill is None
    assert "pot.oil" in rules_of(ledger)


def test_cookies_and_griddle_cakes_take_the_widest_floor() -> None:
    owned = (PotOwned(diameter_in=10), PotOwned(diameter_in=14), PotOwned())
    for family in ("cookie", "griddle", "pan fry or saute"):
        pot, _ = chosen(*BATTER, family=family, pots=owned)  # type: ignore[arg-type]
        assert pot is not None
        assert (pot.diameter_in, pot.fill, pot.count) == (14, None, 1)


def test_twice_the_area_of_a_pan_takes_two_pots() -> None:
    pot, _ = chosen(*BATTER, family="batter bake", vessel="9x13 inch pan", scale=2)
    assert pot is not None
    assert pot.count == 2
