from __future__ import annotations

import pytest

from rules.foods.slips import is_slip


@pytest.mark.parametrize(
    ("asked", "known"),
    [
        ("butter milk", "buttermilk"),
        ("brocolli", "broccoli"),
        ("parsely", "parsley"),
        ("cinamon", "cinnamon"),
        ("carots", "carrots"),
        ("celary", "celery"),
        ("mayonnese", "mayonnaise"),
        ("bred flour", "bread flour"),
        ("lemmon juice", "lemon juice"),
    ],
)
def test_the_slips_of_a_hurried_hand(asked: str, known: str) -> None:
    assert is_slip(asked, known)


@pytest.mark.parametrize(
    ("asked", "known"),
    [
        ("oat", "goat"),
        ("pea", "pear"),
        ("goat milk", "oat milk"),
        ("sherry", "cherry"),
        ("batter", "butter"),
        ("bitter", "butter"),
        ("baking sofa", "baking soda"),
        ("beet stock", "beef stock"),
        ("bailey", "barley"),
        ("mint", "mince"),
        ("baking soda", "baking powder"),
        ("chocolate milk", "milk chocolate"),
    ],
)
def test_another_word_is_no_slip(asked: str, known: str) -> None:
    assert not is_slip(asked, known)
