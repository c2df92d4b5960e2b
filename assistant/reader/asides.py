"""Everything an ingredient line says beside its amount and its name: states, preparations, remarks, substitutes.

Nothing is dropped: what is not understood becomes a note of the draft.
"""

from __future__ import annotations

import msgspec

from assistant.reader import joined, names
from assistant.reader.amounts import Found, amounts
from assistant.reader.draft import SIGNS, Draft
from assistant.reader.figures import phrase
from assistant.reader.further import is_another, plus
from assistant.reader.holding import is_size_of, is_size_of_one, packed
from assistant.reader.measures import unit
from assistant.reader.names import JOINS, ORS, Taken, known
from assistant.reader.numbers import number
from assistant.reader.pieces import Piece, pieces
from rules import units
from rules.foods.names import singular
from rules.recipe import Amount


def aside(draft: Draft, start: int, end: int, *, bracket: bool = False) -> None:
    """Read one piece beside the name."""
    line = draft.line
    start, end = trimmed(draft, start, end)
    if start >= end:
        return
    for label in ("optional", "taste"):
        for first, last in sorted(line.starts[label].items()):
            if start <= first and last <= end:
                _flag(draft, label, start, first, bracket=bracket)
                aside(draft, start, first, bracket=bracket)
                aside(draft, last, end, bracket=bracket)
                return
    if bracket and _several(draft, start, end):
        return
    understood = (
        _from_fruit(draft, start, end)
        or _work(draft, start, end)
        or _substitute(draft, start, end)
        or _amount(draft, start, end, bracket=bracket)
        or plus(draft, start, end)
        or (bracket and _second_name(draft, start, end))
    )
    if not understood:
        draft.note(line.text(start, end))
        if bracket or not draft.amounts:
            _scan(draft, start, end)


def trimmed(draft: Draft, start: int, end: int) -> tuple[int, int]:
    """The stretch without signs at its ends; an inch mark stays, and a bracket that was opened within."""
    word = draft.line.word
    while start < end and word(start) in SIGNS and word(start) != "(":
        start += 1
    while start < end and word(end - 1) in SIGNS:
        inch = word(end - 1) == '"' and word(end - 2)[-1:].isdigit()
        if inch or (word(end - 1) == ")" and "(" in draft.line.lower[start:end]):
            break
        end -= 1
    return start, end


def _flag(draft: Draft, label: str, start: int, at: int, *, bracket: bool) -> None:
    """Note that the food is optional or to taste.

    "Plus extra for serving if desired" speaks of the extra alone, "toasted if you like" of the toasting, "(keep the
    seeds if you like)" of the seeds.
    """
    line = draft.line
    if label == "taste":
        draft.to_taste = True
    elif line.word(at) == "if" and (
        line.has("done", start, at) or line.has("verb", start, at) or (bracket and at - start > 1)
    ):
        draft.note(line.text(at, line.after(label, at)))
    elif not any(line.after("no_optional", place) > place for place in range(start, at)):
        draft.optional = True


def _several(draft: Draft, start: int, end: int) -> bool:
    """A bracket with several asides, each read for itself ("about 2 cups, chopped"), or one remark with commas."""
    line = draft.line
    inner = pieces(line, start, end)
    if len(inner) < 2 or line.word(start) in ORS:
        return False
    if _reads_apart(draft, inner[0]):
        for place, piece in enumerate(inner):
            if line.word(piece.start) in ORS and piece is not inner[-1]:
                # "8 medium, or 3 cans, drained": what follows is said of the other food.
                substitute(draft, piece.start + 1, inner[place + 1].start - 1)
                draft.note(line.text(inner[place + 1].start, end))
                break
            aside(draft, piece.start, piece.end, bracket=True)
    else:
        draft.note(line.text(start, end))
        _scan(draft, start, end)
    return True


def _reads_apart(draft: Draft, piece: Piece) -> bool:
    """Whether a piece of a bracket is an amount, a state or a preparation alone."""
    line = draft.line
    if amounts(line.words[: piece.end], piece.start):
        return True
    return names.lead(line, piece.start, piece.end, Taken()) >= piece.end


def _from_fruit(draft: Draft, start: int, end: int) -> bool:
    """`["from"] amount fruit`; "lime juice from 2 limes" is the juice of two limes."""
    line = draft.line
    said = line.word(start) == "from"
    found = amounts(line.words[:end], start + said)
    if found is None or found.end >= end or line.after("tail", found.end) > found.end:
        return False
    first = names.lead(line, found.end, end, Taken())
    if not said and singular(line.text(first, end)) not in _first_words(draft):
        return False
    if found.main.unit is None and first < end:
        fruit = singular(line.text(first, end))
        draft.amounts.append(
            Amount(low=found.main.low, high=found.main.high, unit=fruit, approx=found.main.approx)
        )
    else:
        draft.take(found)
    draft.note(line.text(start, end))
    return True


def _first_words(draft: Draft) -> list[str]:
    """The words of the name but the last: the lemon of "lemon juice"."""
    return draft.names[0].split()[:-1] if draft.names else []


