"""The room of the choice: which of the kept recipes can be cooked with what there is.

"what can I cook with two 12s, a 48 quart cooler and 60 briquettes?": cooler, people and weather are the plan's to
hear; the pots, the charcoal, the time and what somebody avoids are this room's.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Any, NamedTuple, Protocol

import msgspec

from assistant.chat.acts import Meant
from assistant.chat.beyond.hearing import EDGES, Hearing, Span, hear, left_over, phrases, stretch
from assistant.chat.beyond.pots import joined, pots
from assistant.chat.beyond.rooms import Host, Part
from assistant.chat.values import number
from rules.coals.figures import figure
from rules.foods import catalogue
from rules.plan import Plan
from rules.units import to

if TYPE_CHECKING:
    from rules.choose import Candidate

TABLE = "choose.toml"
WHOSE = frozenset(["of", "us", "them", "one", "someone", "somebody", "who", "people", "kid", "kids"])
#: Between two avoided foods.
JOINS = frozenset(["or", "and", "nor"])
#: An avoided food is named in so many words at most.
MOST_FOOD_WORDS = 3


class Meals(Protocol):
    """Where recipes are kept; `assistant.keep.Store` is one."""

    def names(self) -> tuple[str, ...]:
        """The names of all kept meals."""
        ...

    def get(self, name: str) -> Any:
        """The kept meal, with `recipe` and `day`."""
        ...


class Piece(NamedTuple):
    """A limit in the sentence: its slot, its value, its tokens."""

    slot: str
    value: float | str
    span: Span


class Asked(NamedTuple):
    """What is asked for, and what is left for the plan."""

    slots: dict[str, Any]
    rest: str


def asked(utterance: str) -> Asked | None:
    """The limits in a question after a dish; None where none is asked for."""
    hearing = hear(utterance, TABLE)
    cues = [place for place in range(len(hearing.words)) if hearing.phrase(place, "cue")]
    if not cues:
        return None
    cue = hearing.phrase(cues[0], "cue")
    assert cue is not None  # it was just found there
    pieces = list(_pieces(hearing))
    taken: list[Span] = [(cue.start, cue.end), *(piece.span for piece in pieces)]
    taken += [
        (one.start, one.end) for at in range(len(hearing.words)) if (one := hearing.phrase(at, "these"))
    ]
    named = list(pots(hearing))
    taken += [one.span for one in named]
    slots: dict[str, Any] = {}
    if named:
        slots["pots"] = joined([one.pot for one in named])
    for piece in pieces:
        if piece.slot == "avoids":
            slots["avoids"] = [*slots.get("avoids", []), piece.value]
        else:
            slots[piece.slot] = piece.value
    return Asked(slots, left_over(hearing, taken, phrases(TABLE).words("light") | {"?"}))


def _pieces(hearing: Hearing) -> Iterator[Piece]:
    at = 0
    while at < len(hearing.words):
        found = _briquettes(hearing, at) or _minutes(hearing, at) or _avoids(hearing, at)
        if found:
            yield from found
            at = found[-1].span[1]
        else:
            at += 1


def _briquettes(hearing: Hearing, at: int) -> Sequence[Piece]:
    """Briquettes := number briquettes | mass ["bag"] of charcoal; a bag's mass as so many standard ones."""
    said = number(hearing.words, at)
    if said is None or said.value <= 0:
        return ()
    counted = hearing.phrase(said.end, "briquettes")
    if counted is not None and not said.article:
        return (Piece("briquettes", int(said.value), (at, counted.end)),)
    mass = hearing.phrase(said.end, "pounds", "kilos")
    if mass is None:
        return ()
    bag = hearing.phrase(mass.end, "bag")
    coal = hearing.phrase(bag.end if bag else mass.end, "charcoal", "briquettes")
    if coal is None and bag is None:
        return ()
    kilos = said.value if mass.group == "kilos" else to(said.value, "pound", "kilogram")
    end = coal.end if coal else bag.end if bag else mass.end
    return (Piece("briquettes", int(kilos * 1000 / figure("mass").value), (at, end)),)


