"""When two spellings are one word: the slips of a hurried hand, judged word by word.

One changed letter makes another food of a short word (oat, goat; pea, pear), so short words and first letters have to
be right. Knows no food.
"""

from __future__ import annotations

from itertools import groupby

from rules.foods.names import words_of

#: Shorter words are never taken for misspelt; one letter less is enough where other words agree.
SLIP_LETTERS = 5
#: From so many letters on, a letter lost, doubled or put in, or a vowel for a vowel, is a slip.
SURE_LETTERS = 6
#: From so many on, any wrong letter is.
CLEAR_LETTERS = 8
#: From so many on, two are.
LONG_LETTERS = 9

_VOWELS = frozenset("aeiouy")


def is_slip(asked: str, known: str) -> bool:
    """Whether the plain singular name `asked` is a misspelling of `known`."""
    if asked.replace(" ", "") == known.replace(" ", ""):
        return True
    ours, theirs = asked.split(), known.split()
    if len(ours) != len(theirs):
        return False
    pairs = [(our, their) for our, their in zip(ours, theirs, strict=True) if our != their]
    return len(pairs) == 1 and _is_misspelt(*pairs[0], among_others=len(ours) > 1)


def _is_misspelt(word: str, known: str, *, among_others: bool) -> bool:
    shorter = min(len(word), len(known))
    if shorter < (SLIP_LETTERS - among_others) or word[0] != known[0] or word in words_of("no slip"):
        return False
    if sorted(word) == sorted(known) or _single_letters(word) == _single_letters(known):
        return True
    from rapidfuzz.distance import OSA  # as late as its only caller's import

    one = SLIP_LETTERS - 1 if among_others and len(word) != len(known) else SURE_LETTERS
    allowed = 2 if shorter >= LONG_LETTERS else 1 if shorter >= one else 0
    if OSA.distance(word, known, score_cutoff=allowed) > allowed:
        return False
    if shorter >= CLEAR_LETTERS or len(word) != len(known):
        return True
    ours, theirs = next((our, their) for our, their in zip(word, known, strict=True) if our != their)
    return ours in _VOWELS and theirs in _VOWELS


def _single_letters(word: str) -> str:
    return "".join(letter for letter, _ in groupby(word))
