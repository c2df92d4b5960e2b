"""Which recipe a name means."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import pytest

from assistant.chat.beyond.cookbook import Cookbook
from assistant.commands.abroad import shipped
from assistant.keep import Kept, Store
from rules.circumstances import Day, Swap
from rules.problem import UsageProblem
from rules.recipe import Recipe

SHIPPED = {name: (lambda name=name: Recipe(title=name)) for name in shipped()}


@pytest.mark.parametrize(
    ("said", "name"),
    [("chili", "can chili"), ("chilli", "can chili"), ("the stew", "beef stew"), ("bisquits", "buttermilk biscuits"),
     ("Biscuits", "buttermilk biscuits"), ("cobbler", "peach cobbler"), ("pancakes", "puffed pancake"),
     ("our usual slaw", "cabbage slaw"), ("pot roast", "pot roast"), ("dumplings", "chicken dumplings")],
)  # fmt: skip
def test_a_dish_is_found_by_what_people_call_it(said: str, name: str) -> None:
    found = Cookbook(None, SHIPPED).find(said)
    assert found is not None
    assert found.name == name


@pytest.mark.parametrize("said", ["lasagna", "beer", "nine of us", "", "the", "two 12s", "sushi", "zorkle"])
def test_what_nobody_cooks_is_not_found(said: str) -> None:
    assert Cookbook(None, SHIPPED).find(said) is None


def test_a_kept_recipe_goes_before_one_that_ships(tmp_path: Path) -> None:
    store = Store(tmp_path, now=lambda: datetime(2027, 7, 1, tzinfo=UTC))
    day = Day(swaps=(Swap(food="butter", to="oil"),))
    store.keep("Ada's stew", Recipe(title="A stew of ours"), day)
    store.keep("Friday", Recipe(title="Dumplings of the second day"), Day())
    book = Cookbook(store, SHIPPED)
    stew, dumplings = book.find("the stew"), book.find("dumplings")
    assert stew is not None
    assert dumplings is not None
    assert (stew.name, stew.day) == ("Ada's stew", day)
    assert dumplings.name == "Friday"
    assert book.names()[:2] == ("Friday", "Ada's stew") or book.names()[:2] == ("Ada's stew", "Friday")


def test_a_file_is_read_and_a_missing_one_is_no_recipe() -> None:
    def opens(name: str) -> Recipe:
        if name != "stew.txt":
            raise UsageProblem("FILE", name, "name a file")
        return Recipe(title="From the file")

    book = Cookbook(None, {}, opens)
    found = book.find("stew.txt")
    assert found is not None
    assert found.recipe.title == "From the file"
    assert book.find("other.txt") is None


def test_every_recipe_that_ships_is_found_by_its_own_name() -> None:
    book = Cookbook(None, SHIPPED)
    for name in SHIPPED:
        found = book.find(name)
        assert found is not None
        assert found.name == name


class Broken:
    """A store of which nothing can be read."""

    def names(self) -> tuple[str, ...]:
        raise UsageProblem("FILE", "kept.sqlite3", "check the folder")

    def get(self, name: str) -> Recipe:
        raise UsageProblem("FILE", name, "check the folder")


def test_a_store_that_cannot_be_opened_leaves_the_recipes_that_ship() -> None:
    book = Cookbook(Broken(), SHIPPED)
    found = book.find("chili")
    assert found is not None
    assert book.names() == tuple(SHIPPED)


def test_kept_recipes_are_opened_once_however_often_names_are_said(tmp_path: Path) -> None:
    store = Store(tmp_path, now=lambda: datetime(2027, 7, 1, tzinfo=UTC))
    store.keep("Friday", Recipe(title="A stew of ours"), Day())
    opened: list[str] = []

    class Counting:
        def names(self) -> tuple[str, ...]:
            return store.names()

        def get(self, name: str) -> Kept:
            opened.append(name)
            return store.get(name)

    book = Cookbook(Counting(), {})
    for _ in range(5):
        assert book.find("nothing of the kind") is None
    assert opened == ["Friday"]
