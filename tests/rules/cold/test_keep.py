from __future__ import annotations

import re

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


def test_the_warning_names_what_would_spoil_when_and_what_to_change() -> None:
    """Food that spoils is kept at 40 °F or below; two hours above it and it is thrown away (USDA FSIS)."""
    custard = recipe(line("milk", amount(3, "cup")), line("eggs", amount(6)), line("onions", amount(2)))
    packs = tuple(
        pack("fresh", index, of=custard, travels="cool", label=custard.ingredients[index].name)
        for index in range(3)
    )
    ledger = Ledger()
    day = Day(trip_hours=72, trip_air_f=105, cooler_quarts=24)
    (warning,) = (note for note in kept(custard, *packs, day=day, ledger=ledger).notes if "40 °F" in note)
    assert "milk and eggs would pass 40 °F" in warning
    assert "onions" not in warning
    hours = float(re.findall(r"after about (\d+) hours", warning)[0])
    assert 0 < hours < 72
    assert re.search(r"buy [\d.]+ lb .* of ice on the way", warning)
    # The cooler that it names holds the ice.
    larger = float(re.findall(r"take a cooler of (\d+) quarts", warning)[0])
    again = kept(custard, *packs, day=Day(trip_hours=72, trip_air_f=105, cooler_quarts=larger))
    assert not any("40 °F" in note for note in again.notes)
    assert "cold.too-long" in {reason.rule for reason in ledger.reasons}


def test_a_meal_at_once_needs_no_ice() -> None:
    found = kept(BEEF, RAW, day=Day(trip_hours=0))
    assert found.ice_kg is None
    assert found.notes == ()
