"""Fresh briquettes for a long cook: when they are lit, when they go on, how many (handbook chapter 5)."""

from __future__ import annotations

from rules.circumstances import Day
from rules.coals.chart import whole
from rules.coals.counts import Coals
from rules.coals.figures import figure
from rules.plan import Depth, Refresh


def renewals(
    coals: Coals, *, minutes: float, diameter_in: int, depth: Depth, day: Day
) -> tuple[Refresh, ...]:
    """Fresh coals during a stage, minutes counted from its start."""
    at, every = figure("renew after").value, figure("renew every").value
    found = []
    while at < minutes - 10:
        top, under = whole(coals.top * 0.42), whole(coals.under * 0.42)
        found.append(Refresh(at_min=at, light_at_min=at - figure("chimney").value, top=top, under=under))
        at += every
    return tuple(found)
