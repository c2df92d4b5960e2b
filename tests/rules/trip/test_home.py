"""The evenings before: everything made once, in time to freeze, within what it keeps, in two hours each."""

from __future__ import annotations

from datetime import datetime, timedelta

from rules.labels import days_row
from rules.trip.model import HomeTask, TripPlan
from rules.trip.plan import plan
from tests.trips import meal, pot, trip, weekend


def at(task: HomeTask) -> datetime:
    return datetime.fromisoformat(task.at)


def made(planned: TripPlan) -> dict[tuple[str, str], HomeTask]:
    """The task that makes each pack, by dish and pack."""
    found = {}
    for dish in planned.dishes:
        for pack in dish.plan.packs:
            for task in planned.home:
                if task.dishes == (dish.id,) and f"({pack.id})" in task.do:
                    found[dish.id, pack.id] = task
    return found


def test_every_mix_and_every_cut_food_is_made_on_some_evening() -> None:
    planned = weekend()
    wanted = {
        (dish.id, pack.id)
        for dish in planned.dishes
        for pack in dish.plan.packs
        if pack.kind in ("dry mix", "wet mix", "prepped")
    }
    assert wanted <= made(planned).keys()
    assert "home.evenings" in {reason.rule for reason in planned.why}


def test_what_freezes_is_in_the_freezer_in_time() -> None:
    planned = weekend()
    packed = next(at(task) for task in planned.home if task.kind == "pack")
    makes = made(planned)
    for dish in planned.dishes:
        for bag in dish.plan.cold.bags if dish.plan.cold else ():
            if bag.freeze_hours and not bag.bought_frozen:
                begins = at(makes[dish.id, bag.pack])
                assert packed - begins >= timedelta(hours=bag.freeze_hours.high)
    assert "home.freeze-first" in {reason.rule for reason in planned.why}


def test_nothing_is_made_sooner_than_it_keeps() -> None:
    planned = weekend()
    for (dish_id, pack_id), task in made(planned).items():
        dish = next(dish for dish in planned.dishes if dish.id == dish_id)
        pack = next(pack for pack in dish.plan.packs if pack.id == pack_id)
        row = days_row(pack.kind, pack.travels)
        if row is not None:
            assert datetime.fromisoformat(dish.eat) - at(task) <= timedelta(days=row.days)


def test_an_evening_is_two_hours_of_work() -> None:
    planned = weekend()
    worked: dict[str, float] = {}
    for task in planned.home:
        if task.dishes:
            worked[task.at[:10]] = worked.get(task.at[:10], 20.0) + task.minutes
    assert worked
    assert all(minutes <= 120 for minutes in worked.values())


def test_home_begins_in_the_shop_and_ends_on_the_road_in_order() -> None:
    kinds = [task.kind for task in weekend().home]
    assert kinds[0] == "shop"
    assert kinds[-2:] == ["pack", "leave"]
    moments = [at(task) for task in weekend().home]
    assert moments == sorted(moments)


def test_cut_food_that_does_not_keep_until_its_meal_says_so() -> None:
    """Cut food keeps three days in the cold (FoodSafety.gov); this slaw is eaten five days after packing."""
    planned = plan(trip(meal("cabbage-slaw", "2027-07-07T13:00"), pots=(pot(),)))
    assert "home.too-early" in {reason.rule for reason in planned.why}


def test_raw_food_is_frozen_on_the_day_it_is_bought() -> None:
    planned = weekend()
    shop = next(task for task in planned.home if task.kind == "shop")
    raw = [
        made(planned)[dish.id, pack.id]
        for dish in planned.dishes
        for pack in dish.plan.packs
        if pack.label.startswith("raw ") and pack.travels == "frozen"
    ]
    assert raw
    assert {task.at[:10] for task in raw} == {shop.at[:10]}


def test_raw_food_that_cannot_be_frozen_is_bought_last() -> None:
    """Ground beef keeps one day (USDA FSIS FoodKeeper, low end): without a freezer it is bought on the way out."""
    planned = plan(trip(meal("can-chili", "2027-07-02T18:30"), pots=(pot(deep=True),), freezer=False))
    last = [task for task in planned.home if task.kind == "shop"][-1]
    assert "ground beef" in last.do
    assert last.at[:10] == "2027-07-02"
    assert "home.last-day" in {reason.rule for reason in planned.why}


def test_without_coals_no_fire_box_is_packed() -> None:
    planned = plan(trip(meal("cabbage-slaw")))
    assert "fire box" not in next(task.do for task in planned.home if task.kind == "pack")
