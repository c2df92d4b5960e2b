"""When to turn the pot and its lid, and when to look first (handbook chapter 5)."""

from __future__ import annotations

from rules.because import Rule
from rules.circumstances import Day
from rules.coals.counts import Way
from rules.coals.figures import figure
from rules.plan import Reason

TURN = Rule(
    id="coals.turn",
    because="every {minutes} minutes the lid goes a third of a turn one way and the pot a third the other way: the"
    " coals lie unevenly, the food must not feel it",
)
TURNED: frozenset[Way] = frozenset({"bake", "roast", "gentle"})


def turn_every(way: Way, aim_f: float, day: Day) -> int | None:
    """Minutes between turns, longer in calm air at low heat; None where the lid's coals do no baking."""
    if way not in TURNED:
        return None
    is_low = day.wind == "calm" and aim_f <= figure("low heat").value
    return round(figure("turn calm and low" if is_low else "turn").value)


def turning(minutes: int) -> Reason:
    """Why it is turned."""
    return TURN.says("turning", figure("turn"), minutes=minutes)
