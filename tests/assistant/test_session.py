"""A talk over a real recipe: what is said changes the plan, what changed is told with figures, all can be undone."""

from __future__ import annotations

import re
from datetime import UTC, datetime
from pathlib import Path

import msgspec
import pytest

from assistant.chat.session import Session
from assistant.keep import Store
from assistant.reader.read import read
from assistant.show.kinds import Turn
from rules.circumstances import Day
from rules.plan import Plan
from rules.recipe import Recipe
from tests.talks import CORPUS


@pytest.fixture(scope="module")
def cobbler() -> Recipe:
    return read(
        (CORPUS / "recipes" / "river-peach-cobbler.txt").read_text(encoding="utf-8"), file="river.txt"
    )


@pytest.fixture
def session(cobbler: Recipe, tmp_path: Path) -> Session:
    def export(_plan: Plan, _day: Day, form: str | None, path: str | None) -> str:
        return path or f"cobbler.{form}"

    store = Store(tmp_path, now=lambda: datetime(2027, 7, 3, tzinfo=UTC))
    return Session(cobbler, meals=store, export=export)


def said(session: Session, *sentences: str) -> Turn:
    turns = [session.say(sentence) for sentence in sentences]
    return turns[-1]


def test_wind_and_cold_add_coals_and_the_answer_says_from_which_to_which(session: Session) -> None:
    before = session.plan
    turn = said(session, "it's windy and 40 out")
    after = session.plan
    assert before is not None
    assert after is not None
    assert before.heat is not None
    assert after.heat is not None
    assert after.heat.fuel.briquettes > before.heat.fuel.briquettes
    assert (
        f"Briquettes to bring: {after.heat.fuel.briquettes} (was {before.heat.fuel.briquettes})."
        in turn.answer
    )
    assert "heat" in turn.changed


def test_undo_goes_back_as_far_as_one_likes(session: Session) -> None:
    start = session.plan
    said(session, "a bit hotter", "windy", "in a 14 inch pot", "eat at 18:30")
    middle = session.day
    for taken in ("the time of the meal", "the pot", "the wind", "the temperature"):
        assert taken in said(session, "undo").answer
    assert session.day == Day()
    assert session.plan == start
    assert said(session, "undo").answer == "There is nothing to take back."
    assert middle.eat == "18:30"


def test_a_question_changes_nothing(session: Session) -> None:
    start = session.plan
    for question in (
        "how many briquettes?",
        "what do I buy?",
        "why is the baking powder dry?",
        "show me the plan",
    ):
        turn = said(session, question)
        assert turn.changed == ()
        assert turn.answer
    assert session.plan == start
    assert said(session, "undo").answer == "There is nothing to take back."


def test_what_is_not_understood_changes_nothing_and_offers_three_ways(session: Session) -> None:
    turn = said(session, "the herons flew over the briquettes like clockwork yesterday evening")
    assert turn.did == ("not understood",)
    assert turn.changed == ()
    assert turn.answer.count('("') == 3
    assert "nothing changed" in turn.answer


def test_figures_come_first_in_an_answer(session: Session) -> None:
    assert said(session, "how many briquettes?").answer.startswith(
        "25 briquettes for the bake: 17 on the lid"
    )
    assert said(session, "how many on the bottom?").answer.startswith("8 under")
    assert said(session, "when do I turn it?").answer.startswith("Every 10 minutes")
    assert re.match(r"(Ice to bring: |Bring )\d", said(session, "how much ice?").answer)


def test_a_why_ends_in_its_source(session: Session) -> None:
    answer = said(session, "why is the baking powder dry?").answer
    assert answer.startswith("Baking powder rides dry")
    assert answer.splitlines()[0].endswith(")")


def test_a_value_that_cannot_be_is_refused_in_the_cooks_words(session: Session) -> None:
    turn = said(session, "I have a 13 inch pot")
    assert turn.did == ("pot",)
    assert turn.changed == ()
    assert turn.answer.startswith("13 cannot be: camp pots come in 5, 8, 10, 12, 14")
    assert session.day == Day()