def _minutes(hearing: Hearing, at: int) -> Sequence[Piece]:
    """Minutes := within stretch."""
    within = hearing.phrase(at, "within")
    if within is None:
        return ()
    table = phrases(TABLE)
    for place in range(within.end, min(within.end + 2, len(hearing.words))):
        said = stretch(hearing, place, table.words("minutes"), table.words("hours"))
        if said is not None:
            return (Piece("minutes", said.value, (at, said.end)),)
    return ()


def _avoids(hearing: Hearing, at: int) -> Sequence[Piece]:
    """Avoids := without food [("or" | "and") food]; only what is known as an allergen, a kind or a food."""
    without = hearing.phrase(at, "without")
    found: list[Piece] = []
    place = without.end if without else len(hearing.words)
    while place < len(hearing.words):
        end = next(
            (
                end
                for end in range(min(place + MOST_FOOD_WORDS, len(hearing.words)), place, -1)
                if is_avoidable(" ".join(hearing.words[place:end]))
            ),
            None,
        )
        if end is None:
            break
        first = at if found else whose(hearing, at)
        found.append(Piece("avoids", " ".join(hearing.words[place:end]), (first, end)))
        at = end
        if end >= len(hearing.words) or hearing.words[end] not in JOINS:
            break
        place = end + 1
    return found


def whose(hearing: Hearing, at: int) -> int:
    """Where "two of us" begins before "can't have nuts": it counts those who avoid, not those who eat."""
    place = at
    while place and hearing.words[place - 1] in WHOSE:
        place -= 1
    if place and place < at and hearing.words[place] == "of" and number(hearing.words, place - 1):
        place -= 1
    return place


def is_avoidable(said: str) -> bool:
    """Whether a word is an allergen, a kind of food or a food that somebody may avoid."""
    if any(word in EDGES or word in JOINS or not word[:1].isalpha() for word in said.split()):
        return False
    if said in phrases(TABLE).words("light"):
        return False
    from rules.trip.diets import means as avoided

    return avoided(said).known or catalogue().find(said).how in ("name", "alias", "phrase")


class Chooser:
    """The room; it changes nothing but what the plan's own ears hear in the rest."""

    def __init__(self, host: Host, meals: Meals) -> None:
        self._host = host
        self._meals = meals

    is_under_way = False
    says = (("what can I cook in an hour?", "choose from what you keep, for what there is"),)

    def hear(self, utterance: str) -> Part | None:
        """Questions after a dish for what there is."""
        found = asked(utterance)
        if found is None:
            return None
        told = {name: value for name, value in found.slots.items() if name != "pots"}
        told |= (
            {"pots": [str(one.diameter_in) for one in found.slots["pots"]]} if "pots" in found.slots else {}
        )
        return Part((Meant(act="choose", slots=told),), found.rest, lambda _before: self._choose(found.slots))

    def _choose(self, slots: dict[str, Any], _before: Plan | None = None) -> str:
        # The planners load when a dish is first asked for: most talks never do.
        from assistant.show.choice import choices_text
        from rules.choose import Means, choose

        candidates = list(self._candidates())
        day = self._host.day
        means = Means(
            day=msgspec.structs.replace(day, pots=slots.get("pots", day.pots)),
            briquettes=slots.get("briquettes"),
            minutes=slots.get("minutes"),
            avoids=tuple(slots.get("avoids", ())),
        )
        return choices_text(choose(candidates, means))

    def _candidates(self) -> Iterator[Candidate]:
        """Every kept recipe, and the one that is talked about where it is not kept."""
        from rules.choose import Candidate

        recipe = self._host.recipe
        kept = [self._meals.get(name) for name in self._meals.names()]
        for meal in kept:
            yield Candidate(name=meal.name, recipe=meal.recipe, day=meal.day)
        if recipe is not None and not any(meal.recipe == recipe for meal in kept):
            yield Candidate(name=recipe.title or "this one", recipe=recipe, day=self._host.day)
