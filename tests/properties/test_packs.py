"""Whatever the recipe: nothing is lost, nothing is doubled, and what must not meet does not."""

from __future__ import annotations

from collections import defaultdict

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rules.because import Ledger
from rules.circumstances import Day
from rules.dish import decide
from rules.fat import MOST_JOBS, place
from rules.foods import catalogue, weigh
from rules.instructions import write
from rules.method import graph
from rules.packs import divide
from rules.recipe import Action, Amount, Deed, Duration, Ingredient, Recipe, Step, Use
from rules.roles import role_of

FOODS = sorted(food.name for food in catalogue())
DEEDS: list[Deed] = [
    "mix", "beat", "cream", "cut in", "rub", "knead", "fold", "mash", "blend", "add", "pour", "season", "coat", "fill",
    "layer", "spread", "top", "shape", "roll", "preheat", "heat", "melt", "brown", "saute", "fry", "deep fry", "boil",
    "simmer", "reduce", "deglaze", "bake", "roast", "rise", "rest", "chill", "marinate", "soak", "cool", "chop", "grate",
    "peel", "drain", "grease", "cover", "turn", "serve", "other", "ferment", "can",
]  # fmt: skip
VESSELS = [
    None,
    "bowl",
    "another bowl",
    "large pot",
    "skillet",
    "pan",
    "baking dish",
    "oven",
    "fridge",
    "blender",
]
THINGS = ["batter", "dough", "sauce", "mixture", "dry ingredients", "filling", "meat", "it"]
PARTS = [None, None, "topping", "the sauce", "dry ingredients"]


@st.composite
def ingredients(draw: st.DrawFn) -> Ingredient:
    food = draw(st.sampled_from([*FOODS, None]))
    name = food.partition(",")[0] if food else "grandmother's secret"
    sizes = st.sampled_from(
        [
            (),
            (Amount(low=1, high=1, unit="cup"),),
            (Amount(low=2, high=3),),
            (Amount(low=200, high=200, unit="gram"),),
        ]
    )
    return Ingredient(
        line=0,
        text=name,
        name=name,
        food=food,
        amounts=draw(sizes),
        component=draw(st.sampled_from(PARTS)),
        prep=draw(st.sampled_from([None, "chopped", "melted", "juiced"])),
        optional=draw(st.booleans()),
    )


def actions(count: int) -> st.SearchStrategy[Action]:
    uses = st.builds(
        Use, ingredient=st.integers(0, max(count - 1, 0)), share=st.sampled_from([1.0, 1.0, 0.5, 0.25])
    )
    waits = st.one_of(
        st.none(), st.builds(Duration, what=st.just("other"), low_min=st.just(5.0), high_min=st.just(900.0))
    )
    return st.builds(
        Action,
        does=st.sampled_from(DEEDS),
        word=st.sampled_from(["mix", "stir in", "cook", "put", "turn out"]),
        uses=st.lists(uses, max_size=4).map(tuple),
        things=st.lists(st.sampled_from(THINGS), max_size=2).map(tuple),
        makes=st.sampled_from([None, "batter", "sauce"]),
        vessel=st.sampled_from(VESSELS),
        minutes=waits,
        ahead=st.booleans(),
    )


@st.composite
def recipes(draw: st.DrawFn) -> Recipe:
    lines = draw(st.lists(ingredients(), min_size=1, max_size=9))
    steps = draw(st.lists(st.lists(actions(len(lines)), max_size=4).map(tuple), max_size=5))
    return Recipe(
        title=draw(
            st.sampled_from([None, "River cake", "Soup for nine", "Marinade", "Sauerkraut", "Cookies", "Pie"])
        ),
        ingredients=tuple(lines),
        steps=tuple(Step(line=1, text="", actions=one) for one in steps),
    )


def days() -> st.SearchStrategy[Day]:
    return st.builds(Day, freezer=st.booleans(), trip_hours=st.sampled_from([None, 3.0, 30.0, 100.0]))


@settings(deadline=None)
@given(recipes(), days(), st.sampled_from([1.0, 2.5]))
def test_shares_of_every_ingredient_over_packs_add_up_to_one(of: Recipe, day: Day, scale: float) -> None:
    items = weigh(of, scale)
    made = graph(of)
    dish = decide(of, items, made, Ledger())
    shares: defaultdict[int, float] = defaultdict(float)
    for pack in divide(of, items, made, dish, day, Ledger()):
        for item in pack.items:
            assert item.share > 0
            shares[item.ingredient] += item.share
    assert set(shares) == set(range(len(of.ingredients)))
    assert all(share == pytest.approx(1) for share in shares.values())


@settings(deadline=None)
@given(recipes(), days())
def test_raw_meat_leavener_and_lye_keep_their_distance(of: Recipe, day: Day) -> None:
    items = weigh(of)
    made = graph(of)
    dish = decide(of, items, made, Ledger())
    for pack in divide(of, items, made, dish, day, Ledger()):
        roles = {role_of(of.ingredients[item.ingredient]) for item in pack.items}
        if "caustic" in roles:
            assert roles == {"caustic"}
        if dish.family != "preserve or ferment" and pack.kind in ("dry mix", "wet mix"):
            raw = [of.ingredients[item.ingredient] for item in pack.items]
            assert not any(role_of(one) in ("egg", "meat") for one in raw)
        if pack.kind == "wet mix":
            assert not roles & {"leavener", "flour", "starch", "yeast", "milk"}


@settings(deadline=None)
@given(recipes(), days())
def test_every_fat_has_one_or_two_destinations_that_use_all_of_it(of: Recipe, day: Day) -> None:
    items = weigh(of)
    made = graph(of)
    dish = decide(of, items, made, Ledger())
    uses: defaultdict[int, float] = defaultdict(float)
    goes: defaultdict[int, set[str]] = defaultdict(set)
    for use in place(of, items, made, dish, day, Ledger()):
        uses[use.ingredient] += use.share
        goes[use.ingredient].add(use.goes)
    fats = {item.index for item in items if role_of(item.ingredient, item.food) == "fat"}
    assert set(uses) == fats
    assert all(share == pytest.approx(1) for share in uses.values())
    assert all(len(where) <= MOST_JOBS for where in goes.values())


@settings(deadline=None)
@given(recipes(), days())
def test_a_pack_mixed_at_home_is_opened_at_most_once_at_camp(of: Recipe, day: Day) -> None:
    items = weigh(of)
    made = graph(of)
    dish = decide(of, items, made, Ledger())
    packs = divide(of, items, made, dish, day, Ledger())
    _, camp = write(of, items, made, dish, packs, (), None, None, day, Ledger())
    text = " ".join(camp)
    for pack in packs:
        if pack.kind in ("dry mix", "wet mix"):
            assert text.count(f"({pack.id})") <= 1


@settings(deadline=None)
@given(recipes())
def test_the_same_recipe_always_gives_the_same_packs(of: Recipe) -> None:
    items = weigh(of)
    one = divide(of, items, graph(of), decide(of, items, graph(of), Ledger()), Day(), Ledger())
    two = divide(of, items, graph(of), decide(of, items, graph(of), Ledger()), Day(), Ledger())
    assert one == two
