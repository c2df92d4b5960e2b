"""The reading of ingredient lines, held against the corpus: one expected reading, then all the ways to write it."""

from __future__ import annotations

from importlib import resources

import msgspec
import pytest

from assistant.reader.lines import is_tool, read_line
from rules.foods import catalogue
from rules.recipe import Amount, Package


class Size(msgspec.Struct, forbid_unknown_fields=True):
    low: float
    unit: str
    high: float | None = None


class Stated(msgspec.Struct, forbid_unknown_fields=True):
    low: float
    high: float | None = None
    unit: str | None = None
    approx: bool = False
    package: Size | None = None
    plus: bool = False
    each: bool = False

    def amount(self) -> Amount:
        size = self.package
        package = Package(low=size.low, high=size.high or size.low, unit=size.unit) if size else None
        return Amount(
            low=self.low,
            high=self.high or self.low,
            unit=self.unit,
            approx=self.approx,
            package=package,
            plus=self.plus,
            each=self.each,
        )


class Reading(msgspec.Struct, forbid_unknown_fields=True):
    what: str
    lines: list[str]
    amounts: list[Stated]
    name: str | None = None
    foods: list[str] = []
    each: bool = False
    state: list[str] | None = None
    prep: str | None = None
    alternatives: list[str] | None = None
    optional: bool = False
    to_taste: bool | None = None


class Readings(msgspec.Struct, forbid_unknown_fields=True):
    reading: list[Reading]


class Tools(msgspec.Struct, forbid_unknown_fields=True):
    tools: list[str]
    foods: list[str]


def corpus(folder: str) -> list[Reading]:
    files = sorted((resources.files("corpus") / folder).iterdir(), key=lambda file: file.name)
    found = []
    for file in files:
        if file.name.endswith(".toml") and file.name != "tools.toml":
            found += msgspec.toml.decode(file.read_text(encoding="utf-8"), type=Readings).reading
    return found


def cases(folder: str) -> list[object]:
    return [pytest.param(reading, line, id=line) for reading in corpus(folder) for line in reading.lines]


def check(reading: Reading, line: str) -> None:
    found = read_line(line, line=7, component="river stew")
    foods = reading.foods or [reading.name]
    assert foods == [item.name for item in found]
    stated = tuple(amount.amount() for amount in reading.amounts)
    assert stated == found[0].amounts
    if reading.each:
        assert all(item.amounts == stated for item in found)
    if reading.state is not None:
        assert set(reading.state) == set(found[0].state)
    if reading.prep is not None:
        assert reading.prep == found[0].prep
    if reading.alternatives is not None:
        assert tuple(reading.alternatives) == found[0].alternatives
    if reading.to_taste is not None:
        assert reading.to_taste == found[0].to_taste
    assert reading.optional == found[0].optional


@pytest.mark.parametrize(("reading", "line"), cases("lines"))
def test_every_way_to_write_a_line_reads_alike(reading: Reading, line: str) -> None:
    check(reading, line)


@pytest.mark.parametrize(("reading", "line"), cases("not_lines"))
def test_figures_that_are_no_amount_are_not_read_as_one(reading: Reading, line: str) -> None:
    check(reading, line)


def tools() -> Tools:
    text = (resources.files("corpus") / "not_lines" / "tools.toml").read_text(encoding="utf-8")
    return msgspec.toml.decode(text, type=Tools)


@pytest.mark.parametrize("line", tools().tools)
def test_a_line_that_names_a_tool_gives_no_ingredient(line: str) -> None:
    assert read_line(line, line=0) == ()
    assert is_tool(line)


@pytest.mark.parametrize("line", tools().foods)
def test_a_food_beside_the_word_of_a_tool_stays_a_food(line: str) -> None:
    assert len(read_line(line, line=0)) == 1
    assert not is_tool(line)


@pytest.mark.parametrize("line", ["", "   ", "-", "---", "* * *", "12", "(…)", "🥚"])
def test_a_line_without_words_gives_nothing(line: str) -> None:
    assert read_line(line, line=0) == ()
    assert not is_tool(line)


def test_line_text_and_component_are_kept() -> None:
    item = read_line("  - 2 cups *corn*\x1b[31m", line=12, component="river chowder")[0]
    assert (item.line, item.text, item.component) == (12, "- 2 cups *corn*", "river chowder")


@pytest.mark.parametrize(
    ("optional", "component"),
    [(True, "optional extras"), (True, "additional toppings"), (False, "topping"), (False, None)],
)
def test_a_sub_heading_of_extras_makes_its_lines_optional(optional: bool, component: str | None) -> None:
    assert optional == read_line("walnuts", line=0, component=component)[0].optional


@pytest.mark.parametrize(
    ("key", "line"),
    [
        ("tomato, canned", "1 can diced tomatoes"),
        ("tomato", "3 ripe tomatoes"),
        ("dried thyme", "1 tsp dried thyme"),
        ("thyme", "2 sprigs fresh thyme"),
        ("egg yolk", "2 egg yolks"),
        ("ground beef", "1 lb minced beef"),
        ("active dry yeast", "1 packet active dry yeast"),
        (None, "2 cups moonbeam flakes"),
    ],
)
def test_the_food_is_the_catalogues_where_the_match_is_sure(key: str | None, line: str) -> None:
    assert key == read_line(line, line=0)[0].food
    assert key is None or catalogue().get(key)


def test_what_is_not_understood_stays_in_the_notes() -> None:
    item = read_line("2 cups barley, the sort that Aunt Ida of the upper river brought", line=0)[0]
    assert item.name == "barley"
    assert item.notes == "the sort that aunt ida of the upper river brought"


def test_foods_that_share_one_amount_say_whose_it_is() -> None:
    first, second = read_line("2 lb ground beef and ground pork", line=0)
    assert first.amounts
    assert not second.amounts
    assert second.notes == "within the amount of ground beef"
