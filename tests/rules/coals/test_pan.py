"""Frying and browning: hot or gentle, once or in batches."""

from __future__ import annotations

import pytest

from rules.because import Ledger
from tests.rules.coals.making import STEW, action, drafts, recipe, step

PORK = {"pork chop": (4, None), "onion": (2, None), "oil": (2, "tablespoon")}


def ways(made, family, **more) -> list[tuple[str, str]]:
    return [(one.kind, one.way) for one in drafts(made, family, **more) if one.kind in ("fry", "brown")]


def test_meat_is_browned_hot_and_onions_are_fried_gently() -> None:
    assert ways(STEW, "stew or braise") == [("brown", "fry"), ("fry", "gentle fry")]


def test_the_only_pan_of_a_stew_with_meat_browns_it() -> None:
    made = recipe(PORK, step(action("fry", "fry", 1)), step(action("simmer", minutes=(60, 60))))
    assert ways(made, "stew or braise") == [("brown", "fry")]


def test_vegetables_alone_are_fried_gently() -> None:
    made = recipe(
        {"onion": (2, None), "tomato": (4, None)}, step(action("saute", "soften", 0)), step(action("simmer"))
    )
    assert ways(made, "soup") == [("fry", "gentle fry")]


@pytest.mark.parametrize(("flame", "way"), [("low", "gentle fry"), ("high", "fry")])
def test_a_named_flame_decides(flame, way) -> None:
    made = recipe({"chickpea": (2, "cup")}, step(action("fry", "cook", 0, minutes=(10, 15), heat=flame)))
    assert ways(made, "pan fry or saute") == [("fry", way)]


def test_pancakes_are_fried_gently_and_in_turns() -> None:
    ledger = Ledger()
    made = recipe({"flour": (2, "cup")}, step(action("griddle", "cook", minutes=(2, 2))))
    pan, fry = drafts(made, "griddle", ledger=ledger)
    assert (pan.kind, pan.way) == ("warm", "gentle fry")
    assert (fry.way, fry.low_min) == ("gentle fry", 10)
    assert "heat.batches" in [reason.rule for reason in ledger.reasons]


def test_untimed_pancakes_take_the_familys_time() -> None:
    *_, fry = drafts(recipe({"flour": (2, "cup")}, step(action("griddle", "cook"))), "griddle")
    assert (fry.low_min, fry.high_min) == (15, 20)


def test_deep_frying_is_always_hot() -> None:
    made = recipe(PORK, step(action("deep fry", "fry", 1, minutes=(7, 7), temp_f=350.0)))
    fried = drafts(made, "deep fry")[-1]
    assert (fried.way, fried.temp_f, fried.low_min) == ("fry", 350, 21)


def test_coals_under_a_pan_are_given_a_few_minutes() -> None:
    made = recipe(
        {"garlic": (2, "clove")}, step(action("saute", "cook", 0, minutes=(1, 1))), step(action("simmer"))
    )
    assert drafts(made, "soup")[1].high_min == 5


def test_oil_brought_to_a_temperature_is_there_to_fry_in() -> None:
    made = recipe(
        {"flour": (2, "cup"), "oil": (1, "quart")},
        step(action("heat", "heat", 1, temp_f=375.0), action("fry", "fry", minutes=(3, 3))),
    )
    found = drafts(made, "griddle")
    assert [(one.kind, one.way) for one in found] == [("heat fat", "fry"), ("fry", "fry")]


def test_a_flame_stays_until_another_is_named() -> None:
    made = recipe(
        {"bell pepper": (2, None), "oil": (1, "tablespoon")},
        step(action("heat", "heat", 1, heat="high"), action("fry", "cook", 0, minutes=(4, 5))),
    )
    assert ways(made, "pan fry or saute") == [("fry", "fry")]


def test_meat_that_renders_for_an_hour_is_not_seared_for_an_hour() -> None:
    made = recipe({"pork belly": (2, "pound")}, step(action("fry", "render", 0, minutes=(60, 60))))
    assert ways(made, "pan fry or saute") == [("fry", "gentle fry")]
