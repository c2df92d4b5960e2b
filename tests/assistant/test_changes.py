"""What changed is told with figures from two plans."""

from __future__ import annotations

from msgspec.structs import replace

from assistant.chat.acts import Meant
from assistant.chat.changes import change, changed_parts, undone
from assistant.chat.figures import (
    coals_figure,
    fuel_figure,
    ice_figure,
    light_figure,
    minutes_figure,
    pot_figure,
    tail,
)
from rules.circumstances import Day, Swap
from rules.plan import Caution, Plan, PotPlan, Question


def test_parts_that_differ_are_named_in_the_order_of_a_plan(river_plan: Plan) -> None:
    other = replace(river_plan, pot=PotPlan(diameter_in=14, quarts=8), cold=None, camp_steps=())
    assert changed_parts(river_plan, river_plan) == ()
    assert changed_parts(river_plan, other) == ("pot", "cold", "steps")
    assert changed_parts(None, river_plan) == ("recipe",)


def test_a_figure_that_changed_is_told_with_the_one_before(river_plan: Plan) -> None:
    larger = replace(river_plan, people=12, pot=PotPlan(diameter_in=14, quarts=8, fill=0.5))
    told = change([Meant(act="people", slots={"people": 12})], river_plan, larger, Day())
    assert told == (
        "For 12. Pot: a 14-inch pot (8 quarts), half full (was a 12-inch pot (6 quarts), half full)."
    )


def test_a_change_without_effect_says_so(river_plan: Plan) -> None:
    told = change([Meant(act="eat at", slots={"clock": "18:30"})], river_plan, river_plan, Day(eat="18:30"))
    assert told == "Eating at 18:30. The plan stays as it is."


def test_new_cautions_and_questions_are_told(river_plan: Plan) -> None:
    honey = Caution(id="honey-infant", text="No honey under one year.", source="CDC")
    asked = Question(about="pot", text="Which oil?", default="any")
    after = replace(river_plan, cautions=(*river_plan.cautions, honey), questions=(asked,))
    told = change([Meant(act="add", slots={"food": "honey"})], river_plan, after, Day())
    assert "No honey under one year." in told
    assert "Which oil? Taken: any." in told


def test_undo_names_what_it_took_back() -> None:
    left = Day(wind="windy", people=9, swaps=(Swap(food="butter", to="oil"),))
    assert (
        undone(left, Day(), same_recipe=True)
        == "Took back: the number of people, the wind and the changed foods."
    )
    assert undone(Day(), Day(), same_recipe=False) == "Took back: the recipe."


def test_figures_of_a_plan_stand_behind_their_name(river_plan: Plan) -> None:
    day = Day(eat="18:30")
    assert pot_figure(river_plan, day) == "Pot: a 12-inch pot (6 quarts), half full"
    assert coals_figure(river_plan, day) == "Coals for the bake: 17 on the lid, 8 under"
    assert minutes_figure(river_plan, day) == "Bake: 45 to 50 minutes at 350 °F"
    assert fuel_figure(river_plan, day) == "Briquettes to bring: 54"
    assert light_figure(river_plan, day) == "Light the chimney: 17:05"
    assert ice_figure(river_plan, day) == "Ice to bring: 9.9 lb"
    assert tail("Ice to bring: 9.9 lb") == "9.9 lb"
    nothing = replace(river_plan, heat=None, pot=None, cold=None)
    figures = (pot_figure, coals_figure, minutes_figure, fuel_figure, light_figure, ice_figure)
    assert {figure(nothing, day) for figure in figures} == {""}
