"""The family of a dish, from evidence (handbook chapter 7).

Words of the title, vessels, what the method makes, and what is worked out from amounts and deeds each cast votes; the
weights stand in `tables/families.toml`. The family with the most votes wins, a close second raises a question.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Mapping
from functools import cache
from typing import Literal

from rules import table
from rules.because import Ledger, Rule
from rules.facts import Facts
from rules.features import features
from rules.foods import Item
from rules.foods.names import plain
from rules.method import Graph
from rules.recipe import Family, Recipe, Struct

#: Two families this close in votes could both be meant.
CLOSE_VOTES = 1.0
#: What the end of a title says ("… with bean soup") counts this much.
BESIDE_WEIGHT = 0.3
#: What stands before the noun of a title ("bean" of "bean salad") counts this much.
BEFORE_WEIGHT = 0.5
#: Fewer votes than this are no evidence.
FEW_VOTES = 1.5

FAMILY = Rule(
    id="dish.family",
    because="this is run as a {family}: {evidence}",
    source="handbook of the trade, chapter 7; the weights of the evidence are ours",
)
HYDRATION = Rule(
    id="dish.hydration",
    because="milk, eggs, juice and water bring {hydration:.2f} of water to 1 of flour by weight: {sense}",
    source="handbook of the trade, chapter 7",
)
UNSURE = Rule(
    id="dish.unsure",
    because="the method tells too little of what it is; it is packed by its foods alone",
)


class Evidence(table.Row, frozen=True, kw_only=True):
    """One row of `families.toml`."""

    id: str
    kind: Literal["title", "vessel", "made", "seen"]
    words: tuple[str, ...] = ()
    feature: str | None = None
    #: a title's word that describes and is not the noun
    describes: bool = False
    weights: Mapping[str, float]
    says: str


class Dish(Struct, frozen=True, kw_only=True):
    """What the dish is. `hydration` is grams of water per gram of flour, None where it cannot be known."""

    family: Family
    second: Family | None = None
    evidence: tuple[str, ...] = ()
    hydration: float | None = None
    #: baking powder or soda raises it, by itself or in a mix
    leavened: bool = False
    #: yeast or a sourdough starter raises it
    yeasted: bool = False
    #: grams of flour in it
    flour_g: float = 0.0


@cache
def _evidence() -> tuple[Evidence, ...]:
    return table.read("families.toml", Evidence)


def decide(recipe: Recipe, items: tuple[Item, ...], graph: Graph, ledger: Ledger) -> Dish:
    """The family of the dish, with what spoke for it."""
    facts = Facts(recipe, items, graph)
    seen = features(facts)
    votes: defaultdict[str, float] = defaultdict(float)
    said: list[tuple[float, Evidence, str]] = []
    for row in _evidence():
        word, weight = _speaks(row, facts, seen)
        for family, vote in row.weights.items() if weight else ():
            votes[family] += vote * weight
        said.append((weight, row, word))
    ranked = sorted(votes, key=lambda family: (-votes[family], family))
    family = ranked[0] if ranked and votes[ranked[0]] >= FEW_VOTES else "other"
    second = None
    if len(ranked) > 1 and family != "other" and votes[family] - votes[ranked[1]] <= CLOSE_VOTES:
        second = ranked[1]
    dish = Dish(
        family=family,  # type: ignore[arg-type]
        second=second,  # type: ignore[arg-type]
        evidence=tuple(
            row.says.format(
                word=word, hydration=_two(facts.hydration), minutes=f"{facts.minutes('simmer', 'boil'):.0f}"
            )
            for weight, row, word in said
            if weight * row.weights.get(family, 0) > 0
        ),
        hydration=facts.hydration,
        leavened=facts.leavened,
        yeasted=facts.yeasted,
        flour_g=facts.flour_g,
    )
    _tell(dish, facts, ledger)
    return dish


def _speaks(row: Evidence, facts: Facts, seen: frozenset[str]) -> tuple[str, float]:
    """What was seen, and how much it weighs: 0 for nothing, less than 1 at the end of a title."""
    if row.kind == "seen":
        return row.feature or "", float(row.feature in seen)
    where = {"title": facts.title, "vessel": facts.vessels, "made": facts.made}[row.kind]
    found = _pattern(row.words).search(where)
    if not found:
        return "", 0.0
    return found.group(), _place_in_title(row, found, facts) if row.kind == "title" else 1.0


def _place_in_title(row: Evidence, found: re.Match[str], facts: Facts) -> float:
    """A noun counts whole at the end of the main title, half before another noun, little behind a "with"."""
    end = len(facts.main_title)
    if found.start() >= end:
        return BESIDE_WEIGHT
    if row.describes or found.end() == end:
        return 1.0
    ends = any(
        other.kind == "title"
        and (tail := _pattern(other.words).search(facts.main_title, found.end()))
        and tail.end() == end
        for other in _evidence()
    )
    return BEFORE_WEIGHT if ends else 1.0


@cache
def _pattern(words: tuple[str, ...]) -> re.Pattern[str]:
    longest_first = sorted(map(plain, words), key=len, reverse=True)
    return re.compile(r"(?<![\w-])(?:" + "|".join(map(re.escape, longest_first)) + r")(?![\w-])")


def _two(figure: float | None) -> str:
    return f"{figure:.2f}" if figure is not None else "some"


def _tell(dish: Dish, facts: Facts, ledger: Ledger) -> None:
    if dish.family == "other":
        ledger.note(UNSURE.says("family"))
        return
    evidence = "; ".join(dish.evidence) or "what little the text tells"
    ledger.note(FAMILY.says("family", family=dish.family, evidence=evidence))
    if facts.hydration is not None and facts.has_body:
        ledger.note(HYDRATION.says("family", hydration=facts.hydration, sense=facts.sense))
    if dish.second:
        ledger.ask(
            "family",
            f"This could be run as a {dish.family} or as a {dish.second}. Which is meant?",
            dish.family,
        )
