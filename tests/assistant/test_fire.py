"""The chapter on fire: beds of coals, chimneys and what they are for, in the plan's own figures."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from assistant.show.fire import FOR, STAGES, fire
from rules.circumstances import Day
from rules.plan import Batch, Heat, Plan, Refresh, Stage, StageKind

DAY = Day(eat="18:30")


@pytest.fixture
def heat(river_plan: Plan) -> Heat:
    assert river_plan.heat is not None
    return river_plan.heat


def test_lighting_is_told_once_and_is_no_bed(river_plan: Plan, heat: Heat) -> None:
    told = fire(river_plan, heat, DAY)
    assert told["lighting"] == ["15 to 20 minutes in the chimney, until ash all over."]
    assert [[stage["name"] for stage in bed["stages"]] for bed in told["beds"]] == [
        ["Heat the fat"],
        ["Bake"],
    ]


def test_a_level_without_coals_is_told_beside_the_other(river_plan: Plan, heat: Heat) -> None:
    (level,) = fire(river_plan, heat, DAY)["beds"][0]["levels"]
    assert (level["count"], level["where"]) == (24, "under the pot")
    assert level["pattern"].endswith("None on the lid.")


def test_turning_is_said_and_drawn_both_ways(river_plan: Plan, heat: Heat) -> None:
    lid, floor = fire(river_plan, heat, DAY)["beds"][1]["levels"]
    assert (
        'aria-label="17 briquettes on the lid; 12 along the flange, 5 spread inside; lid turned clockwise"'
        in lid["drawing"]
    )
    assert "pot turned counter-clockwise" in floor["drawing"]
    (turn, look) = fire(river_plan, heat, DAY)["beds"][1]["stages"][0]["rhythm"]
    assert turn.startswith("Every 10 minutes turn the lid")
    assert look == "First look under the lid after 30 minutes (18:00)."


def test_each_chimney_says_what_it_is_for(river_plan: Plan, heat: Heat) -> None:
    bake = replace(heat.stages[-1], refresh=(Refresh(at_min=-20, light_at_min=-40, top=12, under=6),))
    batches = (Batch(light_at_min=-85, count=25), Batch(light_at_min=-40, count=18))
    changed = replace(heat, stages=(*heat.stages[:-1], bake), fuel=replace(heat.fuel, batches=batches))
    told = fire(river_plan, changed, DAY)
    assert told["chimney"] == [
        {"at": "17:05", "count": "25", "use": "heating the fat"},
        {"at": "17:50", "count": "18", "use": "fresh coals 18:10"},
    ]
    assert told["beds"][1]["stages"][0]["fresh"] == ["18:10: 12 on the lid and 6 under; light them at 17:50"]


def test_two_pots_are_said(river_plan: Plan, heat: Heat) -> None:
    assert river_plan.pot is not None
    told = fire(replace(river_plan, pot=replace(river_plan.pot, count=2)), heat, DAY)
    assert told["per_pot"].startswith("The counts are for each of the two pots,")


def test_the_course_is_drawn_for_the_stage_that_cooks(river_plan: Plan, heat: Heat) -> None:
    assert fire(river_plan, heat, DAY)["graph"]["name"] == "Bake"
    fried = replace(heat, stages=(Stage(kind="fry", under=20, temp_f=350, starts_at_min=-10),))
    assert fire(replace(river_plan, heat=fried), fried, DAY)["graph"] is None


def test_every_kind_of_stage_has_a_name_and_every_kind_over_coals_a_purpose() -> None:
    assert set(STAGES) == set(StageKind.__args__)
    assert set(FOR) == set(STAGES) - {"light", "rise"}
