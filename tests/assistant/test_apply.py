"""What a change does to the recipe and the day."""

from __future__ import annotations

import pytest

from assistant.chat.acts import Meant
from assistant.chat.apply import Refused, applied
from rules.circumstances import Day, PotOwned, Swap
from rules.plan import Plan
from rules.problem import UsageProblem
from rules.recipe import Recipe


def day_after(
    act: str, recipe: Recipe, day: Day | None = None, plan: Plan | None = None, **slots: object
) -> Day:
    return applied(Meant(act=act, slots=slots), recipe, day or Day(), plan)[1]


@pytest.mark.parametrize(
    ("act", "slots", "day"),
    [
        ("people", {"people": 12}, Day(people=12)),
        ("scale", {"factor": 2.0}, Day(scale=2)),
        (
            "pot",
            {"diameter_in": 10, "depth": "deep", "count": 2},
            Day(pots=(PotOwned(diameter_in=10, depth="deep", count=2),)),
        ),
        ("temperature", {"temp_f": 375}, Day(temp_f=375)),
        (
            "weather",
            {"air_f": 40, "wind": "windy", "ground": "snow"},
            Day(air_f=40, wind="windy", ground="snow"),
        ),
        ("elevation", {"feet": 7000}, Day(elevation_ft=7000)),
        ("eat at", {"clock": "18:30"}, Day(eat="18:30")),
        ("trip", {"hours": 48}, Day(trip_hours=48)),
        ("fire ban", {"allowed": "no"}, Day(charcoal=False)),
        ("cooler", {"quarts": 60}, Day(cooler_quarts=60)),
        ("units", {"units": "metric"}, Day(units="metric")),
        ("swap", {"from": "butter", "to": "oil"}, Day(swaps=(Swap(food="butter", to="oil"),))),
        ("leave out", {"food": "peach"}, Day(swaps=(Swap(food="peaches"),))),
        ("leave out", {"food": ["flour", "milk"]}, Day(swaps=(Swap(food="flour"), Swap(food="milk")))),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_a_change_of_the_day(river_recipe: Recipe, act: str, slots: dict[str, object], day: Day) -> None:
    assert day_after(act, river_recipe, **slots) == day


def test_one_figure_of_a_pot_keeps_the_others(river_recipe: Recipe) -> None:
    owned = Day(pots=(PotOwned(diameter_in=12, depth="deep"),))
    assert day_after("pot", river_recipe, owned, count=2).pots == (
        PotOwned(diameter_in=12, depth="deep", count=2),
    )
    assert day_after("pot", river_recipe, owned, diameter_in=10).pots == (PotOwned(diameter_in=10),)


def test_a_pot_of_which_only_the_depth_is_told_is_the_planned_one(
    river_recipe: Recipe, river_plan: Plan
) -> None:
    assert day_after("pot", river_recipe, plan=river_plan, depth="deep").pots == (
        PotOwned(diameter_in=12, depth="deep"),
    )


def test_a_new_time_keeps_the_date(river_recipe: Recipe) -> None:
    dated = Day(eat="2027-07-03T18:30")
    assert day_after("eat at", river_recipe, dated, clock="19:00").eat == "2027-07-03T19:00"


def test_a_later_wish_for_a_food_takes_the_place_of_the_earlier(river_recipe: Recipe) -> None:
    oil = day_after("swap", river_recipe, **{"from": "butter", "to": "oil"})
    assert day_after("leave out", river_recipe, oil, food="butter").swaps == (Swap(food="butter"),)


def test_what_replaces_a_food_of_its_own_kind_needs_no_name(river_recipe: Recipe) -> None:
    assert day_after("swap", river_recipe, to="powdered milk").swaps == (
        Swap(food="milk", to="powdered milk"),
    )
    assert day_after("swap", river_recipe, to="lard").swaps == (Swap(food="butter", to="lard"),)
    with pytest.raises(Refused, match="Say what gravel shall replace"):
        day_after("swap", river_recipe, to="gravel")


def test_a_kind_of_food_leaves_out_all_that_holds_it(river_recipe: Recipe) -> None:
    assert day_after("leave out", river_recipe, food="dairy").swaps == (
        Swap(food="butter"),
        Swap(food="milk"),
    )


def test_a_food_that_is_not_there_is_refused_with_those_that_are(river_recipe: Recipe) -> None:
    with pytest.raises(Refused) as caught:
        day_after("leave out", river_recipe, food="walnuts")
    assert str(caught.value) == (
        "Walnuts: not in this recipe, so nothing changed. It has: butter, flour, baking powder, milk, peaches."
    )


def test_a_food_is_added_with_its_amount(river_recipe: Recipe) -> None:
    recipe, day = applied(
        Meant(act="add", slots={"food": "raisins", "amount": "1 cup"}), river_recipe, Day(), None
    )
    assert recipe is not None
    assert day == Day()
    added = recipe.ingredients[-1]
    assert (added.name, added.amounts[0].low, added.amounts[0].unit) == ("raisins", 1, "cup")
    assert recipe.ingredients[:-1] == river_recipe.ingredients


def test_a_value_that_cannot_be_is_refused_as_on_the_command_line(river_recipe: Recipe) -> None:
    with pytest.raises(UsageProblem):
        day_after("pot", river_recipe, diameter_in=13)
    with pytest.raises(UsageProblem):
        day_after("people", river_recipe, people=500)


def test_a_food_needs_a_recipe() -> None:
    with pytest.raises(Refused, match="There is no recipe yet"):
        applied(Meant(act="swap", slots={"from": "a", "to": "b"}), None, Day(), None)
