"""Word forms of food names: one spelling for look-up, singulars, words that say nothing about which food it is.

Knows no food; `catalogue.py` looks names up with it.
"""

from __future__ import annotations

import unicodedata
from functools import cache, lru_cache
from typing import Literal

from rules import table

#: So many words and names of strangers are remembered; more would grow with the number of recipes.
MOST_KEPT = 16384

_PUNCTUATION = str.maketrans({**dict.fromkeys('-‐‑–—/,;:()[]*_"“”&+.!?', " "), **dict.fromkeys("'’‘`´", "")})

_IRREGULAR = {
    "leaves": "leaf",
    "loaves": "loaf",
    "halves": "half",
    "calves": "calf",
    "radishes": "radish",
    "geese": "goose",
    "anchovies": "anchovy",
    "chilies": "chili",
    "chillies": "chilli",
    "cookies": "cookie",
    "brownies": "brownie",
    "smoothies": "smoothie",
    "pies": "pie",
    "veggies": "veggie",
    "clementines": "clementine",
    "oxen": "ox",
}
_SAME = frozenset(
    [
        "asparagus",
        "molasses",
        "couscous",
        "hummus",
        "swiss",
        "watercress",
        "grits",
        "citrus",
        "schnapps",
        "bass",
        "sous",
        "lemongrass",
        "octopus",
        "brussels",
        "edamame",
        "pancreas",
        "cress",
        "grass",
        "hibiscus",
        "lactose",
        "glass",
    ]
)


@lru_cache(maxsize=MOST_KEPT)
def plain(name: str) -> str:
    """The spelling under which names are compared: lower case, no accents, hyphens or punctuation."""
    lowered = name.lower()
    if not lowered.isascii():
        lowered = lowered.replace("ß", "ss").replace("œ", "oe").replace("æ", "ae").replace("ø", "o")
        decomposed = unicodedata.normalize("NFKD", lowered.translate(_PUNCTUATION))
        lowered = "".join(char for char in decomposed if not unicodedata.combining(char)).lower()
    return " ".join(lowered.translate(_PUNCTUATION).split())


@lru_cache(maxsize=MOST_KEPT)
def singular(word: str) -> str:
    """The singular of one plain word, by rule; a word that is no plural stays as it is."""
    if word in _IRREGULAR:
        return _IRREGULAR[word]
    if len(word) <= 3 or not word.endswith("s") or word in _SAME or word.endswith(("ss", "us", "is")):
        return word
    if word.endswith("ies"):
        return word[:-3] + "y"
    if word.endswith(("oes", "shes", "ches", "sses", "xes", "zzes")):
        return word[:-2]
    return word[:-1]


@lru_cache(maxsize=MOST_KEPT)
def singulars(name: str) -> str:
    """A plain name with every word in the singular."""
    return " ".join(map(singular, name.split()))


class Words(table.Row, frozen=True, kw_only=True):
    """A group of words that stand beside food names, and what look-up may do with them."""

    id: str
    role: Literal["state", "part", "joins", "changes", "no slip"]
    words: tuple[str, ...]


@cache
def words_of(role: str) -> frozenset[str]:
    """All words with a role in `food_words.toml`."""
    groups = table.read("food_words.toml", Words)
    return frozenset(word for group in groups if group.role == role for word in group.words)
