"""What can be cooked with what there is: the best three with their figures, or the one thing that is missing."""

from __future__ import annotations

import itertools
from functools import cache
from pathlib import Path

import pytest

from assistant.reader.read import read
from rules.choose import Candidate, Choice, Means, Need, choose
from rules.choose.needs import needs
from rules.choose.rank import day_for
from rules.circumstances import Day, PotOwned, Swap
from rules.convert import camp
from rules.recipe import Recipe

CORPUS = Path(__file__).parents[3] / "corpus" / "recipes"
TWELVE = (PotOwned(diameter_in=12),)


@cache
def recipe(name: str) -> Recipe:
    path = CORPUS / f"river-{name}.txt"
    return read(path.read_text(encoding="utf-8"), file=path.name)


def candidate(name: str) -> Candidate:
    return Candidate(name=name, recipe=recipe(name))


@cache
def everything() -> tuple[Candidate, ...]:
    return tuple(candidate(path.stem.removeprefix("river-")) for path in sorted(CORPUS.glob("river-*.txt")))


def need(choice: Choice, what: str) -> Need:
    (found,) = [one for one in choice.needs if one.what == what]
    return found


def only(name: str, means: Means) -> Choice:
    found = choose([candidate(name)], means)
    choice = found.best[0] if found.best else found.nearest
    assert choice is not None
    return choice


def test_the_best_three_fit_in_everything_that_there_is() -> None:
    means = Means(
        day=Day(people=9, pots=(PotOwned(diameter_in=12, count=2),), cooler_quarts=48, trip_hours=24),
        briquettes=60,
        minutes=150,
        avoids=("nuts",),
    )
    found = choose(everything(), means)
    assert (len(found.best), found.nearest) == (3, None)
    assert found.looked_at == len(everything())
    assert [one.suits for one in found.best] == sorted((one.suits for one in found.best), reverse=True)
    for one in found.best:
        assert one.missing == ()
        assert need(one, "charcoal").needed <= 60  # type: ignore[operator]
        assert need(one, "cooler").needed <= 48  # type: ignore[operator]
        assert need(one, "time").needed <= 150  # type: ignore[operator]
        assert "which may be" in need(one, "pot").said
        assert one.title in found.said


def test_the_figures_are_those_of_the_plan() -> None:
    """The cobbler's plan brings 50 briquettes for one 12-inch pot, a third full."""
    means = Means(day=Day(pots=TWELVE, cooler_quarts=48), briquettes=70)
    choice = only("peach-cobbler", means)
    plan = camp(recipe("peach-cobbler"), Day(pots=TWELVE, cooler_quarts=48))
    assert plan.heat is not None
    assert plan.pot is not None
    assert need(choice, "charcoal").needed == plan.heat.fuel.briquettes
    assert f"of your {70}" in need(choice, "charcoal").said
    assert f"{plan.pot.fill:.0%}" in need(choice, "pot").said


def test_what_nobody_said_is_no_limit() -> None:
    choice = only("peach-cobbler", Means())
    assert choice.missing == ()
    assert all(one.had is None for one in choice.needs)


def test_one_thing_missing_is_said_alone() -> None:
    plan = camp(recipe("peach-cobbler"), Day(pots=TWELVE))
    assert plan.heat is not None
    wanted = plan.heat.fuel.briquettes
    found = choose([candidate("peach-cobbler")], Means(day=Day(pots=TWELVE), briquettes=wanted - 7))
    assert found.best == ()
    assert found.said.startswith("It does not fit; one thing is missing for Peach Cobbler")
    assert found.said.endswith("7 more briquettes.")


@pytest.mark.parametrize(
    ("means", "what"),
    [
        (Means(day=Day(people=40, pots=TWELVE)), "pot"),
        (Means(day=Day(pots=TWELVE), briquettes=10), "charcoal"),
        (Means(day=Day(pots=TWELVE, cooler_quarts=4, trip_hours=200, trip_air_f=95)), "cooler"),
        (Means(day=Day(pots=TWELVE), minutes=30), "time"),
        (Means(day=Day(pots=TWELVE, charcoal=False)), "fire"),
        (Means(day=Day(pots=TWELVE), avoids=("peaches",)), "food"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_each_thing_can_be_the_one_that_is_missing(means: Means, what: str) -> None:
    assert [one.what for one in only("peach-cobbler", means).missing] == [what]


def test_of_dishes_that_do_not_fit_the_one_with_least_missing_is_named() -> None:
    """Both lack coals; of the stew somebody avoids the meat as well."""
    means = Means(day=Day(pots=TWELVE), briquettes=20, avoids=("beef",))
    found = choose([candidate("beef-stew"), candidate("peach-cobbler")], means)
    assert found.nearest is not None
    assert found.nearest.name == "peach-cobbler"
    assert {one.what for one in only("beef-stew", means).missing} == {"charcoal", "food"}


def test_several_missing_things_are_all_said() -> None:
    found = choose([candidate("beef-stew")], Means(day=Day(pots=TWELVE), briquettes=20, avoids=("beef",)))
    assert "comes nearest and wants" in found.said
    assert "more briquettes and a way without beef" in found.said


def test_without_a_recipe_it_says_so() -> None:
    assert choose((), Means()).said.startswith("There is no recipe to choose from")


def test_an_avoided_food_that_can_be_swapped_is_swapped_and_said() -> None:
    choice = only("peach-cobbler", Means(day=Day(pots=TWELVE), avoids=("milk",)))
    assert choice.missing == ()
    assert choice.wishes
    assert any("for the sake of no milk" in one.said for one in choice.needs)
    assert choice.suits < only("peach-cobbler", Means(day=Day(pots=TWELVE))).suits


def test_what_the_cook_settled_about_a_recipe_stays() -> None:
    own = Candidate(
        name="Friday",
        recipe=recipe("peach-cobbler"),
        day=Day(people=3, temp_f=375, swaps=(Swap(food="butter", to="oil"),), air_f=20),
    )
    day = day_for(own, Means(day=Day(people=9, air_f=60)))
    assert (day.people, day.air_f, day.temp_f, day.swaps) == (9, 60, 375, own.day.swaps)


def test_a_dish_of_another_fire_is_no_dish_for_these_coals() -> None:
    """What is pickled at home or grilled over an open fire is not cooked with these pots."""
    found = [only(name.name, Means(day=Day(pots=TWELVE))) for name in everything()]
    elsewhere = [one for one in found if one.family in ("preserve or ferment", "grill or smoke")]
    assert elsewhere
    assert all([need.what for need in one.missing] == ["fire"] for one in elsewhere)


def test_more_of_anything_never_makes_fewer_dishes_fit() -> None:
    counts = [
        choose(everything(), Means(day=Day(people=9, pots=TWELVE), briquettes=coals), most=99)
        for coals in (0, 20, 40, 60, 200)
    ]
    fitting = [{one.name for one in found.best} for found in counts]
    assert all(few <= many for few, many in itertools.pairwise(fitting))
    assert fitting[0] < fitting[-1]


def test_needs_are_told_of_a_dish_without_coals_too() -> None:
    plan = camp(recipe("peach-cobbler"), Day(charcoal=False))
    assert {one.what for one in needs(plan, Means(day=Day(charcoal=False)))} >= {"fire", "cooler"}
