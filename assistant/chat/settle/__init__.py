"""Slots settled: what a match says, as the figures and words that `coalside ask` prints.

"half past six" becomes "18:30", "half the crowd" half of the plan's people, "and for nine?" the act of the sentence
before. Each room settles the acts of its subject.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

from assistant.chat.context import Context
from assistant.chat.lexicon import Heard, Word
from assistant.chat.patterns import Found
from assistant.chat.settle import asked, crowd, fire, food, hours
from assistant.chat.settle.matched import Told
from assistant.chat.slots import fits, is_fat

if TYPE_CHECKING:
    from assistant.chat.acts import Meant


def settled(match: Found, heard: Heard, context: Context) -> list[Meant]:
    """The act or acts that a match stands for; none where its slots make no sense."""
    from assistant.chat.acts import Meant

    settle = _SETTLERS.get(match.act)
    if settle is None:
        return [Meant(act=match.act)]
    return [Meant(act=act, slots=slots) for act, slots in settle(match, heard, context)]


#: Words elsewhere in the sentence that say what a bare figure is: "we might eat late, about nine".
FIGURE_CUES: tuple[tuple[frozenset[str], str], ...] = (
    (frozenset(["EAT", "MEAL"]), "eat at"),
    (frozenset(["PERSON", "CROWD"]), "people"),
    (frozenset(["POT"]), "pot"),
)
#: Acts whose figure may be said again alone, with the slot it fills.
_FIGURES: tuple[tuple[str, str], ...] = (
    ("people", "people"), ("pot", "pot"), ("temperature", "oven"), ("eat at", "clock"), ("weather", "air"),
    ("elevation", "height"), ("cooler", "quarts_number"), ("scale", "scale"),
)  # fmt: skip


def _again(match: Found, heard: Heard, context: Context) -> Told:
    word = match.slots.get("bare")
    if isinstance(word, Word):
        yield from _figure_again(match, word, heard, context)
        return
    food = match.slots.get("food")
    if isinstance(food, Word):
        if context.last in ("leave out", "allergens", "shopping", "doneness", "add"):
            yield context.last, {"food": food.text} if context.last in ("leave out", "add") else {}
        elif context.last == "why":
            yield "why", {"about": food.text}
        elif is_fat(food.text):
            yield "fat", {}
    elif context.last in ("fat", "coals", "turning", "doneness"):
        yield context.last, {}


def _figure_again(match: Found, word: Word, heard: Heard, context: Context) -> Told:
    """A bare figure: what the sentence before set, if the figure can be that, else what it most likely is."""
    slots = dict(_FIGURES)
    first = [context.last] if context.last in slots else []
    own = {part for place in match.own for part in heard.words[place].text.split()}
    told = {group for other in heard.words for group in other.groups}
    cued = [act for groups, act in FIGURE_CUES if groups & told]
    first = (
        [*first, *cued]
        if context.last in dict(_FIGURES).keys() & {act for _, act in FIGURE_CUES}
        else [*cued, *first]
    )
    is_of_people = "for" in own and context.last not in ("eat at", "scale")
    likely = ["temperature", "eat at"] if "at" in own else ["temperature", "people"]
    if context.last == "pot" and fits("pots", word) and not fits("pot", word):
        yield "pot", {"count": int(word.values[0].value)}
        return
    if not first and not is_of_people and not own & {"for", "at", "make"}:
        return  # a figure that nothing explains
    for act in ["people"] if is_of_people else [*first, *likely]:
        if act is not None and fits(slots[act], word):
            again = match._replace(act=act, slots={slots[act]: word})
            yield from _SETTLERS[act](again, heard, context)
            return


_SETTLERS: Mapping[str, Callable[[Found, Heard, Context], Told]] = {
    "people": crowd.people,
    "scale": crowd.scale,
    "pot": fire.pot,
    "temperature": fire.temperature,
    "weather": fire.weather,
    "elevation": fire.elevation,
    "eat at": hours.eat_at,
    "trip": hours.trip,
    "fire ban": hours.fire_ban,
    "cooler": hours.cooler,
    "units": hours.units,
    "undo": asked.undo,
    "swap": food.swap,
    "leave out": food.food,
    "add": food.add,
    "why": asked.why,
    "steps": asked.steps,
    "show": asked.show,
    "export": asked.export,
    "keep": asked.named,
    "open": asked.named,
    "forget": asked.named,
    "again": _again,
}
