"""Flour for the board and fat for the pot come along, where the steps use them and no pack brings them."""

from __future__ import annotations

import pytest

from rules.because import Ledger
from rules.instructions.spare import FAT, FLOUR, spare
from rules.plan import FatUse


@pytest.mark.parametrize(
    ("step", "wanted"),
    [
        ("Tip out on a floured board and pat it out.", [FLOUR]),
        ("Dust the pot with flour.", [FLOUR]),
        ("Set them in the greased pot.", [FAT]),
        ("Grease and flour the pot.", [FLOUR, FAT]),
        ("Butter the pot.", [FAT]),
        ("Stir in the flour and the butter.", []),
        ("Toss the beef with the flour.", []),
    ],
)
def test_what_the_steps_use_beside_the_packs_is_packed(step: str, wanted: list[str]) -> None:
    ledger = Ledger()
    told = spare((step,), (), ledger)
    assert [what for what in (FLOUR, FAT) if what in told or what[1:] in told] == wanted
    assert bool(told) == bool(wanted)
    assert [reason.rule for reason in ledger.reasons] == ["steps.spare"] * len(wanted)


def test_fat_that_a_pack_brings_is_not_packed_twice() -> None:
    greasing = (FatUse(ingredient=0, goes="greasing"),)
    assert spare(("Grease the pot.",), greasing, Ledger()) == ""
