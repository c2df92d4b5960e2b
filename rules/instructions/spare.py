"""The little that no list names: flour for the board, fat for the pot. It comes along in a bag of its own."""

from __future__ import annotations

import re
from collections.abc import Sequence

from rules.because import Ledger, Rule
from rules.instructions.words import joined, sentence
from rules.plan import FatUse

SPARE = Rule(
    id="steps.spare",
    because="the method wants {what}, which no line of the list measures: a little of it comes along",
    source="handbook of the trade, chapter 2",
)

FLOUR = "a handful of flour for the board"
FAT = "a spoonful of butter or oil for the pot"
_FLOURS = re.compile(
    r"\b(?:floured|and flour the|flour (?:a|your|the) \w+|dust\b[^.]{0,60}\bwith flour)\b", re.IGNORECASE
)
_GREASES = re.compile(
    r"\b(?:greas(?:e|ed)|buttered|oiled|(?:butter|oil) (?:the|a|your) (?:pot|pan|tin|dish|mou?ld))\b",
    re.IGNORECASE,
)


def spare(camp_steps: Sequence[str], fat: Sequence[FatUse], ledger: Ledger) -> str:
    """A home step for what the camp steps use of flour and fat beside the packs; empty where they use none."""
    told = " ".join(camp_steps)
    wanted = [FLOUR] if _FLOURS.search(told) else []
    if _GREASES.search(told) and not any(use.goes in ("greasing", "hot pot first") for use in fat):
        wanted.append(FAT)
    for what in wanted:
        ledger.note(SPARE.says("steps", what=what))
    bags = "small bags of their own" if len(wanted) > 1 else "a small bag of its own"
    return sentence(f"put {joined(wanted)} into {bags}") if wanted else ""
