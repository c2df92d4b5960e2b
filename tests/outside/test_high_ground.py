"""What high ground changes, against the printed tables; the boiling point has a file of its own.

Leavening: S. G. Purdy, Pie in the Sky (2005), recipe adjustment guide. Minutes: FoodSafety.gov, "Safe Cooking at High
Altitudes" (2 h at 325 °F become 2 h 30). Oven: Colorado State University Cooperative Extension (P. Kendall), news
release 12 Dec 2002 (15 to 20 °F more above 3,000 ft).
"""

from __future__ import annotations

import pytest

from rules.because import Ledger
from rules.cautions import less_leavener
from rules.circumstances import Day
from rules.coals.drafts import heat_figure
from tests.rules.coals.making import CAKE, action, heat, recipe, step


@pytest.mark.parametrize(
    ("feet", "low", "high"),
    [(3000, 0, 1 / 8), (5000, 1 / 8, 1 / 4), (7000, 1 / 4, 1 / 2), (10000, 1 / 2, 2 / 3)],
)
def test_less_leavener_per_teaspoon_is_the_printed_range(feet: float, low: float, high: float) -> None:
    """Exact, but for 2/3 printed with three digits."""
    row = less_leavener(feet)
    assert (row.low_tsp, row.high_tsp) == (pytest.approx(low), pytest.approx(high, abs=1e-3))
    assert "Purdy" in row.source


@pytest.mark.parametrize("feet", [2999.0, 3000.0, 7500.0])
def test_meat_at_325_takes_a_quarter_longer_from_three_thousand_feet(feet: float) -> None:
    """Printed: 2 hours become 2 hours 30."""
    roast = recipe(
        {"beef chuck": (3, "pound")},
        step(action("roast", "roast", 0, minutes=(120, 120), temp_f=325.0), temps=(325.0,)),
    )
    plan, _ = heat(roast, "roast", Day(elevation_ft=feet))
    assert plan is not None
    assert plan.stages[-1].minutes.high == (120 if feet < 3000 else 150)


def test_a_hotter_oven_is_offered_with_the_printed_degrees() -> None:
    ledger = Ledger()
    heat(CAKE, "batter bake", Day(elevation_ft=7000), ledger=ledger, leavened=True)
    (reason,) = [reason for reason in ledger.reasons if reason.rule == "oven.high-ground"]
    assert heat_figure("high ground oven").value == 15
    assert "15 to 20 °F more" in reason.because
    assert "Colorado State University" in reason.source
