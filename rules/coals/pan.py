"""Spells in a pan as stages: browning and frying, hot or gentle (handbook chapters 5 and 7)."""

from __future__ import annotations

from collections.abc import Sequence

from rules.because import Rule
from rules.coals.counts import Way
from rules.coals.drafts import Draft, family_heat, heat_figure, minutes
from rules.coals.kitchen import FRIED, WET, Kitchen
from rules.coals.pieces import Kind, Piece
from rules.recipe import Family

#: Spells in a pan.
PANNED: frozenset[Kind] = frozenset({"fry", "brown", "heat"})
#: Families fried batch by batch: the text's time is for one of them.
IN_BATCHES: frozenset[Family] = frozenset({"griddle", "deep fry"})
#: Nothing stands over hot coals so long: what takes this long renders or stews in its fat [min].
LONG_FRY_MIN = 30.0
#: Oil at this temperature is there to fry in [°F].
OIL_F = 325.0
#: What is fried in turns keeps its coals busy this long at least [min], low and high.
LEAST_IN_TURNS_MIN = (10.0, 15.0)
#: Coals under a pan do little in less than this [min], low and high.
SHORTEST_MIN = (3.0, 5.0)

IN_TURNS = Rule(
    id="heat.batches",
    because="it is fried in about {batches:.0f} batches, one after the other: the minutes are for all of them",
)


def fried(group: Sequence[Piece], all_fried: Sequence[Piece], kitchen: Kitchen) -> list[Draft]:
    """Browning and frying: meat and what wants a crust hot, the rest gently; one stage each at most."""
    hot = [piece for piece in group if _is_hot(piece, kitchen, all_fried)]
    gentle = [piece for piece in group if piece not in hot]
    is_main = kitchen.family in FRIED
    is_deep = _is_deep(all_fried, kitchen)
    drafts = []
    ways: tuple[tuple[list[Piece], Way], ...] = ((gentle, "gentle fry"), (hot, "fry"))
    for some, way in ways:
        if not some:
            continue
        browns = way == "fry" and not is_main and kitchen.has_flesh
        is_aside = all(piece.does == "saute" for piece in some)
        key = "brown" if browns else "fry main" if is_main and not is_aside else "fry"
        low, high = _in_turns(some, kitchen) if kitchen.family in IN_BATCHES else minutes(some, key)
        drafts.append(
            Draft(
                kind="brown" if browns else "fry",
                way=way,
                low_min=max(low, SHORTEST_MIN[0]),
                high_min=max(high, SHORTEST_MIN[1]),
                temp_f=next(
                    (piece.temp_f for piece in (*some, *(all_fried if is_deep else ())) if piece.temp_f), None
                ),
                look="brown" if browns else "deep fry" if is_deep and way == "fry" else way,
                is_main=is_main,
            )
        )
    return drafts if group[0] in gentle else drafts[::-1]


def _is_hot(piece: Piece, kitchen: Kitchen, all_fried: Sequence[Piece]) -> bool:
    """Hot: raw meat, a brown crust on a dish with meat, deep fat, a high flame; gentle: the rest."""
    if _is_deep(all_fried, kitchen):
        return True
    if piece.heat == "low" or piece.kind == "heat" or kitchen.family == "griddle":
        return False
    if piece.longest_min >= LONG_FRY_MIN:
        return False
    if piece.has_flesh or piece.heat == "high":
        return True
    if piece.does == "saute" and kitchen.family not in WET:
        return False
    if piece.kind == "brown":
        return kitchen.has_flesh
    if kitchen.family == "pan fry or saute":
        # A pan of meat that the text does not name again ("cook for five minutes a side").
        return kitchen.has_flesh and not piece.uses
    # The only pan of a stew with meat is the one in which the meat is browned.
    return kitchen.family in WET and kitchen.has_flesh and not any(_browns(other) for other in all_fried)


def _is_deep(all_fried: Sequence[Piece], kitchen: Kitchen) -> bool:
    """Whether it is fried in a depth of oil: the family says so, or oil brought to a temperature in a pan dish."""
    return kitchen.family == "deep fry" or (
        kitchen.family in FRIED and any((piece.temp_f or 0) >= OIL_F for piece in all_fried)
    )


def _browns(piece: Piece) -> bool:
    return piece.kind == "brown" or piece.has_flesh


def _in_turns(some: Sequence[Piece], kitchen: Kitchen) -> tuple[float, float]:
    """What is fried batch by batch takes its time as often as there are batches; untimed, the family's usual time."""
    row = family_heat(kitchen.family)
    timed = [piece for piece in some if piece.is_timed]
    if not timed:
        return row.low_min, row.high_min
    low, high = minutes(timed, "fry main")
    if low >= row.low_min:
        return low, high
    batches = heat_figure("batches")
    kitchen.ledger.note(IN_TURNS.says("fry", batches, batches=batches.value))
    least_low, least_high = LEAST_IN_TURNS_MIN
    return max(low * batches.value, least_low), max(high * batches.value, least_high)
