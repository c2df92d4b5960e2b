from __future__ import annotations

from rules.because import Ledger
from rules.circumstances import Day
from rules.kit import kit
from rules.plan import Doneness, FatUse, Heat, Kit, Pack, PotPlan
from rules.recipe import Recipe, Unread
from tests.build import amount, bake, heat, items, line, pack, recipe

POT = PotPlan(diameter_in=12, depth="deep", quarts=8, count=2)
SAFETY = (
    "lid lifter",
    "long leather gloves",
    "bucket of water beside the fire",
    "shovel",
    "lidded metal can for the ash",
)


def tools(
    made: Recipe,
    *,
    packs: tuple[Pack, ...] = (),
    over: Heat | None = None,
    steps: tuple[str, ...] = ("Cook it.",),
    day: Day | None = None,
    ledger: Ledger | None = None,
    fat: tuple[FatUse, ...] = (),
    ice_kg: float | None = None,
) -> Kit:
    return kit(
        made,
        items(made),
        packs,
        fat,
        POT,
        over,
        steps,
        day or Day(),
        ledger or Ledger(),
        ice_kg=ice_kg,
        home_steps=(),
    )


def test_fire_and_safety_and_fuel_come_with_every_coal_plan() -> None:
    camp = tools(recipe(line("rice")), over=heat(bake())).camp
    assert set(SAFETY) <= set(camp)
    assert "2 12-inch camp Dutch ovens, deep (8 quarts), with lid" in camp
    assert "30 briquettes, 1.5 lb (0.7 kg), 6 of them the reserve, in a dry box" in camp


def test_without_coals_there_is_no_fire_kit() -> None:
    assert not set(SAFETY) & set(tools(recipe(line("rice"), family="no cook")).camp)


def test_where_charcoal_is_forbidden_a_stove_comes_along() -> None:
    camp = tools(recipe(line("rice"), family="stew or braise"), day=Day(charcoal=False)).camp
    assert any("stove" in tool for tool in camp)


def test_raw_meat_brings_soap_a_second_utensil_and_a_clean_dish() -> None:
    camp = tools(recipe(line("chicken thighs")), over=heat(bake())).camp
    assert "soap, washing water and paper towels" in camp
    assert "a second utensil and a clean dish for the cooked food" in camp
    without = tools(recipe(line("rice")), over=heat(bake())).camp
    assert "a second utensil and a clean dish for the cooked food" not in without


def test_a_raw_egg_brings_soap_and_no_second_utensil() -> None:
    camp = tools(recipe(line("eggs")), over=heat(bake())).camp
    assert "soap, washing water and paper towels" in camp
    assert "a second utensil and a clean dish for the cooked food" not in camp


def test_a_word_of_the_steps_calls_for_its_tool() -> None:
    made = recipe(line("cheese"))
    assert "grater" in tools(made, steps=("Grate the cheese over it.",)).camp
    assert "grater" not in tools(made, steps=("Strew the cheese over it.",)).camp
    assert "knife and cutting board" in tools(made, steps=("Slice the cheese.",)).camp


def test_cans_bring_a_can_opener_and_bottles_their_opener() -> None:
    made = recipe(line("tomatoes", amount(1, "can")), line("beer", amount(1, "bottle")))
    packs = (pack("pantry", 0, of=made), pack("pantry", 1, of=made))
    assert {"can opener", "bottle opener or corkscrew"} <= set(tools(made, packs=packs).camp)


def test_an_inside_temperature_brings_a_thermometer_and_a_bake_without_one_a_skewer() -> None:
    done = Doneness(what="meat", temp_f=165, sign="165 °F", source="FoodSafety.gov")
    assert "instant-read thermometer" in tools(recipe(line("rice")), over=heat(bake(), doneness=(done,))).camp
    assert "wooden skewer to test with" in tools(recipe(line("rice")), over=heat(bake())).camp


def test_the_cooler_comes_with_its_ice_and_the_freezer_is_named_at_home() -> None:
    made = recipe(line("blueberries", amount(1, "cup")))
    packs = (
        pack(
            "wet mix",
            0,
            of=made,
            travels="frozen",
            label="fruit: blueberries",
            container="1-quart zipper bag",
        ),
    )
    told = tools(made, packs=packs, ice_kg=4.0, day=Day(cooler_quarts=60))
    assert {"cooler of 60 quarts", "9 lb (4 kg) of ice"} <= set(told.camp)
    assert "1 x 1-quart zipper bag" in told.home
    assert any("fruit flat in the freezer" in tool for tool in told.home)


def test_the_bowl_holds_the_batter_with_room_to_stir() -> None:
    made = recipe(line("flour", amount(6, "cup")), line("milk", amount(5, "cup")))
    packs = (pack("dry mix", 0, of=made), pack("fresh", 1, of=made, travels="cool"))
    # 11 cups are 2.75 quarts; two thirds of a 6-quart bowl hold them, of a 4-quart bowl do not.
    assert "mixing bowl of 6 quarts" in tools(made, packs=packs, steps=("Mix it.",)).camp


def test_a_late_meal_brings_a_light() -> None:
    made = recipe(line("rice"))
    assert "headlamp" in tools(made, day=Day(eat="20:30")).camp
    assert "headlamp" not in tools(made, day=Day(eat="12:30")).camp


def test_tools_that_the_recipe_names_go_on_the_list() -> None:
    made = recipe(line("rice"), tools=(Unread(line=4, text="- heavy foil"),))
    assert "heavy foil" in tools(made).camp


def test_creaming_and_cutting_in_are_done_at_home() -> None:
    made = recipe(line("butter", amount(1, "cup")))
    assert (
        "pastry cutter or two knives" in tools(made, fat=(FatUse(ingredient=0, goes="cut in at home"),)).home
    )
    assert any(
        "cream" in tool for tool in tools(made, fat=(FatUse(ingredient=0, goes="creamed at home"),)).home
    )


def test_no_tool_is_listed_twice_and_each_cause_is_told_once() -> None:
    ledger = Ledger()
    told = tools(recipe(line("chicken thighs"), line("eggs")), over=heat(bake()), ledger=ledger)
    assert len(set(told.camp)) == len(told.camp)
    causes = [
        (reason.about, reason.because.partition(" calls for ")[0])
        for reason in ledger.reasons
        if reason.rule == "kit.called-for"
    ]
    assert len(causes) == len(set(causes))
