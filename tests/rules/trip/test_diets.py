"""Every person before every dish. The nine allergens: FDA, "The FASTER Act: Sesame Is the Ninth", 2023."""

from __future__ import annotations

from typing import get_args

import pytest

from rules import foods, swaps
from rules.because import Ledger
from rules.circumstances import Day
from rules.plan import Allergen
from rules.trip.diets import diets, holds, means
from rules.trip.dishes import planned
from rules.trip.model import Diet, Dish, Person, Verdict
from rules.trip.times import moment
from tests.trips import meal, pot, trip


def dish(name: str) -> Dish:
    told = trip(meal(name), pots=(pot(deep=True),))
    return planned("1", told.meals[0], told, leave=moment("2027-07-02T09:00", told.zone))


def before(name: str, *avoids: str) -> tuple[Diet, Ledger]:
    ledger = Ledger()
    (diet,) = diets([dish(name)], [Person(name="Ada", avoids=avoids)], ledger)
    return diet, ledger


@pytest.mark.parametrize(
    ("name", "avoids", "verdict", "foods_said"),
    [
        ("can-chili", "pork", "fits", ()),
        ("can-chili", "beef", "leave out", ("ground beef",)),
        ("can-chili", "milk", "swap", ("cheddar cheese",)),
        ("buttermilk-biscuits", "dairy", "swap", ("butter", "buttermilk")),
        ("buttermilk-biscuits", "gluten", "swap", ("all-purpose flour",)),
        ("pan-cornbread", "pork", "swap", ("bacon grease",)),
        ("shrimp-boil", "shellfish", "another dish", ("shrimp",)),
        ("roast-chicken", "vegetarian", "another dish", ("chickens",)),
        ("cabbage-slaw", "nuts", "check the label", ("sunflower seeds",)),
        ("corn-chowder", "bacon", "leave out", ("bacon",)),
    ],
)
def test_what_stands_against_a_dish_and_what_helps(
    name: str, avoids: str, verdict: Verdict, foods_said: tuple[str, ...]
) -> None:
    diet, _ = before(name, avoids)
    assert (verdict, foods_said) == (diet.verdict, diet.foods)
    assert diet.said.endswith(".")


@pytest.mark.parametrize("name", ["buttermilk-biscuits", "pan-cornbread", "egg-bake", "peach-cobbler"])
@pytest.mark.parametrize("avoids", ["milk", "gluten", "egg", "pork", "vegan"])
def test_a_swap_that_is_offered_leaves_nothing_avoided(name: str, avoids: str) -> None:
    diet, _ = before(name, avoids)
    if diet.verdict not in ("swap", "leave out"):
        return
    wished = Day(swaps=tuple(wish.swap for wish in diet.wishes))
    changed = swaps.apply(dish(name).plan.recipe, wished, Ledger())
    assert not [item for item in foods.weigh(changed) if holds(item, means(avoids))]


@pytest.mark.parametrize("allergen", get_args(Allergen))
def test_each_of_the_nine_is_understood(allergen: Allergen) -> None:
    assert means(allergen).allergens == {allergen}


@pytest.mark.parametrize(
    ("said", "allergens"),
    [
        ("dairy", {"milk"}),
        ("Dairy", {"milk"}),
        ("eggs", {"egg"}),
        ("nuts", {"tree nuts", "peanuts"}),
        ("seafood", {"fish", "crustacean shellfish"}),
        ("peanut", {"peanuts"}),
    ],
)
def test_everyday_words_cover_their_allergens(said: str, allergens: set[str]) -> None:
    assert allergens == set(means(said).allergens)


def test_a_word_that_is_nothing_known_is_looked_for_in_the_names_and_asked() -> None:
    diet, ledger = before("can-chili", "opener thistles")
    assert diet.verdict == "fits"
    assert [question.about for question in ledger.questions] == ["Ada"]
    assert "diets.unknown" in {reason.rule for reason in ledger.reasons}


def test_reasons_are_given() -> None:
    assert {"diets.held", "diets.swap"} <= {
        reason.rule for reason in before("pan-cornbread", "pork")[1].reasons
    }
    assert "diets.label" in {reason.rule for reason in before("cabbage-slaw", "nuts")[1].reasons}


def test_what_a_swap_of_the_trip_took_away_is_no_longer_held() -> None:
    from rules.circumstances import Swap

    told = trip(meal("pan-cornbread", swaps=(Swap(food="bacon grease", to="oil"),)))
    cornbread = planned("1", told.meals[0], told, leave=moment("2027-07-02T09:00", told.zone))
    (diet,) = diets([cornbread], [Person(name="Ben", avoids=("pork",))], Ledger())
    assert diet.verdict == "fits"


def test_bread_that_the_method_puts_on_the_table_counts() -> None:
    """It stands in no line of the list; the plan's own allergens name its wheat."""
    from assistant.reader.read import read
    from rules.trip.model import Meal

    soup = read(
        "Broth\n\n4 carrots\n1 onion\n2 quarts water\n\nSimmer for an hour. Serve with crusty bread.\n"
    )
    told = trip(Meal(name="Supper", eat="2027-07-02T18:30", recipe=soup))
    broth = planned("1", told.meals[0], told, leave=moment("2027-07-02T09:00", told.zone))
    assert "wheat" in broth.plan.allergens
    (diet,) = diets([broth], [Person(name="Ada", avoids=("wheat",))], Ledger())
    assert diet.verdict == "leave out"
    assert diet.allergens == ("wheat",)


@pytest.mark.parametrize("name", ["can-chili", "egg-bake", "shrimp-boil", "baked-trout", "cinnamon-rolls"])
@pytest.mark.parametrize("allergen", get_args(Allergen))
def test_no_dish_fits_that_its_own_plan_warns_of(name: str, allergen: Allergen) -> None:
    """Two ways to the same answer: the plan's allergens and labels, and the person's diet."""
    made = dish(name)
    (diet,) = diets([made], [Person(name="Ada", avoids=(allergen,))], Ledger())
    if allergen in made.plan.allergens:
        assert diet.verdict not in ("fits", "check the label")
    elif any(allergen in row.may_hold for row in made.plan.check_label):
        assert diet.verdict == "check the label"
    else:
        assert diet.verdict == "fits"


def test_beside_a_swap_the_labels_that_are_left_are_named() -> None:
    """The chili's cheese is swapped, and its seasoning may hold milk besides."""
    diet, _ = before("can-chili", "milk")
    assert diet.verdict == "swap"
    assert "Read the label of the chili seasoning mix too." in diet.said
