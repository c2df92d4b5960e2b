"""From placed portions to packs: shares and amounts, labels, containers, how long ahead."""

from __future__ import annotations

from collections.abc import Hashable
from itertools import count

from msgspec.structs import replace

from rules.because import Ledger
from rules.foods import Item, scaled
from rules.packs.ahead import make_ahead
from rules.packs.container import container
from rules.packs.kitchen import Kitchen, Portion
from rules.packs.label import label
from rules.packs.place import Place
from rules.plan import Pack, PackItem, PackKind, Travels
from rules.recipe import Amount
from rules.units import in_all

_SHORT: dict[PackKind, str] = {
    "dry mix": "dry", "wet mix": "wet", "prepped": "prepped", "fresh": "fresh", "pantry": "pantry", "water": "water",
}  # fmt: skip
#: The order in which packs are listed.
_KINDS: tuple[PackKind, ...] = ("dry mix", "wet mix", "prepped", "fresh", "pantry", "water")
#: A share this near to one is all of it.
WHOLE = 1e-9
#: How packs travel, the coldest last.
COLDER: tuple[Travels, ...] = ("camp", "shelf", "cool", "frozen")


Members = list[tuple[Portion, Place]]


def bundles(placed: Members, kitchen: Kitchen, ledger: Ledger) -> tuple[Pack, ...]:
    """The packs, listed by kind and then in the order of the recipe."""
    return tuple(_pack(number, members, kitchen, ledger) for number, members in numbered(placed))


def numbered(placed: Members) -> list[tuple[str, Members]]:
    """The bundles with their ids."""
    together: dict[tuple[PackKind, tuple[Hashable, ...]], Members] = {}
    for portion, place in placed:
        together.setdefault((place.kind, place.key), []).append((portion, place))
    numbers = {kind: count(1) for kind in _KINDS}
    return [
        (f"{_SHORT[kind]}-{next(numbers[kind])}", members)
        for kind in _KINDS
        for (of_kind, _), members in together.items()
        if of_kind == kind
    ]


def _pack(number: str, members: Members, kitchen: Kitchen, ledger: Ledger) -> Pack:
    place = members[0][1]
    portions = [portion for portion, _ in members]
    items = _items(portions)
    parts = {one.part for _, one in members}
    travels = max((one.travels for _, one in members), key=COLDER.index)
    pack = Pack(
        id=number,
        kind=place.kind,
        label=label(place, portions, kitchen),
        component=parts.pop() if len(parts) == 1 else None,
        travels=travels,
        items=items,
    )
    return replace(
        pack,
        container=container(pack, kitchen, ledger),
        make_ahead=make_ahead(pack, place, portions, ledger),
    )


def _items(portions: list[Portion]) -> tuple[PackItem, ...]:
    """One entry an ingredient, in the order of the recipe."""
    shares: dict[int, float] = {}
    for portion in portions:
        shares[portion.item.index] = shares.get(portion.item.index, 0.0) + portion.share
    items = {portion.item.index: portion.item for portion in portions}
    return tuple(
        PackItem(
            ingredient=index,
            share=min(share, 1.0) if abs(share - 1) < WHOLE else share,
            amount=_amount(portion_amount, share, items[index])
            if (portion_amount := in_all(items[index].ingredient.amounts)) is not None
            else None,
            grams=round(items[index].grams * share, 1) if items[index].grams is not None else None,  # type: ignore[operator]
        )
        for index, share in sorted(shares.items())
    )


def _amount(amount: Amount, share: float, item: Item) -> Amount:
    """A share of the scaled amount; only a whole food is counted whole."""
    if share * item.scale == 1:
        return amount
    if abs(share - 1) < WHOLE:
        return scaled(amount, item.scale, item.food)
    return replace(
        amount, low=round(amount.low * share * item.scale, 4), high=round(amount.high * share * item.scale, 4)
    )
