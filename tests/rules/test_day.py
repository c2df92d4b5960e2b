from __future__ import annotations

import pytest

from rules.because import Ledger
from rules.circumstances import Day
from rules.day import timeline
from rules.plan import (
    Bag,
    Batch,
    Cold,
    Doneness,
    Fuel,
    Heat,
    Hours,
    Layer,
    Minutes,
    Moment,
    Pack,
    Refresh,
    Stage,
)
from rules.recipe import Action, Duration, DurationKind, Recipe, Step, Use
from tests.build import amount, bake, dish, heat, line, pack, recipe

MUFFINS = recipe(
    line("flour", amount(2, "cup")),
    line("baking powder", amount(1, "tablespoon")),
    line("blueberries", amount(1, "cup")),
    line("milk", amount(1, "cup")),
    title="River muffins",
    family="batter bake",
)
DRY = pack("dry mix", 0, 1, of=MUFFINS, label="dry mix of flour and baking powder")
FRUIT = pack("wet mix", 2, of=MUFFINS, travels="frozen", label="fruit: blueberries")
MILK = pack("fresh", 3, of=MUFFINS, travels="cool", label="milk")
PACKS = (DRY, FRUIT, MILK)
COLD = Cold(
    frozen_packs=(FRUIT.id,),
    freeze_hours=Hours(low=2, high=5),
    thaw_hours=Hours(low=10, high=30),
    ice_kg=4.0,
    bags=(Bag(pack=FRUIT.id, move_hours_before=0.5, advice="out of the cooler, to thaw in the shade."),),
)


def day_of(
    *,
    of: Recipe = MUFFINS,
    packs: tuple[Pack, ...] = PACKS,
    over: Heat | None = None,
    cold: Cold | None = COLD,
    day: Day | None = None,
    leavened: bool = True,
    camp_steps: tuple[str, ...] = ("Mix and bake.",),
) -> tuple[Moment, ...]:
    kind = dish(of.family, leavened=leavened)
    return timeline(of, kind, packs, (), over, cold, (), camp_steps, day or Day(), Ledger())


def when(moments: tuple[Moment, ...], words: str) -> float:
    """The one moment whose text holds these words."""
    (found,) = [moment.at_min for moment in moments if words in moment.do]
    return found


def test_the_day_runs_from_the_shop_to_the_cold_ash() -> None:
    moments = day_of(over=heat(bake()))
    order = [
        "Shop.",
        "Kitchen work",
        "Lay flat in the freezer",
        "Pack the cooler",
        "Leave.",
        "fruit: out of the cooler",
        "Light 24",
        "Mix dry mix",
        "Coals on, bake",
        "First look",
        "It may be done",
        "Serve and eat",
        "Coals out",
        "Feel the ash",
        "Leftovers",
    ]
    times = [when(moments, words) for words in order]
    assert times == sorted(times)
    assert [moment.at_min for moment in moments] == sorted(moment.at_min for moment in moments)


def test_the_meal_is_minute_zero_and_the_cooler_is_shut_by_the_trip() -> None:
    moments = day_of(over=heat(bake()), day=Day(trip_hours=30))
    assert when(moments, "Serve and eat") == 0
    assert when(moments, "Pack the cooler") == -1800
    assert "9 lb (4 kg) of ice" in next(moment.do for moment in moments if "Pack the cooler" in moment.do)


def test_bags_freeze_as_long_as_the_slowest_freezer_needs() -> None:
    moments = day_of(over=heat(bake()), day=Day(trip_hours=30))
    assert when(moments, "Pack the cooler") - when(moments, "Lay flat in the freezer") >= 5 * 60


def test_turns_fall_inside_the_bake_and_fresh_coals_where_the_stage_puts_them() -> None:
    fresh = Refresh(at_min=-55, light_at_min=-75, top=7, under=4)
    moments = day_of(over=heat(bake(90, 90, refresh=(fresh,))))
    turns = [moment.at_min for moment in moments if "turn" in moment.do.lower() and "may be" not in moment.do]
    assert turns == [-90, -80, -70, -60, -50, -40, -30, -20]
    assert when(moments, "Fresh coals on: 7 briquettes on the lid, 4 under the pot") == -55


