"""Temperatures of the method in °F, and the words for an oven's heat."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import NamedTuple

from assistant.reader.prose import Quantity
from rules import units

#: Below this a figure without a letter is Celsius: hardly an oven is set so low in °F, none so high in °C.
BARE_FAHRENHEIT = 250.0
#: Converted figures are rounded to this, as cooks set an oven [°F].
STEP = 5
#: Two figures this near each other in the text and in heat are one temperature told twice.
NEAR_CHARACTERS, NEAR_DEGREES = 12, 25
STATED = re.compile(
    r"\bgas(?: mark)? ?\d{1,2}"
    r"|\b(?:very )?(?:slow|cool|moderate|moderately hot|hot|quick|low|warm|brisk|medium|fast) oven"
    r"|\boven (?:at|to|on|of) (?:max(?:imum)? temp(?:erature)?|medium temperature|low|high|max|medium|moderate)\b"
    r"|\b(?:max(?:imum)?|medium|high) temp(?:erature)?\b",
    re.IGNORECASE,
)


class Temperature(NamedTuple):
    """A temperature [°F] and where it stands; Celsius figures are converted and rounded to 5."""

    fahrenheit: float
    start: int
    end: int
    celsius: bool = False


def is_celsius(figure: float) -> bool:
    """Whether an oven's figure without a letter is one of Celsius."""
    return figure < BARE_FAHRENHEIT


def fahrenheit(celsius: float) -> float:
    """Degrees Celsius in °F, rounded to 5."""
    return float(STEP * round(units.to(celsius, "celsius", "fahrenheit") / STEP))


def temperatures(amounts: Sequence[Quantity]) -> tuple[Temperature, ...]:
    """The temperatures among some quantities, each stated once: of "180 °C (350 °F)" the Fahrenheit figure counts."""
    found: list[Temperature] = []
    for quantity in amounts:
        if quantity.sort != "temperature":
            continue
        celsius = quantity.unit == "celsius" or (quantity.unit == "degree" and is_celsius(quantity.low))
        here = Temperature(
            fahrenheit(quantity.low) if celsius else quantity.low, quantity.start, quantity.end, celsius
        )
        if found and _told_twice(found[-1], here):
            known = found[-1]
            found[-1] = here._replace(start=known.start) if known.celsius else known._replace(end=here.end)
        else:
            found.append(here)
    return tuple(found)


def _told_twice(first: Temperature, second: Temperature) -> bool:
    near = second.start - first.end <= NEAR_CHARACTERS
    return (
        near and first.celsius != second.celsius and abs(first.fahrenheit - second.fahrenheit) <= NEAR_DEGREES
    )
