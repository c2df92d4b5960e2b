"""The name of a pack, short enough to be written on a bag.

Names stand in lists ("Into the refrigerator: cut onions, cut garlic"), so none holds a comma of its own unless it is
a list of foods.
"""

from __future__ import annotations

from rules.packs.kitchen import Kitchen, Portion
from rules.packs.place import Place
from rules.wording import joined

MOST_NAMED = 3


def label(place: Place, portions: list[Portion], kitchen: Kitchen) -> str:
    """What is written on the pack."""
    names = list(dict.fromkeys(portion.name for portion in portions))
    listed = listing(names)
    of = f" for the {place.part}" if place.part else ""
    match place.key[0]:
        case "dry":
            return f"{_dry_name(portions)}{of}"
        case "season":
            return f"seasoning{of}: {listed}" if len(names) > 1 else f"measured {names[0]}"
        case "fruit":
            return f"fruit{of}: {listed}"
        case "wet":
            return f"sauce{of}: {listed}"
        case "creamed":
            return f"creamed {listed}"
        case "dough":
            return f"dough{of} made at home"
        case "mix":
            return f"{_title(kitchen)}: {listed}" if len(names) > MOST_NAMED else f"mix of {listed}"
        case "preserve":
            return f"{_title(kitchen)} made at home"
        case "flesh":
            return f"raw {names[0]}" + (" in marinade" if len(names) > 1 else "")
        case "cut":
            return f"cut {listed}"
        case "table":
            return listed
        case _:
            return f"cut {names[0]}" if _is_cut(place, portions[0]) else names[0]


def _is_cut(place: Place, portion: Portion) -> bool:
    if place.kind != "prepped":
        return False
    return portion.role == "vegetable" or (
        portion.role == "fruit" and portion.is_said("cut", "slic", "chop", "dice", "halve", "quarter")
    )


def _dry_name(portions: list[Portion]) -> str:
    names = list(dict.fromkeys(portion.name for portion in portions))
    if len(names) == 1:
        return f"measured {names[0]}"
    return f"dry mix of {listing(names)}"


def _title(kitchen: Kitchen) -> str:
    return (kitchen.recipe.title or "the mix").strip()


def listing(names: list[str]) -> str:
    """A few names joined as one says them; many are counted."""
    if len(names) > MOST_NAMED + 1:
        names = [*names[:MOST_NAMED], f"{len(names) - MOST_NAMED} more"]
    return joined(names)
