from __future__ import annotations

import pytest

from rules.circumstances import Day
from rules.foods import weigh
from rules.method import graph
from rules.packs.kitchen import Kitchen
from rules.packs.place import alone, frozen_or_cool
from tests.build import amount, dish, line, recipe

OF = recipe(line("plums", amount(1, "pound")))


def kitchen(day: Day) -> Kitchen:
    return Kitchen(OF, weigh(OF), graph(OF), dish("batter bake"), day)


@pytest.mark.parametrize(
    ("day", "travels"),
    [
        (Day(), "frozen"),
        (Day(trip_hours=30), "frozen"),
        (Day(trip_hours=4), "cool"),
        (Day(freezer=False), "cool"),
    ],
)
def test_a_bag_is_frozen_where_there_is_a_freezer_and_a_long_way(day: Day, travels: str) -> None:
    assert frozen_or_cool(kitchen(day)) == travels


def test_a_food_alone_has_one_pack_for_all_its_moments() -> None:
    portion = kitchen(Day()).portions[0]
    assert alone(portion) == ("alone", 0)
