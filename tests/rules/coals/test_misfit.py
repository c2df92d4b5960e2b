"""The comparison of physics and printed figures is told as it is."""

from __future__ import annotations

import pytest

from rules.coals.misfit import chart_misfit, lines, log_misfit


def test_every_cell_of_the_chart_is_compared() -> None:
    cells = chart_misfit()
    assert len(cells) == 30
    assert all(0.4 < cell.ratio < 1.8 for cell in cells)


def test_the_share_that_reaches_the_pot_makes_the_two_agree_on_the_whole() -> None:
    """The one fitted constant: the geometric mean of the ratios is one, within the constant's printed digits."""
    product = 1.0
    for cell in chart_misfit():
        product *= cell.ratio
    assert product ** (1 / 30) == pytest.approx(1, abs=0.02)


def test_the_log_of_a_chimney_was_kept_out_of_the_fit_and_falls_sooner() -> None:
    rows = log_misfit()
    assert [row.after_min for row in rows] == [15, 45, 55, 65, 95, 105]
    by_log = [row.by_log for row in rows]
    assert by_log == sorted(by_log, reverse=True)
    assert max(abs(row.by_curve - row.by_log) for row in rows) < 0.4


def test_a_line_is_said_for_each() -> None:
    assert len(lines()) == 36
    assert "12 in, 350 °F" in "\n".join(lines())
