"""Several foods in one name: "salt and pepper", "white or brown rice", "plum/cherry syrup", "macaroni and cheese".

Foods joined by "and" are wanted together, those joined by "or" may stand for the first. Foods share a word that is
written once.
"""

from __future__ import annotations

from functools import cache

from assistant.reader import words as tables
from assistant.reader.names import ANDS, JOINS, ORS, Taken, bare, known, lead, trail
from assistant.reader.pieces import Line

STOCKS = frozenset({"stock", "broth", "bouillon"})


@cache
def _words(label: str) -> frozenset[str]:
    return frozenset(tables.groups("names.toml")[label])


def foods(line: Line, start: int, end: int, taken: Taken) -> tuple[list[str], list[str]]:
    """The foods that a name speaks of: those wanted together, and those that may stand for the first.

    "salt and pepper" are two; "white or brown rice" is white rice, else brown rice; "macaroni and cheese" is one.
    """
    cuts = [
        place for place in range(start + 1, end - 1) if line.word(place) in JOINS and place not in line.whole
    ]
    if not cuts:
        return [bare(line, start, end, taken)], []
    if len(cuts) == 1 and line.word(cuts[0]) in ANDS and known(line.text(start, end)):
        return [line.text(start, end)], []
    parts, together = _parts(line, start, end, cuts, taken)
    if len(parts) < 2:
        return parts or [bare(line, start, end, taken)], []
    if together and _is_product(line, end, parts):
        return [line.text(start, end)], []
    tight = line.word(cuts[0]) == "/" and not line.doc[cuts[0]].whitespace_
    parts = share(parts, tight=tight, together=together)
    if together or f"{parts[0]} {parts[1]}" in _words("pair"):
        return parts, []
    return parts[:1], parts[1:]


def _parts(line: Line, start: int, end: int, cuts: list[int], taken: Taken) -> tuple[list[str], bool]:
    """The names between the joining words, and whether they are wanted together."""
    names: list[str] = []
    together = any(line.word(cut) in ANDS for cut in cuts) and not any(line.word(cut) in ORS for cut in cuts)
    first = start
    for cut in [*cuts, end]:
        own = taken if first == start else Taken()
        vague = line.after("vague", first) if first > start and together else first
        if first < vague < cut:  # "salt and plenty of pepper"
            taken.notes.append(line.text(first, vague))
            first = vague
        place = lead(line, first, cut, own)
        last = trail(line, place, cut, own)
        name = bare(line, place, last, own)
        if name and name not in JOINS:
            names.append(name if first == start or together else " ".join([*own.states, name]))
        first = cut + 1
    return names, together


def is_kind(word: str) -> bool:
    """Whether a word only tells a kind of the food after it: "red"."""
    return word in _words("kind")


def _is_product(line: Line, end: int, parts: list[str]) -> bool:
    """Whether the joined words name one product: its last word is one of a seasoning, a soup, a mix."""
    last = line.word(end - 1)
    return last in _words("product") and not (known(parts[0]) and known(parts[-1])) and " " in parts[-1]


def share(parts: list[str], *, tight: bool, together: bool) -> list[str]:
    """Give the first of several names the word that they share with the last: "white or brown rice", "plum/cherry syrup"."""
    parts = of_one_body(parts)
    last = parts[-1].split()
    shared: list[str] = []
    for part in parts[:-1]:
        seed = last[-1] in _words("seed") and known(f"{part} {last[-1]}")
        own = len(last) < 2 or (together and known(part) and not is_kind(part) and not seed)
        shared.append(part if own else _with_head(part, last, tight=tight))
    return [shared[0], *of_one_kind(shared[0], [*shared[1:], parts[-1]])]


def of_one_body(parts: list[str]) -> list[str]:
    """Give further parts of an animal or a plant its name: "chicken thighs and drumsticks"."""
    *body, part = parts[0].split()
    if not body or part not in _words("part"):
        return parts
    return [
        parts[0],
        *(" ".join([*body, other]) if other in _words("part") else other for other in parts[1:]),
    ]


def of_one_kind(name: str, others: list[str]) -> list[str]:
    """Give further foods the word that holds for all of them: "ground beef, veal and pork"."""
    first = name.split()[0]
    if first not in _words("herdwide"):
        return others
    return [f"{first} {other}" if known(f"{first} {other}") else other for other in others]


def _with_head(part: str, last: list[str], *, tight: bool) -> str:
    """A part with the head it borrows, or as it is."""
    own = part.split()[-1]
    shared = last[last.index(own) + 1 :] if own in last[:-1] else last[1:]
    behind, head = f"{part} {' '.join(shared)}", f"{part} {last[-1]}"
    if last[-1] in STOCKS and not known(head) and known(f"{own} {last[-1]}"):
        # "light chicken or fish stock"
        return head
    if own == last[-1] or part in _words("alone"):
        return part
    if is_kind(part) and is_kind(last[0]):
        if not known(part) or known(behind) or known(head):
            return behind if known(behind) or not known(head) else head
        return part
    for candidate in (behind, head):
        if known(candidate) and (not part.endswith("s") or is_kind(part)):
            return candidate
    if is_kind(part) and not known(part):
        return head
    return behind if tight and not known(part) else part
