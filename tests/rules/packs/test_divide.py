from __future__ import annotations

from rules.because import RULES, Ledger
from rules.circumstances import Day
from rules.foods import weigh
from rules.method import graph
from rules.packs import Contents, divide
from rules.packs.divide import ORDER, place_of
from rules.packs.kitchen import Kitchen
from tests.build import amount, dish, doing, kinds, line, mates, minutes, packed, recipe, step

FOODS = (
    line("flour", amount(2, "cup")),
    line("baking powder", amount(2, "teaspoon")),
    line("cinnamon", amount(1, "teaspoon")),
    line("butter", amount(0.5, "cup")),
    line("milk", amount(1, "cup")),
)
do = doing(*FOODS)
OF = recipe(
    *FOODS,
    steps=(
        step(do("mix", "flour", "baking powder", vessel="bowl"), do("add", "milk")),
        step(
            do("melt", "butter", vessel="skillet"),
            do("pour", things=("batter", "butter")),
            do("bake", minutes=minutes(30)),
        ),
    ),
)


def test_every_food_of_a_recipe_without_a_method_is_packed_by_what_it_is() -> None:
    of = recipe(*FOODS)
    packs = packed(of, "batter bake")
    assert kinds(packs, of) == {
        "flour": {"dry mix"},
        "baking powder": {"dry mix"},
        "cinnamon": {"dry mix"},
        "butter": {"fresh"},
        "milk": {"fresh"},
    }
    assert mates(packs, of, "flour") == [{"flour", "baking powder", "cinnamon"}]


def test_a_dry_food_that_no_step_names_joins_the_bag_of_its_part() -> None:
    assert "cinnamon" in mates(packed(OF, "batter bake"), OF, "flour")[0]


def test_every_portion_gives_its_reason() -> None:
    ledger = Ledger()
    packed(OF, "batter bake", ledger=ledger)
    about = {reason.about for reason in ledger.reasons}
    assert {ingredient.name for ingredient in FOODS} <= about
    assert all(reason.rule in RULES for reason in ledger.reasons)


def test_for_every_food_some_rule_speaks() -> None:
    kitchen = Kitchen(OF, weigh(OF), graph(OF), dish("batter bake"), Day())
    assert all(place_of(portion, kitchen).key for portion in kitchen.portions)
    assert ORDER[-1](kitchen.portions[0], kitchen) is not None


def test_the_contents_know_which_pack_holds_a_food_at_a_moment() -> None:
    made = graph(OF)
    packs = divide(OF, weigh(OF), made, dish("batter bake"), Day(), Ledger())
    inside = Contents(OF, weigh(OF), made, dish("batter bake"), Day(), packs)
    pack = inside.pack(0, made.moments(0)[0].at)
    assert pack is not None
    assert inside.sort(pack) == "dry"
    assert inside.pack(99) is None


def test_an_empty_recipe_has_no_packs() -> None:
    assert packed(recipe(), "other") == ()
