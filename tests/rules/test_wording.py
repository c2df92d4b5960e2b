from __future__ import annotations

import pytest

from rules.wording import listed, mass, short_names
from tests.build import line, pack, recipe


@pytest.mark.parametrize(
    ("names", "told"),
    [
        ([], ""),
        (["milk"], "milk"),
        (["milk", "milk"], "milk"),
        (["milk", "egg"], "milk and egg"),
        (["a", "b", "c", "d", "e"], "a, b, c, d and e"),
        (["a", "b", "c", "d", "e", "f"], "a, b, c, d and 2 more"),
    ],
)
def test_names_stand_in_a_row_that_one_can_read(names: list[str], told: str) -> None:
    assert listed(names) == told


def test_packs_go_by_their_short_names_and_alike_ones_by_their_part() -> None:
    made = recipe(line("flour"), line("oats"), line("berries"))
    packs = (
        pack("dry mix", 0, of=made, label="dry mix of flour", component="cake"),
        pack("dry mix", 1, of=made, label="dry mix of oats", component="topping"),
        pack("wet mix", 2, of=made, label="fruit: berries"),
    )
    assert list(short_names(packs).values()) == ["dry mix (cake)", "dry mix (topping)", "fruit"]


def test_masses_are_told_in_both_units_for_the_us_cook() -> None:
    assert mass(4.0, "us") == "9 lb (4 kg)"
    assert mass(0.7, "us") == "1.5 lb (0.7 kg)"
    assert mass(4.0, "metric") == "4 kg"