def test_a_leavened_mix_meets_its_liquid_just_before_the_pot_is_ready() -> None:
    moments = day_of(over=heat(bake()))
    assert when(moments, "Coals on, bake") - when(moments, "Mix dry mix") == 5
    assert not any("Mix dry mix" in moment.do for moment in day_of(over=heat(bake()), leavened=False))


def test_an_icy_bag_leaves_the_ice_so_long_before_it_is_first_wanted() -> None:
    moments = day_of(over=heat(bake()))
    assert when(moments, "fruit: out of the cooler") == when(moments, "Mix dry mix") - 30


def test_every_lighting_is_a_moment_of_its_own() -> None:
    fuel = Fuel(
        lit=36,
        reserve=9,
        briquettes=45,
        kg=1.1,
        batches=(Batch(light_at_min=-80, count=24), Batch(light_at_min=-40, count=12)),
    )
    moments = day_of(over=Heat(stages=(bake(),), fuel=fuel))
    assert when(moments, "Light 24 briquettes") == -80
    assert when(moments, "Light 12 more briquettes") == -40


def test_the_signs_of_doneness_are_told_when_it_may_be_done() -> None:
    done = Doneness(what="crumb", sign="a skewer comes out clean", source="common practice, no source")
    moments = day_of(over=heat(bake(), doneness=(done,)))
    assert when(moments, "A skewer comes out clean.") == -20


def test_clock_times_stand_beside_the_minutes_when_the_meal_has_one() -> None:
    moments = day_of(over=heat(bake()), day=Day(eat="2027-07-03T18:30", zone="America/Boise", trip_hours=30))
    clocks = {moment.do: moment.clock for moment in moments}
    assert clocks["Serve and eat."] == "18:30"
    assert clocks["Leave."] == "Fri 2 Jul 12:45"
    assert all(moment.clock is None for moment in day_of(over=heat(bake())))


def test_kitchen_work_never_falls_into_the_night() -> None:
    for trip_hours in range(1, 60):
        moments = day_of(over=heat(bake()), day=Day(eat="18:30", trip_hours=trip_hours))
        for moment in moments:
            if moment.do.startswith(("Kitchen work", "Shop")):
                assert moment.clock is not None
                assert "07:00" <= moment.clock[:5] < "22:00"


def test_a_long_rise_moves_the_kitchen_work_forward() -> None:
    rise = Step(line=0, text="", durations=(Duration(what="rise", low_min=600, high_min=900),))
    dough = recipe(line("flour", amount(2, "cup")), steps=(rise,), family="yeast bread")
    packs = (pack("prepped", 0, of=dough, travels="cool", label="dough, made at home"),)
    moments = day_of(of=dough, packs=packs, over=heat(bake()), cold=Cold())
    assert when(moments, "Pack the cooler") - when(moments, "Kitchen work") >= 600


def test_leftovers_have_one_hour_in_hot_air() -> None:
    assert when(day_of(over=heat(bake()), day=Day(air_f=95)), "Leftovers") == 60
    assert when(day_of(over=heat(bake())), "Leftovers") == 120


def test_a_dish_without_fire_has_no_coals_in_its_day() -> None:
    salad = recipe(line("rice", amount(1, "cup")), family="no cook")
    moments = day_of(of=salad, packs=(pack("pantry", 0, of=salad),), cold=None)
    assert not any("oals" in moment.do or "briquettes" in moment.do for moment in moments)
    assert when(moments, "put it together") == -60


def test_a_stage_says_its_coals_and_minutes() -> None:
    simmer = Stage(
        kind="simmer",
        minutes=Minutes(low=60, high=60),
        under=12,
        starts_at_min=-70,
        look_for="Barely moving.",
    )
    moments = day_of(over=heat(simmer))
    assert when(moments, "Simmer: 12 briquettes, all under the pot, 60 minutes. Barely moving.") == -70