def test_several_acts_of_one_sentence_are_one_step_back(session: Session) -> None:
    turn = said(session, "windy, 40 out, and dinner is at seven")
    assert set(turn.did) == {"weather", "eat at"}
    said(session, "undo")
    assert session.day == Day()


def test_a_later_number_of_people_takes_the_place_of_a_scale(session: Session) -> None:
    said(session, "double it")
    assert session.day.scale == 2
    said(session, "for 12")
    assert (session.day.scale, session.day.people) == (None, 12)


def test_a_food_that_is_not_in_it_is_said_and_nothing_changes(session: Session) -> None:
    turn = said(session, "leave out the walnuts")
    assert turn.changed == ()
    assert "Walnuts: not in this recipe" in turn.answer
    assert session.day == Day()


def test_a_food_that_is_added_ends_in_a_pack(session: Session) -> None:
    turn = said(session, "add a cup of raisins")
    plan = session.plan
    assert plan is not None
    index = [item.name for item in plan.recipe.ingredients].index("raisins")
    assert index in [item.ingredient for pack in plan.packs for item in pack.items]
    assert "recipe" in turn.changed
    assert "New in it: raisins" in turn.answer


def test_no_allergen_is_denied_while_a_label_must_be_read(session: Session) -> None:
    plan = session.plan
    assert plan is not None
    assert said(session, "is there dairy in it?").answer.startswith("Yes, milk: ")
    doubtful = {name for row in plan.check_label for name in row.may_hold} - set(plan.allergens)
    for name in doubtful & {"soybeans", "egg"}:
        assert said(session, f"is there {name} in it?").answer.startswith(f"Perhaps {name}: read the label")
    assert "still reads every label" in said(session, "any shellfish in it?").answer


def test_without_charcoal_the_answer_says_so_first(session: Session) -> None:
    turn = said(session, "no charcoal allowed today")
    assert turn.answer.startswith("No charcoal")
    assert session.plan is not None
    assert session.plan.heat is None
    assert said(session, "how many briquettes?").answer.startswith("None.")


def test_meals_are_kept_listed_opened_and_forgotten(session: Session) -> None:
    assert said(session, "what have I kept?").answer.startswith("Nothing is kept yet")
    assert said(session, "windy", "keep this as Friday").answer == 'Kept as "Friday".'
    assert said(session, "keep this as Friday").answer == 'Kept as "Friday", over the one of that name.'
    said(session, "undo")
    assert session.day == Day()
    assert said(session, "open friday").answer.startswith('Here is "Friday".')
    assert session.day.wind == "windy"
    assert said(session, "what have I kept?").answer == "1 kept: Friday."
    assert said(session, "forget Friday").answer == 'Forgot "Friday".'
    assert "is not kept" in said(session, 'open "Friday"').answer


def test_an_export_goes_to_the_writer_that_was_handed_in(session: Session) -> None:
    assert said(session, "save it as html").answer == "Wrote cobbler.html."
    assert said(session, "export json to plan.json").answer == "Wrote plan.json."


def test_a_talk_without_a_recipe_asks_for_one() -> None:
    session = Session()
    assert said(session, "how many briquettes?").answer == "There is no recipe yet: paste one first."
    assert said(session, "save it as html").answer == "There is no recipe yet: paste one first."
    assert said(session, "we will be twelve").did == ("people",)
    assert session.day.people == 12


def test_another_recipe_keeps_the_day_and_undo_brings_the_first_back(
    session: Session, cobbler: Recipe
) -> None:
    said(session, "windy", "oil instead of butter", "another recipe")
    assert session.recipe is None
    assert (session.day.wind, session.day.swaps) == ("windy", ())
    said(session, "undo")
    assert session.recipe == cobbler


def test_a_turn_is_printed_in_the_promised_shape(session: Session) -> None:
    row = msgspec.json.decode(msgspec.json.encode(said(session, "it's windy")))
    assert list(row) == ["said", "did", "with", "answer", "changed", "file"]
    assert (row["with"], row["file"]) == ({"wind": "windy"}, "river.txt")


def test_a_name_with_escapes_reaches_no_answer(session: Session) -> None:
    turn = said(session, "leave out the \x1b[31mwalnuts\x1b[0m")
    assert "\x1b" not in turn.answer
