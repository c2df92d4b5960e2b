"""Boiling, simmering, and what pressure and dry beans ask."""

from __future__ import annotations

import pytest

from rules.because import Ledger
from tests.rules.coals.making import STEW, action, drafts, kinds, recipe, step


def simmer(made, family, **more):
    return next(one for one in drafts(made, family, **more) if one.kind == "simmer")


def test_a_stew_comes_to_the_boil_before_it_simmers() -> None:
    found = drafts(STEW, "stew or braise")
    assert kinds(found) == ["warm", "brown", "fry", "boil", "simmer"]
    assert found[3].way == "bring up"


def test_pasta_boils_after_its_water_does() -> None:
    made = recipe(
        {"spaghetti": (1, "pound"), "water": (4, "quart")}, step(action("boil", "cook", 0, minutes=(9, 11)))
    )
    found = drafts(made, "boil or steam")
    assert kinds(found) == ["boil", "boil"]
    assert (found[1].low_min, found[1].high_min) == (9, 11)


@pytest.mark.parametrize(("food", "minutes"), [("potato", 15), ("white rice", 15), ("spaghetti", 10)])
def test_what_boils_untimed_takes_what_it_usually_takes(food, minutes) -> None:
    made = recipe({food: (2, "cup")}, step(action("boil", "boil", 0)))
    assert drafts(made, "boil or steam")[-1].low_min == minutes


def test_minutes_under_pressure_become_three_times_as_many_and_are_asked() -> None:
    ledger = Ledger()
    made = recipe({"beef chuck": (3, "pound")}, step(action("pressure cook", "cook", 0, minutes=(30, 30))))
    found = simmer(made, "stew or braise", ledger=ledger)
    assert found.low_min == 90
    assert "heat.pressure" in [reason.rule for reason in ledger.reasons]
    assert any(question.about == "simmer" for question in ledger.questions)


@pytest.mark.parametrize(
    ("food", "minutes"), [("beef chuck", 120), ("chicken thigh", 30), ("cod", 8), ("carrot", 40)]
)
def test_an_untimed_simmer_is_as_long_as_its_toughest_food(food, minutes) -> None:
    ledger = Ledger()
    made = recipe({food: (2, "pound")}, step(action("simmer", "simmer", 0)))
    assert simmer(made, "stew or braise", ledger=ledger).low_min == minutes
    assert "heat.simmer" in [reason.rule for reason in ledger.reasons]
    assert ledger.questions


def test_dry_kidney_beans_boil_hard_for_half_an_hour_first() -> None:
    """FDA, quoted by Ohio State University: soak at least 5 hours, boil 30 minutes in fresh water."""
    ledger = Ledger()
    made = recipe(
        {"dry kidney beans": (1, "pound"), "water": (2, "quart")},
        step(action("soak", "soak", 0, ahead=True)),
        step(action("simmer", "simmer", 0, minutes=(90, 90))),
    )
    found = drafts(made, "beans or chili", ledger=ledger)
    assert [found[0].kind, found[1].kind] == ["boil", "boil"]
    assert found[0].look == "bring up", "the half hour counts from the rolling boil"
    assert found[1].low_min >= 30
    assert "heat.kidney" in [reason.rule for reason in ledger.reasons]


def test_a_sauce_in_a_frying_pan_is_short() -> None:
    made = recipe(
        {"pork chop": (4, None)}, step(action("fry", "fry", 0, minutes=(10, 10))), step(action("reduce"))
    )
    assert simmer(made, "pan fry or saute").high_min == 5


@pytest.mark.parametrize(("flame", "low"), [("low", 144), ("high", 240), (None, 144)])
def test_a_slow_cookers_hours_become_a_pots_and_are_asked(flame, low) -> None:
    ledger = Ledger()
    made = recipe(
        {"pork shoulder": (4, "pound")},
        step(action("add", "place", 0, vessel="slow cooker")),
        step(action("simmer", "cook", minutes=(480, 480), heat=flame)),
    )
    assert simmer(made, "stew or braise", ledger=ledger).low_min == low
    assert "heat.slow-cooker" in [reason.rule for reason in ledger.reasons]
    assert ledger.questions


def test_an_ordinary_pot_keeps_its_hours() -> None:
    made = recipe({"pork shoulder": (4, "pound")}, step(action("simmer", "simmer", 0, minutes=(180, 180))))
    assert simmer(made, "stew or braise").low_min == 180


def test_what_is_blanched_beside_a_pan_waits_for_its_water_too() -> None:
    made = recipe(
        {"broccoli": (1, "head"), "beef chuck": (1, "pound")},
        step(action("boil", "blanch", 0, minutes=(2, 2))),
        step(action("fry", "fry", 1, minutes=(3, 5))),
    )
    assert [(one.kind, one.look) for one in drafts(made, "pan fry or saute")][:2] == [
        ("boil", "bring up"),
        ("boil", "boil"),
    ]
