from __future__ import annotations

import pytest

from rules.because import Ledger
from rules.circumstances import Day
from rules.cold.raw_days import raw_food
from rules.plan import Bag, Hours, Pack
from tests.build import amount, items, line, pack, recipe

BEEF = recipe(line("ground beef", amount(2, "pound")))
FROZEN = pack("fresh", 0, of=BEEF, travels="frozen", label="raw ground beef")
COOL = pack("fresh", 0, of=BEEF, travels="cool", label="raw ground beef")
#: Thawed after ten to thirty hours.
THAW = Bag(pack=FROZEN.id, thaw_hours=Hours(low=10, high=30))


@pytest.mark.parametrize(
    ("beef", "day", "words"),
    [
        pytest.param(COOL, Day(trip_hours=24), None, id="a day lasts"),
        pytest.param(COOL, Day(trip_hours=25), "freeze it solid", id="longer wants the freezer"),
        pytest.param(COOL, Day(trip_hours=40, freezer=False), "without a freezer", id="no freezer"),
        pytest.param(FROZEN, Day(trip_hours=44), None, id="frozen, counted from its thaw"),
        pytest.param(FROZEN, Day(trip_hours=45), "even frozen", id="too long after its thaw"),
    ],
)
def test_raw_meat_is_held_against_its_days(beef: Pack, day: Day, words: str | None) -> None:
    """Ground beef keeps 1 to 2 days (cold storage chart, FoodSafety.gov); the low end counts."""
    ledger = Ledger()
    notes = list(raw_food((beef,), (THAW,), items(BEEF), day, ledger))
    assert bool(notes) is bool(words)
    assert all(words is not None and words in note for note in notes)
    assert [reason.rule for reason in ledger.reasons] == ["cold.raw-days"]


def test_food_that_is_not_raw_is_not_counted() -> None:
    made = recipe(line("butter", amount(1, "pound")), line("smoked sausage", amount(1, "pound")))
    packs = (pack("fresh", 0, 1, of=made, travels="cool"),)
    assert list(raw_food(packs, (), items(made), Day(trip_hours=300), Ledger())) == []
