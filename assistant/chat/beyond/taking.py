"""What the pieces of a sentence make of a trip: the draft after it, and a line about each."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

import msgspec

from assistant.chat.beyond.cookbook import Dish
from assistant.chat.beyond.draft import Draft, DraftMeal
from assistant.chat.beyond.hearing import phrases
from assistant.chat.beyond.parts import TABLE, Piece
from assistant.chat.beyond.pots import joined
from assistant.show import words
from rules.circumstances import PotOwned
from rules.trip.model import Person

replace = msgspec.structs.replace
COUNTS = ("no", "a", "two", "three", "four", "five", "six")
#: So many names of recipes are offered for one that is not known.
MOST_OFFERED = 6

#: The recipe of a dish's name, None where none is known.
Find = Callable[[str], Dish | None]


def taken_over(
    draft: Draft, found: Sequence[Piece], find: Find, names: Callable[[], Sequence[str]]
) -> tuple[Draft, list[str]]:
    """The draft with every piece taken over, and what is answered; `names` are the recipes that could be named."""
    told = []
    for piece in found:
        draft, said = _with(draft, piece, find, names)
        told += [said] if said else []
    pots = [piece.says["pot"] for piece in found if piece.what == "pots"]
    coolers = [one for piece in found if piece.what == "coolers" for one in piece.says["coolers"]]
    if pots:
        draft = replace(draft, pots=joined(pots))
        told.append(f"Pots: {words.joined([_pot_words(pot) for pot in draft.pots])}.")
    if coolers:
        draft = replace(draft, coolers=tuple(coolers))
        told.append(f"Coolers: {words.joined([f'{one.quarts:g} quarts' for one in coolers])}.")
    if any(piece.what == "meal" for piece in found):
        count = len(draft.meals)
        told.append(f'{count} dish{"" if count == 1 else "es"} so far; "plan the trip" joins them up.')
    return draft, told


def _with(draft: Draft, piece: Piece, find: Find, names: Callable[[], Sequence[str]]) -> tuple[Draft, str]:
    says = piece.says
    if piece.what == "meal":
        dish = find(says["dish"])
        return _with_meal(draft, says, dish) if dish else (draft, _unknown(says, names()))
    if piece.what in ("drop", "move"):
        return _changed(draft, piece)
    if piece.what == "person":
        person = Person(name=says["name"], avoids=tuple(says["avoids"]))
        others = tuple(one for one in draft.persons if one.name != person.name)
        avoided = words.joined(person.avoids, "or")
        return replace(draft, persons=(*others, person)), f"{words.capital(person.name)}: no {avoided}."
    if piece.what == "drive":
        return replace(draft, **says), f"The drive takes {says['drive_hours']:g} hours."
    if piece.what == "leave":
        when = [str(says[key]).capitalize() for key in ("leave_day", "leave_clock") if key in says]
        return replace(draft, **says), f"You leave {' at '.join(when)}."
    return draft, ""


def _with_meal(draft: Draft, says: dict[str, Any], dish: Dish) -> tuple[Draft, str]:
    when, title = _when(says), dish.recipe.title or dish.name
    meal = DraftMeal(
        day=says["day"],
        meal=says["meal"],
        clock=says["clock"],
        dish=dish.name,
        recipe=dish.recipe,
        swaps=dish.day.swaps,
        temp_f=dish.day.temp_f,
    )
    if says.get("instead"):
        here = (meal.day, usual(meal.meal))
        draft = replace(draft, meals=tuple(one for one in draft.meals if (one.day, usual(one.meal)) != here))
    if meal in draft.meals:
        return draft, f"{when}: {title} stands there already."
    return replace(draft, meals=(*draft.meals, meal)), f"{when} at {meal.clock}: {title}."


def _unknown(says: dict[str, Any], names: Sequence[str]) -> str:
    when = _when(says)
    known = words.joined(names[:MOST_OFFERED], "or")
    offer = f", such as {known}." if known else "."
    return f'{when}: I know no recipe called "{says["dish"]}". Paste it and say "{when} this one", or name another{offer}'


def _when(says: dict[str, Any]) -> str:
    return f"{says['day'].capitalize()} {says['meal']}"


def _changed(draft: Draft, piece: Piece) -> tuple[Draft, str]:
    """The trip with meals dropped or moved."""
    day, meal = piece.says.get("day"), piece.says.get("meal")
    meant = [
        one
        for one in draft.meals
        if day in (None, one.day) and (meal is None or usual(one.meal) == usual(meal))
    ]
    when = " ".join(str(word) for word in (day and day.capitalize(), meal) if word)
    if not meant:
        return draft, f"There is no meal on {when}."
    if piece.what == "drop":
        kept = tuple(one for one in draft.meals if one not in meant)
        return replace(draft, meals=kept, is_begun=True), f"{when} is dropped."
    clock = piece.says["clock"]
    moved = tuple(replace(one, clock=clock) if one in meant else one for one in draft.meals)
    return replace(draft, meals=moved), f"{when} is at {clock} now."


def usual(meal: str) -> str:
    """What tells a meal from another of the day: supper, dinner and evening are one."""
    lists = phrases(TABLE).lists
    group = next((group for group, said in lists.items() if group.startswith("meal:") and meal in said), meal)
    return group.partition("@")[2]


def _pot_words(pot: PotOwned) -> str:
    size = f"{'deep ' if pot.depth == 'deep' else ''}{pot.diameter_in}-inch pot"
    if pot.count == 1:
        return f"a {size}"
    return f"{COUNTS[pot.count] if pot.count < len(COUNTS) else pot.count} {size}s"
