from __future__ import annotations

from rules.method.bench import Bench
from rules.method.graph import Event
from rules.recipe import Action


def act(vessel: str | None = None, *things: str, makes: str | None = None) -> Action:
    return Action(does="add", word="add", vessel=vessel, things=things, makes=makes)


def happen(bench: Bench, thing: int, does: str) -> None:
    bench.happen(thing, Event(at=0, step=0, does=does, word=does))  # type: ignore[arg-type]


def test_the_youngest_thing_with_a_name_is_meant() -> None:
    bench = Bench()
    bench.open(act("bowl", makes="dough"))
    second = bench.open(act("tray", makes="dough"))
    assert bench.by_name("dough") == second


def test_a_thing_nobody_named_is_called_by_what_stands_in_it() -> None:
    bench = Bench()
    batter = bench.open(act("bowl"))
    bench.put_food(batter, "wheat flour", "flour")
    bench.open(act("pan"))
    assert bench.by_name("batter") == batter
    assert bench.by_name("wheat flour") == batter
    assert bench.by_name("batter", surely=True) == batter


def test_the_filling_is_what_was_made_before_the_vessel_was_changed() -> None:
    bench = Bench()
    filling = bench.open(act("skillet"))
    bench.open(act("baking dish"))
    assert bench.by_name("filling") == filling
    assert bench.by_name("filling", surely=True) is None


def test_what_was_put_into_another_thing_is_found_there() -> None:
    bench = Bench()
    sauce = bench.open(act("saucepan", makes="sauce"))
    pot = bench.open(act("pot"))
    bench.put_into(sauce, pot, act(), 3)
    assert bench.by_name("sauce") == pot
    assert bench.pots[sauce].joined_at == 3


def test_a_thing_never_goes_into_itself_nor_round_in_a_circle() -> None:
    bench = Bench()
    one, two = bench.open(act("bowl")), bench.open(act("large bowl"))
    bench.put_into(one, one, act(), 0)
    bench.put_into(one, two, act(), 1)
    bench.put_into(two, one, act(), 2)
    assert bench.top(one) == bench.top(two) == two


def test_an_oven_is_a_place_and_no_vessel_but_a_dutch_oven_is_one() -> None:
    bench = Bench()
    assert not bench.is_new_vessel(act("hot oven"), own_pot=False)
    assert bench.is_new_vessel(act("Dutch oven"), own_pot=False)


def test_another_bowl_is_new_although_a_bowl_stands_there() -> None:
    bench = Bench()
    bench.open(act("bowl"))
    assert not bench.is_new_vessel(act("bowl"), own_pot=False)
    assert bench.is_new_vessel(act("another bowl"), own_pot=False)


def test_a_bowl_described_otherwise_is_another_one_when_foods_are_put_together() -> None:
    bench = Bench()
    bench.open(act("large bowl"))
    assert bench.is_new_vessel(act("bowl"), own_pot=False, opens=True)
    assert not bench.is_new_vessel(act("large bowl"), own_pot=False, opens=True)
    assert not bench.is_new_vessel(act("bowl"), own_pot=False)


def test_hot_fat_that_a_batter_goes_over_is_known_as_such() -> None:
    bench = Bench()
    fat = bench.open(act("skillet"))
    happen(bench, fat, "melt")
    batter = bench.open(act("bowl"))
    bench.put_into(batter, fat, Action(does="pour", word="pour"), 5)
    assert bench.pots[fat].poured_over


def test_a_mixture_that_is_never_named_again_goes_into_the_one_that_is_baked() -> None:
    bench = Bench()
    dry = bench.open(act("bowl"))
    bench.put_food(dry, "flour", "flour")
    happen(bench, dry, "mix")
    wet = bench.open(act("jug"))
    bench.put_food(wet, "milk", "milk")
    happen(bench, wet, "mix")
    happen(bench, wet, "bake")
    bench.gather_orphans({dry: {None}, wet: {None}})
    assert bench.top(dry) == wet
    assert bench.pots[dry].mixed_in


def test_a_part_of_its_own_is_laid_on_and_not_mixed_in() -> None:
    bench = Bench()
    crumble = bench.open(act("bowl"))
    bench.put_food(crumble, "flour", "flour")
    happen(bench, crumble, "rub")
    fruit = bench.open(act("baking dish"))
    bench.put_food(fruit, "plums", "fruit")
    happen(bench, fruit, "bake")
    bench.gather_orphans({crumble: {"crumble"}, fruit: {"fruit"}})
    assert bench.top(crumble) == fruit
    assert not bench.pots[crumble].mixed_in
