"""The name of a food within a stretch of a line: words of size, state and preparation taken off, several foods told apart.

Works on token places of a `Line`; which stretch is the name is `lines.py`'s affair.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cache

from assistant.reader.measures import unit
from assistant.reader.pieces import Line
from rules.foods import catalogue

ANDS = frozenset({"and", "&", "+"})
ORS = frozenset({"or"})
JOINS = ANDS | ORS | {"/"}
#: With one of these behind it, "hot" tells a kind.
FLAVOURED = frozenset({"pepper", "peppers", "chili", "chilli", "chile", "mustard", "salsa", ",", "(", ")"})
SKIPPED = frozenset({"of", "the", "a", "an", "'s"})
#: The prepositions and small words that go on with a preparation: "cut into", "whisked with", "chopped small".
GOES_ON = frozenset(
    {
        "into",
        "in",
        "up",
        "off",
        "out",
        "small",
        "fine",
        "thin",
        "thick",
        "on",
        "lengthwise",
        "crosswise",
        "for",
        "to",
        "with",
        "as",
        "by",
        "at",
        "from",
        "until",
        "over",
        "through",
        "down",
        "about",
        "half",
        "open",
        "very",
        "once",
        "twice",
        "like",
        "separately",
        "together",
        "apart",
        "overnight",
    }
)


@dataclass
class Taken:
    """What was taken off a name."""

    states: list[str] = field(default_factory=list)
    preps: list[str] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)

    def extend(self, other: Taken) -> None:
        """Add what was taken off another part of the line."""
        self.states += other.states
        self.preps += other.preps
        self.notes += other.notes


@dataclass
class Named:
    """The foods of a stretch: the first name, the rest that are wanted too, the rest that may stand for it."""

    names: list[str]
    alternatives: list[str]
    taken: Taken
    #: where a remark begins that the name ended before
    end: int
    #: whether the same place is the start of a clause of preparation
    prep_from: int


def known(name: str) -> bool:
    """Whether the food catalogue has this very name, an alias or its singular."""
    return catalogue().knows(name)


def lead(line: Line, at: int, end: int, taken: Taken) -> int:
    """Take size, state and preparation off the front of a stretch; gives the place where the name starts."""
    place, joined = at, at
    while place < end:
        word = line.word(place)
        after = _one_lead(line, place, end, taken)
        if after > place:
            place = joined = after
            continue
        if word in SKIPPED or word in ("'", '"'):
            place += 1
            continue
        if place > at and (word in JOINS or word in (",", "to", "but", "-")) and _leads(line, place + 1, end):
            place += 1
            continue
        break
    return place if place >= end or place >= joined else joined


def _leads(line: Line, at: int, end: int) -> bool:
    """Whether a word of size, state or preparation stands here."""
    return at < end and _one_lead(line, at, end, Taken()) > at


def _one_lead(line: Line, at: int, end: int, taken: Taken) -> int:
    """Take one such word (with its adverbs) off; the same place where there is none."""
    place = at
    while place < line.after("adverb", place) < end:
        place = line.after("adverb", place)
    done = line.after("done", place)
    if place < done <= end:
        taken.preps.append(line.text(at, done))
        return done
    if at < place < end - 1 and line.word(place) == "ground":
        taken.preps.append(line.text(at, place + 1))
        return place + 1
    sized = max(line.after("size", at), at + line.word(at).endswith(("-sized", "-size")))
    state = line.after("state", at) if sized == at else sized
    if state == at < place:
        state = line.after("state", place) if line.after("state", place) > place else at
    if at < state <= end:
        taken.states.append(line.text(at, state))
        return state
    after = line.after("before_liquid", at)
    if at < after <= end and _is_liquid(line, after):
        taken.states.append(line.text(at, after))
        return after
    return _figure_state(line, at, end, taken)


def _is_liquid(line: Line, at: int) -> bool:
    """Whether a plain liquid follows, by itself ("hot, salted water") or with its kind ("hot beef or chicken stock")."""
    place = at
    while line.word(place) in JOINS or line.word(place) == ",":
        place += 1
    after = max(line.after(label, place) for label in ("state", "before_liquid", "done"))
    if after > place:
        return _is_liquid(line, after)
    if place in line.starts["liquid"]:
        return True
    for further in range(place, place + 4):
        if line.word(further) in FLAVOURED or place in line.whole:
            return False
        if line.word(further) in ("stock", "broth", "milk", "water"):
            return True
    return False


def _figure_state(line: Line, at: int, end: int, taken: Taken) -> int:
    """A figure that tells a kind: "18%", "90% lean", "80/20", "9-inch"."""
    word = line.word(at)
    if not word[:1].isdigit() or at + 1 >= end:
        return at
    if line.word(at + 1) in ("%", "percent"):
        after = at + 2
        while line.word(after) in ("lean", "fat") and after + 1 < end:
            after += 1
    elif "/" in word and sum(int(part) for part in word.split("/") if part.isdigit()) == 100:
        after = at + 1
    else:
        sized = unit(line.lower, at + 1 + (line.word(at + 1) == "-"))
        if sized is None or sized.unit.kind != "length" or sized.end >= end:
            return at
        after = sized.end
    taken.states.append(line.text(at, after))
    return after


def trail(line: Line, start: int, end: int, taken: Taken) -> int:
    """Take the same words off the back; gives the place where the name ends. A name never vanishes."""
    place = end
    found: list[tuple[list[str], str]] = []
    while place > start:
        first, kept = _one_trail(line, start, place, taken)
        if first < place:
            found.append((kept, line.text(first, place)))
            place = first
            continue
        if (
            found
            and place - 1 > start
            and (line.word(place - 1) in JOINS or line.word(place - 1) in ("but", "-"))
        ):
            place -= 1
            continue
        break
    for kept, text in reversed(found):
        kept.append(text)
    return place


def _one_trail(line: Line, start: int, end: int, taken: Taken) -> tuple[int, list[str]]:
    for label, kept in (("done", taken.preps), ("state", taken.states), ("size", taken.states)):
        first = line.before(label, end)
        while start < line.before("adverb", first) < first:
            first = line.before("adverb", first)
        if start < first < end:
            return first, kept
    first = line.before("adverb", end)
    done = line.before("done", first)
    if start < done < first < end:  # "chopped fine"
        return done, taken.preps
    return end, taken.states


def core_end(line: Line, start: int, end: int) -> int:
    """Where the name of a stretch ends: before a remark ("for the pan") or a clause of preparation ("cut into strips")."""
    for place in range(start + 1, end):
        after = line.after("verb", place)
        if after == place:
            after = line.after("done", place)
        if after > place and (after >= end or line.word(after) in GOES_ON or _leads_on(line, after, end)):
            first = place
            while start < line.before("adverb", first) < first:
                first = line.before("adverb", first)
            return first
        if line.after("tail", place) > place:
            return place
    return end


def _leads_on(line: Line, at: int, end: int) -> bool:
    """Whether only preparation follows: "peeled and diced", "chopped finely"."""
    place = at
    while place < end:
        after = max(line.after(label, place) for label in ("adverb", "done", "size", "verb"))
        if after == place and line.word(place) in JOINS:
            after = place + 1
        if after == place:
            return False
        place = after
    return True


def bare(line: Line, start: int, end: int, taken: Taken) -> str:
    """The words of a name with what stands in the middle of it taken out: "white sliced bread" is white bread."""
    kept: list[str] = []
    place = run = start
    while place < end:
        after = place
        if place > start:
            for label, off in (("done", taken.preps), ("state", taken.states), ("size", taken.states)):
                after = line.after(label, place)
                if place < after < end or (place < after == end and place > run):
                    off.append(line.text(place, after))
                    break
                after = place
        if after > place:
            kept.append(line.text(run, place))
            place = run = after
        else:
            place += 1
    kept.append(line.text(run, end))
    return " ".join(part for part in kept if part).strip(" -'\"")


@cache
def _kinds() -> frozenset[str]:
    from assistant.reader import words

    return frozenset(words.groups("names.toml")["kind"])


@cache
def _words(label: str) -> frozenset[str]:
    from assistant.reader import words

    return frozenset(words.groups("names.toml")[label])


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
        place = lead(line, first, cut, own)
        last = trail(line, place, cut, own)
        name = bare(line, place, last, own)
        if name and name not in JOINS:
            names.append(name if first == start or together else " ".join([*own.states, name]))
        first = cut + 1
    return names, together


def is_kind(word: str) -> bool:
    """Whether a word only tells a kind of the food after it: "red"."""
    return word in _kinds()


def _is_product(line: Line, end: int, parts: list[str]) -> bool:
    """Whether the joined words name one product: its last word is one of a seasoning, a soup, a mix."""
    last = line.word(end - 1)
    return last in _words("product") and not (known(parts[0]) and known(parts[-1])) and " " in parts[-1]


def share(parts: list[str], *, tight: bool, together: bool) -> list[str]:
    """Give the first of several names the word that they share with the last: "white or brown rice", "apple/pear syrup"."""
    last = parts[-1].split()
    shared: list[str] = []
    for part in parts[:-1]:
        own = len(last) < 2 or (together and known(part) and not is_kind(part))
        shared.append(part if own else _with_head(part, last, tight=tight))
    return [shared[0], *of_one_kind(shared[0], [*shared[1:], parts[-1]])]


def of_one_kind(name: str, others: list[str]) -> list[str]:
    """Give further foods the word that holds for all of them: "ground beef, veal and pork"."""
    first = name.split()[0]
    if first not in _words("herdwide"):
        return others
    return [f"{first} {other}" if known(f"{first} {other}") else other for other in others]


def _with_head(part: str, last: list[str], *, tight: bool) -> str:
    """A part with the head it borrows, or as it is."""
    behind, head = f"{part} {' '.join(last[1:])}", f"{part} {last[-1]}"
    own = part.split()[-1]
    if own == last[-1]:
        return part
    if part in _kinds() and last[0] in _kinds():
        if not known(part) or known(behind) or known(head):
            return behind if known(behind) or not known(head) else head
        return part
    for candidate in (behind, head):
        if known(candidate) and (not part.endswith("s") or part in _kinds()):
            return candidate
    if part in _kinds() and not known(part):
        return head
    return behind if tight and not known(part) else part
