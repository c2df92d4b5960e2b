"""Alcohol left after cooking, against the retention table."""

from __future__ import annotations

import pytest

from rules.cautions import alcohol_left


@pytest.mark.parametrize(
    ("minutes", "printed_pct"), [(0, 85), (15, 40), (30, 35), (60, 25), (90, 20), (120, 10), (150, 5)]
)
def test_the_share_left_after_stirring_in_and_cooking(minutes: float, printed_pct: float) -> None:
    """USDA Table of Nutrient Retention Factors, Release 6, 2007, p. 12; exact on the printed times."""
    assert printed_pct == alcohol_left(minutes).left_pct


@pytest.mark.parametrize(("minutes", "at_least"), [(20, 40), (59, 35), (149, 10), (600, 5)])
def test_between_two_printed_times_nobody_is_told_of_less_than_there_is(
    minutes: float, at_least: float
) -> None:
    """The same table; the shorter of the two printed times is taken."""
    assert at_least == alcohol_left(minutes).left_pct


def test_a_drink_that_is_never_heated() -> None:
    """The same table: no heat, stored overnight, 70 %."""
    assert alcohol_left(None).left_pct == 70
