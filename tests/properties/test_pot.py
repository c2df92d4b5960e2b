"""Whatever the amounts: a bigger recipe never stands lower, never takes fewer pots, never touches the lid."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from rules.because import Ledger
from rules.circumstances import DIAMETERS_IN, Day, PotOwned
from rules.dish import Dish
from rules.foods import weigh
from rules.plan import PotPlan
from rules.pot import choose, depth_of, minutes_factor, oven, ovens, read_pan
from rules.pot.volume import pot_families
from rules.recipe import Amount, Family, Ingredient, Oven, Recipe

FAMILIES = sorted(set(pot_families()) - {"deep fry"})
FOODS = (
    "all-purpose flour",
    "sugar",
    "milk",
    "egg",
    "potato",
    "beef stew meat",
    "broth",
    "spinach",
    "white rice",
)

amounts = st.builds(lambda food, cups: (food, cups), st.sampled_from(FOODS), st.floats(0.1, 12))
recipes = st.lists(amounts, min_size=1, max_size=6)
pots = st.builds(
    PotOwned, diameter_in=st.sampled_from(DIAMETERS_IN), depth=st.sampled_from(("shallow", "deep"))
)


def recipe(lines: list[tuple[str, float]], family: Family, vessel: str | None) -> Recipe:
    return Recipe(
        ingredients=tuple(
            Ingredient(
                line=0, text=food, name=food, food=food, amounts=(Amount(low=cups, high=cups, unit="cup"),)
            )
            for food, cups in lines
        ),
        family=family,
        oven=Oven(vessel=vessel) if vessel else None,
    )


def chosen(one: Recipe, pot: PotOwned, scale: float) -> PotPlan:
    plan = choose(one, weigh(one, scale), Dish(family=one.family), Day(pots=(pot,)), Ledger())
    assert plan is not None
    return plan


@settings(max_examples=60, deadline=None)
@given(
    recipes,
    pots,
    st.sampled_from(FAMILIES),
    st.floats(0.5, 4),
    st.sampled_from((None, "9x13 in pan", "8 inch square")),
)
def test_food_never_comes_near_the_lid(
    lines: list[tuple[str, float]], pot: PotOwned, family: Family, scale: float, vessel: str | None
) -> None:
    plan = chosen(recipe(lines, family, vessel), pot, scale)
    assert plan.count >= 1
    assert plan.fill is not None
    assert 0 <= plan.fill <= pot_families()[family].most + 0.06


@settings(max_examples=60, deadline=None)
@given(recipes, pots, st.sampled_from(FAMILIES), st.floats(1, 3))
def test_more_food_never_takes_fewer_pots(
    lines: list[tuple[str, float]], pot: PotOwned, family: Family, factor: float
) -> None:
    one = recipe(lines, family, None)
    assert chosen(one, pot, factor).count >= chosen(one, pot, 1).count


@given(st.sampled_from(ovens()), st.floats(0, 20000), st.floats(0, 20000))
def test_more_stands_deeper(pot: object, some_ml: float, more_ml: float) -> None:
    low, high = sorted((some_ml, more_ml))
    assert depth_of(pot, low) <= depth_of(pot, high)  # type: ignore[arg-type]


@settings(max_examples=60, deadline=None)
@given(
    recipes,
    pots,
    st.sampled_from(("9x13 in pan", "8x8 in pan", "9x5x3 loaf pan", "10 inch skillet", "a dish")),
)
def test_the_minutes_stay_inside_their_limits(
    lines: list[tuple[str, float]], pot: PotOwned, vessel: str
) -> None:
    """0.7 to 1.6 (handbook, chapter 4)."""
    one = recipe(lines, "batter bake", vessel)
    plan = chosen(one, pot, 1)
    factor = minutes_factor(one, weigh(one), "batter bake", plan, Ledger())
    assert 0.7 <= factor <= 1.6


@given(st.text(max_size=300))
def test_no_words_make_the_reading_of_pans_fail(said: str) -> None:
    pan = read_pan(said)
    assert pan is None or pan.area_sq_in > 0


@given(st.sampled_from(DIAMETERS_IN), st.sampled_from(("shallow", "deep")))
def test_every_pot_that_a_cook_may_own_is_in_the_table(diameter_in: int, depth: str) -> None:
    assert oven(diameter_in, depth).diameter_in == diameter_in  # type: ignore[arg-type]