def test_hands_and_tools_are_washed_once_the_raw_meat_is_in() -> None:
    meat = recipe(line("chicken thighs", amount(2, "pound")), family="stew or braise")
    brown = Stage(kind="brown", minutes=Minutes(low=8, high=12), under=30, starts_at_min=-90)
    packs = (pack("fresh", 0, of=meat, travels="cool", label="raw chicken thighs"),)
    moments = day_of(of=meat, packs=packs, over=heat(brown), cold=Cold(), leavened=False)
    assert when(moments, "wash hands, board and knife") == -90
    assert not any("board and knife" in moment.do for moment in day_of(over=heat(bake())))


def test_a_ferment_is_begun_as_long_ahead_as_it_takes() -> None:
    weeks = Step(line=0, text="", durations=(Duration(what="other", low_min=14 * 1440, high_min=14 * 1440),))
    kraut = recipe(line("cabbage", amount(1)), steps=(weeks,), family="preserve or ferment")
    packs = (pack("prepped", 0, of=kraut, travels="cool", label="Sauerkraut, made at home"),)
    moments = day_of(of=kraut, packs=packs, cold=Cold())
    assert when(moments, "Pack the cooler") - when(moments, "Kitchen work") >= 14 * 1440
    assert "waits 14 days" in next(moment.do for moment in moments if "Kitchen work" in moment.do)


def test_a_thaw_that_falls_into_the_night_says_what_to_do_on_the_evening_before() -> None:
    ledger = Ledger()
    slow = Cold(
        frozen_packs=(FRUIT.id,),
        bags=(Bag(pack=FRUIT.id, move_hours_before=6, advice="sealed into cold water."),),
    )
    breakfast = Day(eat="2027-07-03T08:00", trip_hours=30)
    moments = timeline(
        MUFFINS, dish(MUFFINS.family), PACKS, (), heat(bake()), slow, (), ("Mix.",), breakfast, ledger
    )
    (told,) = (moment for moment in moments if "sealed into cold water" in moment.do)
    assert "on the evening before" in told.do
    assert "day.night-thaw" in {reason.rule for reason in ledger.reasons}
    dinner = day_of(over=heat(bake()), cold=slow, day=Day(eat="2027-07-03T18:30", trip_hours=30))
    assert not any("on the evening before" in moment.do for moment in dinner)


def test_the_cooler_is_shut_before_the_fire_however_short_the_trip() -> None:
    ledger = Ledger()
    at_once = timeline(
        MUFFINS, dish(MUFFINS.family), PACKS, (), heat(bake()), COLD, (), ("Mix.",), Day(trip_hours=0), ledger
    )
    assert when(at_once, "Leave.") < when(at_once, "lay out bowl") < when(at_once, "Light 24")
    assert "day.short-trip" in {reason.rule for reason in ledger.reasons}


def test_a_bag_that_has_no_time_on_the_way_goes_into_the_water_at_home() -> None:
    slow = Cold(
        frozen_packs=(FRUIT.id,), bags=(Bag(pack=FRUIT.id, move_hours_before=5, advice="into water."),)
    )
    moments = day_of(over=heat(bake()), cold=slow, day=Day(trip_hours=3))
    assert when(moments, "Still at home, fruit: into water.") < when(moments, "Pack the cooler")


def test_two_works_that_want_both_hands_say_that_a_second_pair_is_needed() -> None:
    ledger = Ledger()
    browning = Stage(
        kind="brown", minutes=Minutes(low=20, high=20), under=30, starts_at_min=-70, look_for="Brown."
    )
    over = heat(browning, bake())
    moments = timeline(
        MUFFINS, dish(MUFFINS.family, leavened=True), PACKS, (), over, COLD, (), ("Mix.",), Day(), ledger
    )
    mixing = next(moment.do for moment in moments if "Mix dry mix" in moment.do)
    assert "the browning goes on meanwhile" in mixing
    assert "day.two-at-once" in {reason.rule for reason in ledger.reasons}
    assert not any("second pair" in moment.do for moment in day_of(over=heat(bake())))


