from __future__ import annotations

from rules.because import Ledger
from rules.circumstances import Day
from rules.cold.keep import cold
from rules.plan import Cold, Pack
from rules.recipe import Recipe
from tests.build import amount, items, line, pack, recipe

BERRIES = recipe(line("blueberries", amount(3, "cup")), line("sugar", amount(0.5, "cup")))
FRUIT = pack(
    "wet mix", 0, 1, of=BERRIES, travels="frozen", label="fruit: blueberries", container="1-gallon zipper bag"
)
BEEF = recipe(line("ground beef", amount(2, "pound")))
RAW = pack("fresh", 0, of=BEEF, travels="frozen", label="raw ground beef", container="1-gallon zipper bag")
RAW_COOL = pack("fresh", 0, of=BEEF, travels="cool", label="raw ground beef")


def kept(made: Recipe, *packs: Pack, day: Day | None = None, ledger: Ledger | None = None) -> Cold:
    found = cold(made, items(made), packs, day or Day(trip_hours=24, cooler_quarts=48), ledger or Ledger())
    assert found is not None
    return found


def test_a_frozen_bag_has_its_hours_in_freezer_and_cooler() -> None:
    found = kept(BERRIES, FRUIT)
    assert found.frozen_packs == (FRUIT.id,)
    (bag,) = found.bags
    assert bag.freeze_hours is not None
    assert bag.thaw_hours is not None
    assert bag.slush_hours is not None
    assert 0 < bag.freeze_hours.low < bag.freeze_hours.high
    assert bag.freeze_hours.high < bag.thaw_hours.high
    assert bag.slush_hours.high < bag.thaw_hours.low


def test_a_bag_is_frozen_at_first_and_thawed_in_the_end() -> None:
    states = [kept(BERRIES, FRUIT, day=Day(trip_hours=hours)).bags[0].state for hours in (1, 12, 200)]
    assert states == ["frozen", "part thawed", "thawed"]


def test_fruit_may_thaw_in_the_open_and_meat_milk_and_egg_may_not() -> None:
    assert kept(BERRIES, FRUIT).bags[0].outside_min is not None
    assert kept(BEEF, RAW).bags[0].outside_min is None
    custard = recipe(line("milk", amount(2, "cup")), line("peaches", amount(2, "cup")))
    bag = pack("wet mix", 0, 1, of=custard, travels="frozen", label="milk and fruit")
    assert kept(custard, bag).bags[0].outside_min is None


def test_raw_meat_that_is_still_icy_goes_into_cold_water_and_is_then_cooked() -> None:
    (bag,) = kept(BEEF, RAW, day=Day(trip_hours=3)).bags
    assert bag.state == "frozen"
    assert bag.advice is not None
    assert "changed every 30 minutes" in bag.advice
    assert "cook it at once" in bag.advice


def test_nobody_leaves_fruit_out_of_the_cold_for_more_than_two_hours() -> None:
    thick = recipe(line("blueberries", amount(12, "cup")))
    bag = pack("wet mix", 0, of=thick, travels="frozen", label="fruit", container="1-gallon zipper bag")
    (told,) = kept(thick, bag, day=Day(trip_hours=2, air_f=45)).bags
    assert told.advice is not None
    assert "cold water" in told.advice


def test_spirits_keep_a_bag_soft() -> None:
    made = recipe(line("rum", amount(2, "cup")), line("raisins", amount(1, "cup")))
    bag = pack(
        "wet mix", 0, 1, of=made, travels="frozen", label="rum raisins", container="1-quart zipper bag"
    )
    ledger = Ledger()
    (told,) = kept(made, bag, ledger=ledger).bags
    assert told.freeze_hours is None
    assert "cold.soft" in {reason.rule for reason in ledger.reasons}
