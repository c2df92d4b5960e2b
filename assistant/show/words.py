"""Figures of a plan in words: the same wording on the terminal, in Markdown, in tables and in the chat."""

from __future__ import annotations

from datetime import datetime
from typing import Protocol

from rules import clock
from rules.circumstances import Day, Units
from rules.habit.record import main_stage as main_stage
from rules.plan import (
    Depth,
    PotPlan,
    Reason,
    Stage,
)
from rules.recipe import Amount
from rules.units import kitchen
from rules.wording import joined as joined

COUNTS = (
    "no",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
)
KG_PER_LB = 0.45359237


class Range(Protocol):
    """Anything with a low and a high end."""

    @property
    def low(self) -> float:
        """The low end."""
        ...

    @property
    def high(self) -> float:
        """The high end."""
        ...


def number(value: float) -> str:
    """A figure without needless digits: 2, 2.5, 0.75."""
    return f"{round(value, 2):g}"


def count(things: int) -> str:
    """How many, in a word up to twelve."""
    return COUNTS[things] if things < len(COUNTS) else str(things)


def span(ends: Range, unit: str = "") -> str:
    """A range in words: "25 to 30 minutes", or one figure where the ends agree."""
    low, high = number(ends.low), number(ends.high)
    words = low if low == high else f"{low} to {high}"
    return f"{words} {unit}".strip()


def whole_span(ends: Range) -> str:
    """A range in whole figures: estimates carry no decimals."""
    low, high = round(ends.low), round(ends.high)
    return f"{low}" if low == high else f"{low} to {high}"


def minutes(ends: Range) -> str:
    """A stretch of minutes; from two hours up in hours and minutes."""
    if ends.low < 120:
        return span(ends, "minute" if ends.low == ends.high == 1 else "minutes")
    low, high = duration(ends.low), duration(ends.high)
    return low if low == high else f"{low} to {high}"


def duration(total_min: float) -> str:
    """Minutes as "45 min", "2 h", "2 h 30 min", "3 days"."""
    whole = round(total_min)
    if whole < 120:
        return f"{whole} min"
    if whole >= 2 * 24 * 60:
        return f"{round(whole / (24 * 60))} days"
    hours, rest = divmod(whole, 60)
    return f"{hours} h {rest} min" if rest else f"{hours} h"


def when(at_min: float, day: Day | None = None) -> str:
    """A moment counted from the meal: its clock time where the meal has one, else "75 min before"."""
    told = clock.told(day, at_min) if day is not None else None
    if told is not None:
        return told
    if round(at_min) == 0:
        return "at the meal"
    return f"{duration(abs(at_min))} {'before' if at_min < 0 else 'after'}"


def date(moment: datetime) -> str:
    """A date as a calendar on the wall has it: "Sat 3 Jul"."""
    return f"{clock.WEEKDAYS[moment.weekday()]} {moment.day} {clock.MONTHS[moment.month - 1]}"


def meal(day: Day) -> str:
    """When the meal is: "Sat 3 Jul 18:30", "18:30", or nothing where nobody said."""
    at = clock.meal(day)
    if at is None:
        return ""
    return f"{date(at)} {at:%H:%M}" if clock.has_date(day) else f"{at:%H:%M}"


def degrees(temp_f: float, units: Units = "us") -> str:
    """A temperature in the cook's units, the other one behind it."""
    fahrenheit, celsius = f"{round(temp_f)} °F", f"{round((temp_f - 32) * 5 / 9)} °C"
    return f"{celsius} ({fahrenheit})" if units == "metric" else f"{fahrenheit} ({celsius})"


def temperature(temp_f: float, units: Units = "us") -> str:
    """A temperature in the cook's units alone."""
    return degrees(temp_f, units).partition(" (")[0]


def weight(kg: float, units: Units = "us") -> str:
    """A weight in the cook's units."""
    return f"{number(round(kg, 1))} kg" if units == "metric" else f"{number(round(kg / KG_PER_LB, 1))} lb"


def pot(pot_plan: PotPlan) -> str:
    """The pot in words: "a 12-inch pot (6 quarts)", "two deep 10-inch pots"."""
    depth = "deep " if pot_plan.depth == "deep" else ""
    size = f"{depth}{pot_plan.diameter_in}-inch"
    if pot_plan.count == 1:
        article = "an" if not depth and pot_plan.diameter_in == 8 else "a"
        return f"{article} {size} pot ({number(pot_plan.quarts)} quarts)"
    return f"{count(pot_plan.count)} {size} pots ({number(pot_plan.quarts)} quarts each)"


def depth_of(depth: Depth) -> str:
    """The depth as one says it of a pot."""
    return "deep" if depth == "deep" else "regular"


def fill(share: float) -> str:
    """How full the pot is, in the fractions that people see."""
    marks = (
        (0.15, "hardly covered"), (0.29, "a quarter full"), (0.42, "a third full"), (0.58, "half full"),
        (0.71, "two thirds full"), (0.82, "three quarters full"), (0.99, "nearly full"),
    )  # fmt: skip
    return next((words for most, words in marks if share <= most), "too full")


def coals(stage: Stage) -> str:
    """The briquettes of a stage: "17 on the lid, 8 under"."""
    if not stage.top and not stage.under:
        return "no coals"
    if not stage.top:
        return f"{stage.under} under, none on the lid"
    if not stage.under:
        return f"{stage.top} on the lid, none under"
    return f"{stage.top} on the lid, {stage.under} under"


def capital(text: str) -> str:
    """The text with a capital letter in front."""
    text = text.strip()
    return text[:1].upper() + text[1:]


def sentence(text: str) -> str:
    """The text with a capital and one full stop."""
    text = capital(text)
    return text + ("" if text.endswith((".", "!", "?")) else ".")


def because(reason: Reason) -> str:
    """A reason as a sentence."""
    return sentence(reason.because)


def amount(of: Amount | None, units: Units = "us") -> str:
    """An amount as people measure it; empty when the recipe gives none."""
    return kitchen(of, units=units) if of is not None else ""
