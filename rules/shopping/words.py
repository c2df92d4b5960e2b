"""Words of the list: masses and volumes as a shelf prints them, whole pieces, and what is left, never too exact."""

from __future__ import annotations

import math

from rules import units
from rules.circumstances import Day
from rules.foods.names import singulars
from rules.recipe import Amount
from rules.units import kitchen

POUND_STEP = 0.25
GRAM_STEP = 50
#: Less is told in spoons.
LEAST_CUPS = 3 / 16
#: A quarter cup is told when so much of it is there: rather less than more.
ROUND_UP_FROM = 0.25
#: Less is told to the half ounce.
HALVES_UNDER_OZ = 2
#: The same word for one and for many.
UNCHANGED = frozenset(
    {"trout", "salmon", "fish", "shrimp", "squid", "cod", "tuna", "mackerel", "asparagus", "broccoli", "okra"}
)


def whole(count: float) -> int:
    """Whole things, a hair's breadth forgiven."""
    return max(1, math.ceil(count - 0.02))


def plural(word: str, count: int) -> str:
    """The word for so many of it."""
    if count == 1:
        return word
    if word in ("tomato", "potato", "mango"):
        return f"{word}es"
    return f"{word[:-1]}ves" if word == "half" else units.plural(word, count)


def counted(name: str, count: int) -> str:
    """A food's name for so many of it: "1 egg", "3 lemons"."""
    *before, last = name.split() or [""]
    one = singulars(last)
    if last in UNCHANGED or one in UNCHANGED:
        return name
    return " ".join((*before, plural(one, count)))


def mass(grams: float, day: Day) -> str:
    """A mass in the cook's own units."""
    if day.units == "metric":
        return f"{grams / 1000:.2g} kg" if grams >= 1000 else f"{_round(grams)} g"
    ounces = units.to(grams, "gram", "ounce")
    return f"{ounces / 16:.2g} lb" if ounces >= 16 else f"{max(1, round(ounces))} oz"


def volume(milliliters: float, day: Day) -> str:
    """A volume in the cook's own units."""
    if day.units == "metric":
        return f"{milliliters / 1000:.2g} l" if milliliters >= 1000 else f"{_round(milliliters)} ml"
    cups = units.to(milliliters, "milliliter", "cup")
    if cups >= 0.25:
        return kitchen(Amount(low=cups, high=cups, unit="cup"), units="us")
    spoons = units.to(milliliters, "milliliter", "tablespoon")
    return kitchen(Amount(low=spoons, high=spoons, unit="tablespoon"), units="us")


def by_weight(wanted: float, day: Day) -> str:
    """Meat, fish and what is weighed at the counter, up to the next quarter pound or 50 grams."""
    if day.units == "metric":
        return mass(math.ceil(wanted / GRAM_STEP - 0.02) * GRAM_STEP, day)
    pounds = math.ceil(units.to(wanted, "gram", "pound") / POUND_STEP - 0.02) * POUND_STEP
    return kitchen(Amount(low=pounds, high=pounds, unit="pound"), units="us")


def about(exact: float, told: float, words: str) -> str:
    """The words, with "about" where they round by more than a twentieth."""
    return words if abs(exact - told) <= exact / 20 else f"about {words}"


def rough_volume(milliliters: float, day: Day) -> str:
    """What is left in a bottle, to the quarter cup: nobody measures it."""
    if day.units == "metric":
        return volume(milliliters, day)
    cups = units.to(milliliters, "milliliter", "cup")
    if cups >= LEAST_CUPS:
        told = max(1, math.floor(cups * 4 + ROUND_UP_FROM)) / 4
        return about(cups, told, kitchen(Amount(low=told, high=told, unit="cup"), units="us"))
    spoons = units.to(milliliters, "milliliter", "tablespoon")
    told = max(1.0, round(spoons))
    return about(spoons, told, kitchen(Amount(low=told, high=told, unit="tablespoon"), units="us"))


def rough_mass(grams: float, day: Day) -> str:
    """What is left in a package: whole ounces or quarter pounds, 10 grams or 0.1 kg."""
    if day.units == "metric":
        return mass(grams, day)
    ounces = units.to(grams, "gram", "ounce")
    if ounces >= 16:
        told = round(ounces / 4) / 4
        return about(ounces / 16, told, f"{units.number(told)} lb")
    told = max(0.5, round(2 * ounces) / 2 if ounces < HALVES_UNDER_OZ else round(ounces))
    return about(ounces, told, f"{units.number(told)} oz")


def _round(figure: float) -> int:
    return int(round(figure, -1)) if figure >= 100 else max(1, round(figure / 5) * 5)
