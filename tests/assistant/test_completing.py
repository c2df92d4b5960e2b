"""What Tab offers while a sentence is typed."""

from __future__ import annotations

import pytest

from assistant.chat.completing import MOST, Completion, completions
from assistant.reader.read import read
from tests.talks import CORPUS

COBBLER = read((CORPUS / "recipes" / "river-peach-cobbler.txt").read_text(encoding="utf-8"))


@pytest.mark.parametrize(
    ("before", "offered"),
    [
        ("how many br", Completion("how many briquettes?", -11)),
        ("leave out the van", Completion("vanilla extract", -3)),
        ("oil instead of but", Completion("butter", -3)),
        ("why is the baking po", Completion("baking powder", -9)),
        ("add a cup of flo", Completion("all-purpose flour", -3)),
        ("open fri", Completion("Friday", -3)),
    ],
)
def test_foods_examples_and_names_are_offered(before: str, offered: Completion) -> None:
    assert offered in completions(before, recipe=COBBLER, kept=("Friday", "Rain"))


def test_an_empty_line_offers_a_few_things_to_say() -> None:
    offered = completions("", recipe=None)
    assert len(offered) == MOST
    assert Completion("we will be twelve", 0) in offered


@pytest.mark.parametrize("before", ["zzz", "we are nine", "how many briquettes?", "   x"])
def test_nothing_is_offered_where_nothing_fits(before: str) -> None:
    assert completions(before, recipe=COBBLER) == []


def test_what_is_offered_begins_with_what_stands_there() -> None:
    for before in ("pe", "lemon j", "SAL"):
        for text, start in completions(before, recipe=COBBLER):
            assert before[start:].lower() in text.lower()
