"""What the talk tells of a plan: only what was asked about, figures first."""

from __future__ import annotations

from msgspec.structs import replace

from assistant.chat.acts import Meant
from assistant.chat.answers import answer
from assistant.chat.tell.question import food_in, groups_of
from rules.circumstances import Day
from rules.plan import Caution, Moment, Plan

EVENING = Day(eat="18:30")


def asked(plan: Plan, act: str, said: str = "", **slots: object) -> str:
    return answer(Meant(act=act, slots=slots), plan, EVENING, said)


def test_a_question_says_its_groups_and_the_food_that_it_names(river_plan: Plan) -> None:
    assert {"HOWMANY", "COAL", "UNDER"} <= groups_of("how many coals underneath?")
    assert food_in("where does the milk go?", river_plan) == "milk"
    assert food_in("where does it go?", river_plan) is None


def test_a_simmer_is_not_turned_and_the_answer_says_why(river_plan: Plan) -> None:
    assert river_plan.heat is not None
    stages = tuple(
        replace(stage, kind="simmer", turn_every_min=None, first_look_min=None)
        for stage in river_plan.heat.stages
    )
    plan = replace(river_plan, heat=replace(river_plan.heat, stages=stages))
    assert asked(plan, "turning").startswith(
        "Nothing to turn: liquid spreads the heat of the simmer by itself."
    )


def test_a_why_puts_the_reasons_with_the_words_of_the_question_first(river_plan: Plan) -> None:
    first, *_ = river_plan.why
    other = replace(first, because="it is browned first, for the crust")
    plan = replace(river_plan, why=(first, other))
    told = asked(plan, "why", "why is it browned first?", about=first.about)
    assert told.startswith("It is browned first, for the crust.")


def test_only_the_dangers_that_were_asked_about_are_named(river_plan: Plan) -> None:
    monoxide = Caution(id="carbon-monoxide", text="Coals kill in a tent.", source="CPSC")
    bears = Caution(id="wildlife", text="Bears smell everything.", source="NPS")
    plan = replace(river_plan, cautions=(monoxide, bears))
    assert asked(plan, "cautions", "can I cook in the tent?") == "- Coals kill in a tent."
    assert asked(plan, "cautions", "is it dangerous?").count("\n") == 1


def test_a_diet_is_denied_by_what_a_sauce_surely_holds(river_plan: Plan) -> None:
    items = (replace(river_plan.recipe.ingredients[0], name="mayonnaise", food="mayonnaise"),)
    plan = replace(river_plan, recipe=replace(river_plan.recipe, ingredients=items))
    assert asked(plan, "allergens", "is it vegan?").startswith("Not vegan: mayonnaise.")
    assert not asked(plan, "allergens", "is it vegetarian?").startswith("Not vegetarian")


def test_when_a_deed_is_named_only_its_moments_are_told(river_plan: Plan) -> None:
    brown = Moment(at_min=-90, clock="17:00", do="Brown: 30 briquettes, all under the pot.")
    plan = replace(river_plan, timeline=(brown, *river_plan.timeline))
    assert asked(plan, "timeline", "when do I brown the meat?").split("\n")[0] == f"17:00  {brown.do}"
    assert "17:00" in asked(plan, "timeline", "what's the schedule?")
