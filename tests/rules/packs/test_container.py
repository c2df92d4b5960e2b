from __future__ import annotations

import pytest

from rules.because import Ledger
from tests.build import amount, doing, line, packed, recipe, step


@pytest.mark.parametrize(
    ("cups", "bag"),
    [
        (0.5, "snack bag"),
        (1, "sandwich bag"),
        (2, "1-quart zipper bag"),
        (8, "1-gallon zipper bag"),
        (500, "several 2-gallon zipper bags"),
    ],
)
def test_the_bag_is_the_smallest_that_holds_the_mix(cups: float, bag: str) -> None:
    of = recipe(line("flour", amount(cups, "cup")))
    assert packed(of, "batter bake")[0].container == bag


def test_sauces_go_into_bottles_and_eggs_into_a_carrier() -> None:
    foods = (line("ketchup", amount(0.5, "cup")), line("honey", amount(0.25, "cup")), line("eggs", amount(2)))
    do = doing(*foods)
    of = recipe(*foods, steps=(step(do("mix", "ketchup", "honey", vessel="bowl"), do("beat", "eggs")),))
    by_id = {pack.id: pack.container for pack in packed(of, "roast")}
    assert by_id == {"wet-1": "half-pint screw-top bottle", "fresh-1": "egg carrier"}


def test_raw_meat_is_bagged_twice() -> None:
    of = recipe(line("ground beef", amount(1, "pound")))
    assert packed(of, "roast")[0].container == "sealed bag inside a second bag"


def test_a_mix_of_unknown_size_still_has_a_bag() -> None:
    of = recipe(line("flour"))
    assert packed(of, "batter bake")[0].container == "zipper bag"


def test_the_reason_quotes_the_row_of_the_container() -> None:
    ledger = Ledger()
    packed(recipe(line("flour", amount(2, "cup"))), "batter bake", ledger=ledger)
    reason = next(reason for reason in ledger.reasons if reason.rule == "packs.container")
    assert "1-quart zipper bag" in reason.because
    assert reason.source == "from memory, unverified"
