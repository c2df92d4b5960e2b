"""Which of a plan's reasons answer a "why": those about the thing that was asked for.

A reason is found by what it is about, else by the topic that the words speak of (`acts/topics.toml`), else by its rule's
id, else by its sentence; the first that answers wins, so that "salt" does not bring every sentence with salt in it.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache

from assistant.chat import tables
from assistant.show.kinds import Reasons
from assistant.show.words import main_stage
from rules.foods.names import singular
from rules.plan import Plan, Reason
from rules.problem import Problem
from rules.recipe import Struct

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
    found = _best(asked, _about, plan) or _of_topic(asked, plan)
    found = found or _best(asked, _rule, plan) or _best(asked, _because, plan)
    if found:
        return Reasons(file=plan.file, about=about, why=found)
    raise NoReason(about, tuple(dict.fromkeys(reason.about for reason in plan.why)))


def _about(reason: Reason) -> str:
    return reason.about


def _rule(reason: Reason) -> str:
    return reason.rule.replace(".", " ").replace("-", " ")


def _because(reason: Reason) -> str:
    return reason.because


class Topic(Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Something to ask about that is no food: its words, and the beginnings of the ids of the rules that answer."""

    words: tuple[str, ...]
    rules: tuple[str, ...]

    def shared(self, asked: frozenset[str]) -> int:
        """How many words a question shares with it; all words of a phrase have to be there."""
        phrases = (words_of(phrase) for phrase in self.words)
        return max((len(phrase) for phrase in phrases if phrase and phrase <= asked), default=0)


class Topics(Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """The file of topics."""

    topic: tuple[Topic, ...]


def _topics(asked: frozenset[str]) -> list[Topic]:
    """The topics that words speak of, that with the most of them first."""
    every = tables.load("topics.toml", Topics).topic
    return sorted((topic for topic in every if topic.shared(asked)), key=lambda topic: -topic.shared(asked))


def rules_of(asked: frozenset[str]) -> frozenset[str]:
    """The rules that answer for the topics that words speak of."""
    return frozenset(rule for topic in _topics(asked) for rule in topic.rules)


def _of_topic(asked: frozenset[str], plan: Plan) -> tuple[Reason, ...]:
    """The reasons of the topic that a question speaks of; of several stages of the cooking, the main one's."""
    for topic in _topics(asked):
        found = [
            reason
            for rule in topic.rules
            for reason in plan.why
            if reason.rule == rule or reason.rule.startswith(f"{rule}.")
        ]
        if found:
            return _of_the_main_stage(tuple(dict.fromkeys(found)), plan)
    return ()


def _of_the_main_stage(found: tuple[Reason, ...], plan: Plan) -> tuple[Reason, ...]:
    stage = main_stage(plan)
    kinds = {stage.kind for stage in plan.heat.stages} if plan.heat else set()
    main = [reason for reason in found if stage is not None and reason.about == stage.kind]
    return tuple(reason for reason in found if not main or reason in main or reason.about not in kinds)


def _best(asked: frozenset[str], field: Callable[[Reason], str], plan: Plan) -> tuple[Reason, ...]:
    """The reasons that share the most words with the question, if any."""
    shared = [(len(asked & words_of(field(reason))), reason) for reason in plan.why]
    most = max((count for count, _ in shared), default=0)
    return tuple(reason for count, reason in shared if count == most) if most else ()
