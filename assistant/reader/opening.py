"""How an ingredient line opens: remarks before the amount, vague amounts, and "juice of 1 lemon"."""

from __future__ import annotations

from assistant.reader import names
from assistant.reader.draft import SIGNS, Draft
from assistant.reader.measures import unit
from assistant.reader.names import Taken


def opening(draft: Draft) -> int:
    """`opening := ("optional" | "(optional)" | vague | sign)*`; gives the place after it."""
    line, place = draft.line, draft.start
    while place < draft.end:
        bracketed = line.after("optional", place + 1) if line.word(place) == "(" else 0
        if bracketed > place + 1 and line.word(bracketed) == ")":
            draft.optional, place = True, bracketed + 1
        elif line.after("optional", place) > place:
            draft.optional, place = True, line.after("optional", place)
        elif line.after("vague", place) > place and line.word(line.after("vague", place)) not in ("", ")"):
            draft.note(line.text(place, line.after("vague", place)))
            place = _vague_unit(draft, line.after("vague", place))
        elif line.word(place) in SIGNS and line.word(place) != "(":
            place += 1
        else:
            break
    return place


def _vague_unit(draft: Draft, at: int) -> int:
    """After "a few" a unit counts for nothing: "a few sprigs of thyme" are no amount."""
    own = unit(draft.line.words, at)
    if own and (own.plural or draft.line.word(own.end) == "of"):
        draft.note(draft.line.text(at, own.end))
        return own.end + (draft.line.word(own.end) == "of")
    return at


def part_of(draft: Draft, at: int) -> int:
    """`part_of := [done] part ("of" | "from")`; in "juice of 1 lemon" the fruit is the food, its juice the preparation."""
    line, taken = draft.line, Taken()
    place = names.lead(line, at, draft.end, taken) if line.after("part_taken", at) == at else at
    after = max(line.after("part_taken", place), line.after("egg_part", place))
    if after == place:
        return at
    part = line.text(place, after).removesuffix(" of")
    if line.word(after - 1) != "of":
        if line.word(after) not in ("of", "from"):
            return at
        after += 1
    draft.taken.preps.append(" ".join([*taken.preps, part]))
    draft.taken.states += taken.states
    return after
