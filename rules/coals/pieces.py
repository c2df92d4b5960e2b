"""What the method does with heat, in order: one piece for each spell over a fire, as the text tells it.

Deeds give the kind, times that stand beside them the minutes; a time without a deed joins the spell it belongs to.
What becomes of the pieces over coals is decided in `course`. Handbook chapters 5 and 7.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Literal

import msgspec

from rules.coals.degrees import HOT_F, READ_CHARS, oven_figures, spell_heats
from rules.foods import Item
from rules.hazards import hazard_of
from rules.recipe import Action, Deed, Duration, DurationKind, Recipe, Step, Struct

Flame = Literal["low", "medium", "high"]
Kind = Literal["heat", "fry", "brown", "boil", "simmer", "pressure", "bake", "roast", "brown top", "rise"]

BY_DEED: dict[Deed, Kind] = {
    "heat": "heat",
    "melt": "heat",
    "brown": "brown",
    "saute": "fry",
    "fry": "fry",
    "deep fry": "fry",
    "griddle": "fry",
    "toast": "fry",
    "grill": "fry",
    "boil": "boil",
    "steam": "boil",
    "simmer": "simmer",
    "reduce": "simmer",
    "pressure cook": "pressure",
    "bake": "bake",
    "roast": "roast",
    "broil": "brown top",
    "rise": "rise",
}
BY_TIME: dict[DurationKind, Kind] = {
    "bake": "bake",
    "simmer": "simmer",
    "fry": "fry",
    "boil": "boil",
    "rise": "rise",
}
#: Kinds that a time may turn into what the time says: "cook for 20 minutes" leaves the place open.
OPEN: frozenset[Kind] = frozenset({"fry", "boil", "simmer", "bake", "heat"})
STOVE: frozenset[Kind] = frozenset({"heat", "fry", "brown", "boil", "simmer", "pressure"})
#: Deeds that take no time of their own: what stands beside them is how long the pot goes on.
LETS_GO: frozenset[Deed] = frozenset({"other", "cover", "turn", "add"})
#: A time that says "about", "meanwhile" or nothing is taken for a spell of heat up to this long [min].
LONGEST_OTHER_MIN = 6 * 60
#: What doubles a time told for one side of what is fried.
_SIDES = re.compile(
    r"\b(?:min(?:ute)?s?|seconds?|secs?)\.?,?\s+(?:(?:on|for|to)\s+)?(?:per|a|each|every|either|both)\s+sides?\b",
    re.IGNORECASE,
)
#: What multiplies a time told for one of several batches, and how many of them the text names.
_EACH_BATCH = re.compile(
    r"\b(?:min(?:ute)?s?|seconds?|secs?)\.?,?\s+(?:(?:for|to)\s+)?(?:per|a|each|every)\s+(?:batch|lot|round)\b"
    r"|\b(?:per|each|every)\s+(?:batch|lot|round)\b",
    re.IGNORECASE,
)
_BATCHES = re.compile(
    r"\b(?:in|into)\s+(?:about\s+)?(two|three|four|five|six|[2-6])\s+(?:batches|lots|rounds)\b", re.IGNORECASE
)
_NUMBERS = {"two": 2, "three": 3, "four": 4, "five": 5, "six": 6}
#: A flame that was high and is turned down before what follows.
_TURNED_DOWN = re.compile(
    r"\b(?:turn|lower|reduce|drop)\s+(?:down\s+)?(?:the\s+)?(?:heat|flame|burner)\b(?!\s+up)", re.IGNORECASE
)
#: An order to cook, and no word for what is cooked already.
_COOK = re.compile(r"\b(?:cook|fry|sear|saute|sauté)\b", re.IGNORECASE)
#: In so many batches meat is browned where the text does not count them.
USUAL_BATCHES = 3
FLESH = frozenset({"meat", "poultry", "fish"})


class Piece(Struct, frozen=True, kw_only=True):
    """One spell of heat in one step. Minutes are None where the text gives none; `temp_f` is the oven's or fat's.

    `has_flesh` says that raw meat, poultry or fish is in it; `verb` is the verb as written.
    """

    kind: Kind
    step: int
    verb: str = ""
    does: Deed = "other"
    low_min: float | None = None
    high_min: float | None = None
    temp_f: float | None = None
    heat: Flame | None = None
    uses: tuple[int, ...] = ()
    has_flesh: bool = False
    vessel: str | None = None

    @property
    def is_timed(self) -> bool:
        """Whether the text says how long."""
        return self.low_min is not None

    @property
    def longest_min(self) -> float:
        """The high end of its minutes, 0 where there are none."""
        return self.high_min or 0.0


def pieces(recipe: Recipe, items: Sequence[Item]) -> tuple[Piece, ...]:
    """The spells of heat of a recipe, in the order of the text; what is optional or done days before is left out."""
    found: list[Piece] = []
    oven_f: float | None = None
    flame: Flame | None = None
    for index, step in enumerate(recipe.steps):
        here: list[Piece] = []
        if flame == "high" and _TURNED_DOWN.search(step.text[:READ_CHARS]):
            flame = "medium"
        for action in step.actions:
            flame = action.heat or flame
            piece = _of_action(action, index, step, items, oven_f)
            if piece is not None and not _turns_the_oven(piece, here):
                here.append(_over(flame, piece))
        if not here and _cooks_flesh(step, items):
            here.append(Piece(kind="fry", step=index, verb="cook", uses=step.uses, has_flesh=True))
        own_flame = next((action.heat for action in step.actions if action.heat), None)
        if not here and own_flame:
            # A pan put over a flame; what is done in it may stand in the next step.
            here.append(Piece(kind="heat", step=index, heat=own_flame))
        here = list(_with_loose_times(here, step, index, found))
        found.extend(_with_oven_heat(here, step, oven_f))
        oven_f = next(reversed(oven_figures(step, _ovens(here))), oven_f)
    return tuple(found)


def _of_action(
    action: Action, index: int, step: Step, items: Sequence[Item], oven_f: float | None
) -> Piece | None:
    kind = BY_DEED.get(action.does)
    if kind is None or action.optional or (action.ahead and kind == "rise"):
        return None
    if action.minutes is not None and kind in OPEN:
        kind = BY_TIME.get(action.minutes.what, kind)
    if kind == "bake" and action.heat is not None and "oven" not in (action.vessel or ""):
        kind = "fry"  # an oven has no low or medium flame
    if kind == "fry" and _is_oven(action, step, oven_f):
        kind = "bake"
    uses = tuple(use.ingredient for use in action.uses)
    turns = _turns(step) if kind in ("fry", "brown") else 1
    return Piece(
        kind=kind,
        step=index,
        verb=action.word.lower(),
        does=action.does,
        low_min=action.minutes.low_min * turns if action.minutes else None,
        high_min=action.minutes.high_min * turns if action.minutes else None,
        temp_f=action.temp_f if action.temp_f and action.temp_f > HOT_F else None,
        heat=action.heat,
        uses=uses,
        has_flesh=any(hazard_of(items[use]) in FLESH for use in uses),
        vessel=action.vessel,
    )


def _turns(step: Step) -> int:
    """How often a time of a step is spent: once a side, once a batch."""
    text = step.text[:READ_CHARS]
    turns = 2 if _SIDES.search(text) else 1
    if not _EACH_BATCH.search(text):
        return turns
    told = _BATCHES.search(text)
    number = told[1].lower() if told else ""
    return turns * (_NUMBERS.get(number) or int(number or USUAL_BATCHES))


def _over(flame: Flame | None, piece: Piece) -> Piece:
    """A pan stays on the flame that was named for it; a low one browns no meat and boils nothing."""
    if piece.kind == "boil" and "low" in (flame, piece.heat) and not piece.verb.startswith(("boil", "bring")):
        return msgspec.structs.replace(piece, kind="simmer")
    stays = piece.kind == "fry" and piece.heat is None and not (flame == "low" and piece.has_flesh)
    return msgspec.structs.replace(piece, heat=flame) if stays else piece


def _turns_the_oven(piece: Piece, here: Sequence[Piece]) -> bool:
    """Whether "reduce" is said of an oven that bakes, not of a sauce."""
    return piece.does == "reduce" and not piece.is_timed and bool(_ovens(here))


def _ovens(here: Sequence[Piece]) -> int:
    return sum(piece.kind in ("bake", "roast") for piece in here)


def _with_oven_heat(here: Sequence[Piece], step: Step, oven_f: float | None) -> Iterator[Piece]:
    """The pieces of a step, each oven spell with its own temperature."""
    heats = iter(spell_heats(step, oven_f, _ovens(here)))
    for piece in here:
        if piece.kind in ("bake", "roast"):
            heat = next(heats)
            yield msgspec.structs.replace(piece, temp_f=piece.temp_f or heat)
        else:
            yield piece


def _cooks_flesh(step: Step, items: Sequence[Item]) -> bool:
    """Whether a step whose deeds name no fire still says to cook the raw meat that it takes."""
    if any(action.does == "preheat" or action.optional or action.ahead for action in step.actions):
        return False
    flesh = any(hazard_of(items[use]) in FLESH for use in step.uses)
    return flesh and _COOK.search(step.text[:READ_CHARS]) is not None


def _is_oven(action: Action, step: Step, oven_f: float | None) -> bool:
    """Whether a spell read as a pan's is the oven's: it is said to bake or roast, and an oven's heat is told."""
    if action.word.lower().startswith(("air fry", "air-fry", "airfry")):
        return True  # an oven with a fan, whatever it is called
    if not action.word.lower().startswith(("bake", "baking", "roast")):
        return "oven" in (action.vessel or "").split()
    return oven_f is not None or bool(oven_figures(step, 1))


