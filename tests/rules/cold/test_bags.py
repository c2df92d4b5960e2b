from __future__ import annotations

from msgspec.structs import replace

from rules.because import Ledger
from rules.circumstances import Day
from rules.cold.keep import cold
from rules.plan import Bag, Cold, Pack
from rules.recipe import Action, Family, Ingredient, Recipe, Step, Use
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
    states = [kept(BERRIES, FRUIT, day=Day(trip_hours=hours)).bags[0].state for hours in (1, 8, 200)]
    assert states == ["frozen", "part thawed", "thawed"]


def test_fruit_may_thaw_in_the_open_and_meat_milk_and_egg_may_not() -> None:
    assert kept(BERRIES, FRUIT).bags[0].outside_min is not None
    assert kept(BEEF, RAW).bags[0].outside_min is None
    custard = recipe(line("milk", amount(2, "cup")), line("peaches", amount(2, "cup")))
    bag = pack("wet mix", 0, 1, of=custard, travels="frozen", label="milk and fruit")
    assert kept(custard, bag).bags[0].outside_min is None


def test_raw_meat_that_is_still_icy_goes_into_cold_water_and_is_then_cooked() -> None:
    (bag,) = kept(BEEF, RAW, day=Day(trip_hours=1)).bags
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


def bagged(*lines: Ingredient, family: Family, steps: tuple[Step, ...] = ()) -> tuple[Bag, set[str]]:
    """The one bag of a food that is bought frozen, two hours on the way, and the rules that spoke."""
    made = recipe(*lines, steps=steps, family=family)
    ledger = Ledger()
    frozen = pack("fresh", 0, of=made, travels="frozen", label="peas", container="1-gallon zipper bag")
    (told,) = kept(made, frozen, day=Day(trip_hours=2), ledger=ledger).bags
    return told, {reason.rule for reason in ledger.reasons}


def test_what_is_bought_frozen_and_cooked_stays_frozen() -> None:
    told, rules = bagged(line("frozen peas", amount(3, "cup")), family="soup")
    assert told.bought_frozen
    assert told.move_hours_before is None
    assert told.advice == "stays in the ice and goes over the heat frozen."
    assert "cold.from-frozen" in rules


def test_what_is_eaten_raw_or_thawed_by_the_recipe_is_thawed() -> None:
    peas = line("frozen peas", amount(3, "cup"))
    assert bagged(peas, family="no cook")[0].move_hours_before is not None
    thawed = replace(peas, text="3 cups frozen peas, thawed")
    assert bagged(thawed, family="soup")[0].move_hours_before is not None
    step = Step(line=0, text="", actions=(Action(does="thaw", word="thaw", uses=(Use(ingredient=0),)),))
    assert bagged(peas, family="soup", steps=(step,))[0].move_hours_before is not None


def test_ice_and_hot_fat_never_meet() -> None:
    """Water in hot fat spatters; frozen food is thawed and dried first (common practice, no source)."""
    told, rules = bagged(line("frozen corn kernels", amount(3, "cup")), family="deep fry")
    assert told.move_hours_before is not None
    assert str(told.advice).endswith("pat it dry, for the hot fat.")
    assert "cold.dry-for-fat" in rules


def test_shrimp_bought_frozen_still_thaw_in_the_cold() -> None:
    told, _ = bagged(line("frozen shrimp", amount(2, "pound")), family="boil or steam")
    assert told.outside_min is None
    assert told.move_hours_before is not None
