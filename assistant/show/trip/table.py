"""A trip's lists as one table of comma-separated values, for a spreadsheet; figures stand beside the words."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from assistant.show.tables import as_csv
from assistant.show.trip import told
from rules.trip.model import TripPlan

if TYPE_CHECKING:
    from assistant.show.forms import Look

HEADER = ("list", "where", "item", "amount", "grams", "for", "note")


def trip_csv(plan: TripPlan, look: Look) -> str:  # noqa: ARG001 - every writer is called alike
    """Shopping with who needs how much, packing, coolers and the days."""
    return as_csv((*_shopping(plan), *_packing(plan), *_coolers(plan), *_days(plan)), HEADER)


def _shopping(plan: TripPlan) -> Iterator[tuple[str, ...]]:
    named = told.names(plan)
    for line in plan.shopping:
        note = f"left over: {line.left_over}" if line.left_over else ""
        home = "most kitchens have it" if line.likely_at_home else ""
        yield (
            "shopping", line.aisle or "", line.food, line.buy, _figure(line.grams), "",
            ", ".join(filter(None, [f"needed: {line.need}", note, home])),
        )  # fmt: skip
        for share in line.for_:
            yield (
                "need", line.aisle or "", line.food, share.need, _figure(share.grams), named[share.dish], "",
            )  # fmt: skip


def _figure(grams: float | None) -> str:
    return "" if grams is None else f"{grams:.1f}"


def _packing(plan: TripPlan) -> Iterator[tuple[str, ...]]:
    for row in plan.packing:
        yield "packing", row.box, row.item, "", "", told.of_dishes(row.dishes, plan), ""


def _coolers(plan: TripPlan) -> Iterator[tuple[str, ...]]:
    named = told.names(plan)
    for cooler in plan.coolers:
        for place, layer in enumerate(cooler.layers, start=1):
            grams = _figure(layer.kg * 1000 if layer.kg else None)
            note = f"{place} from below, out {told.words_of_hours(plan, layer.out_h)}"
            yield "cooler", cooler.name, layer.label, layer.travels, grams, named[layer.dish], note


def _days(plan: TripPlan) -> Iterator[tuple[str, ...]]:
    for one in plan.calendar:
        yield "days", told.moment(one.at), one.do, "", "", told.of_dishes(one.dishes, plan), one.kind
