"""When two spellings are one word: the slips of a hurried hand, judged word by word.

One changed letter makes another food of a short word (oat, goat; pea, pear), so short words and first letters have to
be right. Knows no food.
"""

from __future__ import annotations

from rules.foods.names import words_of

#: Shorter words are never taken for misspelt.
SLIP_LETTERS = 5
#: From so many letters on, one wrong letter is a slip; from LONG_LETTERS on, two are.
SURE_LETTERS = 6
LONG_LETTERS = 9
#: Long words and names this much alike are one, however the letters differ.
SLIP_RATIO = 88.0


def is_slip(asked: str, known: str, *, ratio: float) -> bool:
    """Whether the plain singular name `asked` is a misspelling of `known`; `ratio` is their likeness [0 to 100]."""
    if asked.replace(" ", "") == known.replace(" ", ""):
        return True
    ours, theirs = asked.split(), known.split()
    if len(ours) != len(theirs):
        return False
    pairs = [(our, their) for our, their in zip(ours, theirs, strict=True) if our != their]
    return len(pairs) == 1 and _is_misspelt(*pairs[0], ratio=ratio)


def _is_misspelt(word: str, known: str, *, ratio: float) -> bool:
    shorter = min(len(word), len(known))
    if shorter < SLIP_LETTERS or word[0] != known[0] or word in words_of("no slip"):
        return False
    if sorted(word) == sorted(known):
        return True
    from rapidfuzz.distance import OSA

    wrong = OSA.distance(word, known)
    return wrong <= (2 if shorter >= LONG_LETTERS else 1 if shorter >= SURE_LETTERS else 0) or (
        shorter >= SURE_LETTERS and wrong <= 2 and ratio >= SLIP_RATIO
    )
