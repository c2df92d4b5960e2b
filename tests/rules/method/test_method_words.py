from __future__ import annotations

import pytest

from rules.method.words import head, is_place, kind_of, roles_called, words


@pytest.mark.parametrize(
    ("vessel", "kind"),
    [
        ("heavy pot", "pot"),
        ("cast iron skillet", "pan"),
        ("mixing bowls", "bowl"),
        ("9x13 inch baking dish", "tin"),
        ("Dutch oven", "pot"),
        ("river", None),
        ("", None),
    ],
)
def test_a_vessel_is_known_by_its_last_word(vessel: str, kind: str | None) -> None:
    assert kind_of(vessel) == kind


@pytest.mark.parametrize(
    ("vessel", "place"),
    [("oven", True), ("hot oven", True), ("camp oven", False), ("paper towels", True), ("pot", False)],
)
def test_places_hold_no_mixture(vessel: str, place: bool) -> None:
    assert is_place(vessel) is place


def test_a_batter_holds_flour_and_a_dressing_something_sour() -> None:
    assert "flour" in roles_called("thin batter")
    assert "acid" in roles_called("dressing")
    assert roles_called("music") == frozenset()


def test_words_are_read_from_the_table() -> None:
    assert "another" in words("another")
    assert head("large mixing bowl") == "bowl"
