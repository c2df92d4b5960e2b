from __future__ import annotations

import pytest

from rules.circumstances import PotOwned
from rules.pot.iron import oven
from rules.pot.options import Option, is_hollow, needed, option_of, rank, sq_in
from rules.pot.pans import read_pan
from rules.pot.volume import Room, pot_families

BATTER = pot_families()["batter bake"]
STEW = pot_families()["stew or braise"]
TWELVE = oven(12, "shallow")


def test_the_area_of_a_pan_counts_for_bakes_alone() -> None:
    pan = read_pan("9x13 in pan")
    assert sq_in(BATTER, pan, 2) == 234
    assert sq_in(STEW, pan, 2) is None
    assert sq_in(BATTER, None, 2) is None
    assert sq_in(BATTER, read_pan("muffin tin"), 1) is None
    assert sq_in(BATTER, read_pan("18x13 baking sheet"), 1) is None


@pytest.mark.parametrize(
    ("milliliters", "area", "count"),
    [(None, None, 1), (100, None, 1), (6000, None, 3), (None, 117, 1), (None, 234, 2), (6000, 400, 3)],
)
def test_so_many_pots_are_needed_by_volume_and_by_area(
    milliliters: float | None, area: float | None, count: int
) -> None:
    assert count == needed(TWELVE, BATTER, milliliters, area)


def test_an_option_without_a_known_volume_has_no_fill() -> None:
    option = option_of(PotOwned(), BATTER, Room(milliliters=None), read_pan("9x13 in pan"), 2)
    assert (option.count, option.fill) == (2, None)


def test_a_pot_that_is_there_goes_before_one_that_is_not() -> None:
    there = Option(pot=oven(14, "shallow"), owned=1, count=1, fill=0.4)
    missing = Option(pot=TWELVE, owned=1, count=2, fill=0.4)
    assert rank(there, STEW, None, 1) < rank(missing, STEW, None, 1)


def test_the_fuller_pot_goes_before_the_emptier_unless_it_is_hollow() -> None:
    full, half, hollow = (Option(pot=TWELVE, owned=1, count=1, fill=fill) for fill in (0.7, 0.4, 0.1))
    assert rank(full, STEW, None, 1) < rank(half, STEW, None, 1) < rank(hollow, STEW, None, 1)


def test_a_low_stew_is_hollow_by_its_share_and_a_bake_by_its_depth() -> None:
    sixteen = oven(16, "shallow")
    assert is_hollow(Option(pot=sixteen, owned=1, count=1, fill=0.19), STEW)
    assert not is_hollow(Option(pot=sixteen, owned=1, count=1, fill=0.19), BATTER)
    assert is_hollow(Option(pot=sixteen, owned=1, count=1, fill=0.1), BATTER)
    assert not is_hollow(Option(pot=sixteen, owned=1, count=1, fill=None), BATTER)
