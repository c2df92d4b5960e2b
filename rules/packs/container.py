"""The smallest container that holds a pack: bags by their flat volume, bottles with a little air."""

from __future__ import annotations

from functools import cache

from rules import table, units
from rules.because import Ledger, Rule
from rules.packs.kitchen import Kitchen
from rules.plan import Pack
from rules.recipe import Amount

SIZE = Rule(
    id="packs.container",
    because="{label} takes about {volume}: a {container} holds it",
    source="from memory, unverified",
)

#: Mixed powders settle into each other; cut vegetables keep air between them.
_AIR: dict[str, float] = {"dry mix": 1.0, "wet mix": 1.0, "prepped": 1.15}


class Container(table.Row, frozen=True, kw_only=True):
    """One size of bag or bottle; `holds_ml` is what it usefully holds."""

    container: str
    for_kinds: tuple[str, ...]
    holds_ml: float


@cache
def _containers() -> tuple[Container, ...]:
    return tuple(sorted(table.read("containers.csv", Container), key=lambda row: row.holds_ml))


def container(pack: Pack, kitchen: Kitchen, ledger: Ledger) -> str | None:
    """The container of a pack, None for what stays in the shop's package or is drawn at camp."""
    if pack.kind in ("fresh", "pantry", "water"):
        return _as_bought(pack, kitchen)
    volume = _volume(pack, kitchen)
    kind = "bottle" if pack.kind == "wet mix" and not pack.label.startswith("fruit") else pack.kind
    if volume is None:
        return "screw-top bottle" if kind == "bottle" else "zipper bag"
    for row in _containers():
        if kind in row.for_kinds and volume <= row.holds_ml:
            ledger.note(
                SIZE.says(
                    pack.id,
                    row,
                    label=pack.label,
                    volume=units.kitchen(
                        Amount(low=volume, high=volume, unit="milliliter"), units=kitchen.day.units
                    ),
                    container=row.container,
                )
            )
            return row.container
    return "several 2-gallon zipper bags" if kind != "bottle" else "several 1-gallon jugs"


def _volume(pack: Pack, kitchen: Kitchen) -> float | None:
    """The volume of a pack [ml], None where too little of it is known."""
    volumes = []
    for item in pack.items:
        whole = kitchen.items[item.ingredient].milliliters
        if whole is not None:
            volumes.append(whole * item.share)
    if not volumes or len(volumes) * 2 < len(pack.items):
        return None
    return sum(volumes) * _AIR.get(pack.kind, 1.0)


def _as_bought(pack: Pack, kitchen: Kitchen) -> str | None:
    roles = {kitchen.roles[item.ingredient] for item in pack.items}
    if pack.kind == "water":
        return None
    if roles == {"egg"}:
        return "egg carrier"
    if roles & {"meat", "fish"}:
        return "sealed bag inside a second bag"
    return None