def _work(draft: Draft, start: int, end: int) -> bool:
    """A state or a preparation: "softened", "peeled and cut into strips", "casings removed", "juice only"."""
    line, taken = draft.line, Taken()
    instead = line.word(start) in ORS
    if line.word(start) in JOINS:
        start += 1
    if start >= end:
        return True
    if line.after("tail", start) > max(start, line.after("state", start) - 1):
        return False
    if names.lead(line, start, end, taken) >= end:
        if instead:
            draft.note(f"or {line.text(start, end)}")
        elif line.starts["done"].get(start) or (line.starts["adverb"].get(start) and not taken.states):
            draft.taken.preps.append(line.text(start, end))
        else:
            draft.taken.extend(taken)
        return True
    if instead:
        return False
    opener = line.after("adverb", start)
    works = (
        line.after("part_taken", start) >= end
        or any(line.after(label, place) > place for place in {start, opener} for label in ("done", "verb"))
        or any(
            start < place < min(end, start + 5) for label in ("done", "verb") for place in line.starts[label]
        )
    )
    if works and not _has_amount(draft, start, end):
        draft.taken.preps.append(line.text(start, end))
        return True
    return False


def _has_amount(draft: Draft, start: int, end: int) -> bool:
    """Whether a stretch opens with an amount; one inside a preparation is none."""
    found = amounts(draft.line.words[:end], start)
    return found is not None and units.kind(found.main.unit) != "length"


def _substitute(draft: Draft, start: int, end: int) -> bool:
    """`"or" ["about"] [amounts] food`; a food that may stand for the name, with an amount of its own."""
    line = draft.line
    if line.word(start) not in ORS | {"/"}:
        return False
    if line.after("tail", start) > start:  # "or less", "or as many as you like"
        draft.note(line.text(start, end))
        _scan(draft, start, end)
        return True
    substitute(draft, start + 1, end)
    return True


def substitute(draft: Draft, start: int, end: int) -> None:
    """Read a food that may stand for the name: "5 cups cooked barley"."""
    line, taken = draft.line, Taken()
    found = amounts(line.words[:end], start)
    place = start
    if found:
        said = line.word(start) not in ("a", "an") or found.main.unit is not None
        draft.amounts += found.amounts if said else ()
        place = found.end
    name = place = max(place, line.after("vague", place))
    place = names.lead(line, place, end, taken)
    stop = names.core_end(line, place, end) if place < end else end
    last = names.trail(line, place, stop, taken) if place < stop else stop
    if place < last and line.after("tail", place) == place and line.word(last - 1) not in ("one", "ones"):
        first, others = joined.foods(line, place, last, taken)
        if first and not taken.preps:
            first[0] = line.text(name, place) + " " + first[0]
        if first[0].split() != [draft.names[0]] if draft.names else True:
            draft.alternatives += [part.removeprefix("of ").strip(SIGNS) for part in [*first, *others]]
    draft.note(f"or {line.text(start, end)}" if found else line.text(stop, end))
    if stop < end:
        _scan(draft, stop, end)


def _amount(draft: Draft, start: int, end: int, *, bracket: bool) -> bool:
    """The main amount if there was none, the size of the container, or the same amount said another way."""
    line = draft.line
    main = draft.main
    if main and phrase(line.words[:end], start, "approx_after") == end:
        draft.amounts[0] = msgspec.structs.replace(main, approx=True)
        return True
    opens = phrase(line.words[:end], start, "weighing")
    found = amounts(line.words[:end], opens, implied=True)
    if found and not found.stated and known(line.text(start, end)):
        return False  # "besan (gram flour)"
    if found and "each" in line.words[start:opens]:
        found = found._replace(each=True)
    if found and not (found.stated or bracket) and not is_another(draft, found.end, end):
        return False
    if found is None:
        alone = unit(line.words, start)
        if bracket and alone and alone.end >= end and not alone.plural and alone.unit.kind != "length":
            draft.amounts.append(Amount(low=1, high=1, unit=alone.unit.id))
            return True
        return False
    second = found.main
    if not bracket and draft.names and is_another(draft, found.end, end):
        draft.others.append((start, end))
        return True
    if main and units.kind(second.unit) == "length":
        if found.end < end:
            return False
        draft.taken.states.append(line.text(start, end))
        return True
    taken = Taken()
    rest = names.lead(line, found.end, end, taken)
    if main and second.unit is None and (rest < end or not (bracket or second.approx)):
        return False
    if main and second == Amount(low=main.low, high=main.high):
        return True
    _take_further(draft, found)
    if main is None:
        draft.taken.extend(taken)
    else:
        draft.note(line.text(found.end, rest))
    if rest < end and (line.word(rest) == "per" or line.after("tail", rest) > rest):
        draft.note(line.text(rest, end))
    elif rest < end:
        aside(draft, rest, end, bracket=bracket)
    return True


def _take_further(draft: Draft, found: Found) -> None:
    """Add amounts behind the name: the size of each thing counted, else the same amount said another way."""
    main, size = draft.main, found.main
    sized = main is not None and is_size_of(main, size, each=found.each, sure=True)
    if main and sized and (found.each or is_size_of_one(draft.names, main, size)):
        draft.amounts[0] = packed(main, size)
        draft.amounts += [msgspec.structs.replace(one, each=True) for one in found.amounts]
    else:
        draft.take(found)


def _second_name(draft: Draft, start: int, end: int) -> bool:
    """A bracket that gives the food another name: "eggplant (aubergine)"."""
    name = draft.line.text(start, end)
    if not draft.names or draft.line.after("tail", start) > start or not known(name):
        return False
    draft.alternatives.append(name)
    return True


def _scan(draft: Draft, start: int, end: int) -> None:
    """Amounts with a unit anywhere in a remark: they are amounts of the line too."""
    line, place = draft.line, start
    while place < end:
        if line.word(place)[0].isdigit() or number(line.words, place):
            found = amounts(line.words[:end], place)
            if found and found.main.unit and units.kind(found.main.unit) != "length":
                draft.amounts += found.amounts
                place = found.end
                continue
        place += 1
