"""The stages of a dish in order."""

from __future__ import annotations

from rules.because import Ledger
from rules.circumstances import Day
from rules.plan import FatUse
from rules.recipe import Oven
from tests.rules.coals.making import CAKE, STEW, action, drafts, kinds, recipe, step


def test_a_cake_is_baked_in_a_warmed_pot() -> None:
    found = drafts(CAKE, "batter bake")
    assert kinds(found) == ["warm", "bake"]
    assert (found[1].temp_f, found[1].low_min, found[1].is_main) == (350, 30, True)


def test_fat_for_the_hot_pot_has_its_own_stage() -> None:
    ledger = Ledger()
    found = drafts(CAKE, "batter bake", fat=[FatUse(ingredient=3, goes="hot pot first")], ledger=ledger)
    assert kinds(found) == ["warm", "heat fat", "bake"]
    assert "heat.fat" in [reason.rule for reason in ledger.reasons]


def test_a_depth_of_oil_is_heated_before_anything_is_fried() -> None:
    made = recipe(
        {"chicken thigh": (8, None), "oil": (2, "quart")},
        step(action("deep fry", "fry", 0, minutes=(12, 15))),
    )
    assert kinds(drafts(made, "deep fry")) == ["heat fat", "fry"]


def test_meat_browned_before_a_casserole_keeps_its_place() -> None:
    made = recipe(
        {"ground beef": (1, "pound"), "macaroni": (1, "pound"), "cheddar cheese": (2, "cup")},
        step(action("brown", "brown", 0)),
        step(action("boil", "cook", 1, minutes=(8, 10))),
        step(action("bake", "bake", minutes=(30, 35))),
        oven=Oven(temp_f=375.0),
    )
    assert kinds(drafts(made, "casserole or layered bake")) == ["warm", "brown", "boil", "boil", "bake"]


def test_an_open_cook_in_a_recipe_with_an_oven_is_the_bake() -> None:
    made = recipe(
        {"oats": (2, "cup")}, step(action("fry", "cook", minutes=(20, 20))), oven=Oven(temp_f=350.0)
    )
    assert kinds(drafts(made, "cookie")) == ["warm", "bake"]


def test_a_bake_that_tells_no_spell_gets_the_familys() -> None:
    ledger = Ledger()
    found = drafts(recipe({"flour": (3, "cup")}, step(action("mix"))), "pastry or pie", ledger=ledger)
    assert kinds(found) == ["warm", "bake"]
    assert found[1].temp_f == 375
    assert {question.about for question in ledger.questions} == {"temperature", "minutes"}


def test_a_custard_stirred_on_the_stove_is_not_sent_to_the_oven() -> None:
    made = recipe(
        {"milk": (1, "quart"), "egg": (4, None)}, step(action("simmer", "simmer", 0, minutes=(10, 12)))
    )
    assert kinds(drafts(made, "custard or pudding")) == ["simmer"]


def test_a_fried_dish_has_its_pan() -> None:
    made = recipe({"chickpea": (2, "cup")}, step(action("simmer", "cook", minutes=(10, 15))))
    assert kinds(drafts(made, "pan fry or saute")) == ["warm", "fry"]


def test_a_salad_needs_no_fire_but_its_bacon_does() -> None:
    assert drafts(recipe({"lettuce": (1, "head")}, step(action("mix"))), "no cook") == ()
    made = recipe({"bacon": (6, "slice")}, step(action("fry", "fry", 0, minutes=(8, 10))))
    assert kinds(drafts(made, "no cook")) == ["warm", "brown"]


def test_the_cooks_temperature_goes_before_the_recipes() -> None:
    assert drafts(CAKE, "batter bake", Day(temp_f=400))[1].temp_f == 400


def test_the_stew_of_the_book() -> None:
    ledger = Ledger()
    found = drafts(STEW, "stew or braise", ledger=ledger)
    assert kinds(found) == ["warm", "brown", "fry", "boil", "simmer"]
    assert found[0].way == found[1].way == "fry"  # the pan is made hot over the coals that brown
    assert "heat.pan" in [reason.rule for reason in ledger.reasons]


def test_a_slow_cooker_simmers_whatever_the_dish_is_called() -> None:
    made = recipe(
        {"pork shoulder": (4, "pound")},
        step(
            action("add", "put", 0, vessel="slow cooker"),
            action("fry", "cook", minutes=(480, 600), heat="low"),
        ),
    )
    assert kinds(drafts(made, "pan fry or saute")) == ["simmer"]


def test_what_is_said_to_bake_is_baked_in_a_dish_that_is_baked() -> None:
    made = recipe({"egg": (4, None)}, step(action("fry", "bake", minutes=(35, 40)), text="Bake at 350."))
    found = drafts(made, "pastry or pie")
    assert (found[-1].kind, found[-1].temp_f) == ("bake", 350)


def test_milk_that_is_only_warmed_has_one_stage() -> None:
    made = recipe({"milk": (1, "quart")}, step(action("heat", "warm", 0, heat="medium")))
    assert kinds(drafts(made, "boil or steam")) == ["boil"]


def test_a_pudding_brought_to_the_boil_and_simmered_boils_once() -> None:
    made = recipe(
        {"rice": (1, "cup"), "milk": (1, "quart")},
        step(action("boil", "bring", 0, 1), action("simmer", minutes=(35, 40))),
    )
    assert kinds(drafts(made, "boil or steam")) == ["boil", "simmer"]


def test_a_pan_dish_made_by_one_long_spell_has_one_stage_of_each_kind() -> None:
    made = recipe(
        {"pork belly": (2, "pound"), "ginger": (1, "inch")},
        step(action("fry", "fry", 0)),
        step(action("simmer", "simmer", 0, minutes=(60, 60), heat="low")),
        step(action("saute", "soften", 1)),
        step(action("simmer", "simmer", minutes=(2, 2))),
    )
    found = drafts(made, "pan fry or saute")
    assert kinds(found) == ["warm", "fry", "simmer"]
    assert found[2].low_min == 62
