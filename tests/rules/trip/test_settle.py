"""Clashes over pots and fire room, each way out by a trip that needs it; the times are those of the plans."""

from __future__ import annotations

from itertools import pairwise

import pytest

from rules.trip.model import Trip, TripPlan, Way
from rules.trip.plan import plan
from tests.trips import meal, pot, trip

BOTH = (pot(), pot(deep=True))
CASES: dict[str, tuple[Trip, list[Way], str]] = {
    "another pot": (
        trip(meal("chicken-dumplings"), meal("peach-cobbler"), pots=BOTH),
        ["another pot"],
        "pots.another",
    ),
    "bread before": (
        trip(meal("bean-pot"), meal("pan-cornbread"), pots=(pot(deep=True),)),
        ["order"],
        "pots.earlier",
    ),
    "a sweet after": (trip(meal("beef-stew"), meal("peach-cobbler")), ["order"], "pots.later"),
    "on its lid": (
        trip(meal("apple-pie"), meal("pan-cornbread"), pots=BOTH, fires=1),
        ["stacking"],
        "pots.stacked",
    ),
    "a smaller batch": (trip(meal("can-chili"), people=9), ["smaller"], "pots.smaller"),
    "too few pots": (
        trip(meal("scalloped-potatoes"), pots=(pot(10),), people=14),
        ["open"],
        "pots.too-few",
    ),
    "neither waits": (
        trip(meal("can-chili"), meal("egg-bake"), pots=(pot(deep=True),)),
        ["open"],
        "pots.open",
    ),
}


@pytest.mark.parametrize(("told", "ways", "rule"), CASES.values(), ids=CASES.keys())
def test_each_clash_has_its_way_out_and_says_why(told: Trip, ways: list[Way], rule: str) -> None:
    planned = plan(told)
    assert [one.way for one in planned.settled] == ways
    assert [reason.rule for reason in planned.why if reason.rule.startswith("pots.")] == [rule]
    assert all(one.said.endswith(".") for one in planned.settled)


def spans(planned: TripPlan) -> dict[str, list[tuple[str, str, str]]]:
    found: dict[str, list[tuple[str, str, str]]] = {}
    for use in planned.pots:
        found.setdefault(use.pot, []).append((use.from_, use.until, use.dish))
    return found


@pytest.mark.parametrize("name", [name for name, (_, ways, _) in CASES.items() if ways != ["open"]])
def test_what_is_settled_has_no_pot_twice_at_one_time(name: str) -> None:
    for uses in spans(plan(CASES[name][0])).values():
        ordered = sorted(uses)
        assert all(earlier[1] <= later[0] for earlier, later in pairwise(ordered))


def test_dishes_that_do_not_meet_are_left_as_they_are() -> None:
    planned = plan(trip(meal("can-chili"), meal("egg-bake", "2027-07-03T08:30"), pots=(pot(deep=True),)))
    assert planned.settled == ()
    assert [dish.ready for dish in planned.dishes] == [dish.eat for dish in planned.dishes]


def test_bread_that_is_baked_before_waits_and_is_served_with_the_rest() -> None:
    planned = plan(CASES["bread before"][0])
    bread = next(dish for dish in planned.dishes if "CORNBREAD" in dish.title)
    assert bread.ready < bread.eat
    said = [moment.do for moment in planned.calendar if moment.dishes == (bread.id,)]
    assert f"{bread.title} is done and waits: turned out on a board, covered with a cloth." in said
    served = next(moment for moment in planned.calendar if moment.kind == "meal" and bread.title in moment.do)
    assert served.at == bread.eat


def test_a_cobbler_does_not_wait_on_a_board() -> None:
    """With its fruit it does not leave the pot in one piece, so baking it first would free none."""
    planned = plan(CASES["a sweet after"][0])
    cobbler = next(dish for dish in planned.dishes if "Cobbler" in dish.title)
    assert cobbler.ready > cobbler.eat


def test_fire_room_for_two_needs_no_stack() -> None:
    planned = plan(trip(meal("apple-pie"), meal("pan-cornbread"), pots=BOTH, fires=2))
    assert "stacking" not in [one.way for one in planned.settled]


def test_a_stew_is_no_lid_to_stand_on() -> None:
    planned = plan(trip(meal("can-chili"), meal("pan-cornbread"), pots=BOTH, fires=1))
    assert [one.way for one in planned.settled] == ["order"]
