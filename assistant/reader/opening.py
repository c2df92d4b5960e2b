"""How an ingredient line opens: remarks before the amount, vague amounts, and "juice of 1 lemon"."""

from __future__ import annotations

from assistant.reader import names
from assistant.reader.draft import SIGNS, Draft
from assistant.reader.measures import unit
from assistant.reader.names import ANDS, Taken


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
    if own and (own.end >= draft.end or draft.line.word(own.end) in SIGNS):
        return at  # "a few cloves"
    if own and (own.plural or draft.line.word(own.end) == "of"):
        draft.note(draft.line.text(at, own.end))
        return own.end + (draft.line.word(own.end) == "of")
    return at


def part_of(draft: Draft, at: int) -> int:
    """`part_of := part ("and" part)* ("of" | "from")`; in "juice of 1 lemon" the fruit is the food, its juice the preparation."""
    line, taken = draft.line, Taken()
    first, after = _part(draft, at, taken)
    while after > at and line.word(after) in ANDS:
        _, further = _part(draft, after + 1, Taken())
        if further == after + 1:
            return at
        after = further
    if after == at:
        return at
    part = line.text(first, after).removesuffix(" of")
    if line.word(after - 1) != "of":
        if line.word(after) not in ("of", "from"):
            return at
        after += 1
    draft.taken.preps.append(" ".join([*taken.preps, part]))
    draft.taken.states += taken.states
    return after


def _part(draft: Draft, at: int, taken: Taken) -> tuple[int, int]:
    """`part := ["the"] [done] part_taken`; gives where its word starts and the place after it, `at` where there is none."""
    line = draft.line
    place = names.lead(line, at, draft.end, taken) if line.after("part_taken", at) == at else at
    after = max(line.after("part_taken", place), line.after("egg_part", place))
    return (place, after) if after > place else (at, at)
