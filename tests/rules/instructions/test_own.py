"""The recipe's own sentences at camp: kept word for word, without what was done at home and without the oven."""

from __future__ import annotations

import pytest

from assistant.reader.read import read
from rules.circumstances import Day
from rules.convert import camp
from rules.instructions.own import LONGEST_STEP, Sentence, in_steps, paragraphs, what_is_left
from rules.plan import Plan
from rules.recipe import Action, Recipe, Step

COBBLER = """River pear cobbler

1 stick butter
1 cup flour
1 cup sugar
2 teaspoons baking powder
1 cup milk
2 pounds pears, sliced

Heat the oven to 350 F. Melt the butter in a 9x13 pan in the oven.
Whisk the flour, sugar and baking powder in a bowl. Stir in the milk until the lumps are gone.
Pour the batter over the hot butter and scatter the pears over it.
Bake 40 minutes, until the edges bubble.
"""


@pytest.fixture(scope="module")
def plan() -> Plan:
    return camp(read(COBBLER), Day())


def test_a_sentence_left_for_camp_is_told_in_its_own_words(plan: Plan) -> None:
    told = " ".join(plan.camp_steps)
    assert "Stir in the milk until the lumps are gone." in told
    assert "Pour the batter over the hot butter and scatter the pears over it." in told
    assert "until the edges bubble." in told


def test_what_was_done_at_home_is_not_told_again(plan: Plan) -> None:
    told = " ".join(plan.camp_steps)
    assert "Whisk the flour" not in told
    assert "Heat the oven" not in told


def test_the_coals_stand_before_the_sentence_that_they_cook(plan: Plan) -> None:
    told = " ".join(plan.camp_steps)
    assert told.index("8 coals under the pot and 17 on the lid") < told.index("Bake 40 minutes")


def test_the_fat_of_a_batter_goes_into_the_hot_pot(plan: Plan) -> None:
    assert "Put 1 stick of butter into the hot pot and shut the lid until it sizzles." in " ".join(
        plan.camp_steps
    )


def test_lines_that_go_on_are_one_paragraph_and_a_sentence_is_kept_whole() -> None:
    def said(words: str) -> Action:
        return Action(does="mix", word="mix", says=words)

    recipe = Recipe(
        steps=(
            Step(line=0, text="Mix and", actions=(said("Mix and stir."), said("Mix and stir."))),
            Step(line=1, text="stir. Beat.", goes_on=True, actions=(said("Beat."),)),
            Step(line=2, text="Rest.", actions=(said("Rest."),)),
        )
    )
    assert [[found.says for found in paragraph] for paragraph in paragraphs(recipe)] == [
        ["Mix and stir.", "Beat."],
        ["Rest."],
    ]


def test_a_method_in_one_paragraph_is_told_sentence_by_sentence() -> None:
    long = [f"Do {number}." for number in range(LONGEST_STEP + 1)]
    assert in_steps(long) == long
    assert in_steps(["Stir.", "Rest."]) == ["Stir. Rest."]
    assert in_steps([]) == []


def test_a_sentence_is_told_from_its_first_deed_that_is_left() -> None:
    def act(word: str) -> Action:
        return Action(does="mix", word=word)

    says = "Cream the butter and the sugar until pale, then beat in the egg and fold it over."
    found = Sentence(says, ((0, act("cream")), (1, act("beat in")), (2, act("fold"))))
    assert what_is_left(found, frozenset()) == says
    assert what_is_left(found, {0}) == "beat in the egg and fold it over."
    assert what_is_left(found, {0, 1}) == "fold it over."
    # Nothing is cut out of the middle, or where the words are not found.
    assert what_is_left(found, {1}) == says
    assert what_is_left(found._replace(says="Another sentence."), {0}) == "Another sentence."
