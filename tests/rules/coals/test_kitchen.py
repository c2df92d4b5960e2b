"""What the rules of the stages look at together."""

from __future__ import annotations

from typing import get_args

from rules.because import Ledger
from rules.circumstances import Day
from rules.coals.kitchen import BAKED, FRIED, MAY_BE_WET, PLAIN_BAKED, WET, Kitchen
from rules.dish import Dish
from rules.recipe import Family
from tests.rules.coals.making import CAKE, STEW, items_of


def test_the_groups_name_families_that_there_are() -> None:
    assert {*BAKED, *FRIED, *MAY_BE_WET, *PLAIN_BAKED, *WET} <= set(get_args(Family))
    assert PLAIN_BAKED <= BAKED
    assert not FRIED & (BAKED | WET)


def test_raw_meat_is_seen_and_a_cake_has_none() -> None:
    def kitchen(made):
        return Kitchen(
            recipe=made, items=items_of(made), dish=Dish(family="other"), day=Day(), ledger=Ledger()
        )

    assert kitchen(STEW).has_flesh
    assert not kitchen(CAKE).has_flesh
