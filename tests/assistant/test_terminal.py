"""Lines for a terminal."""

from __future__ import annotations

from assistant.show.forms import Look
from assistant.show.terminal import Page


def test_facts_are_not_broken_where_they_fit() -> None:
    page = Page(Look(width=24))
    page.facts(["for nine people", "", "two large pots", "at 18:30"])
    assert page.text().splitlines() == ["for nine people", "two large pots", "at 18:30"]
    page = Page(Look(width=40))
    page.facts(["for nine people", "two large pots", "at 18:30"])
    assert page.text().splitlines() == ["for nine people · two large pots", "at 18:30"]


def test_rows_wrap_in_their_last_column() -> None:
    page = Page(Look(width=20))
    page.rows([["17:05", "light the chimney now"]])
    assert page.text().splitlines() == ["  17:05  light the", "         chimney now"]


def test_a_counted_list_is_numbered_and_another_one_is_not() -> None:
    page = Page(Look())
    page.bullets(["one", "two"], sign="1.")
    page.bullets(["three"])
    assert page.text().splitlines() == ["  1.  one", "  2.  two", "  -  three"]


def test_signs_that_would_turn_the_writing_never_reach_the_terminal() -> None:
    page = Page(Look())
    page.say("a\u202eb\x1b[31m")
    assert page.text().splitlines() == ["  ab"]
