"""Spells of the oven and of rising as stages."""

from __future__ import annotations

from rules.because import Ledger
from rules.recipe import Duration, Oven
from tests.rules.coals.making import action, drafts, kinds, recipe, step

DOUGH = {"flour": (4, "cup"), "yeast": (1, "tablespoon"), "water": (1.5, "cup")}
OVEN = Oven(temp_f=400.0, stated="400F")


def test_rises_stand_before_the_bake() -> None:
    made = recipe(
        DOUGH, step(action("rise", minutes=(60, 90))), step(action("bake", minutes=(30, 35))), oven=OVEN
    )
    found = drafts(made, "yeast bread", yeasted=True)
    assert kinds(found) == ["rise", "warm", "bake"]
    assert 80 <= found[0].temp_f <= 95


def test_a_rise_over_night_happens_away_from_the_fire() -> None:
    ledger = Ledger()
    made = recipe(
        DOUGH, step(action("rise", minutes=(420, 600))), step(action("bake", minutes=(30, 35))), oven=OVEN
    )
    assert "rise" not in kinds(drafts(made, "yeast bread", yeasted=True, ledger=ledger))
    assert "heat.long-rise" in [reason.rule for reason in ledger.reasons]


def test_a_long_rest_of_a_yeast_dough_is_a_rise() -> None:
    rest = Duration(what="rest", low_min=30, high_min=30)
    made = recipe(DOUGH, step(times=[rest]), step(action("bake", minutes=(15, 20))), oven=OVEN)
    assert drafts(made, "yeast bread", yeasted=True)[0].high_min == 30


def test_melting_butter_for_a_cake_is_no_stage() -> None:
    made = recipe(
        {"butter": (1, "stick"), "flour": (2, "cup")},
        step(action("melt", "melt", 0)),
        step(action("bake", minutes=(9, 9))),
        oven=OVEN,
    )
    assert kinds(drafts(made, "cookie")) == ["warm", "bake"]


def test_an_untimed_bake_takes_the_familys_time_and_asks() -> None:
    ledger = Ledger()
    made = recipe({"flour": (2, "cup")}, step(action("bake")), oven=OVEN)
    bake = drafts(made, "biscuit or quick bread dough", ledger=ledger)[-1]
    assert (bake.low_min, bake.high_min) == (15, 20)
    assert any(question.about == "minutes" for question in ledger.questions)
    assert "heat.minutes" in [reason.rule for reason in ledger.reasons]


def test_a_stew_in_the_oven_keeps_its_heat_below_and_its_oven() -> None:
    made = recipe(
        {"beef chuck": (3, "pound")},
        step(action("bake", "cook", vessel="oven", minutes=(150, 180))),
        oven=Oven(temp_f=325.0),
    )
    bake = next(one for one in drafts(made, "stew or braise") if one.kind == "bake")
    assert (bake.way, bake.temp_f, bake.is_main) == ("simmer", 325, True)


def test_vegetables_roasted_for_a_stew_lie_between_equal_coals() -> None:
    made = recipe(
        {"eggplant": (2, None), "tomato": (4, None)},
        step(action("bake", "bake", 0, minutes=(20, 20), temp_f=390.0)),
        step(action("simmer", minutes=(30, 40))),
    )
    bake = next(one for one in drafts(made, "stew or braise") if one.kind == "bake")
    assert (bake.way, bake.is_main) == ("roast", False)


def test_a_crust_of_cheese_wants_its_heat_above() -> None:
    made = recipe(
        {"potato": (2, "pound"), "cheddar cheese": (1, "cup")},
        step(action("bake", minutes=(30, 30))),
        oven=OVEN,
    )
    assert drafts(made, "pan fry or saute")[-1].way == "bake"


def test_a_lid_taken_off_to_brown_is_a_stage_of_its_own() -> None:
    off = step(action("brown"), text="Take off the lid and let the top brown.")
    plain = step(action("brown"), text="until tall and brown on top.")
    bake = step(action("bake", minutes=(40, 45)))
    food = {"potato": (2, "pound")}
    ledger = Ledger()
    assert (
        kinds(drafts(recipe(food, bake, off, oven=OVEN), "casserole or layered bake", ledger=ledger))[-1]
        == "brown top"
    )
    assert "heat.brown-top" in [reason.rule for reason in ledger.reasons]
    assert kinds(drafts(recipe(food, bake, plain, oven=OVEN), "casserole or layered bake"))[-1] == "bake"


def test_water_boiled_for_a_crust_is_no_stage() -> None:
    made = recipe(
        {"lard": (1, "cup"), "water": (1, "cup"), "flour": (3, "cup")},
        step(action("boil", "boil", 0, 1)),
        step(action("bake", minutes=(60, 60))),
        oven=OVEN,
    )
    assert kinds(drafts(made, "pastry or pie")) == ["warm", "bake"]


def test_what_a_soup_cooks_after_the_boil_simmers() -> None:
    made = recipe(
        {"potato": (4, None), "water": (1, "quart")},
        step(action("boil", "bring", 1), action("boil", "cook", minutes=(15, 20))),
    )
    assert kinds(drafts(made, "soup")) == ["boil", "simmer"]


def test_a_loaf_gets_its_heat_from_above_at_the_end_and_rolls_are_brown_before() -> None:
    """Printed: in the last 5 to 8 minutes the coals from below go on the lid."""

    def look(minutes: tuple[float, float]) -> str:
        made = recipe(
            {"flour": (4, "cup"), "yeast": (1, "teaspoon")},
            step(action("bake", "bake", minutes=minutes, temp_f=400.0), temps=(400.0,)),
        )
        return drafts(made, "yeast bread", yeasted=True)[-1].look

    assert look((40, 45)) == "bake bread"
    assert look((12, 15)) == "bake"
