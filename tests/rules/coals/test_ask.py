"""Coals without a recipe: the answer's shape, its figures, and what it refuses."""

from __future__ import annotations

import msgspec
import pytest

from rules.circumstances import Day
from rules.coals.ask import coals
from rules.problem import UsageProblem


def test_the_answer_has_the_published_fields() -> None:
    told = msgspec.to_builtins(coals(12, 350, "bake"))
    figures = {
        key: told[key] for key in ("diameter_in", "temp_f", "for", "total", "top", "under", "turn_every_min")
    }
    assert figures == {
        "diameter_in": 12, "temp_f": 350, "for": "bake", "total": 25, "top": 17, "under": 8, "turn_every_min": 10,
    }  # fmt: skip
    assert told["pattern"]["under"] == "7 in a ring, 1 in the centre"
    assert set(told["refresh"][0]) == {"at_min", "light_at_min", "top", "under"}
    assert {"lit", "reserve", "briquettes", "kg"} <= set(told["fuel"])


def test_fuel_is_the_first_coals_and_the_fresh_ones() -> None:
    answer = coals(12, 350, "bake", minutes=180)
    fresh = sum(more.top + more.under for more in answer.refresh)
    assert answer.fuel.lit == answer.total + fresh
    assert answer.fuel.batches[0].light_at_min == -20


@pytest.mark.parametrize(("way", "aim"), [("bake", 350), ("roast", 350), ("simmer", 212), ("fry", 360)])
def test_without_a_temperature_the_way_has_its_own(way, aim) -> None:
    assert aim == coals(12, None, way).temp_f


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        ((13, 350, "bake"), "--oven 13: camp pots come in 5, 8, 10, 12, 14, 16 inches."),
        ((12, 50, "bake"), "--temp 50F: write an oven temperature from 200F to 550F (93C to 288C)."),
        ((12, 350, "grill"), "--for grill: write one of bake, roast, simmer, fry."),
    ],
)
def test_what_cannot_be_names_what_can(call, sentence) -> None:
    with pytest.raises(UsageProblem) as caught:
        coals(*call)
    assert str(caught.value) == sentence


def test_minutes_and_air_have_their_limits() -> None:
    with pytest.raises(UsageProblem, match="write minutes from 1 to 720"):
        coals(12, 350, "bake", minutes=0)
    with pytest.raises(UsageProblem, match="--air"):
        coals(12, 350, "bake", Day(air_f=200))


def test_a_cold_windy_morning_takes_more_and_says_why() -> None:
    mild, rough = coals(12, 350, "bake"), coals(12, 350, "bake", Day(air_f=30, wind="windy", ground="damp"))
    assert rough.total > mild.total
    assert {"coals.air", "coals.wind", "coals.ground"} <= {reason.rule for reason in rough.why}


def test_height_leaves_the_count_alone() -> None:
    assert coals(12, 350, "bake", Day(elevation_ft=8000)).total == 25


def test_a_deep_pot_is_said_to_be_one() -> None:
    assert coals(12, 350, "bake", deep=True).depth == "deep"
