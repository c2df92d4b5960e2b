from __future__ import annotations

from rules.because import Ledger
from rules.instructions.rest import place_the_rest, plain_method
from rules.recipe import Family
from rules.table import read

TOLD = [("Mix it.", False), ("Bake it.", True), ("Serve.", False)]


def test_what_no_step_opens_goes_in_before_the_last_step_that_cooks() -> None:
    assert place_the_rest(TOLD, ["the salt (dry-1)"], [], []) == [
        "Mix it.",
        "Add the salt (dry-1).",
        "Bake it.",
        "Serve.",
    ]


def test_an_optional_food_is_offered() -> None:
    assert place_the_rest(TOLD, [], ["walnuts"], [])[1] == "If wanted, add walnuts."


def test_fat_for_the_hot_pot_goes_under_the_batter() -> None:
    said = place_the_rest(TOLD, [], [], ["3 tablespoons bacon grease"])[1]
    assert said.startswith("Put 3 tablespoons bacon grease into the hot pot")


def test_nothing_left_changes_nothing() -> None:
    assert place_the_rest(TOLD, [], [], []) == ["Mix it.", "Bake it.", "Serve."]


def test_a_recipe_without_a_method_is_told_the_way_of_its_family_and_asked_about() -> None:
    ledger = Ledger()
    steps = plain_method("stew or braise", ["the beef", "the carrots"], [], ledger)
    assert steps[0].startswith("Heat a little oil in the pot")
    assert "the beef and the carrots" in steps[1]
    assert [reason.rule for reason in ledger.reasons] == ["steps.no-method"]
    assert ledger.questions[0].about == "method"


def test_every_family_that_is_cooked_has_a_usual_way() -> None:
    from typing import get_args

    from rules.instructions.rest import PlainMethod

    told = {row.family for row in read("plain_methods.toml", PlainMethod)}
    assert told == set(get_args(Family)) - {"preserve or ferment"}
