"""The comparison of physics and printed figures is told as it is."""

from __future__ import annotations

import pytest

from rules.coals.misfit import chart_misfit, lines, log_deviation, log_misfit, share_range


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


def test_after_its_peak_the_log_is_left_by_the_curve_by_as_much_as_is_printed() -> None:
    """Four readings after the peak: the curve is never below the chimney by more than 0.03, nor above by more than 0.36."""
    root, most = log_deviation()
    misses = [row.by_curve - row.by_log for row in log_misfit()[2:]]
    assert root == pytest.approx((sum(miss**2 for miss in misses) / 4) ** 0.5)
    assert most == pytest.approx(0.35, abs=0.01)
    assert root == pytest.approx(0.19, abs=0.01)
    assert f"{most:+.2f} at the most" in lines()[-1]


def test_the_share_that_reaches_the_pot_is_printed_with_its_range() -> None:
    found = share_range()
    assert found.by_heat_low < found.share < found.by_heat_high
    assert found.by_cell_low < found.share < found.by_cell_high
    assert found.by_heat_low == pytest.approx(found.share * 23 / 26)
    assert any(f"{found.share:.3f}; {found.by_heat_low:.2f} to" in line for line in lines())


def test_every_cell_every_reading_and_every_row_has_its_line() -> None:
    told = "\n".join(lines())
    assert told.count("chart's coals") == 30
    assert told.count("after lighting") == 6
    assert told.count("(T - 70 °F)") == 5
    assert "10 in: 0.0756 (T - 70 °F), rounded, less the print: 0 at 325 °F" in told
