"""What a question says besides its act: the groups of its words, and the food that it names."""

from __future__ import annotations

from assistant.chat.context import Context
from assistant.chat.lexicon import hear
from rules.plan import Plan


def groups_of(utterance: str) -> frozenset[str]:
    """The groups of all its words."""
    return frozenset(group for word in hear(utterance).words for group in word.groups)


def food_in(utterance: str, plan: Plan) -> str | None:
    """The food that a question names."""
    context = Context(recipe=plan.recipe)
    heard = hear(utterance, foods=context.food_marks, known=context.known)
    return next((word.text for word in heard.words if word.value(("food",))), None)
