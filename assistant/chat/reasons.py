"""Which of a plan's reasons answer a "why": those about the thing that was asked for.

A reason is found by what it is about, else by its rule's id, else by its sentence; the first of the three that
answers wins, so that "salt" does not bring every sentence with salt in it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cache

from assistant.chat import tables
from assistant.show.kinds import Reasons
from rules.foods.names import singular
from rules.plan import Plan, Reason
from rules.problem import Problem

_WORD = re.compile(r"[^\W_]+(?:[-'][^\W_]+)*")


class NoReason(Problem):
    """Nothing was decided about the thing that was asked for; `known` is what there are reasons about."""

    def __init__(self, about: str, known: tuple[str, ...]) -> None:
        super().__init__(about, known)
        self.about = about
        self.known = known

    def sentence(self) -> str:
        """Say what there is to ask about instead."""
        some = ", ".join(self.known[:12])
        more = " and more" if len(self.known) > 12 else ""
        return f'why {self.about}: no reason is about "{self.about}"; there are reasons about {some}{more}.'


def words_of(text: str) -> frozenset[str]:
    """The words that name something, lower case and singular as far as an s shows it."""
    words = (found[0].lower() for found in _WORD.finditer(text[:500]))
    return frozenset(singular(word) for word in words if word not in _small_words())


@cache
def _small_words() -> frozenset[str]:
    """Words of a question that name no thing."""
    return frozenset(tables.load("words.toml", dict[str, list[str] | dict[str, str]])["SMALL"])


def reasons_about(plan: Plan, about: str) -> Reasons:
    """The reasons about a food, a count, a time or a caution.

    Raises:
        NoReason: none is about it.
    """
    asked = words_of(about)
    for field in (_about, _rule, _because):
        found = _best(asked, ((reason, words_of(field(reason))) for reason in plan.why))
        if found:
            return Reasons(file=plan.file, about=about, why=found)
    raise NoReason(about, tuple(dict.fromkeys(reason.about for reason in plan.why)))


def _about(reason: Reason) -> str:
    return reason.about


def _rule(reason: Reason) -> str:
    return reason.rule.replace(".", " ").replace("-", " ")


def _because(reason: Reason) -> str:
    return reason.because


def _best(asked: frozenset[str], told: Iterable[tuple[Reason, frozenset[str]]]) -> tuple[Reason, ...]:
    """The reasons that share the most words with the question, if any."""
    shared = [(len(asked & words), reason) for reason, words in told]
    most = max((count for count, _ in shared), default=0)
    return tuple(reason for count, reason in shared if count == most) if most else ()
