"""What is lit, when, and how much to bring (handbook chapter 5: coals moved from one stage to the next count once)."""

from __future__ import annotations

import math
from collections.abc import Iterable

from rules.because import Rule
from rules.coals.figures import figure
from rules.plan import Batch, Fuel, Reason

RESERVE = Rule(
    id="fuel.reserve",
    because="{reserve} briquettes more than the {lit} that are lit: nobody drives back for charcoal",
)
LIGHT = Rule(
    id="fuel.chimney",
    because="briquettes take 15 to {minutes:.0f} minutes in the chimney until they are ashed over",
)
BRIQUETTES = Rule(
    id="fuel.kind",
    because="the counts are for standard briquettes, {kg:.1f} kg here; lump charcoal and wood coals are uneven and the"
    " counts do not hold for them",
)


def chimney_min() -> float:
    """How long before its use a batch is lit [min]."""
    return figure("chimney").value


def fuel(batches: Iterable[Batch]) -> Fuel:
    """The fuel of those lightings, with the reserve."""
    lit_at = tuple(sorted((batch for batch in batches if batch.count), key=lambda batch: batch.light_at_min))
    lit = sum(batch.count for batch in lit_at)
    reserve = math.ceil(lit * figure("reserve").value)
    kg = round((lit + reserve) * figure("mass").value / 1000, 1)
    return Fuel(lit=lit, reserve=reserve, briquettes=lit + reserve, kg=kg, batches=lit_at)


def reasons(total: Fuel) -> tuple[Reason, ...]:
    """Why so many, and when they are lit."""
    if not total.lit:
        return ()
    chimney, mass = figure("chimney"), figure("mass")
    return (
        LIGHT.says("fuel", chimney, minutes=chimney.value),
        RESERVE.says("fuel", reserve=total.reserve, lit=total.lit),
        BRIQUETTES.says("fuel", mass, kg=total.kg),
    )
