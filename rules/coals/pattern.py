"""How the briquettes lie: positions on the lid and under the pot, and the words for them (handbook chapter 5).

Under the pot a ring just inside the rim's shadow with one in the middle when there are eight or more; on the lid a
ring along the flange and the rest spread inside, clear of the handle. A briquette lies flat, or stands on edge where
more must find room; what a single layer cannot hold lies over it. No two of a layer overlap, none lies outside.
"""

from __future__ import annotations

import math
from functools import lru_cache
from typing import Literal

from rules.coals.figures import figure
from rules.plan import Pattern
from rules.recipe import Struct

Pose = Literal["flat", "on edge", "on edge end to end"]
EDGES: tuple[Pose, ...] = ("on edge", "on edge end to end")
Place = Literal["ring", "inside", "centre"]
#: From this many on, one of the coals under the pot lies in the centre.
CENTRE_FROM = 8


class Spot(Struct, frozen=True, kw_only=True):
    """Where one briquette lies: centre [in] from the pot's axis, its turn [radians], pose, layer (0 is the lowest)."""

    x_in: float
    y_in: float
    turn: float
    pose: Pose
    place: Place
    layer: int = 0


class _Ring(Struct, frozen=True, kw_only=True):
    radius: float
    inner: float
    room: int
    pose: Pose


def under_pot(diameter_in: int, count: int, *, spread: bool = False) -> tuple[Spot, ...]:
    """Spots for `count` briquettes under a pot; `spread` evens them out under the whole bottom, as for frying."""
    outer = diameter_in / 2 - figure("rim gap").value
    return _laid(count, outer, hole=0.0, spread=spread, centre=True)


def on_lid(diameter_in: int, count: int) -> tuple[Spot, ...]:
    """Spots for `count` briquettes on a lid of that diameter."""
    return _laid(count, diameter_in / 2, hole=figure("lid handle").value, spread=False, centre=False)


@lru_cache(maxsize=4096)
def pattern(diameter_in: int, top: int, under: int, *, spread: bool = False) -> Pattern:
    """The words for both."""
    return Pattern(
        top=words(on_lid(diameter_in, top), ring="in a ring along the flange", inside="spread inside it"),
        under=words(under_pot(diameter_in, under, spread=spread), ring="in a ring", inside="inside it"),
    )


def words(spots: tuple[Spot, ...], *, ring: str, inside: str) -> str:
    """What the spots look like, said for a cook: "7 in a ring, 1 in the centre"."""
    if not spots:
        return "none"
    lowest = [spot for spot in spots if not spot.layer]
    parts = []
    for place, said in (("ring", ring), ("inside", inside), ("centre", "in the centre")):
        here = [spot for spot in lowest if spot.place == place]
        if here:
            pose = "" if here[0].pose == "flat" else f", set {here[0].pose}"
            parts.append(f"{len(here)} {said}{pose}")
    if len(spots) > len(lowest):
        parts.append(f"{len(spots) - len(lowest)} laid over them")
    return ", ".join(parts)


def half_sizes(pose: Pose) -> tuple[float, float]:
    """Half of a briquette's extent [in] outward and along the ring."""
    side, thick = figure("briquette side").value / 2, figure("briquette thickness").value / 2
    return {"flat": (side, side), "on edge": (side, thick), "on edge end to end": (thick, side)}[pose]


@lru_cache(maxsize=4096)
def _laid(count: int, outer: float, *, hole: float, spread: bool, centre: bool) -> tuple[Spot, ...]:
    spots: list[Spot] = []
    layer = 0
    while len(spots) < count:
        placed = _layer(count - len(spots), outer, hole, spread, centre, layer)
        spots.extend(placed)
        layer += 1
    return tuple(spots)


def _layer(count: int, outer: float, hole: float, spread: bool, centre: bool, layer: int) -> list[Spot]:
    """As many of `count` as one layer holds, flat if they all fit so, else on edge ring by ring from outside."""
    middle = 1 if centre and count >= CENTRE_FROM else 0
    if middle and _rings(outer, math.hypot(*half_sizes("flat")), standing=1):
        hole = math.hypot(*half_sizes("flat"))
    else:
        middle = 0
    for standing in range(4):
        rings = _rings(outer, hole, standing)
        if sum(ring.room for ring in rings) + middle >= count:
            break
    counts = _divided(count - middle, rings, spread)
    spots = [
        spot
        for index, (ring, here) in enumerate(zip(rings, counts, strict=True))
        for spot in _on_ring(ring, here, "inside" if index else "ring", layer)
    ]
    if middle:
        spots.append(Spot(x_in=0.0, y_in=0.0, turn=0.0, pose="flat", place="centre", layer=layer))
    return spots


def _rings(outer: float, hole: float, standing: int) -> list[_Ring]:
    """Rings from the outside in, the first `standing` of them on edge, as far as the hole in the middle."""
    rings: list[_Ring] = []
    while True:
        poses = EDGES if len(rings) < standing else ("flat",)
        ring = max((_ring(outer, hole, pose) for pose in poses), key=lambda ring: ring.room)
        if not ring.room:
            return rings
        rings.append(ring)
        outer = ring.inner


def _ring(outer: float, hole: float, pose: Pose) -> _Ring:
    """The largest ring whose corners stay within `outer` and whose inner faces leave `hole` free."""
    out, along = half_sizes(pose)
    radius = math.sqrt(max(outer**2 - along**2, 0.0)) - out
    inner = radius - out
    # Neighbours touch at their inner corners.
    room = int(math.pi / math.atan2(along, inner) + 1e-9) if inner > max(hole, 0.0) else 0
    return _Ring(radius=radius, inner=inner, room=room, pose=pose)


def _divided(count: int, rings: list[_Ring], spread: bool) -> list[int]:
    """How many lie on each ring: all in proportion to their room, or the outer one first; a ring set on edge last."""
    if not spread:
        taken: dict[int, int] = {}
        for index in sorted(range(len(rings)), key=lambda index: (rings[index].pose != "flat", index)):
            taken[index] = min(count, rings[index].room)
            count -= taken[index]
        return [taken[index] for index in range(len(rings))]
    room = sum(ring.room for ring in rings)
    count = min(count, room)
    counts = [count * ring.room // room for ring in rings]
    for index, ring in enumerate(rings):
        more = min(count - sum(counts), ring.room - counts[index])
        counts[index] += more
    return counts


def _on_ring(ring: _Ring, count: int, place: Place, layer: int) -> list[Spot]:
    turns = [2 * math.pi * n / count for n in range(count)]
    return [
        Spot(
            x_in=ring.radius * math.cos(turn),
            y_in=ring.radius * math.sin(turn),
            turn=turn,
            pose=ring.pose,
            place=place,
            layer=layer,
        )
        for turn in turns
    ]
