"""Stretches of time in the method: which of the times in a step are told to the cook, and what each is for.

Left out are intervals ("every 5 minutes"), parts of a stretch ("the last 5 minutes"), cues ("after 10 minutes", "a
minute before it is done"), and how long the dish keeps.
"""

from __future__ import annotations

import re

from assistant.reader.prose import Quantity
from rules.recipe import Deed, DurationKind

KINDS: dict[Deed, DurationKind] = {
    "bake": "bake", "roast": "bake", "broil": "bake", "simmer": "simmer", "reduce": "simmer", "boil": "boil",
    "steam": "boil", "fry": "fry", "saute": "fry", "brown": "fry", "deep fry": "fry", "griddle": "fry", "toast": "fry",
    "deglaze": "simmer", "rest": "rest", "cool": "rest", "marinate": "marinate", "rise": "rise", "chill": "chill",
    "freeze": "chill",
}  # fmt: skip
LONG = 2 * 1440.0
BEFORE = re.compile(
    r"(?:\b(?:every|once every|per|last|final|first|after|beyond|exceed|exceeding|over the|going over|more than|longer than|than|within|it's been|this|that|these)\b)(?:\s(?:about|approx(?:imately)?\.?|around|the|another|next|roughly|some|at least|up to))?\s?~?$"
    r"|\bkeeps?(?: (?:well|fresh|good|them|it))?(?: for)?(?: about| up to| at least)?\s?$|\bafter (?:the|about|around) (?:first )?$",
    re.IGNORECASE,
)
AFTER = re.compile(
    r"\s?(?:before (?!serving|slicing|eating|cutting|using|baking|frying|cooking|removing|adding|rolling|shaping|turning|flipping|you\b)|less\b|timer|mark\b|per\b|after\b|ahead|in advance|apart|old\b|earlier|prior|beforehand|from the end|intervals?)",
    re.IGNORECASE,
)
BEFORE_SERVING = re.compile(r"\s?(?:before|prior to)\b", re.IGNORECASE)
STORAGE = re.compile(
    r"\b(?:store[ds]?|storing|keeps?|kept|frozen|freezes?|lasts?|leftovers?|fridge for up to|refrigerator for up to|refrigerate for up to|good for|shelf life|in advance|ahead of time|max(?:imum)?)\b",
    re.IGNORECASE,
)


def counts(text: str, quantity: Quantity, deed: Deed | None) -> bool:
    """Whether a time in a text is a stretch of the work, given the deed it stands with."""
    before = text[max(0, quantity.start - 40) : quantity.start]
    after = text[quantity.end : quantity.end + 24]
    if BEFORE.search(before.rstrip() + (" " if before.endswith(" ") else "")) or BEFORE.search(
        before.rstrip()
    ):
        return False
    if AFTER.match(after):
        return False
    if BEFORE_SERVING.match(after) and not re.search(
        r"\b(?:for|least|about|minimum|rest|chill|stand|cool|sit)\s?(?:at least |about |another )?$", before
    ):
        return False
    if quantity.high >= 1440 and deed not in ("ferment", "rise", "marinate", "soak", "rest", "chill"):
        return False
    sentence = text[max(text.rfind(".", 0, quantity.start), 0) : quantity.end]
    if quantity.high >= 1440 and (STORAGE.search(sentence) or deed == "store"):
        return False
    return not (deed == "store" and quantity.high > 24 * 60 - 1)


def kind(deed: Deed | None) -> DurationKind:
    """What a stretch of time is for, by its deed."""
    return KINDS.get(deed, "other") if deed else "other"
