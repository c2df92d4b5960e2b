"""The pots that a sentence names, several kinds at once: "two 12s and a deep 10"."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from assistant.chat.beyond.hearing import Hearing, Span
from assistant.chat.values import number
from assistant.chat.values import table as value_words
from rules.circumstances import DIAMETERS_IN, PotOwned
from rules.plan import Depth

DEPTHS: dict[str, Depth] = {"deep": "deep", "shallow": "shallow", "regular": "shallow", "standard": "shallow"}
INCHES = frozenset(["inch", "inches", "in", '"', "''", "incher", "inchers"])
NOUNS = frozenset(["pot", "pots", "oven", "ovens", "kettle", "kettles", "iron", "irons"])
BEFORE_NOUN = frozenset(["dutch", "camp", "cast"])
MOST_POTS = 6


class NamedPot(NamedTuple):
    """A kind of pot with its number, and its tokens."""

    pot: PotOwned
    span: Span


def pots(hearing: Hearing) -> Iterator[NamedPot]:
    """Every kind of pot in a sentence, from left to right."""
    words, at, behind = hearing.words, 0, 0
    while at < len(words):
        found = pot(words, at)
        if found is None and (both := _bare_pair(words, at)):
            yield from both
            at = behind = both[-1].span[1]
            continue
        if found is not None:
            yield from _joined_before(words, found, behind)
            yield found
            behind = found.span[1]
        at = found.span[1] if found else at + 1


def _bare_pair(words: Sequence[str], at: int) -> list[NamedPot]:
    """Two bare sizes with their numbers, at the end of what is said: "a 12 and a 10"."""
    found: list[NamedPot] = []
    for place in (at, at + 3):
        one = pot([*words[place : place + 2], "pot"], 0) if number(words[place : place + 2], 0) else None
        if one is None or one.span[1] != 3 or words[place] not in ("a", "an", "one", "two", "three"):
            return []
        found.append(NamedPot(one.pot, (place, place + 2)))
    is_joined = words[at + 2 : at + 3] in (["and"], ("and",), [","], (",",), ["&"], ("&",))
    is_end = at + 5 >= len(words) or words[at + 5] in (".", ",", ";", "!", "come", "along", "and")
    return found if is_joined and is_end else []


def _joined_before(words: Sequence[str], found: NamedPot, behind: int) -> Iterator[NamedPot]:
    """A bare size with its number joined to a pot that follows: the 12 of "a 12 and a deep 10"."""
    end = found.span[0] - 1
    if end < behind + 2 or words[end] not in ("and", ",", "&", "plus"):
        return
    for at in (end - 3, end - 2):
        one = pot([*words[at:end], "pot"], 0) if at >= behind and words[at : at + 1] else None
        if one is not None and one.span[1] == end - at + 1 and words[at] not in ("pot", "for", "of"):
            yield NamedPot(one.pot, (at, end))
            return


def pot(words: Sequence[str], at: int) -> NamedPot | None:
    """Pot := [count] [depth] size ["s" | inch] [depth] [noun]; a size alone is none."""
    counted = number(words, at)
    choices = [(counted.value, counted.end)] if counted else []
    if at + 1 < len(words) and words[at] in ("a", "an", "one", "the", "our", "my"):
        choices.append((1.0, at + 1))
    choices.append((1.0, at))
    for count, place in choices:
        found = _sized(words, place)
        if found is not None and count == int(count) and 1 <= count <= MOST_POTS:
            diameter, depth, end = found
            owned = PotOwned(diameter_in=diameter, depth=depth, count=int(count))
            return NamedPot(owned, (at, end))
    return None


def _sized(words: Sequence[str], at: int) -> tuple[int, Depth, int] | None:
    """A size with what shows that it is one: depth, "inch", a plural, or the noun."""
    word = words[at] if at < len(words) else ""
    depth = DEPTHS.get(word)
    place = at + 1 if depth else at
    word = words[place] if place < len(words) else ""
    is_shown = depth is not None
    if word in value_words().sizes:
        diameter, place, is_shown = value_words().sizes[word], place + 1, True
    else:
        said = number(words, place)
        if said is None or said.article:
            return None
        diameter, place = said.value, said.end
    if diameter not in DIAMETERS_IN:
        return None
    while place < len(words) and (words[place] in INCHES or words[place] in ("s", "'s", "'", "-")):
        is_shown = is_shown or words[place] != "-"
        place += 1
    if depth is None and place < len(words) and words[place] in DEPTHS:
        depth, place, is_shown = DEPTHS[words[place]], place + 1, True
    noun = place
    while noun < len(words) and words[noun] in BEFORE_NOUN:
        noun += 1
    if noun < len(words) and words[noun] in NOUNS:
        place, is_shown = noun + 1, True
    return (int(diameter), depth or "shallow", place) if is_shown else None


def joined(found: Sequence[PotOwned]) -> tuple[PotOwned, ...]:
    """Each kind once, with all of its number."""
    counts: dict[tuple[int, Depth], int] = {}
    for one in found:
        counts[one.diameter_in, one.depth] = counts.get((one.diameter_in, one.depth), 0) + one.count
    return tuple(
        PotOwned(diameter_in=diameter, depth=depth, count=count)
        for (diameter, depth), count in counts.items()
    )
