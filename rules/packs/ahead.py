"""How long before the trip a pack is made, and what is done with it."""

from __future__ import annotations

from rules.because import Ledger, Rule
from rules.packs.kitchen import Portion
from rules.packs.place import Place
from rules.plan import Pack
from rules.safety import figure

AHEAD = Rule(
    id="packs.ahead",
    because="{label} can be made {ahead}",
)


def make_ahead(pack: Pack, place: Place, portions: list[Portion], ledger: Ledger) -> str | None:
    """When and how it is made at home; None for what is not made."""
    said = _said(pack, place, portions)
    if said is not None:
        ledger.note(AHEAD.says(pack.id, label=pack.label, ahead=said))
    return said


def _said(pack: Pack, place: Place, portions: list[Portion]) -> str | None:
    match pack.kind, place.key[0]:
        case "dry mix", _ if pack.travels != "shelf":
            return f"up to {_cut_days()} before, kept cold, or weeks before in the freezer"
        case "dry mix", _:
            return "up to a month before, kept dry"
        case "wet mix", _ if pack.travels == "frozen":
            return "up to a month before: press flat, squeeze the air out, freeze lying down"
        case "wet mix", _ if pack.travels == "cool":
            return f"up to {_cut_days()} before, kept cold"
        case "wet mix", _:
            return "up to a week before"
        case "prepped", "flesh":
            days = min((p.food.fridge_days for p in portions if p.food and p.food.fridge_days), default=1)
            frozen = pack.travels == "frozen"
            return (
                "weeks before in the freezer, flat and sealed twice"
                if frozen
                else f"at most {_days(days)} before, kept cold"
            )
        case "prepped", "dough":
            return "weeks before in the freezer" if pack.travels == "frozen" else "the day before, kept cold"
        case "prepped", "preserve":
            return "days or weeks before, as the recipe says"
        case "prepped", _ if any("under water" in (p.food.traits if p.food else ()) for p in portions):
            return "the day before, under cold water"
        case "prepped", _ if any(p.food and "under water when cut" in p.food.traits for p in portions):
            return "the day before, under cold water"
        case "prepped", _ if pack.travels == "shelf":
            return "up to a week before"
        case "prepped", _:
            return f"up to {_cut_days()} before, kept cold"
        case _:
            return None


def _cut_days() -> str:
    return _days(figure("cut_days").value)


def _days(count: float) -> str:
    return f"{count:.0f} day{'' if count == 1 else 's'}"
