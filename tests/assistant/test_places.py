"""Where and over what a deed happens: vessels and their kinds, fires, lids."""

from __future__ import annotations

import pytest

from assistant.reader.places import fires, lids, places
from assistant.reader.tokens import doc


@pytest.mark.parametrize(
    ("text", "name", "kind"),
    [
        ("Mix in a large bowl.", "large bowl", "bowl"),
        ("Fry in a 12-inch skillet.", "12-inch skillet", "pan"),
        ("Simmer in the dutch oven.", "dutch oven", "pot"),
        ('Heat the oil in the 12" oven.', '12" oven', "pot"),
        ("Bake in the oven.", "oven", "oven"),
        ("Spread in a 9 x 13 baking dish.", "9 x 13 baking dish", "tin"),
        ("Leave it in the fridge.", "fridge", "fridge"),
        ("Grill over the coals.", "coals", "grill"),
    ],
)
def test_a_vessel_is_called_by_its_whole_name(text: str, name: str, kind: str) -> None:
    assert [(place.name, place.kind) for place in places(doc(text))] == [(name, kind)]


@pytest.mark.parametrize("text", ["Grill the squash.", "Use an oven mitt.", "Pour off the pan juices."])
def test_a_verb_and_a_tool_are_no_place(text: str) -> None:
    assert places(doc(text)) == []


def test_food_comes_out_of_a_vessel_or_goes_in() -> None:
    out, into = places(doc("Lift it from the pot into another pan."))
    assert (out.out, out.another) == (True, False)
    assert (into.out, into.another) == (False, True)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("over medium-high heat", ["high"]),
        ("over a low flame", ["low"]),
        ("turn it down low", ["low"]),
        ("a medium onion", []),
        ("a high-sided pan", []),
    ],
)
def test_a_fire_is_known_and_a_size_is_none(text: str, says: list[str]) -> None:
    assert [sign.says for sign in fires(doc(text))] == says


def test_a_lid_is_on_or_off() -> None:
    assert [sign.says for sign in lids(doc("Simmer covered, then uncovered."))] == ["covered", "uncovered"]
