"""Every rule of the book: registered once, named well, sourced, filled, and seen to speak."""

from __future__ import annotations

import importlib
import pkgutil
import re
from pathlib import Path

import pytest

import rules
from assistant.reader.read import read
from rules.because import RULES, Rule
from rules.circumstances import Day, PotOwned, Swap
from rules.convert import camp
from rules.recipe import Recipe

ROOT = Path(__file__).parent.parent
for module in pkgutil.walk_packages(rules.__path__, "rules."):
    importlib.import_module(module.name)

ALL = sorted(RULES.values(), key=lambda rule: rule.id)
ID = re.compile(r"[a-z]+(?:\.[a-z]+(?:-[a-z]+)*)+")

#: Days under which the corpus is cooked, so that the rules of weather, height, scale and season speak too.
DAYS = (
    Day(),
    Day(people=9, pots=(PotOwned(diameter_in=14),), eat="2027-07-03T18:30", trip_hours=30, trip_air_f=85),
    Day(people=2, pots=(PotOwned(diameter_in=8),), air_f=35, wind="windy", ground="snow", elevation_ft=7000),
    Day(scale=3.5, pots=(PotOwned(diameter_in=12, depth="deep"),), ground="damp", wind="breezy", screen=True),
    Day(charcoal=False, freezer=False, eat="18:30", trip_hours=120, cooler_quarts=20, trip_air_f=95),
    Day(temp_f=400, swaps=(Swap(food="butter", to="oil"), Swap(food="milk", to="dry milk"))),
)


@pytest.fixture(scope="module")
def corpus() -> list[Recipe]:
    return [
        read(path.read_text(encoding="utf-8"), file=path.name)
        for path in sorted((ROOT / "corpus" / "recipes").glob("*.txt"))
    ]


@pytest.fixture(scope="module")
def spoken(corpus: list[Recipe]) -> set[str]:
    """The ids of the rules that gave a reason somewhere in the corpus."""
    return {reason.rule for recipe in corpus for day in DAYS for reason in camp(recipe, day).why}


@pytest.mark.parametrize("rule", ALL, ids=lambda rule: rule.id)
def test_a_rule_is_named_chapter_dot_word(rule: Rule) -> None:
    assert ID.fullmatch(rule.id)


@pytest.mark.parametrize("rule", ALL, ids=lambda rule: rule.id)
def test_a_rule_says_one_sentence_and_where_it_comes_from(rule: Rule) -> None:
    assert rule.because.strip()
    assert rule.source.strip()
    assert "\n" not in rule.because


@pytest.mark.parametrize("rule", ALL, ids=lambda rule: rule.id)
def test_the_id_is_written_once_in_the_rules(rule: Rule) -> None:
    quoted = f'"{rule.id}"'
    places = [path for path in (ROOT / "rules").rglob("*.py") if quoted in path.read_text(encoding="utf-8")]
    tables = [
        path for path in (ROOT / "rules" / "tables").iterdir() if quoted in path.read_text(encoding="utf-8")
    ]
    assert len(places) + len(tables) == 1


def test_every_rule_speaks_in_the_corpus_or_is_pinned_by_a_test(spoken: set[str]) -> None:
    pinned = "\n".join(
        path.read_text(encoding="utf-8")
        for path in (ROOT / "tests").rglob("test_*.py")
        if path != Path(__file__)
    )
    silent = [rule.id for rule in ALL if rule.id not in spoken and f'"{rule.id}"' not in pinned]
    assert not silent, "these rules never speak: give each a corpus recipe or a test of its own"


def test_every_reason_is_a_filled_sentence(corpus: list[Recipe]) -> None:
    for recipe in corpus:
        for reason in camp(recipe, DAYS[1]).why:
            assert "{" not in reason.because
            assert reason.about.strip()
            assert reason.source.strip()
