from __future__ import annotations

import pytest

from rules.because import COMMON, RULES, Ledger, Rule
from rules.table import Row


@pytest.fixture
def rule(monkeypatch: pytest.MonkeyPatch) -> Rule:
    monkeypatch.delitem(RULES, "test.rule", raising=False)
    made = Rule(id="test.rule", because="{food} rides dry for {hours} hours")
    monkeypatch.delitem(RULES, "test.rule")
    return made


def test_a_rule_fills_its_sentence_and_quotes_its_own_source(rule: Rule) -> None:
    reason = rule.says("flour", food="flour", hours=3)
    assert reason.rule == "test.rule"
    assert reason.about == "flour"
    assert reason.because == "flour rides dry for 3 hours"
    assert reason.source == COMMON


def test_a_row_that_was_read_lends_its_source(rule: Rule) -> None:
    row = Row(file="x.csv", line=2, basis="published", source="a printed table")
    assert rule.says("flour", row, food="flour", hours=3).source == "a printed table"


def test_a_sentence_with_an_empty_slot_is_an_error(rule: Rule) -> None:
    with pytest.raises(KeyError, match="hours"):
        rule.says("flour", food="flour")


def test_an_id_is_registered_once(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(RULES, "test.twice", object())
    with pytest.raises(ValueError, match=r"test\.twice is registered twice"):
        Rule(id="test.twice", because="never")


def test_slots_are_the_names_between_braces(rule: Rule) -> None:
    assert rule.slots == {"food", "hours"}


def test_a_ledger_keeps_each_reason_and_question_once_and_in_order(rule: Rule) -> None:
    ledger = Ledger()
    first = rule.says("flour", food="flour", hours=3)
    second = rule.says("salt", food="salt", hours=3)
    ledger.note(first, second, first)
    ledger.ask("oven", "How hot?", "350 °F")
    ledger.ask("oven", "How hot?", "350 °F")
    assert ledger.reasons == (first, second)
    assert [question.about for question in ledger.questions] == ["oven"]
