"""What holds for any trip: nothing bought is more or less than the meals want, no heat is lost, no pot is taken twice."""

from __future__ import annotations

from collections import defaultdict
from itertools import pairwise

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from rules import foods
from rules.circumstances import PotOwned
from rules.convert import camp
from rules.shopping import bought_as
from rules.trip.model import Cooler, Meal, Trip, TripPlan
from rules.trip.plan import plan
from tests.trips import CORPUS, river

NAMES = sorted(path.stem.removeprefix("river-") for path in (CORPUS / "recipes").glob("*.txt"))
MOMENTS = [f"2027-07-0{day}T{clock}" for day in (2, 3, 4, 5) for clock in ("08:30", "13:00", "18:30")][2:]
WATER = "water"


@st.composite
def trips(draw: st.DrawFn) -> Trip:
    """One to six dishes of the corpus over four days, for any crowd, in any pots and coolers."""
    meals = [
        Meal(
            name="Meal",
            eat=draw(st.sampled_from(MOMENTS)),
            recipe=river(draw(st.sampled_from(NAMES))),
            people=draw(st.none() | st.integers(1, 30)),
            scale=draw(st.none() | st.sampled_from([0.5, 1.5, 2.0])),
        )
        for _ in range(draw(st.integers(1, 6)))
    ]
    pots = draw(
        st.lists(
            st.builds(
                PotOwned,
                diameter_in=st.sampled_from([8, 10, 12, 14]),
                depth=st.sampled_from(["shallow", "deep"]),
                count=st.integers(1, 2),
            ),
            max_size=3,
        )
    )
    return Trip(
        meals=tuple(meals),
        leave="2027-07-02T07:00",
        drive_hours=draw(st.floats(0, 6)),
        people=draw(st.none() | st.integers(1, 24)),
        pots=tuple(pots),
        coolers=tuple(Cooler(quarts=size) for size in draw(st.lists(st.integers(8, 120), max_size=3))),
        fires=draw(st.none() | st.integers(1, 3)),
        air_f=draw(st.floats(20, 100)),
        cooler_air_f=draw(st.none() | st.floats(20, 105)),
        freezer=draw(st.booleans()),
    )


SLOW = settings(max_examples=25, suppress_health_check=[HealthCheck.too_slow], deadline=None)


@SLOW
@given(trips())
def test_every_quantity_of_the_joined_list_is_the_sum_over_the_meals(told: Trip) -> None:
    """Planned once more dish by dish, each by itself: the same foods, the same grams, neither more nor less."""
    planned = plan(told)
    masses: dict[str, list[float | None]] = defaultdict(list)
    for dish in planned.dishes:
        alone = camp(meal_of(dish.id, told).recipe, dish.day)
        for item in foods.weigh(alone.recipe, alone.scale):
            name = item.food.name if item.food else item.ingredient.name.lower()
            if name != WATER and item.ingredient.amounts:
                masses[bought_as(name)].append(item.grams)
    for line in planned.shopping:
        if not line.for_:
            continue
        assert all(share.dish in {dish.id for dish in planned.dishes} for share in line.for_)
        shares = [share.grams for share in line.for_ if share.amounts]
        if line.grams is not None and all(shares):
            assert line.grams == pytest.approx(sum(mass or 0.0 for mass in shares), rel=1e-9)
    by_mass = sorted(round(sum(found), 3) for found in masses.values() if all(found))
    joined = sorted(round(line.grams, 3) for line in planned.shopping if line.for_ and line.grams is not None)
    assert joined == pytest.approx(by_mass, rel=1e-6)


def meal_of(number: str, told: Trip) -> Meal:
    return sorted(told.meals, key=lambda meal: meal.eat)[int(number) - 1]


@SLOW
@given(trips())
def test_amounts_told_in_one_unit_are_what_the_dishes_told(told: Trip) -> None:
    """What every dish counts in the same unit is exactly their sum."""
    for line in plan(told).shopping:
        parts = [amount for share in line.for_ for amount in share.amounts]
        kinds = {(amount.unit, amount.package) for amount in parts}
        if len(kinds) == 1 and parts:
            (whole,) = line.amounts
            assert whole.low == pytest.approx(sum(amount.low for amount in parts), rel=1e-9)
            assert whole.high == pytest.approx(sum(amount.high for amount in parts), rel=1e-9)


@SLOW
@given(trips())
def test_the_heat_of_every_cooler_balances_to_a_tenth_of_a_percent(told: Trip) -> None:
    for cooler in plan(told).coolers:
        assert cooler.energy is not None
        moved = max(
            abs(cooler.energy.leak) + abs(cooler.energy.openings), cooler.energy.ice + cooler.energy.bags
        )
        assert abs(cooler.energy.missing) <= max(0.001 * moved, 0.5)


@SLOW
@given(trips())
def test_no_pot_is_taken_twice_unless_it_is_said(told: Trip) -> None:
    planned = plan(told)
    if any(one.way == "open" for one in planned.settled):
        return
    taken: dict[str, list[tuple[str, str]]] = defaultdict(list)
    for use in planned.pots:
        taken[use.pot].append((use.from_, use.until))
    for spans in taken.values():
        assert all(early[1] <= late[0] for early, late in pairwise(sorted(spans)))


@SLOW
@given(trips())
def test_fuel_is_what_the_dishes_light_less_what_is_stacked(told: Trip) -> None:
    planned = plan(told)
    own = sum(dish.plan.heat.fuel.lit for dish in planned.dishes if dish.plan.heat)
    lit = planned.fuel.lit + planned.fuel.saved if planned.fuel else 0
    assert lit == own


@SLOW
@given(trips())
def test_every_dish_is_eaten_and_nothing_cold_is_forgotten(told: Trip) -> None:
    planned: TripPlan = plan(told)
    assert len(planned.dishes) == len(told.meals)
    eaten = [moment for moment in planned.calendar if moment.kind == "meal"]
    assert {dish for moment in eaten for dish in moment.dishes} == {dish.id for dish in planned.dishes}
    cold = {
        (dish.id, pack.id)
        for dish in planned.dishes
        for pack in dish.plan.packs
        if pack.travels in ("cool", "frozen")
    }
    assert {(layer.dish, layer.pack) for one in planned.coolers for layer in one.layers} == cold
