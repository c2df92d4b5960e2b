"""Meat as the fire meets it: a joint left whole, or pieces and what is cut small."""

from __future__ import annotations

from rules.foods import Item

#: From so many on a count of meat is one of pieces.
PIECES = 3
#: Words of a piece of meat that is cooked whole.
JOINTS = (
    "roast",
    "shoulder",
    "brisket",
    "butt",
    "rump",
    "joint",
    "silverside",
    "topside",
    "leg of",
    "shank",
    "ham",
)
#: What is done to meat that is no joint any more.
CUTS = ("cube", "dice", "strip", "bite", "minced", "slice", "chunk", "piece", "cut", "cm")


def are_pieces(item: Item) -> bool:
    """Whether meat is counted in pieces: four shanks, eight thighs."""
    main = item.ingredient.amounts[0] if item.ingredient.amounts else None
    return main is not None and main.unit is None and main.high >= PIECES


def is_joint(item: Item) -> bool:
    """Whether meat is named as a joint ("chuck roast", "pork shoulder", "brisket") and left whole."""
    done = f"{item.ingredient.prep or ''} {' '.join(item.ingredient.state)}"
    cut = any(word in done for word in CUTS)
    name = f" {item.ingredient.name.lower()} "
    return not cut and any(f" {word} " in name for word in JOINTS)
