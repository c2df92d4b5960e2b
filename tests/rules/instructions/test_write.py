from __future__ import annotations

from rules.because import Ledger
from rules.circumstances import Day
from rules.instructions import write
from rules.method import graph
from rules.packs import divide
from rules.recipe import Family, Recipe
from tests.build import amount, dish, items, line, recipe


def told(of: Recipe, family: Family, ledger: Ledger) -> tuple[tuple[str, ...], tuple[str, ...]]:
    day = Day()
    packs = divide(of, items(of), graph(of), dish(family), day, Ledger())
    return write(of, items(of), graph(of), dish(family), packs, (), None, None, day, ledger)


def test_a_preserve_is_made_at_home_and_the_plan_says_that_it_is_no_camp_job() -> None:
    ledger = Ledger()
    of = recipe(line("cabbage", amount(1)), line("sea salt", amount(1, "tablespoon")), title="Kraut")
    home, camp = told(of, "preserve or ferment", ledger)
    assert home[0].startswith("Make it at home from 1 cabbage and 1 tablespoon sea salt")
    assert camp == ("Nothing is left to do at camp: it comes along ready.",)
    assert [reason.rule for reason in ledger.reasons] == ["steps.not-camp"]


def test_the_reason_counts_the_work_that_was_moved_home() -> None:
    ledger = Ledger()
    told(recipe(line("flour", amount(2, "cup"))), "batter bake", ledger)
    reason = next(reason for reason in ledger.reasons if reason.rule == "steps.home")
    assert "3 steps there leave" in reason.because