def _with_loose_times(here: list[Piece], step: Step, index: int, before: list[Piece]) -> Iterator[Piece]:
    """The pieces of a step, with the times that no deed took given to the spell they belong to, in the text's order."""
    for time in _loose(step):
        kind = BY_TIME.get(time.what)
        if (kind is None and time.what != "other") or _is_told(time, index, before):
            continue
        place = next((n for n, piece in enumerate(here) if _fits(piece, kind)), None)
        if place is not None:
            here[place] = _timed(here[place], kind, time)
        elif kind is not None:
            here.insert(_place(time, step, here), _timed(Piece(kind=kind, step=index), kind, time))
        elif before and not here and _fits(before[-1], None) and time.low_min >= 1:
            before[-1] = _timed(before[-1], None, time)
    yield from here


def _place(time: Duration, step: Step, here: Sequence[Piece]) -> int:
    """Where a loose time stands among the timed pieces of its step."""
    earlier = [(told.low_min, told.high_min) for told in step.durations[: step.durations.index(time)]]
    places = [n for n, piece in enumerate(here) if (piece.low_min, piece.high_min) in earlier]
    if places:
        return places[-1] + 1
    return next((n for n, piece in enumerate(here) if piece.is_timed), len(here))


def _is_told(time: Duration, index: int, before: Sequence[Piece]) -> bool:
    """Whether the line before has it already: a sentence runs over the line's end."""
    if not before or before[-1].step != index - 1:
        return False
    return (before[-1].low_min, before[-1].high_min) == (time.low_min, time.high_min)


def _loose(step: Step) -> list[Duration]:
    """The step's times that belong to none of its deeds."""
    loose = list(step.durations)
    for action in step.actions:
        is_fire = action.minutes is not None and action.minutes.what in BY_TIME
        if action.minutes in loose and action.does not in LETS_GO and (action.does in BY_DEED or not is_fire):
            loose.remove(action.minutes)
    return [time for time in loose if time.low_min <= LONGEST_OTHER_MIN]


def _fits(piece: Piece, kind: Kind | None) -> bool:
    """Whether a loose time may be this piece's: it has none, and the kinds agree or the piece is open."""
    if piece.is_timed or piece.kind == "rise":
        return False
    return kind is None or piece.kind == kind or (piece.kind == "heat" and kind in STOVE)


def _timed(piece: Piece, kind: Kind | None, time: Duration) -> Piece:
    return msgspec.structs.replace(
        piece, kind=kind or piece.kind, low_min=time.low_min, high_min=time.high_min
    )
