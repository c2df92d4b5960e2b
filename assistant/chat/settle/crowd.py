"""How many eat, and how much is made: "half the crowd dropped out", "6 adults and 4 kids", "two dozen rolls"."""

from __future__ import annotations

from assistant.chat.context import Context
from assistant.chat.lexicon import Heard
from assistant.chat.patterns import Found
from assistant.chat.settle.matched import Told, number_of, set_by
from rules.foods.names import singular

#: So many pies are said to mean times the recipe; more are pieces of it.
MOST_BATCHES = 6


def people(match: Found, _heard: Heard, context: Context) -> Told:
    """A number of people, from those who are there now where it is said so: half of them, two more, none but me."""
    said, count = number_of(match, "people"), number_of(match, "count")
    relative = set_by(match, "people")
    if set_by(match, "after") not in (None, context.last):
        return
    if said is not None:
        more = sum(number_of(match, slot) or 0 for slot in ("and_people", "and_more"))
        yield "people", {"people": int(said + more)}
    elif (times := number_of(match, "factor")) is not None and context.people is not None:
        yield "people", {"people": max(1, round(context.people * times))}
    elif relative is not None and relative.startswith("="):
        yield "people", {"people": int(relative[1:])}
    elif relative is not None and context.people is not None:
        now = context.people
        if relative.startswith("x"):
            people = round(now * float(relative[1:]))
        else:
            sign = -1 if relative.startswith("-") else 1
            people = now + sign * int(count if count is not None else float(relative[1:] or 1))
        yield "people", {"people": max(1, people)}


def _times_made(match: Found, heard: Heard, context: Context) -> float | None:
    """How many times the recipe a number of its loaves, rolls or pies is."""
    count = number_of(match, "made")
    if count is None:
        return None
    things = {word.text for place in match.own for word in [heard.words[place]] if "MADE" in word.groups}
    served = context.recipe.servings
    of_one = {singular(word) for word in served.of.split()} if served is not None else set()
    if served is not None and of_one & {singular(thing) for thing in things}:
        return count / ((served.low + served.high) / 2)
    return count if count <= MOST_BATCHES else None


def scale(match: Found, heard: Heard, context: Context) -> Told:
    """A factor, or the number of pieces that the recipe makes so many of."""
    made = _times_made(match, heard, context)
    if match.slots.get("made") is not None:
        if made is not None:
            yield "scale", {"factor": round(made, 4)}
        return
    said = number_of(match, "factor") or number_of(match, "scale") or number_of(match, "part")
    fixed = set_by(match, "factor")
    factor = said if said is not None else float(fixed or 1)
    yield "scale", {"factor": round(factor, 4)}
