"""The name of a food within a stretch of a line: words of size, state and preparation taken off it.

Works on token places of a `Line`; which stretch is the name is the affair of `lines.py`, several foods in one that of
`joined.py`.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cache

from assistant.reader import words as tables
from assistant.reader.measures import unit
from assistant.reader.numbers import number
from assistant.reader.pieces import Line
from rules.foods import catalogue

ANDS = frozenset({"and", "&", "+"})
ORS = frozenset({"or"})
MORE = frozenset({"more", "extra"})
JOINS = ANDS | ORS | {"/"}
SKIPPED = frozenset({"of", "the", "a", "an", "'s"})


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


@cache
def _goes_on() -> frozenset[str]:
    return frozenset(tables.groups("preparations.toml")["goes_on"])


@cache
def _flavours() -> frozenset[str]:
    return frozenset(tables.groups("states.toml")["flavour"])


def known(name: str) -> bool:
    """Whether the food catalogue has this very name, an alias or its singular."""
    return catalogue().knows(name)


def lead(line: Line, at: int, end: int, taken: Taken) -> int:
    """Take size, state and preparation off the front of a stretch; gives the place where the name starts."""
    place, joined = at, at
    last: tuple[int, int, int] | None = None
    while place < end:
        word = line.word(place)
        before = (place, len(taken.states), len(taken.preps))
        after = _one_lead(line, place, end, taken)
        if after > place:
            place = joined = after
            last = before
            continue
        if word in SKIPPED or word in ("'", '"'):
            place += 1
            continue
        if place > at and (word in JOINS or word in (",", "to", "but", "-")) and _leads(line, place + 1, end):
            place += 1
            continue
        if (
            last
            and word in JOINS
            and place == joined
            and place + 1 < end
            and not number(line.words, place + 1)
        ):
            # "smooth or wholegrain mustard": the two tell kinds of one food.
            place, states, preps = last
            del taken.states[states:], taken.preps[preps:]
            return place
        break
    return place if place >= end or place >= joined else joined


def _leads(line: Line, at: int, end: int) -> bool:
    """Whether a word of size, state or preparation stands here."""
    return at < end and _one_lead(line, at, end, Taken()) > at


def _one_lead(line: Line, at: int, end: int, taken: Taken) -> int:
    """Take one such word (with its adverbs) off; the same place where there is none."""
    sized = max(line.after("size", at), at + line.word(at).endswith(("-sized", "-size")))
    if at < sized <= end and sized not in line.starts["done"]:
        taken.states.append(line.text(at, sized))
        return sized
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
    state = line.after("state", at)
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
        if line.word(further) in _flavours() or place in line.whole:
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
        while first < end and start < line.before("adverb", first) < first:
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
        if after > place and (after >= end or line.word(after) in _goes_on() or _leads_on(line, after, end)):
            first = place
            while start < line.before("adverb", first) < first:
                first = line.before("adverb", first)
            return first
        if line.after("tail", place) > place or _is_more(line, place, end):
            return place
    return end


def _is_more(line: Line, at: int, end: int) -> bool:
    """`("+" | "and") ("more" | "extra") ["for" ... | "to taste"]`: more of the same food."""
    if line.word(at) not in ANDS or line.word(at + 1) not in MORE:
        return False
    return at + 2 >= end or line.after("tail", at + 2) > at + 2 or line.after("taste", at + 2) > at + 2


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
    """The words of a name with what stands in the middle of it taken out: "brown sliced bread" is brown bread."""
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
