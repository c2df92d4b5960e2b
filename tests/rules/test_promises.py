"""Each promise of a plan is broken once on purpose; the sentence must name where."""

from __future__ import annotations

import pytest

from rules import promises
from rules.because import COMMON
from rules.plan import Batch, Fuel, Heat, Moment, Pack, PackItem, Plan, Reason, Refresh, Stage
from rules.problem import BrokenInvariant
from rules.recipe import Ingredient, Recipe, Struct


def changed(struct: Struct, **fields: object) -> Struct:
    return type(struct)(**{name: getattr(struct, name) for name in struct.__struct_fields__} | fields)


@pytest.fixture
def plan() -> Plan:
    """A plan for one food, cooked over 24 briquettes, that keeps every promise."""
    recipe = Recipe(
        title="River flatcakes",
        ingredients=(Ingredient(line=3, text="2 cups flour", name="flour"),),
        file="flatcakes.txt",
    )
    pack = Pack(
        id="dry-1",
        kind="dry mix",
        label="flatcakes",
        travels="shelf",
        items=(PackItem(ingredient=0, share=1.0),),
    )
    fuel = Fuel(lit=24, reserve=6, briquettes=30, kg=0.7, batches=(Batch(light_at_min=-60, count=24),))
    return Plan(
        recipe=recipe,
        packs=(pack,),
        heat=Heat(stages=(Stage(kind="bake", top=16, under=8),), fuel=fuel),
        timeline=(Moment(at_min=-60, do="Light the chimney."), Moment(at_min=0, do="Eat.")),
        why=(),
        file="flatcakes.txt",
    )


def test_a_good_plan_passes(plan: Plan) -> None:
    promises.keep(plan)


def broken(plan: Plan, **fields: object) -> str:
    with pytest.raises(BrokenInvariant) as problem:
        promises.keep(changed(plan, **fields))  # type: ignore[arg-type]
    return str(problem.value)


def test_a_lost_ingredient_is_named_with_its_line(plan: Plan) -> None:
    assert "flatcakes.txt, line 4 (flour)" in broken(plan, packs=())


def test_half_an_ingredient_is_not_all_of_it(plan: Plan) -> None:
    half = changed(plan.packs[0], items=(PackItem(ingredient=0, share=0.5),))
    assert "not 0.5 times" in broken(plan, packs=(half,))


def test_a_doubled_ingredient_is_caught(plan: Plan) -> None:
    assert "not 2 times" in broken(plan, packs=(*plan.packs, *plan.packs))


def test_a_share_of_nothing_is_caught(plan: Plan) -> None:
    nothing = changed(
        plan.packs[0], items=(PackItem(ingredient=0, share=1.0), PackItem(ingredient=0, share=0.0))
    )
    assert "every share is more than nothing" in broken(plan, packs=(nothing,))


def test_a_food_that_the_recipe_does_not_have_is_caught(plan: Plan) -> None:
    stranger = changed(plan.packs[0], items=(PackItem(ingredient=7, share=1.0),))
    assert "only what the recipe asks for" in broken(plan, packs=(stranger,))


def test_a_negative_coal_is_caught(plan: Plan) -> None:
    stage = Stage(kind="bake", top=-1, under=8)
    assert "stage bake" in broken(plan, heat=changed(plan.heat, stages=(stage,)))


@pytest.mark.parametrize(
    ("fuel", "promise"),
    [
        ({"lit": 25}, "the batches add up"),
        ({"reserve": 5}, "the reserve is a quarter"),
        ({"briquettes": 24}, "the briquettes are those lit and the reserve"),
    ],
)
def test_fuel_that_does_not_add_up_is_caught(plan: Plan, fuel: dict[str, int], promise: str) -> None:
    assert promise in broken(plan, heat=changed(plan.heat, fuel=changed(plan.heat.fuel, **fuel)))


def test_fuel_that_does_not_cover_a_refresh_is_caught(plan: Plan) -> None:
    fresh = Refresh(at_min=45, light_at_min=25, top=20, under=10)
    stage = Stage(kind="bake", top=16, under=8, refresh=(fresh,))
    assert "covers every stage" in broken(plan, heat=changed(plan.heat, stages=(stage,)))


def test_a_plan_without_coals_says_why(plan: Plan) -> None:
    assert "says why" in broken(plan, heat=None)
    promises.keep(changed(plan, heat=None, no_coals_because="Nothing is cooked."))  # type: ignore[arg-type]


def test_a_day_that_runs_backwards_is_caught(plan: Plan) -> None:
    assert "the day runs forwards" in broken(plan, timeline=tuple(reversed(plan.timeline)))


def test_a_reason_without_a_rule_is_caught(plan: Plan) -> None:
    stray = Reason(rule="nobody.knows", about="flour", because="so", source=COMMON)
    assert "nobody.knows" in broken(plan, why=(stray,))
