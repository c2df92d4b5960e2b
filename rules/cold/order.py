"""The order in which the cooler is packed, from the bottom up (handbook, sections 2 and 6)."""

from __future__ import annotations

from collections.abc import Sequence

from rules.because import Ledger, Rule
from rules.foods import Item
from rules.hazards import JUICY, hazard_of
from rules.plan import Layer, Pack

RAW_BELOW = Rule(
    id="cold.raw-below",
    because="{packs}: sealed and at the bottom, where its juice can drip on nothing that is eaten as it is",
    source="USDA FSIS, Food Safety While Hiking, Camping and Boating, n.d.; common practice",
)
FROZEN_AS_ICE = Rule(
    id="cold.frozen-as-ice",
    because="{packs}: hard bags lie flat next to the raw food and the ice, and stay cold by each other",
)
HEAVY_LOW = Rule(
    id="cold.heavy-low",
    because="{packs}: bottles and heavy things over the hard bags, under what breaks",
)
FIRST_ON_TOP = Rule(
    id="cold.first-on-top",
    because="{packs}: on top, away from raw juices and from the ice that would bruise or freeze it",
)
BY_HEIGHT = (RAW_BELOW, FROZEN_AS_ICE, HEAVY_LOW, FIRST_ON_TOP)
#: Bruised by weight, spoiled by frost.
TENDER = frozenset({"egg", "herb", "bread"})


def layers(cooled: Sequence[Pack], items: Sequence[Item], ledger: Ledger) -> tuple[Layer, ...]:
    """Raw flesh lowest, then what is frozen, then the heavy rest, then what is eaten raw or breaks."""
    sorted_in: dict[int, list[Pack]] = {}
    for pack in cooled:
        sorted_in.setdefault(_height(pack, items), []).append(pack)
    found = []
    for height in sorted(sorted_in):
        packs = sorted_in[height]
        rule = BY_HEIGHT[height]
        said = rule.says("cooler", packs=", ".join(pack.label for pack in packs))
        ledger.note(said)
        found.append(Layer(packs=tuple(pack.id for pack in packs), because=said.because))
    return tuple(found)


def _height(pack: Pack, items: Sequence[Item]) -> int:
    inside = [items[part.ingredient] for part in pack.items]
    if any(hazard_of(item) in JUICY for item in inside):
        return 0
    if pack.travels == "frozen":
        return 1
    return 3 if any(item.food is not None and item.food.group in TENDER for item in inside) else 2
