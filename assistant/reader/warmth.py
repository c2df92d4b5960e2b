"""Temperatures of the method in °F, and the kitchen oven: what it is heated to, in which words, with what inside."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import NamedTuple

from assistant.reader.prose import Quantity

#: What an oven can be, to read a bare figure: below this a figure without a letter is Celsius.
BARE_FAHRENHEIT = 250.0
STEP = 5


class Temperature(NamedTuple):
    """A temperature [°F] and where it stands; Celsius figures are converted and rounded to 5."""

    fahrenheit: float
    start: int
    end: int
    celsius: bool = False


def temperatures(amounts: Sequence[Quantity]) -> tuple[Temperature, ...]:
    """The temperatures among some quantities, each stated once: of "350 °F (180 °C)" the first unit counts."""
    found: list[Temperature] = []
    for quantity in amounts:
        if quantity.sort != "temperature":
            continue
        celsius = quantity.unit == "celsius" or (quantity.unit == "degree" and quantity.low < BARE_FAHRENHEIT)
        degrees = STEP * round((quantity.low * 9 / 5 + 32) / STEP) if celsius else quantity.low
        here = Temperature(float(degrees), quantity.start, quantity.end, celsius)
        if (
            found
            and quantity.start - found[-1].end <= 12
            and celsius != found[-1].celsius
            and abs(found[-1].fahrenheit - degrees) <= 25
        ):
            if found[-1].celsius:
                found[-1] = here._replace(start=found[-1].start)
            else:
                found[-1] = found[-1]._replace(end=here.end)
            continue
        found.append(here)
    return tuple(found)


STATED = re.compile(
    r"\bgas(?: mark)? ?\d{1,2}|\b(?:very )?(?:slow|cool|moderate|moderately hot|hot|quick|low|warm|brisk|medium|fast) oven|\boven (?:at|to|on|of) (?:max(?:imum)? temp(?:erature)?|medium temperature|low|high|max|medium|moderate)\b",
    re.IGNORECASE,
)
