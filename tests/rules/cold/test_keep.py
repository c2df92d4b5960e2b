from __future__ import annotations

import pytest

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


def test_a_dish_that_needs_no_cold_has_none() -> None:
    made = recipe(line("rice", amount(1, "cup")))
    assert cold(made, items(made), (pack("pantry", 0, of=made),), Day(), Ledger()) is None


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


def test_frozen_bags_save_ice() -> None:
    soft = pack("wet mix", 0, 1, of=BERRIES, travels="cool", label="fruit: blueberries")
    day = Day(trip_hours=48, trip_air_f=85, cooler_quarts=20)
    frozen, cool = kept(BERRIES, FRUIT, day=day).ice_kg, kept(BERRIES, soft, day=day).ice_kg
    assert frozen is not None
    assert cool is not None
    assert frozen < cool


def test_an_absent_trip_and_cooler_are_asked_for_with_their_defaults() -> None:
    ledger = Ledger()
    kept(BEEF, RAW, day=Day(), ledger=ledger)
    assert {(question.about, question.default) for question in ledger.questions} == {
        ("trip", "24 hours"),
        ("cooler", "48 quarts"),
    }


@pytest.mark.parametrize(
    ("pack_of_beef", "day", "words"),
    [
        pytest.param(RAW_COOL, Day(trip_hours=20), None, id="a day lasts"),
        pytest.param(RAW_COOL, Day(trip_hours=40), "freeze it solid", id="two days want the freezer"),
        pytest.param(RAW_COOL, Day(trip_hours=40, freezer=False), "without a freezer", id="no freezer"),
        pytest.param(RAW, Day(trip_hours=40), None, id="frozen, counted from its thaw"),
        pytest.param(RAW, Day(trip_hours=300), "even frozen", id="twelve days"),
    ],
)
def test_raw_meat_is_held_against_its_days(pack_of_beef: Pack, day: Day, words: str | None) -> None:
    """Ground beef keeps 1 to 2 days (cold storage chart, FoodSafety.gov); the low end counts."""
    notes = " ".join(note for note in kept(BEEF, pack_of_beef, day=day).notes if "ground beef" in note)
    assert (words in notes) if words else not notes


def test_ice_that_does_not_fit_is_said() -> None:
    day = Day(trip_hours=120, trip_air_f=100, cooler_quarts=12)
    assert any("does not fit" in note for note in kept(BEEF, RAW, day=day).notes)
    assert not any("does not fit" in note for note in kept(BEEF, RAW).notes)


def test_a_pack_of_which_nothing_is_known_is_kept_without_figures() -> None:
    made = recipe(line("grandmother's paste", food=""))
    found = kept(made, pack("wet mix", 0, of=made, travels="frozen", label="paste"))
    assert found.frozen_packs
    assert found.bags == ()
    assert found.thaw_hours is None
