"""One packing list: each tool once, with the figures of the whole trip."""

from __future__ import annotations

from collections import Counter

from rules.trip.model import Packed
from rules.trip.plan import plan
from tests.trips import meal, pot, trip, weekend


def rows(box: str) -> list[Packed]:
    return [row for row in weekend().packing if row.box == box]


def test_nothing_but_shelf_packs_stands_twice() -> None:
    items = Counter(row.item for row in weekend().packing if row.box != "shelf box")
    assert [item for item, count in items.items() if count > 1] == []
    assert "trip.kit-once" in {reason.rule for reason in weekend().why}


def test_every_tool_that_a_dish_calls_for_comes_along() -> None:
    """Tools without figures are told in the same words in a dish's own kit and on the joined list."""
    planned = weekend()
    packed = {row.item for row in planned.packing}
    figures = ("briquettes", "quarts", "Dutch oven", "of ice", "plates", "bowl of")
    for dish in planned.dishes:
        for tool in dish.plan.kit.camp:
            if not any(word in tool for word in figures):
                assert tool in packed, tool


def test_the_fuel_on_the_list_is_the_trip_s() -> None:
    planned = weekend()
    assert planned.fuel is not None
    assert f"{planned.fuel.briquettes} briquettes" in rows("fire box")[0].item
    assert f"{planned.fuel.reserve} of them the reserve" in rows("fire box")[0].item


def test_each_pot_names_the_dishes_that_are_cooked_in_it() -> None:
    planned = weekend()
    cooked = sorted(dish for row in rows("pots") for dish in row.dishes)
    assert sorted(dish.id for dish in planned.dishes if dish.plan.pot) == cooked


def test_a_pot_that_stays_unused_stays_at_home() -> None:
    planned = plan(trip(meal("pan-cornbread"), pots=(pot(), pot(14))))
    assert [row.item for row in planned.packing if row.box == "pots"] == [
        "12-inch camp Dutch oven, shallow (6 quarts), with lid"
    ]


def test_every_cooler_and_its_ice_stand_on_the_list() -> None:
    (cooler,) = weekend().coolers
    said = " ".join(row.item for row in rows("coolers"))
    assert f"cooler of {cooler.quarts:g} quarts" in said
    assert f"({cooler.ice_kg:g} kg) of ice" in said


def test_every_pack_of_the_shelf_rides_in_the_shelf_box() -> None:
    planned = weekend()
    shelf = {
        (dish.id, f"({pack.id})")
        for dish in planned.dishes
        for pack in dish.plan.packs
        if pack.travels == "shelf"
    }
    assert shelf == {(row.dishes[0], f"({row.item.rpartition('(')[2]}") for row in rows("shelf box")}
