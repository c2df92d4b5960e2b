"""The oven's temperatures in a step, in the order of the text; a second spell takes what the oven is turned to.

The reader gives the figures that carry a unit; "bake at 425, then reduce to 350" leaves it to the oven to say that
degrees are meant. Handbook chapter 5.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from rules.recipe import Step

#: Above this [°F] a temperature belongs to an oven or hot fat, below it to food.
HOT_F = 220.0
#: A bare figure in this range is taken for °C: ovens are not set to 140 to 240 °F; below it food is meant.
CELSIUS_FROM, CELSIUS_UP_TO = 140.0, 240.0
HOTTEST_F = 550.0
READ_CHARS = 2000
#: How much cooler a fan oven is set than a still one, as recipes print the pair [°F].
FAN_LESS_F = (15.0, 45.0)
_FAN = re.compile(r"\b(?:fan|convection)\b", re.IGNORECASE)
_TURNED = re.compile(
    r"\b(?:reduc|lower|drop|turn(?:ing)? (?:it |the oven |the heat )?(?:down|up)|increas|rais)", re.IGNORECASE
)
_FIGURE = re.compile(
    r"(?:\b(?:at|to|until|oven|an?|of)\s+(?:about\s+|around\s+)?)([1-5][0-9]{2})(?![\d.,/]*\d)"
    r"(?:\s*(?:-|to|–)\s*[1-5][0-9]{2})?\s*(?:°|º|degrees?\b|deg\b)?\s*([fc]\b)?(?!\s*(?:g|ml|gram|grams|people)\b)",
    re.IGNORECASE,
)


def oven_figures(step: Step, wanted: int) -> tuple[float, ...]:
    """The hot temperatures of a step [°F]; bare figures of the text count where fewer than `wanted` carry a unit."""
    told = _still(step, tuple(figure for figure in step.temps_f if figure > HOT_F))
    if len(told) >= wanted:
        return told
    bare = tuple(_bare(step.text[:READ_CHARS]))
    return bare if len(bare) > len(told) else told


def _still(step: Step, told: tuple[float, ...]) -> tuple[float, ...]:
    """Without the fan oven's figure where it stands beside the still one's: "200C/fan 180C" is one oven."""
    if len(told) < 2 or not _FAN.search(step.text[:READ_CHARS]):
        return told
    return tuple(
        figure
        for figure in told
        if not any(FAN_LESS_F[0] <= other - figure <= FAN_LESS_F[1] for other in told)
    )


def _bare(text: str) -> list[float]:
    found = []
    for number, unit in _FIGURE.findall(text):
        value = float(number)
        is_celsius = unit.lower() == "c" or (not unit and value <= CELSIUS_UP_TO)
        if is_celsius and value < CELSIUS_FROM:
            continue
        temp = value * 1.8 + 32 if is_celsius else value
        if HOT_F < temp <= HOTTEST_F:
            found.append(5.0 * round(temp / 5))
    return found


def spell_heats(step: Step, before_f: float | None, spells: int) -> Sequence[float | None]:
    """The temperature of each oven spell of a step [°F]; `before_f` is where the oven stood when the step began."""
    told = oven_figures(step, spells)
    heats: list[float | None] = list(told) or [before_f]
    if told and before_f is not None and _TURNED.search(step.text[:READ_CHARS]):
        # "Bake 15 minutes, then reduce to 425": the figure is for what follows.
        heats.insert(0, before_f)
    return [heats[min(place, len(heats) - 1)] for place in range(spells)]
