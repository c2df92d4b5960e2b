"""A further amount of an ingredient line: more of the same food, or the amount of another one."""

from __future__ import annotations

from assistant.reader import names
from assistant.reader.amounts import amounts, on_top
from assistant.reader.draft import Draft
from assistant.reader.joined import is_kind
from assistant.reader.measures import unit
from assistant.reader.names import ANDS, Taken, known


def is_another(draft: Draft, start: int, end: int) -> bool:
    """Whether a further amount is that of another food: "2 carrots, 1 onion"."""
    line = draft.line
    own = unit(line.words, start)
    if own and line.word(own.end) == "of":  # "a few sprigs of thyme"
        start = own.end + 1
    place = names.lead(line, start, end, Taken())
    stop = names.core_end(line, place, end) if place < end else end
    joined = [at for at in range(place, stop) if line.word(at) in ANDS]
    name = line.text(place, joined[0] if joined else stop)
    kind = draft.main is None and is_kind(name)  # "oil, 1 tbsp olive"
    head = name.split()[-1:]  # "2 wax peppers" are peppers, whatever wax is
    ours = {word for own in draft.names for word in own.split()}
    of_a_sort = len(name.split()) > 1 and known(head[0]) and head[0] not in ours
    return (known(name) or of_a_sort) and name not in draft.names and not kind


def plus(draft: Draft, start: int, end: int) -> bool:
    """`("plus" | "and") amounts`: more of the same ("plus 2 tbsp for dusting"), or another food ("plus 1 egg yolk")."""
    line = draft.line
    if line.word(start) not in ANDS | {"plus"}:
        return False
    found = amounts(line.words[:end], start + 1)
    if found is None:
        vague = line.after("vague", start + 1)
        if vague > start + 1 and is_another(draft, vague, end):
            draft.others.append((start + 1, end))
            return True
        return False
    place = names.lead(line, found.end, end, Taken())
    if place >= end or line.after("tail", place) > place or line.after("no_optional", place) > place:
        draft.amounts += on_top(found.amounts)
        draft.note(line.text(start, end))
    else:
        draft.others.append((start + 1, end))
    return True
