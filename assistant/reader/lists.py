"""Foods listed over several pieces of a line: "sugar, honey or molasses", "beef, veal, and pork", "flour, all-purpose"."""

from __future__ import annotations

from typing import NamedTuple

from assistant.reader import joined as joined_foods
from assistant.reader import names
from assistant.reader.draft import Draft
from assistant.reader.figures import figure
from assistant.reader.names import ANDS, JOINS, ORS, Taken, known
from assistant.reader.pieces import Piece

#: "Stock, hot" tells how it is, and not of which kind.
STATES = frozenset({"hot", "cold", "warm", "cool", "boiling", "chilled"})


class Listed(NamedTuple):
    """The foods of one piece, the word that joins them to the list ("" where there is none), and whether they are surely foods."""

    names: list[str]
    joined: str
    sure: bool
    #: "optional" or "taste" where the piece ends with such a remark
    flag: str | None = None
    #: vague amounts: "plenty of"
    notes: tuple[str, ...] = ()


def listed(draft: Draft, left: list[Piece]) -> None:
    """`listed := ("," food)* ["," ["or" | "and"] food [("or" | "and") food]]`; takes its pieces off those left."""
    found: list[Listed] = []
    for piece in left:
        read = _food_piece(draft, piece) if piece.before in (",", "-", ")") else None
        if read is None:
            break
        found.append(read)
        if read.joined:
            break
    if not found or not draft.names:
        return
    joined = found[-1].joined
    if not joined or not any(read.sure for read in found):
        found = _sure_ones(found)
    parts = [name for read in found for name in read.names]
    if not parts:
        return
    if _is_kind_of_name(draft, parts):
        if parts[0] in STATES:
            draft.taken.states.append(parts[0])
        else:
            draft.names[0] = f"{parts[0]} {draft.names[0]}"
    elif joined == "or":
        draft.names[0], *others = joined_foods.share([draft.names[0], *parts], tight=False, together=False)
        draft.alternatives += others
    elif joined == "and" or not draft.amounts or draft.each:
        draft.names[0], *others = joined_foods.share([draft.names[0], *parts], tight=False, together=True)
        draft.names += others
    else:
        return
    draft.optional = draft.optional or any(read.flag == "optional" for read in found)
    draft.to_taste = draft.to_taste or any(read.flag == "taste" for read in found)
    draft.taken.notes += [note for read in found for note in read.notes]
    del left[: len(found)]


def _sure_ones(found: list[Listed]) -> list[Listed]:
    """The pieces up to the first that may be no food."""
    for place, read in enumerate(found):
        if not read.sure or read.joined:
            return found[:place]
    return found


def _is_kind_of_name(draft: Draft, parts: list[str]) -> bool:
    """Whether the second piece only tells the kind of the first: "flour, all-purpose"."""
    return len(parts) == 1 and parts[0] != draft.names[0] and known(f"{parts[0]} {draft.names[0]}")


def _food_piece(draft: Draft, piece: Piece) -> Listed | None:
    """The foods of a piece after the name; None where it holds a preparation, an amount or a remark."""
    line, taken = draft.line, Taken()
    start, end = piece.start, piece.end
    opens = line.word(start)
    if opens in JOINS:
        start += 1
    if start < line.after("vague", start) < end:  # "salt, plenty of pepper"
        taken.notes.append(line.text(start, line.after("vague", start)))
        start = line.after("vague", start)
    marks = ("optional", "taste", "tail", "part_taken")
    if start >= end or any(line.after(label, start) > start for label in marks) or figure(line.words, start):
        return None
    flag, end = _flag_at_end(draft, start, end)
    if any(line.has(label, start, end) for label in ("optional", "taste", "verb")):
        return None
    place = names.lead(line, start, end, taken)
    if place >= end or taken.preps or line.after("tail", place) > place:
        return None
    stop = names.core_end(line, place, end)
    first, others = joined_foods.foods(line, place, names.trail(line, place, stop, taken), Taken())
    inner = "or" if others else "and" if len(first) > 1 else ""
    base = first[0] if first else ""
    if taken.states and first:
        first[0] = " ".join([*taken.states, first[0]])
    if (
        all(joined_foods.is_kind(name) or not known(name) for name in line.text(place, stop).split(" or "))
        and others
    ):
        return None  # "smooth or crunchy" tells the kind of the food before it
    if len(first) > 1 and all(joined_foods.is_kind(name) and not known(name) for name in first):
        return None  # "peppers, red and yellow"
    found = [name for name in first + others if name]
    if not found or taken.preps:
        return None
    joined = "or" if opens in ORS or inner == "or" else "and" if opens in ANDS or inner else ""
    whole = draft.names[0]
    part = joined_foods.of_one_body([whole, *found]) != [whole, *found]
    sure = part or any(known(name) or known(f"{name} {whole}") for name in (*found, base) if name)
    if stop < end and not (opens in JOINS or sure):
        return None
    return Listed(found, joined, sure, flag, tuple(taken.notes))


def _flag_at_end(draft: Draft, start: int, end: int) -> tuple[str | None, int]:
    """A remark of the whole list at the end of its last piece: "salt, pepper to taste"."""
    for label in ("optional", "taste"):
        first = draft.line.before(label, end)
        if start < first < end:
            return label, first
    return None, end
