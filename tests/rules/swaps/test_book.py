from __future__ import annotations

import pytest

from rules.foods import catalogue
from rules.swaps.book import effect_of, exchange, exchanges


def test_every_swap_gives_something_for_something() -> None:
    for one in exchanges():
        assert one.foods
        assert one.per > 0
        assert all(part.amount > 0 for part in (*one.parts, *one.takes))
        assert len({part.into for part in one.parts}) == len(one.parts)


def test_no_swap_gives_a_food_for_itself() -> None:
    assert not [one.foods for one in exchanges() if one.main.into in one.foods]


@pytest.mark.parametrize(
    ("food", "into", "found"),
    [
        ("butter", "vegetable oil", "vegetable oil"),
        ("unsalted butter", "sunflower oil", "vegetable oil"),
        ("milk", "dry milk", "dry milk"),
        ("kidney bean, dry", "pinto bean, canned", "kidney bean, canned"),
    ],
)
def test_a_way_is_found_for_the_food_or_its_like(food: str, into: str, found: str) -> None:
    way = exchange(catalogue().get(food), catalogue().get(into))
    assert way is not None
    assert way.main.into == found


def test_no_way_is_made_up() -> None:
    assert exchange(catalogue().get("milk"), catalogue().get("beer")) is None
    assert exchange(None, catalogue().get("beer")) is None
    assert exchange(catalogue().get("milk"), None) is None


def test_there_and_back_gives_the_same_yeast() -> None:
    """0.40 active dry and 0.33 instant for 1 of fresh, by weight."""
    get = catalogue().get
    fresh, dry = get("fresh yeast"), get("active dry yeast")
    out, back = exchange(fresh, dry), exchange(dry, fresh)
    assert out is not None
    assert back is not None
    assert out.main.amount / out.per == pytest.approx(back.per / back.main.amount)


def test_what_the_book_does_not_know_has_no_effect_to_tell() -> None:
    assert effect_of(None) is None
    assert effect_of(catalogue().get("ice")) is None
