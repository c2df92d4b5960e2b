from __future__ import annotations

import pytest

from assistant.reader.read import read
from rules.because import Ledger
from rules.circumstances import Day
from rules.convert import camp
from rules.foods import catalogue, scaled
from rules.pot import scaling
from rules.recipe import Amount, Recipe, Servings
from tests.rules.pot.making import BATTER, recipe


def test_people_are_held_against_servings() -> None:
    ledger = Ledger()
    assert scaling(recipe(*BATTER, serves=6), Day(people=9), ledger) == 1.5
    assert "9 people and a recipe for 6: everything is taken 1 1/2 times" in [
        one.because for one in ledger.reasons
    ]


def test_a_range_of_servings_uses_its_middle() -> None:
    once = recipe(*BATTER)
    between = recipe(*BATTER, serves=1).__class__(
        ingredients=once.ingredients, servings=Servings(low=4, high=8)
    )
    assert scaling(between, Day(people=9), Ledger()) == 1.5


def test_unknown_servings_raise_a_question_and_scale_nothing() -> None:
    ledger = Ledger()
    assert scaling(recipe(*BATTER), Day(people=9), ledger) == 1.0
    (question,) = ledger.questions
    assert (question.about, question.default) == ("people", "once, as written")


def test_a_yield_of_cookies_is_no_head_count() -> None:
    ledger = Ledger()
    cookies = Recipe(ingredients=BATTER, servings=Servings(low=24, high=24, of="cookies"))
    assert scaling(cookies, Day(people=9), ledger) == 1.0
    assert "It makes 24 cookies." in ledger.questions[0].text


def test_a_factor_as_asked_goes_before_people() -> None:
    ledger = Ledger()
    assert scaling(recipe(*BATTER, serves=6), Day(people=9, scale=3), ledger) == 3
    assert {one.rule for one in ledger.reasons} == {"scale.factor", "scale.blind"}


def test_nobody_asked_nothing_scales() -> None:
    ledger = Ledger()
    assert scaling(recipe(*BATTER, serves=6), Day(), ledger) == 1.0
    assert ledger.reasons == ledger.questions == ()


@pytest.mark.parametrize(("factor", "eggs", "way"), [(1.25, "3", "rounded up"), (1.1, "2", "rounded down")])
def test_eggs_are_counted_whole_and_it_is_said_which_way(factor: float, eggs: str, way: str) -> None:
    ledger = Ledger()
    scaling(recipe(*BATTER), Day(scale=factor), ledger)
    (reason,) = [one for one in ledger.reasons if one.rule == "scale.eggs"]
    assert f"are counted as {eggs}: {way}" in reason.because


def test_half_an_egg_is_an_egg_but_half_a_cup_stays_half() -> None:
    egg, milk = catalogue().get("egg"), catalogue().get("milk")
    assert scaled(Amount(low=1, high=1), 0.5, egg).high == 1
    assert scaled(Amount(low=1, high=1, unit="cup"), 0.5, milk).high == 0.5


def test_beyond_twice_the_recipe_it_warns() -> None:
    for factor, warned in ((2.0, False), (2.5, True)):
        ledger = Ledger()
        scaling(recipe(*BATTER), Day(scale=factor), ledger)
        assert ("scale.blind" in {one.rule for one in ledger.reasons}) == warned


BUNS = "Buns\n\n{serves}\n\n2 cups flour\n1 egg\n1 cup milk\n\nMix the flour with the egg and the milk. Bake at 350F for 20 minutes.\n"


@pytest.mark.parametrize(
    ("serves", "people", "factor"),
    [
        ("Serves 9 to 10", 9, 1.0),
        ("Serves 8-9", 9, 1.0),
        ("Serves 8", 9, 1.125),
        ("Serves 9 hungry paddlers", 18, 2.0),
        ("Serves 4 to 6", 10, 2.0),
    ],
)
def test_a_span_of_servings_that_holds_the_people_is_taken_once(
    serves: str, people: int, factor: float
) -> None:
    recipe = read(BUNS.format(serves=serves))
    assert factor == pytest.approx(scaling(recipe, Day(people=people), Ledger()))


def test_eggs_in_the_packs_are_whole() -> None:
    plan = camp(read(BUNS.format(serves="Serves 8")), Day(people=9))
    egg = next(index for index, item in enumerate(plan.recipe.ingredients) if item.name == "egg")
    amounts = [item.amount for pack in plan.packs for item in pack.items if item.ingredient == egg]
    assert [amount.high for amount in amounts if amount] == [1.0]
