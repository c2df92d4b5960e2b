"""The packs as a list that is packed from: each bag by itself, what travels as bought together."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.show import parts, words
from rules.circumstances import Units
from rules.plan import Pack, Plan, Travels
from rules.recipe import Struct
from rules.wording import short_names

#: What is called as bought, by how it travels.
AS_BOUGHT: dict[Travels, str] = {
    "shelf": "From the shelf, as bought",
    "cool": "Fresh, as bought",
    "frozen": "Frozen, as bought",
    "camp": "Drawn at camp",
}


class Box(Struct, frozen=True, kw_only=True):
    """One entry of the list: a pack by its id, or, without one, several that travel alike; what is in it; how it travels."""

    id: str | None
    name: str
    travels: Travels
    where: str
    lines: tuple[str, ...]
    make_ahead: str | None = None


def boxes(plan: Plan, units: Units) -> Iterator[Box]:
    """What was mixed, cut or cooked has a box of its own; foods as bought share one, each with the id of its pack."""
    as_bought: dict[Travels, list[Pack]] = {}
    names = short_names(plan.packs)
    for pack in plan.packs:
        if pack.container is None and pack.make_ahead is None:
            as_bought.setdefault(pack.travels, []).append(pack)
        else:
            yield _box(pack, names[pack.id], plan, units)
    for travels, packs in as_bought.items():
        yield Box(
            id=None,
            name=AS_BOUGHT[travels],
            travels=travels,
            where="" if travels == "camp" else parts.TRAVELS[travels],
            lines=tuple(
                f"{parts.packed(plan, item, units)} ({pack.id})" for pack in packs for item in pack.items
            ),
        )


def _box(pack: Pack, name: str, plan: Plan, units: Units) -> Box:
    return Box(
        id=pack.id,
        name=words.capital(name),
        travels=pack.travels,
        where="; ".join([parts.TRAVELS[pack.travels], *([pack.container] if pack.container else [])]),
        lines=tuple(parts.packed(plan, item, units) for item in pack.items),
        make_ahead=words.capital(pack.make_ahead) if pack.make_ahead else None,
    )
