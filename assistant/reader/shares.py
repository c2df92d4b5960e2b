"""Which share of an ingredient each taking has: "half the flour", "the remaining sugar", 1 of 2 tablespoons."""

from __future__ import annotations

from bisect import bisect_right
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, field

from assistant.reader.prose import Quantity
from assistant.reader.spoken import value
from rules import units
from rules.problem import Problem
from rules.recipe import Ingredient

FRACTIONS = {
    "half": 0.5,
    "third": 1 / 3,
    "quarter": 0.25,
    "fourth": 0.25,
    "thirds": 2 / 3,
    "quarters": 0.75,
    "1/2": 0.5,
    "1/3": 1 / 3,
    "2/3": 2 / 3,
    "1/4": 0.25,
    "3/4": 0.75,
}
REST = frozenset({"remaining", "rest", "leftover", "remainder", "other"})
#: A share of everything that is left.
ALL_LEFT = -1.0
#: An unknown share.
SOME = -2.0
LOOK_BACK = 6
#: Where the shares said come to this, the food is used up.
NEARLY_ALL = 0.98
#: What "some of it" is taken for.
HALF = 0.5
#: An amount belongs to a food at most this many characters after it.
NEAR = 40
NUMBERS = {"one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0, "five": 5.0, "six": 6.0}


def said_share(
    low: Sequence[str],
    start: int,
    ingredient: Ingredient,
    amounts: Sequence[Quantity],
    text: str,
    offset: int,
) -> float | None:
    """The share that the words before a food give, None if they give none.

    `low` are the tokens of `text` in lower case; the food begins at token `start`, character `offset`.
    """
    before = list(low[max(0, start - LOOK_BACK) : start])
    near = _same_phrase(before)
    if "left" in near and near[near.index("left") + 1 : near.index("left") + 2] == ["of"]:
        return ALL_LEFT
    for index, word in enumerate(near):
        if word in REST and not (word == "other" and near[max(0, index - 1)] not in ("the", "and")):
            return ALL_LEFT
        following = near[index + 1 :]
        if (
            word in FRACTIONS
            and set(following) <= {"of", "the", "your", "a", "an", "this", "it", "all"}
            and (following or word in ("half", "1/2"))
        ):
            if word in ("third", "quarter") and index and near[index - 1] in ("two", "2"):
                return 2 / 3
            if word in ("1/2", "1/3", "1/4", "2/3", "3/4") and not following:
                continue
            return FRACTIONS[word]
    if (
        near[:1]
        and set(near) & {"some", "most", "little", "bit", "few", "part", "portion"}
        and ("of" in near or "some" in near[-2:] or "little" in near)
    ):
        return SOME
    return _by_amount(text, near, ingredient, amounts, offset)


def _same_phrase(before: list[str]) -> list[str]:
    """The words right before a food that can belong to it."""
    kept: list[str] = []
    for word in reversed(before):
        if word in (",", ".", "and", "with", "then", ";", "(", "or", "to", "into", "in", "add", "over"):
            break
        kept.append(word)
    return kept[::-1]


def _by_amount(
    text: str, near: list[str], ingredient: Ingredient, amounts: Sequence[Quantity], offset: int
) -> float | None:
    main = units.in_all(ingredient.amounts)
    if main is None or main.low <= 0:
        return None
    # Only what stands near counts, and a text may be long: no look over all of it for every food.
    last = bisect_right(amounts, offset, key=lambda quantity: quantity.end)
    for quantity in amounts[max(0, last - 3) : last]:
        between = text[quantity.end : offset] if offset - quantity.end <= NEAR else ","
        if quantity.sort == "amount" and "," not in between and " and " not in between:
            return _ratio(quantity, ingredient)
    if main.unit is None and near and main.low == main.high:
        number = next((count for word in near[-2:] if (count := _count(word))), None)
        if number and number < main.low:
            return number / main.low
    return None


def is_all_of(ingredient: Ingredient, amounts: Sequence[Quantity], text: str, offset: int) -> bool:
    """Whether the amount right before a food, at character `offset`, is the whole of this ingredient's."""
    main = units.in_all(ingredient.amounts)
    if main is None or main.unit is None or main.high <= 0:
        return False
    last = bisect_right(amounts, offset, key=lambda quantity: quantity.end)
    for quantity in amounts[max(0, last - 1) : last]:
        between = text[quantity.end : offset] if offset - quantity.end <= NEAR else ","
        if quantity.sort != "amount" or "," in between or " and " in between:
            continue
        try:
            share = units.to(quantity.high, quantity.unit, main.unit) / main.high
        except Problem:
            continue
        return abs(share - 1) < 1 - NEARLY_ALL
    return False


def _count(word: str) -> float | None:
    """The figure of a bare count: "one", "2"."""
    return NUMBERS.get(word) or (value(word) if word.isdigit() else None)


def _ratio(quantity: Quantity, ingredient: Ingredient) -> float | None:
    main = units.in_all(ingredient.amounts)
    for amount in (main, *ingredient.amounts[1:]):
        if amount is None or amount.unit is None or amount.low <= 0 or amount.plus or amount.each:
            continue
        try:
            share = (
                units.to(quantity.low, quantity.unit, amount.unit) / amount.high
                if quantity.unit != amount.unit
                else quantity.low / amount.high
            )
        except Problem:
            continue
        return share if share < NEARLY_ALL else None
    return None


@dataclass
class _Account:
    """What was taken of one ingredient: every share as said, by number, and sums over those that entered something."""

    said: list[tuple[float | None, bool]] = field(default_factory=list)
    entered: int = 0
    #: takings without a figure: a bare mention, "some of", "the rest"
    open: int = 0
    told: float = 0.0
    all_gone: bool = False


class Shares:
    """The takings of every ingredient; what they come to is settled at the end."""

    def __init__(self) -> None:
        self._accounts: defaultdict[int, _Account] = defaultdict(_Account)

    def entered(self, index: int) -> bool:
        """Whether nothing of it is known to be left."""
        account = self._accounts[index]
        return account.all_gone or account.told > NEARLY_ALL

    def begun(self, index: int) -> bool:
        """Whether some of it went into something."""
        return self._accounts[index].entered > 0

    def may_take(self, index: int, share: float | None, *, handled: bool, again: bool) -> bool:
        """Whether a mention takes of it, or only speaks of what was taken.

        Of "the remaining cheese" there is some left, whatever was said before; `again` is true for food that is
        poured more than once.
        """
        if handled:
            return not self.entered(index)
        return again or share is not None or not self.entered(index)

    def take(self, index: int, share: float | None, *, handled: bool) -> int:
        """Write a taking down; gives its number. What is only handled (cut, washed) enters nothing."""
        account = self._accounts[index]
        account.said.append((share, handled))
        if not handled:
            account.entered += 1
            account.all_gone = account.all_gone or share is None or share == ALL_LEFT
            if share is not None and share > 0:
                account.told += share
            else:
                account.open += 1
        return len(account.said) - 1

    def share(self, index: int, taking: int) -> float:
        """The share of a taking, now that all are known; 1 means all there is or all that is left."""
        account = self._accounts[index]
        share, handled = account.said[taking]
        if share is not None and share > 0:
            return round(min(share, 1.0), 4)
        if handled or share == ALL_LEFT or (share is None and account.entered == 1):
            return 1.0
        if account.entered == 1:
            return HALF
        if account.told < 1 and account.open:
            return round((1.0 - account.told) / account.open, 4)
        return round(1 / account.entered, 4)
