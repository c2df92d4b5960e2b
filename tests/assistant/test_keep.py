"""Kept meals: one transaction each, old files brought up to date, a damaged one set aside."""

from __future__ import annotations

import sqlite3
from datetime import UTC, datetime
from pathlib import Path

import msgspec
import pytest

from assistant.keep import FILE, LONGEST_NAME, MIGRATIONS, KeepProblem, Store
from rules.circumstances import Day, PotOwned, Swap
from rules.habit import Cooked, Told
from rules.plan import Plan
from rules.recipe import Recipe

DAY = Day(people=9, pots=(PotOwned(diameter_in=14, depth="deep"),), swaps=(Swap(food="butter", to="oil"),))


@pytest.fixture
def store(tmp_path: Path) -> Store:
    times = iter(datetime(2027, 7, day, 18, tzinfo=UTC) for day in range(1, 30))
    return Store(tmp_path / "data", now=lambda: next(times))


def test_a_meal_comes_back_as_it_was(store: Store, river_recipe: Recipe) -> None:
    assert not store.keep("Friday", river_recipe, DAY)
    kept = store.get("friday")
    assert (kept.name, kept.recipe, kept.day) == ("Friday", river_recipe, DAY)
    assert kept.kept_at == "2027-07-01T18:00:00+00:00"


def test_names_come_latest_first_and_one_name_is_one_meal(store: Store, river_recipe: Recipe) -> None:
    store.keep("Friday", river_recipe, DAY)
    store.keep("Saturday", river_recipe, DAY)
    assert store.keep("FRIDAY", river_recipe, Day())
    assert store.names() == ("FRIDAY", "Saturday")
    assert store.get("Friday").day == Day()


def test_nothing_is_kept_before_the_first_time_and_no_file_is_made(store: Store) -> None:
    assert store.names() == ()
    assert not store.path.exists()


def test_forgetting_gives_the_name_as_it_was_kept(store: Store, river_recipe: Recipe) -> None:
    store.keep("Friday", river_recipe, DAY)
    assert store.forget(" friday ") == "Friday"
    assert store.names() == ()


@pytest.mark.parametrize("ask", ["get", "forget"])
def test_an_unknown_name_is_told_what_is_kept(store: Store, river_recipe: Recipe, ask: str) -> None:
    with pytest.raises(KeepProblem, match='"Sunday" is not kept; nothing is kept yet'):
        getattr(store, ask)("Sunday")
    store.keep("Friday", river_recipe, DAY)
    with pytest.raises(KeepProblem, match='"Sunday" is not kept; kept are Friday'):
        getattr(store, ask)("Sunday")


@pytest.mark.parametrize("name", ["", "  \n ", "x" * (LONGEST_NAME + 1)], ids=["empty", "blank", "long"])
def test_a_name_that_is_none_is_refused(store: Store, river_recipe: Recipe, name: str) -> None:
    with pytest.raises(KeepProblem):
        store.keep(name, river_recipe, DAY)


def test_quotes_in_a_name_are_a_name(store: Store, river_recipe: Recipe) -> None:
    store.keep("'; DROP TABLE meal; --", river_recipe, DAY)
    assert store.names() == ("'; DROP TABLE meal; --",)


def test_a_damaged_file_is_set_aside_and_the_talk_goes_on(store: Store, river_recipe: Recipe) -> None:
    store.path.parent.mkdir(parents=True)
    store.path.write_bytes(b"this is no data base at all, but long enough to look like one" * 20)
    store.keep("Friday", river_recipe, DAY)
    assert store.names() == ("Friday",)
    assert store.set_aside == store.path.with_name(f"{FILE}.damaged-1")
    assert store.set_aside.read_bytes().startswith(b"this is no data base")


def test_a_second_damaged_file_does_not_cover_the_first(store: Store, river_recipe: Recipe) -> None:
    for _ in range(2):
        store.path.parent.mkdir(parents=True, exist_ok=True)
        store.path.write_bytes(b"broken" * 200)
        store.keep("Friday", river_recipe, DAY)
    assert sorted(path.name for path in store.path.parent.iterdir()) == [
        FILE,
        f"{FILE}.damaged-1",
        f"{FILE}.damaged-2",
    ]


def test_an_empty_file_of_version_nought_is_brought_up_to_date(store: Store, river_recipe: Recipe) -> None:
    store.path.parent.mkdir(parents=True)
    sqlite3.connect(store.path).close()
    store.keep("Friday", river_recipe, DAY)
    base = sqlite3.connect(store.path)
    assert base.execute("PRAGMA user_version").fetchone() == (len(MIGRATIONS),)
    base.close()


def test_a_file_of_a_newer_coalside_is_left_alone(store: Store) -> None:
    store.path.parent.mkdir(parents=True)
    base = sqlite3.connect(store.path)
    base.execute(f"PRAGMA user_version = {len(MIGRATIONS) + 1}")
    base.commit()
    base.close()
    with pytest.raises(KeepProblem, match="was written by a newer coalside"):
        store.names()
    assert store.set_aside is None


def test_a_meal_of_another_shape_says_so(store: Store, river_recipe: Recipe) -> None:
    store.keep("Friday", river_recipe, DAY)
    base = sqlite3.connect(store.path)
    base.execute("UPDATE meal SET recipe = '{\"title\": 7}'")
    base.commit()
    base.close()
    with pytest.raises(KeepProblem, match='"Friday" cannot be read; forget it and keep it anew'):
        store.get("Friday")


