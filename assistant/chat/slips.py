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
    once = _undoubled(word) & spellings
    if len(once) == 1:
        return once.pop()
    if len(word) < SHORTEST:
        return _swapped(word, spellings) if len(word) > 2 else None
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


def doubled(word: str, spellings: frozenset[str]) -> str | None:
    """The one spelling in which a letter is written twice that stands once here: "chese", "buter"."""
    found = {word[:at] + word[at] + word[at:] for at in range(len(word))} & spellings
    return found.pop() if len(found) == 1 and len(word) >= SHORTEST else None


def _undoubled(word: str) -> set[str]:
    return {word[:at] + word[at + 1 :] for at in range(len(word) - 1) if word[at] == word[at + 1]}


def _swapped(word: str, spellings: frozenset[str]) -> str | None:
    """The one spelling that a short word becomes when two neighbours change places: "waht", "wehn"."""
    swaps = {
        word[:at] + word[at + 1] + word[at] + word[at + 2 :]
        for at in range(len(word) - 1)
        if word[at] != word[at + 1]
    }
    found = swaps & spellings
    return found.pop() if len(found) == 1 else None


def _share_a_stem(words: set[str]) -> bool:
    shortest = min(words, key=len)
    return all(word.startswith(shortest[: max(3, len(shortest) - 1)]) for word in words)


def likeness(one: str, other: str) -> float:
    """How many words two sentences share, 0 to 100, whatever their order."""
    return fuzz.token_set_ratio(one, other)
