from __future__ import annotations

from rules.because import Ledger
from rules.circumstances import Day
from rules.day import timeline
from rules.plan import Bag, Batch, Cold, Doneness, Fuel, Heat, Hours, Minutes, Moment, Pack, Refresh, Stage
from rules.recipe import Duration, Recipe, Step
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
        "Light 24",
        "fruit: out of the cooler",
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
    turns = [moment.at_min for moment in moments if moment.do.startswith("Turn")]
    assert turns == [-90, -80, -70, -60, -50, -40, -30, -20]
    assert when(moments, "Fresh coals on: 7 briquettes on the lid, 4 under the pot") == -55


def test_a_leavened_mix_meets_its_liquid_just_before_the_pot_is_ready() -> None:
    moments = day_of(over=heat(bake()))
    assert when(moments, "Coals on, bake") - when(moments, "Mix dry mix") == 5
    assert not any("Mix dry mix" in moment.do for moment in day_of(over=heat(bake()), leavened=False))


def test_an_icy_bag_leaves_the_ice_before_the_first_stage() -> None:
    moments = day_of(over=heat(bake()))
    assert when(moments, "fruit: out of the cooler") == when(moments, "Coals on, bake") - 30


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
