"""What is lit, when, and how much to bring (handbook chapter 5: coals moved from one stage to the next count once)."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from rules.because import Rule
from rules.coals.cook import POUND_KG
from rules.coals.figures import figure
from rules.plan import Batch, Fuel, Reason, Stage, StageKind

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
    because="the counts are for standard briquettes, {kg:.1f} kg or {lb:.1f} lb here; lump charcoal and wood coals are uneven and the"
    " counts do not hold for them",
)
LOADS = Rule(
    id="fuel.loads",
    because="the chimney, which holds about {holds:.0f}, is filled {loads} times, each with a starter cube or two sheets"
    " of newspaper under it",
)
STACKED = Rule(
    id="fuel.stacked",
    because="the pots may stand on one another, up to {high} high: the {top} coals on a lid are the {under} wanted under"
    " the next pot, so {spared} fewer are lit; that pot is hotter from below, so give it a trivet, and every turn and"
    " look takes the stack down",
)
#: Stages in which a lid stays on but for a look.
COVERED: frozenset[StageKind] = frozenset({"warm", "bake", "roast", "brown top"})


def chimney_min() -> float:
    """How long before its use a batch is lit [min]."""
    return figure("chimney").value


def fuel(batches: Iterable[Batch], *, stacked_saves: int = 0) -> Fuel:
    """The fuel of those lightings, with the reserve; a lighting of more than a chimney holds is several loads."""
    lit_at = tuple(sorted((batch for batch in batches if batch.count), key=lambda batch: batch.light_at_min))
    lit = sum(batch.count for batch in lit_at)
    reserve = math.ceil(lit * figure("reserve").value)
    mass_kg = (lit + reserve) * figure("mass").value / 1000
    holds = figure("chimney holds").value
    return Fuel(
        lit=lit,
        reserve=reserve,
        briquettes=lit + reserve,
        kg=round(mass_kg, 1),
        lb=round(mass_kg / POUND_KG, 1),
        chimney_loads=sum(math.ceil(batch.count / holds) for batch in lit_at),
        stacked_saves=stacked_saves,
        batches=lit_at,
    )


def stacked(stages: Sequence[Stage], pots: int) -> tuple[int, tuple[Reason, ...]]:
    """How many briquettes are spared where the pots of one bake stand on one another, and how; none where they cannot.

    They can where every stage is covered and the lid bears what the next pot wants below.
    """
    over = [stage for stage in stages if stage.top + stage.under]
    if pots < 2 or not over or any(stage.kind not in COVERED or stage.top < stage.under for stage in over):
        return 0, ()
    high = min(pots, round(figure("stack").value))
    carried = pots - math.ceil(pots / high)
    first = max(stage.under for stage in over)
    spared = carried * (first + sum(more.under for stage in over for more in stage.refresh))
    main = max(over, key=lambda stage: stage.minutes.high if stage.minutes else 0.0)
    told = STACKED.says("fuel", figure("stack"), high=high, top=main.top, under=main.under, spared=spared)
    return spared, (told,)


def reasons(total: Fuel) -> tuple[Reason, ...]:
    """Why so many, and when they are lit."""
    if not total.lit:
        return ()
    chimney, mass, holds = figure("chimney"), figure("mass"), figure("chimney holds")
    return (
        LIGHT.says("fuel", chimney, minutes=chimney.value),
        LOADS.says("fuel", holds, loads=total.chimney_loads, holds=holds.value),
        RESERVE.says("fuel", reserve=total.reserve, lit=total.lit),
        BRIQUETTES.says("fuel", mass, kg=total.kg, lb=total.lb),
    )
