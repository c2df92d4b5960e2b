"""The pots that could be used: how many of each, how full, and which of them suits the dish best."""

from __future__ import annotations

from math import ceil, log

from rules.circumstances import PotOwned
from rules.pot.iron import Oven, figure, fill_of, oven, volume_at
from rules.pot.pans import Pan
from rules.pot.volume import PotFamily, Room
from rules.recipe import Struct


class Option(Struct, frozen=True, kw_only=True):
    """A pot that could be used: how many of it, how full each."""

    pot: Oven
    owned: int
    count: int
    fill: float | None


def sq_in(asks: PotFamily, pan: Pan | None, scale: float) -> float | None:
    """The area [sq in] that a bake had in its pan, all of it; None where the rim is not what matters or is unknown."""
    if pan is None or not asks.by_area or pan.assumed or pan.shape == "sheet":
        return None
    return pan.area_sq_in * scale


def needed(pot: Oven, asks: PotFamily, milliliters: float | None, area: float | None) -> int:
    """How many of a pot hold so much, a little over the limit of the family at most, with about the pan's area [sq in]."""
    by_area = ceil(area / pot.rim_sq_in / figure("area match") - 0.01) if area else 1
    if milliliters is None:
        return max(1, by_area)
    holds = volume_at(pot, (asks.most + figure("tolerance")) * pot.depth_in)
    return max(1, by_area, ceil(milliliters / holds))


def option_of(own: PotOwned, asks: PotFamily, room: Room, pan: Pan | None, scale: float) -> Option:
    """A pot that comes along, in the number and the fill that the food asks for."""
    pot = oven(own.diameter_in, own.depth)
    count = needed(pot, asks, room.milliliters, sq_in(asks, pan, scale))
    fill = fill_of(pot, room.milliliters / count) if room.milliliters is not None else None
    return Option(pot=pot, owned=own.count, count=count, fill=fill)


def rank(option: Option, asks: PotFamily, pan: Pan | None, scale: float) -> tuple[float, ...]:
    """Pots that are there before those that are not, few before many, a matching rim, then the fuller one."""
    missing = max(0, option.count - option.owned)
    area = sq_in(asks, pan, scale)
    miss = abs(log(option.pot.rim_sq_in * option.count / area)) if area else 0.0
    too_little = option.fill is not None and is_hollow(option, asks)
    return (missing, option.count, too_little, miss, -(option.fill or 0.0), option.pot.quarts)


def is_hollow(option: Option, asks: PotFamily) -> bool:
    """Whether the food stands so low that it dries and scorches: below a depth, or below a share of a stew pot."""
    if option.fill is None or asks.least_depth_in is None:
        return False
    depth = option.fill * option.pot.depth_in
    return depth < asks.least_depth_in or (not asks.by_area and option.fill < figure("hollow"))