def test_a_failure_in_the_middle_keeps_nothing(store: Store, river_recipe: Recipe) -> None:
    store.keep("Friday", river_recipe, DAY)

    class Stop(Exception):
        pass

    def fail() -> datetime:
        raise Stop

    broken = Store(store.path.parent, now=fail)
    with pytest.raises(Stop):
        broken.keep("Saturday", river_recipe, DAY)
    assert store.names() == ("Friday",)


def test_a_folder_that_cannot_be_made_is_one_sentence(tmp_path: Path, river_recipe: Recipe) -> None:
    (tmp_path / "file").write_text("in the way")
    store = Store(tmp_path / "file", now=lambda: datetime(2027, 7, 3, tzinfo=UTC))
    with pytest.raises(KeepProblem, match="cannot be used"):
        store.keep("Friday", river_recipe, DAY)


LINE = Cooked(
    dish="Gravel Bar Peach Cobbler",
    kind="bake",
    diameter_in=12,
    depth="shallow",
    air_f=45,
    wind="windy",
    aim_f=350,
    chart_low_min=45,
    chart_high_min=50,
    chart_top=17,
    chart_under=8,
    laid_top=17,
    laid_under=8,
    told=Told(minutes=35, pot_f=340, under=1),
)


def test_a_cook_comes_back_with_the_plan_that_it_was_cooked_by(store: Store, river_plan: Plan) -> None:
    assert store.cooks() == ()
    number = store.log(LINE, river_plan)
    (logged,) = store.cooks()
    assert (logged.number, logged.cooked, logged.cooked_at) == (number, LINE, "2027-07-01T18:00:00+00:00")
    assert msgspec.json.decode(logged.plan, type=Plan) == river_plan


def test_a_fuller_line_takes_the_place_of_the_first(store: Store, river_plan: Plan) -> None:
    number = store.log(LINE, river_plan)
    fuller = msgspec.structs.replace(LINE, told=Told(minutes=36))
    assert store.log(fuller, river_plan, instead_of=number) == number
    assert [one.cooked for one in store.cooks()] == [fuller]


def test_what_is_taken_out_of_the_log_can_be_put_back(store: Store, river_plan: Plan) -> None:
    first, second = store.log(LINE, river_plan), store.log(LINE, river_plan)
    before = store.cooks()
    assert [one.number for one in store.unlog(first)] == [first]
    assert [one.number for one in store.cooks()] == [second]
    store.log_again([before[0]])
    assert store.cooks() == before
    assert store.unlog() == before
    assert store.cooks() == ()
    store.log_again(before)
    assert store.cooks() == before


def test_a_number_is_never_given_twice(store: Store, river_plan: Plan) -> None:
    """An undo of an old line can so never hit a new one."""
    first = store.log(LINE, river_plan)
    store.unlog()
    assert store.log(LINE, river_plan) > first


def test_a_line_of_another_shape_is_left_out_and_counted(store: Store, river_plan: Plan) -> None:
    store.log(LINE, river_plan)
    with sqlite3.connect(store.path) as base:
        base.execute("INSERT INTO cook (line, plan, cooked_at) VALUES ('{\"dish\": 3}', '{}', 'then')")
    base.close()
    assert [one.cooked for one in store.cooks()] == [LINE]
    assert store.unreadable() == 1


def test_a_file_of_the_first_version_keeps_its_meals_and_gets_a_log(
    store: Store, river_recipe: Recipe, river_plan: Plan
) -> None:
    store.path.parent.mkdir(parents=True)
    with sqlite3.connect(store.path) as base:
        base.execute(MIGRATIONS[0])
        base.execute("PRAGMA user_version = 1")
        base.execute(
            "INSERT INTO meal VALUES ('Friday', ?, '{\"people\": 9}', 'then')",
            (msgspec.json.encode(river_recipe).decode(),),
        )
    base.close()
    assert store.get("Friday").day == Day(people=9)
    store.log(LINE, river_plan)
    assert store.names() == ("Friday",)
    assert len(store.cooks()) == 1


def test_damage_deep_in_the_file_is_noticed_and_what_can_be_read_is_rescued(
    tmp_path: Path, river_recipe: Recipe
) -> None:
    first = Store(tmp_path, now=lambda: datetime(2027, 7, 3, tzinfo=UTC))
    names = [f"Meal {number}" for number in range(40)]
    for name in names:
        first.keep(name, river_recipe, DAY)
    held = bytearray(first.path.read_bytes())
    held[-2 * 4096 : -4096] = b"\xff" * 4096  # a page in the middle of the meals
    first.path.write_bytes(held)

    store = Store(tmp_path, now=lambda: datetime(2027, 7, 4, tzinfo=UTC))
    kept = store.names()
    assert store.set_aside is not None
    assert store.set_aside.read_bytes() == bytes(held)
    assert set(kept) < set(names)
    assert all(store.get(name).recipe == river_recipe for name in kept)
    said = store.notice()
    assert said.startswith(f"The file of kept meals was damaged: it is set aside as {FILE}.damaged-1, and")
    assert store.notice() == ""
    assert len(kept) >= 1
    assert f"and {len(kept)} of what it held" in said
