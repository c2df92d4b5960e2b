from __future__ import annotations

from rules.because import Ledger
from rules.cold.order import layers
from rules.plan import Pack
from rules.recipe import Recipe
from tests.build import items, line, pack, recipe

MADE = recipe(
    line("ground beef"), line("blueberries"), line("milk"), line("eggs"), line("parsley"), line("butter")
)
RAW = pack("fresh", 0, of=MADE, travels="frozen", label="raw ground beef")
FRUIT = pack("wet mix", 1, of=MADE, travels="frozen", label="fruit")
MILK = pack("fresh", 2, of=MADE, travels="cool", label="milk")
EGGS = pack("fresh", 3, of=MADE, travels="cool", label="eggs")
HERB = pack("fresh", 4, of=MADE, travels="cool", label="parsley")


def order(made: Recipe, *packs: Pack) -> list[set[str]]:
    return [set(layer.packs) for layer in layers(packs, items(made), Ledger())]


def test_raw_flesh_lies_lowest_and_what_breaks_or_is_eaten_raw_on_top() -> None:
    assert order(MADE, EGGS, MILK, FRUIT, RAW, HERB) == [{RAW.id}, {FRUIT.id}, {MILK.id}, {EGGS.id, HERB.id}]


def test_raw_flesh_lies_lowest_also_when_it_is_not_frozen() -> None:
    cool = pack("fresh", 0, of=MADE, travels="cool", label="raw ground beef")
    assert order(MADE, FRUIT, cool)[0] == {cool.id}


def test_every_pack_is_in_one_layer_and_each_layer_says_why() -> None:
    packs = (EGGS, MILK, FRUIT, RAW, HERB)
    ledger = Ledger()
    found = layers(packs, items(MADE), ledger)
    assert sorted(pack for layer in found for pack in layer.packs) == sorted(pack.id for pack in packs)
    assert {reason.rule for reason in ledger.reasons} == {
        "cold.raw-below",
        "cold.frozen-as-ice",
        "cold.heavy-low",
        "cold.first-on-top",
    }
