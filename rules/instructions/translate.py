"""A sentence of a kitchen told at camp: the pot for oven, pan and tin, coals for the stove, the cooler for the fridge.

Words and phrases stand in `tables/kitchen_words.toml` and `tables/kitchen_phrases.toml`.
"""

from __future__ import annotations

import re
from functools import cache

from rules import table

#: A figure of a vessel's size: 9x13, 9-inch, 12", 2.5, 30.
FIGURE = (
    r"\d[\d.,/]*(?:\s?[x×]\s?\d[\d.,/]*)*(?:[\"”]|-?\s?(?:inch(?:es)?|in\.?|cm|quart|qt\.?|litre|liter|l)\b)?"
)
#: A sentence longer than this is told as it stands [characters].
LONGEST = 2000


class KitchenWords(table.Row, frozen=True, kw_only=True):
    """Words by which a kitchen calls its vessels."""

    key: str
    words: tuple[str, ...]


class KitchenPhrase(table.Row, frozen=True, kw_only=True):
    """A pattern of a kitchen's sentence and what camp says in its place."""

    key: str
    phrase: str
    camp: str


@cache
def _phrases() -> tuple[tuple[re.Pattern[str], str], ...]:
    """The phrases with their words filled in."""
    filled = {}
    for row in table.read("kitchen_words.toml", KitchenWords):
        longest_first = sorted(map(re.escape, row.words), key=len, reverse=True)
        said = "|".join([*longest_first, FIGURE] if row.key == "size" else longest_first)
        filled[row.key] = f"(?:{said})" if row.key == "size" else rf"\b(?:{said})\b"
    found = []
    for told in table.read("kitchen_phrases.toml", KitchenPhrase):
        phrase = told.phrase
        for key, said in filled.items():
            phrase = phrase.replace("{" + key + "}", said)
        found.append((re.compile(phrase, re.IGNORECASE), told.camp))
    return tuple(found)


def at_camp(says: str) -> str:
    """A sentence of the recipe as it is told at camp."""
    if len(says) > LONGEST:
        return says
    for phrase, camp in _phrases():
        says = phrase.sub(camp, says)
    says = re.sub(r"\s+([,.;:!?])", r"\1", " ".join(says.split())).strip(" ,;")
    return says[:1].upper() + says[1:]
