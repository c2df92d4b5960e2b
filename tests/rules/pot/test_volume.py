from __future__ import annotations

import pytest

from rules.foods import catalogue
from rules.pot.volume import goes_in, pot_families, raw_volume, substance_g_per_ml
from tests.rules.pot.making import BATTER, STEW, items, line, recipe


def test_flour_in_a_batter_takes_the_room_of_its_substance() -> None:
    """Two cups of flour and one of milk make far less than three cups of batter."""
    room = raw_volume(
        items(recipe(line("all-purpose flour", 2, "cup"), line("milk", 1, "cup"))), "batter bake"
    )
    assert room.milliliters is not None
    assert 400 < room.milliliters < 520


def test_gaps_between_pieces_are_filled_by_the_liquid() -> None:
    dry = raw_volume(items(recipe(line("potato", 2, "pound"))), "stew or braise").milliliters or 0
    wet = raw_volume(
        items(recipe(line("potato", 2, "pound"), line("water", 1, "cup"))), "stew or braise"
    ).milliliters
    assert dry > 907
    assert wet == pytest.approx(dry, rel=0.01)


def test_what_is_served_beside_it_is_not_in_the_pot() -> None:
    chips = line("tortilla chips", 1, "bag", notes="for scooping")
    with_chips, without = (items(recipe(*STEW, *more)) for more in ((chips,), ()))
    assert not goes_in(with_chips[-1])
    assert raw_volume(with_chips, "stew or braise") == raw_volume(without, "stew or braise")


def test_an_unknown_amount_of_something_heavy_leaves_the_volume_unknown() -> None:
    room = raw_volume(items(recipe(*STEW, line("cabbage"))), "stew or braise")
    assert (room.milliliters, room.unknown) == (None, ("cabbage",))


def test_salt_to_taste_does_not_matter() -> None:
    assert raw_volume(items(recipe(*STEW)), "stew or braise").milliliters is not None


def test_a_recipe_without_amounts_has_no_volume() -> None:
    assert (
        raw_volume(items(recipe(line("salt"), line("butter", 1, "tablespoon"))), "soup").milliliters is None
    )
    assert raw_volume((), "soup").milliliters is None


def test_twice_the_recipe_takes_twice_the_room() -> None:
    once, twice = (raw_volume(items(recipe(*BATTER), scale), "batter bake").milliliters for scale in (1, 2))
    assert once is not None
    assert twice == pytest.approx(2 * once)


@pytest.mark.parametrize(
    ("food", "low", "high"),
    [
        ("water", 0.99, 1.0),
        ("milk", 1.02, 1.05),
        ("vegetable oil", 0.9, 0.93),
        ("sugar", 1.55, 1.6),
        ("honey", 1.38, 1.48),
    ],
)
def test_substances_have_the_densities_of_the_text_books(food: str, low: float, high: float) -> None:
    """Water 0.998, milk 1.03, oil 0.92, sucrose 1.59, honey 1.42 g/ml at room temperature: from memory, any handbook
    of food properties; the range allows for additive volumes."""
    assert low <= substance_g_per_ml(catalogue().get(food)) <= high


def test_an_unknown_food_is_as_heavy_as_water() -> None:
    assert substance_g_per_ml(None) == 1.0


def test_families_without_a_pot_ask_nothing_of_it() -> None:
    assert "no cook" not in pot_families()
    assert pot_families()["batter bake"].most == 0.5
