"""Slips of the pen in the talk's own words, and how alike two sentences are."""

from __future__ import annotations

from functools import cache

from rapidfuzz import fuzz
from rapidfuzz.distance import OSA

#: Shorter words are too near to other words to be read as a slip; longer ones may hold two.
SHORTEST, LONG = 5, 8


@cache
def nearest(word: str, spellings: frozenset[str]) -> str | None:
    """The one spelling that a letter too much, missing, wrong, or swapped with its neighbour made this word of.

    The first letter is taken as right. Several spellings equally near are one only when they share their stem.
    """
    if len(word) < SHORTEST:
        return None
    most = 1 if len(word) < LONG else 2
    close: dict[int, set[str]] = {}
    for spelling in spellings:
        if (
            spelling[0] == word[0]
            and abs(len(spelling) - len(word)) <= most
            and len(spelling) >= SHORTEST - 1
        ):
            distance = OSA.distance(word, spelling, score_cutoff=most)
            if distance <= most:
                close.setdefault(distance, set()).add(spelling)
    if not close:
        return None
    best = close[min(close)]
    return min(best) if _share_a_stem(best) else None


def _share_a_stem(words: set[str]) -> bool:
    shortest = min(words, key=len)
    return all(word.startswith(shortest[: max(3, len(shortest) - 1)]) for word in words)


def likeness(one: str, other: str) -> float:
    """How many words two sentences share, 0 to 100, whatever their order."""
    return fuzz.token_set_ratio(one, other)
