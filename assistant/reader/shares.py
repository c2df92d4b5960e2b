"""Which share of an ingredient each taking has: "half the flour", "the remaining sugar", 1 of 2 tablespoons."""

from __future__ import annotations

from bisect import bisect_right
from collections import defaultdict
from collections.abc import Sequence

from spacy.tokens import Doc

from assistant.reader.prose import Quantity, value
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
#: An amount belongs to a food at most this many tokens after it.
NEAR = 8
NUMBERS = {"one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0, "five": 5.0, "six": 6.0}


def said_share(
    text: Doc, start: int, ingredient: Ingredient, amounts: Sequence[Quantity], offset: int
) -> float | None:
    """The share that the words before a food give, None if they give none."""
    before = [text[index].lower_ for index in range(max(0, start - LOOK_BACK), start)]
    near = _same_phrase(before)
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
    return _by_amount(text, start, near, ingredient, amounts, offset)


def _same_phrase(before: list[str]) -> list[str]:
    """The words right before a food that can belong to it."""
    kept: list[str] = []
    for word in reversed(before):
        if word in (",", ".", "and", "with", "then", ";", "(", "or", "to", "into", "in", "add", "over"):
            break
        kept.append(word)
    return kept[::-1]


def _by_amount(
    text: Doc, start: int, near: list[str], ingredient: Ingredient, amounts: Sequence[Quantity], offset: int
) -> float | None:
    main = ingredient.amounts[0] if ingredient.amounts else None
    if main is None or main.low <= 0:
        return None
    # Only what stands near counts, and a text may be long: no look over all of it for every food.
    around = text[max(0, start - NEAR) : start]
    last = bisect_right(amounts, offset, key=lambda quantity: quantity.end)
    for quantity in amounts[max(0, last - 3) : last]:
        between = around.text[max(0, quantity.end - around.start_char) :]
        if (
            quantity.sort == "amount"
            and quantity.end >= around.start_char
            and len(between.split()) <= 4
            and "," not in between
            and " and " not in between
        ):
            return _ratio(quantity, ingredient)
    if main.unit is None and near and main.low == main.high:
        number = NUMBERS.get(near[0]) or (
            value(near[0]) if near[0][:1].isdigit() and near[0].isdigit() else None
        )
        if number and number < main.low:
            return number / main.low
    return None


def _ratio(quantity: Quantity, ingredient: Ingredient) -> float | None:
    for amount in ingredient.amounts:
        if amount.unit is None or amount.low <= 0:
            continue
        try:
            share = (
                units.to(quantity.low, quantity.unit, amount.unit) / amount.high
                if quantity.unit != amount.unit
                else quantity.low / amount.high
            )
        except Problem:
            continue
        return share if share < 0.98 else None
    return None


class Shares:
    """The takings of every ingredient; what they come to is settled at the end."""

    def __init__(self) -> None:
        self.takings: dict[int, list[tuple[float | None, bool]]] = defaultdict(list)
        self.handled: dict[int, list[int]] = defaultdict(list)

    def entered(self, index: int) -> bool:
        """Whether nothing of it is known to be left."""
        said = [share for share, hands in self.takings[index] if not hands]
        if not said:
            return False
        return (
            any(share is None or share == ALL_LEFT for share in said)
            or sum(share for share in said if share and share > 0) > 0.98
        )

    def may_take(self, index: int, share: float | None, *, handled: bool, again: bool) -> bool:
        """Whether a mention takes of it, or only speaks of what was taken."""
        entered = [said for said, hands in self.takings[index] if not hands]
        if handled:
            return not entered or not self.entered(index)
        if not entered or again:
            return True
        if share is not None:
            # "the remaining cheese": what was taken before was a part, whether the text said so or not.
            return True
        return not self.entered(index)

    def take(self, index: int, share: float | None, *, handled: bool) -> int:
        """Write a taking down; gives its number."""
        self.takings[index].append((share, handled))
        return len(self.takings[index]) - 1

    def share(self, index: int, taking: int) -> float:
        """The share of a taking, now that all are known; 1 means all there is or all that is left."""
        share, hands = self.takings[index][taking]
        if hands:
            return share if share and share > 0 else 1.0
        entering = [said for said, by_hand in self.takings[index] if not by_hand]
        if share == ALL_LEFT or len(entering) == 1:
            return (
                1.0
                if share is None or (share < 0 and share != SOME)
                else 0.5
                if share == SOME
                else round(share, 4)
            )
        if share is not None and share > 0:
            return round(min(share, 1.0), 4)
        told = sum(said for said in entering if said is not None and said > 0)
        open_ = sum(1 for said in entering if said is None or said < 0)
        return round(max(0.0, 1.0 - told) / open_, 4) if told < 1 and open_ else round(1 / len(entering), 4)
