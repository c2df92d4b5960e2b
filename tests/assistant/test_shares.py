"""Which share of a food each taking has, and what is left."""

from __future__ import annotations

import pytest

from assistant.reader.shares import ALL_LEFT, SOME, Shares


def told(*shares: float | None) -> list[float]:
    """The shares of takings of one food, settled when all are known."""
    account = Shares()
    numbers = [account.take(0, share, handled=False) for share in shares]
    return [account.share(0, number) for number in numbers]


@pytest.mark.parametrize(
    ("said", "settled"),
    [
        ([None], [1.0]),
        ([0.5, ALL_LEFT], [0.5, 1.0]),
        ([0.25, 0.75], [0.25, 0.75]),
        ([SOME], [0.5]),
        ([0.4, None], [0.4, 0.6]),
        ([None, None], [0.5, 0.5]),
    ],
)
def test_takings_come_to_all_there_is(said: list[float | None], settled: list[float]) -> None:
    assert told(*said) == settled


def test_what_is_cut_enters_nothing() -> None:
    account = Shares()
    cut = account.take(0, None, handled=True)
    assert not account.entered(0)
    assert account.share(0, cut) == 1.0


def test_a_food_is_gone_when_all_of_it_was_told() -> None:
    account = Shares()
    account.take(0, 0.5, handled=False)
    assert not account.entered(0)
    account.take(0, 0.5, handled=False)
    assert account.entered(0)
    assert not account.may_take(0, None, handled=False, again=False)
    assert account.may_take(0, None, handled=False, again=True)
