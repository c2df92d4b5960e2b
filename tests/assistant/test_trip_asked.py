"""What is asked of the whole trip, and how a new one begins."""

from __future__ import annotations

import pytest

from assistant.chat.beyond.hearing import hear
from assistant.chat.beyond.parts import TABLE
from assistant.chat.beyond.trip_asked import begun, of_the_trip


@pytest.mark.parametrize(
    ("said", "act", "slots"),
    [
        ("plan the trip", "trip show", {"about": "plan"}),
        ("show me the trip so far", "trip show", {"about": "plan"}),
        ("the trip", "trip show", {"about": "plan"}),
        ("shopping for the trip", "trip show", {"about": "shopping"}),
        ("what do we buy for the trip?", "trip show", {"about": "shopping"}),
        ("what do I pack for the trip", "trip show", {"about": "packing"}),
        ("how much ice for the whole trip?", "trip show", {"about": "cold"}),
        ("charcoal for the trip", "trip show", {"about": "coals"}),
        ("who can eat what on the trip", "trip show", {"about": "diets"}),
        ("what do we do at home for the trip?", "trip show", {"about": "home"}),
        ("save the trip as trip.toml", "trip save", {"path": "trip.toml"}),
        ("export the trip as a calendar", "trip save", {"as": "ics"}),
        ("call the trip River Weekend", "trip name", {"name": "River Weekend"}),
    ],
)
def test_the_whole_trip_is_asked_for_by_its_name(said: str, act: str, slots: dict[str, str]) -> None:
    asked = of_the_trip(hear(said, TABLE))
    assert asked is not None
    assert (asked.act, asked.slots) == (act, slots)


@pytest.mark.parametrize(
    "said", ["the trip takes 30 hours", "how much ice?", "what do I buy?", "it is a long trip"]
)
def test_what_only_brushes_the_trip_is_not_about_it(said: str) -> None:
    assert of_the_trip(hear(said, TABLE)) is None


def test_a_new_trip_may_have_a_name() -> None:
    named, bare = (
        begun(hear("let's plan a trip called River Weekend", TABLE)),
        begun(hear("plan a trip", TABLE)),
    )
    assert named is not None
    assert bare is not None
    assert (named.slots, bare.slots) == ({"name": "River Weekend"}, {})
    assert begun(hear("plan the trip", TABLE)) is None