def test_a_look_within_three_minutes_of_a_turn_is_one_walk_to_the_pot() -> None:
    near = Stage(
        kind="bake",
        minutes=Minutes(low=40, high=45),
        top=17,
        under=8,
        turn_every_min=10,
        first_look_min=28,
        starts_at_min=-55,
    )
    moments = day_of(over=heat(near))
    assert when(moments, "First look: lift the lid straight up, look, shut it again, and turn") == -25
    # The turn at the low end of the time is left to the sign of doneness, which says when to turn again.
    assert [moment.at_min for moment in moments if moment.do.startswith("Turn")] == [-45, -35]
    assert when(moments, "turn once more and give it five minutes") == -15


def test_a_dish_rests_as_long_as_its_method_says() -> None:
    stands = Step(
        line=1,
        text="",
        actions=(
            Action(does="bake", word="bake", uses=(Use(ingredient=0),)),
            Action(does="cool", word="cool", minutes=Duration(what="rest", low_min=40, high_min=40)),
        ),
    )
    pie = recipe(line("flour", amount(2, "cup")), steps=(stands,), family="pastry or pie")
    late = Stage(kind="bake", minutes=Minutes(low=30, high=30), top=17, under=8, starts_at_min=-70)
    moments = day_of(of=pie, packs=(pack("pantry", 0, of=pie),), over=heat(late), cold=None)
    assert when(moments, "Off the coals; let it rest 40 minutes") == -40


def test_what_chills_at_camp_is_put_together_before_it() -> None:
    chilled = Step(
        line=0,
        text="",
        actions=(
            Action(does="mix", word="mix", uses=(Use(ingredient=0), Use(ingredient=3))),
            Action(does="chill", word="chill", minutes=Duration(what="chill", low_min=60, high_min=60)),
            Action(does="bake", word="bake"),
        ),
    )
    made = recipe(*MUFFINS.ingredients, steps=(chilled,), family="casserole or layered bake")
    moments = day_of(of=made, over=heat(bake()), leavened=False)
    assert when(moments, "it chills now, 60 minutes at least") == when(moments, "Coals on, bake") - 60
    assert when(moments, "Put together") < when(moments, "it chills")
    at_home = (pack("prepped", 0, 1, 2, 3, of=made, travels="cool", label="made at home"),)
    assert not any(
        "it chills" in moment.do for moment in day_of(of=made, packs=at_home, over=heat(bake()), cold=Cold())
    )


def test_the_cooler_is_packed_in_its_layers() -> None:
    layered = Cold(
        ice_kg=4.0,
        layers=(Layer(packs=(FRUIT.id,), because=""), Layer(packs=(MILK.id,), because="")),
    )
    moments = day_of(over=heat(bake()), cold=layered)
    assert when(
        moments, "from the bottom up: fruit; then milk; 9 lb (4 kg) of ice beside and on top; shut it"
    )


@pytest.mark.parametrize(("what", "after"), [("rise", 600), ("chill", 0), ("marinate", 0)])
def test_what_rises_does_so_before_the_cold_and_what_chills_in_it(what: DurationKind, after: float) -> None:
    long = Step(line=0, text="", durations=(Duration(what=what, low_min=600, high_min=900),))
    dough = recipe(line("flour", amount(2, "cup")), steps=(long,), family="yeast bread")
    packs = (pack("prepped", 0, of=dough, travels="cool", label="dough, made at home"),)
    moments = day_of(of=dough, packs=packs, over=heat(bake()), cold=Cold())
    made = when(moments, "Kitchen work") + 30
    assert when(moments, "Into the refrigerator") - made == pytest.approx(after, abs=15)


def test_without_a_freezer_frozen_food_is_fetched_last() -> None:
    peas = Cold(bags=(Bag(pack=FRUIT.id, bought_frozen=True),), frozen_packs=(FRUIT.id,))
    without = day_of(over=heat(bake()), cold=peas, day=Day(freezer=False))
    assert when(without, "Fetch hard from the shop: fruit") == when(without, "Pack the cooler")
    assert not any("freezer" in moment.do for moment in without)
    assert when(day_of(over=heat(bake()), cold=peas), "Into the freezer as it was bought: fruit") < 0
