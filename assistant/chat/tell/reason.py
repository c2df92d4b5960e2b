"""Why: the reasons about a thing, each with its source."""

from __future__ import annotations

from assistant.chat.acts import Meant
from assistant.chat.reasons import NoReason, reasons_about, words_of
from assistant.show import words
from rules.circumstances import Day
from rules.plan import Plan, Reason

MOST_REASONS = 4
#: What can be asked about in every plan, for who asks about nothing in particular.
ALWAYS = ("the count on the lid", "the pot", "the time")


def why(one: Meant, plan: Plan, _day: Day, utterance: str) -> str:
    """The reasons about a thing, those first that hold the most of the question's words."""
    about = str(one.slots.get("about", ""))
    if not about:
        return f"Why what? Ask about {words.joined([*_foods(plan), *ALWAYS], 'or')}."
    try:
        found = reasons_about(plan, about).why
    except NoReason:
        return f'Nothing in this plan was decided about "{about}". Ask about {words.joined([*_foods(plan), *ALWAYS], "or")}.'
    asked = words_of(utterance)
    nearest = sorted(found, key=lambda reason: -len(asked & _words(reason)))
    sentences = list(dict.fromkeys(f"{words.because(reason)} ({reason.source})" for reason in nearest))
    more = len(sentences) - MOST_REASONS
    rest = [f"{more} more: coalside why FILE {about}"] if more > 0 else []
    return "\n".join([*sentences[:MOST_REASONS], *rest])


def _words(reason: Reason) -> frozenset[str]:
    return words_of(f"{reason.because} {reason.rule.replace('.', ' ')}")


def _foods(plan: Plan) -> list[str]:
    """A few foods that there are reasons about."""
    listed = [item.name for item in plan.recipe.ingredients]
    return [name for name in dict.fromkeys(reason.about for reason in plan.why) if name in listed][:4]
