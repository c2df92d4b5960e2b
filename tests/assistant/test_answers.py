"""Answers from a plan written down by hand: whole sentences, the figure first."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from assistant.chat.acts import Meant
from assistant.chat.answers import answer, circumstance, help_text, in_short, not_understood, refusal
from rules.circumstances import Day
from rules.plan import Plan
from rules.problem import UsageProblem

EVENING = Day(eat="18:30")


def asked(plan: Plan, act: str, said: str = "", **slots: object) -> str:
    return answer(Meant(act=act, slots=slots), plan, EVENING, said)


@pytest.mark.parametrize(
    ("act", "said", "opening"),
    [
        ("coals", "how many?", "25 briquettes for the bake: 17 on the lid (12 along the flange"),
        (
            "coals",
            "how many underneath?",
            "8 under (7 in a ring, 1 in the centre) for the bake, and 17 on the lid",
        ),
        (
            "coals",
            "how many on top?",
            "17 on the lid (12 along the flange, 5 spread inside) for the bake, and 8 under",
        ),
        ("turning", "", "Every 10 minutes of the bake"),
        ("doneness", "", "Bake: 45 to 50 minutes at 350 °F. Done (cobbler): The edge bubbles."),
        ("cold", "", "Ice to bring: 9.9 lb."),
        ("fat", "where does the butter go", "Butter goes into the hot pot first, when the pot is hot."),
        ("mixes", "what is in the dry bag", "Cobbler, dry (no cooling): 1 1/2 cups flour;"),
        ("fresh", "", "Cobbler, peaches (frozen, in the cooler): 2 pounds peaches, sliced."),
        ("timeline", "", "Light the chimney: 17:05."),
        ("shopping", "what do I buy", "2 to buy:\n  butter: 1 stick for 1/2 cup"),
        (
            "shopping",
            "how much flour do I buy",
            "1 to buy:\n  flour: a 2 lb bag for 1 1/2 cups, 5 cups left over",
        ),
        ("kit", "", "For camp: 54 briquettes; a chimney."),
        ("labels", "", "COBBLER, DRY\n  add 1 1/2 cups milk"),
        ("cautions", "", "- Coals give off carbon monoxide: outside only."),
        ("camp", "", "Gravel Bar Peach Cobbler: batter bake, for 9."),
        (
            "allergens",
            "what allergens",
            "It holds milk and wheat. Read the label of the flour: it may hold soybeans.",
        ),
        ("allergens", "is there dairy in it", "Yes, milk: butter and milk."),
        ("allergens", "any soy?", "Perhaps soybeans: read the label of the flour."),
        (
            "allergens",
            "fish?",
            "No fish in the foods as written; whoever must avoid it still reads every label.",
        ),
        ("allergens", "can a vegan eat it?", "Not vegan: "),
        ("allergens", "is it ok for celiacs?", "Yes, wheat: flour. Barley"),
        ("allergens", "is it vegetarian?", "Nothing in it speaks against vegetarian"),
    ],
)
def test_the_answer_begins_with_what_was_asked(river_plan: Plan, act: str, said: str, opening: str) -> None:
    assert asked(river_plan, act, said).startswith(opening)


def test_steps_of_one_place_or_of_both(river_plan: Plan) -> None:
    assert (
        asked(river_plan, "steps", where="home") == "At home:\n  1. Whisk flour and baking powder, bag them."
    )
    assert "At camp:" not in asked(river_plan, "steps", where="home")
    assert asked(river_plan, "steps").count("At ") == 2


def test_a_why_gives_sentence_and_source_or_what_there_is(river_plan: Plan) -> None:
    told = asked(river_plan, "why", about="baking powder")
    assert told == (
        "Baking powder rides dry: once wet it spends its gas within minutes. (common practice, no source)"
    )
    assert asked(river_plan, "why", about="propane") == (
        'Nothing in this plan was decided about "propane". Ask about baking powder, the count on the lid, the pot or the time.'
    )
    assert asked(river_plan, "why") == (
        "Why what? Ask about baking powder, the count on the lid, the pot or the time."
    )


def test_without_coals_or_cold_the_answers_say_so(river_plan: Plan) -> None:
    bare = replace(river_plan, heat=None, pot=None, cold=None, fat=(), no_coals_because="nothing is cooked")
    assert asked(bare, "coals") == "None. Nothing is cooked."
    assert asked(bare, "turning") == "Nothing is cooked."
    assert asked(bare, "doneness") == "Nothing is cooked."
    assert asked(bare, "cold").startswith("No ice is needed")
    assert asked(bare, "fat") == "No fat goes into this."
    assert "Nothing is cooked." in in_short(bare, Day())


def test_the_plan_in_short_ends_with_the_air_that_kills(river_plan: Plan) -> None:
    told = in_short(river_plan, EVENING)
    assert "Briquettes to bring: 54, reserve included." in told
    assert told.endswith("they give off carbon monoxide.")


def test_questions_about_a_circumstance(river_plan: Plan) -> None:
    assert circumstance("pot", river_plan, Day()) == "Pot: a 12-inch pot (6 quarts), half full."
    assert circumstance("temperature", river_plan, Day()) == (
        "350 °F for the bake, 45 to 50 minutes: 17 on the lid, 8 under."
    )


def test_what_was_not_understood_is_offered_three_ways() -> None:
    told = not_understood(("coals", "cold", "undo"))
    assert told == (
        'I did not understand that, and nothing changed. I can tell how many briquettes, above and below ("how many '
        'briquettes?"), tell how much ice, and what thaws ("how much ice?") or take the last change back ("undo").'
    )


def test_help_has_an_example_of_everything() -> None:
    told = help_text()
    assert "how many briquettes?" in told
    assert "and for nine?" not in told
    assert max(map(len, told.splitlines())) <= 80


def test_a_refusal_names_no_option() -> None:
    problem = UsageProblem("--oven", "13", "camp pots come in 10 and 12 inches")
    assert refusal(problem) == "13 cannot be: camp pots come in 10 and 12 inches; nothing changed."
    assert refusal(ValueError("as it is")) == "as it is"
