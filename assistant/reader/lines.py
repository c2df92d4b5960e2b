"""One ingredient line read: amounts, food, state, preparation, what may stand for it, and what else the line says.

The line is taken apart at commas, dashes and brackets (`pieces.py`); its first amounts come from the amount grammar
(`amounts.py`); the first piece that is more than states and remarks holds the name (`names.py`); pieces after it are
further foods (`lists.py`) or asides (`asides.py`).
"""

from __future__ import annotations

from functools import cache

from assistant.reader import clean, joined, names
from assistant.reader import words as tables
from assistant.reader.amounts import amounts
from assistant.reader.asides import aside, substitute
from assistant.reader.draft import Draft
from assistant.reader.figures import figure
from assistant.reader.further import plus
from assistant.reader.lists import listed
from assistant.reader.marks import mark
from assistant.reader.measures import unit
from assistant.reader.names import ANDS, JOINS, ORS, Taken, known
from assistant.reader.numbers import ARTICLES, number
from assistant.reader.opening import opening, part_of
from assistant.reader.pieces import Line, Piece, pieces
from assistant.reader.settling import name_of_last_resort, settle
from rules.recipe import Ingredient

#: A line longer than this is a text; what stands beyond is not read as an ingredient.
LONGEST = 1000
#: A figure after one of these is a name or a size, no amount: "no. 2", "type 00".
NUMBERED = frozenset({"no", ".", "#", "-", "/", "x", "type", "size"})
#: Words that open what may stand for a sort.
OTHERS = (["or", "other"], ["or", "another"], ["or", "any"], ["or", "similar"])


def read_line(
    text: str, *, line: int, component: str | None = None, optional: bool = False
) -> tuple[Ingredient, ...]:
    """The ingredients that a line names, in its order; none where it names no food (a blank, a tool).

    `text` is the line as pasted, bullet and markup included; `component` is the sub-heading it stands under, `optional`
    whether that says that its lines may be left out.
    """
    found: list[Ingredient] = []
    for draft in _drafts(text):
        if draft.is_tool:
            return ()
        draft.optional = draft.optional or optional
        found += draft.ingredients(text=clean.safe(text).strip(), number=line, component=component)
    return tuple(found)


def is_tool(text: str) -> bool:
    """Whether a line of an ingredient list names a tool and no food: "2 cheesecloths", "wooden skewers"."""
    return any(draft.is_tool for draft in _drafts(text))


def _drafts(text: str) -> list[Draft]:
    """What is understood of a line: one draft, and one more for every further food with its own amount."""
    body = mark(0, text[: 4 * LONGEST]).body[:LONGEST]
    if not any(character.isalpha() for character in body):
        return []
    line = Line(_spelled_out(body))
    waiting = _stretches(line)
    found: list[Draft] = []
    while waiting:
        start, end = waiting.pop(0)
        draft = Draft(line, start, end)
        _read(draft)
        waiting += draft.others
        found.append(draft)
    if len(found) > 1:
        _borrow_noun(found[0], found[1])
    return found


def _stretches(line: Line) -> list[tuple[int, int]]:
    """A line as one stretch, or as several where each has a food and its figure: "Carrots, 2; onion, 1"."""
    ends = [at for at, word in enumerate(line.words) if word == ";"]
    stretches = list(zip([0, *(at + 1 for at in ends)], [*ends, len(line)], strict=True))
    told = all(
        any(number(line.words, at) for at in range(start, end))
        and any(known(word) for word in line.words[start:end] if word.isalpha())
        for start, end in stretches
    )
    return stretches if told else [(0, len(line))]


@cache
def _short_forms() -> dict[str, str]:
    return {form: full for full, forms in tables.groups("short.toml").items() for form in forms}


def _spelled_out(body: str) -> str:
    """The line with a short form at its start written out: "S&P to taste"."""
    for form, full in _short_forms().items():
        if body[: len(form)].lower() == form and not body[len(form) : len(form) + 1].isalnum():
            return full + body[len(form) :]
    return body


def _borrow_noun(first: Draft, second: Draft) -> None:
    """In "1 red and 1 green pepper" the first food borrows the noun of the second, or the other way round."""
    parts = second.names[0].split()
    if first.names and joined.is_kind(first.names[0]) and len(parts) > 1 and not known(first.names[0]):
        first.names[0] = " ".join([first.names[0], *parts[1:]])
    kind, *noun = first.names[0].split()
    if joined.is_kind(second.names[0]) and joined.is_kind(kind) and noun:
        # "1 red pepper and 1 yellow"
        second.names[0] = " ".join([second.names[0], *noun])


def _read(draft: Draft) -> None:
    """Read the draft's stretch from left to right."""
    place = part_of(draft, opening(draft))
    found = amounts(draft.line.words[: draft.end], place, implied=True)
    if found:
        draft.take(found)
        place = found.end
    left = pieces(draft.line, place, draft.end)
    while left and not draft.names:
        _name_piece(draft, left)
    listed(draft, left)
    for place_in_line, piece in enumerate(left):
        aside(draft, piece.start, piece.end, bracket=piece.before == "(")
        if _is_another_way(draft, piece) and place_in_line + 1 < len(left):
            _of_the_other(draft, left[place_in_line + 1 :])
            break
    if not draft.names:
        name_of_last_resort(draft, place)
    settle(draft)


def _is_another_way(draft: Draft, piece: Piece) -> bool:
    """Whether a piece offers another amount of another food: ", or one 28-ounce can whole tomatoes"."""
    line = draft.line
    return (
        piece.before == ","
        and line.word(piece.start) in ORS
        and figure(line.words, piece.start + 1) is not None
    )


def _of_the_other(draft: Draft, rest: list[Piece]) -> None:
    """What is said behind that other food is said of it, save whether all of it may be left out."""
    for piece in rest:
        if any(draft.line.has(label, piece.start, piece.end) for label in ("optional", "taste")):
            aside(draft, piece.start, piece.end, bracket=piece.before == "(")
        else:
            draft.note(draft.line.text(piece.start, piece.end))


def _name_piece(draft: Draft, left: list[Piece]) -> None:
    """Read the first of the pieces left; the name may be in it."""
    line, piece = draft.line, left.pop(0)
    if piece.before == "(":
        aside(draft, piece.start, piece.end, bracket=True)
        return
    start = _past_lead(draft, piece.start, piece.end)
    if not draft.amounts and start < piece.end:
        found = amounts(line.words[: piece.end], start, implied=True)
        if found:
            draft.take(found)
            start = _past_lead(draft, found.end, piece.end)
    if start >= piece.end:
        return
    start = _or_count(draft, start, piece.end)
    if _is_label(draft, piece, left):
        draft.note(line.text(piece.start, piece.end))
        return
    if _starts_aside(line, start) and (left or draft.amounts or line.after("optional", start) > start):
        aside(draft, start, piece.end)
        return
    end = names.core_end(line, start, piece.end)
    while end - 1 > start and line.word(end - 1) in JOINS:
        end -= 1
    end, rest = _amount_within(draft, start, end, piece.end)
    draft.name_start = start
    draft.name_end = _second_amount(draft, start, names.trail(line, start, end, draft.taken))
    found_names, others = joined.foods(line, start, draft.name_end, draft.taken)
    draft.names = [name for name in found_names if name]
    draft.alternatives += others
    _kind_of_other(draft, rest, piece.end)
    aside(draft, rest, piece.end)
    if rest >= piece.end:
        _interrupted(draft, left)


def _kind_of_other(draft: Draft, start: int, end: int) -> None:
    """A sort that nobody knows alone borrows the word behind "or other": "2 moonbeam or other tart apples"."""
    others = draft.line.text(start, end).split()
    if len(draft.names) != 1 or others[:2] not in OTHERS or len(others) < 3:
        return
    if known(others[-1]) and not known(draft.names[0]):
        draft.names[0] = f"{draft.names[0]} {others[-1]}"


def _or_count(draft: Draft, start: int, end: int) -> int:
    """`"or" amounts` before the name: "1 large or 2 small zucchini"; gives the place where the name starts."""
    line = draft.line
    if line.word(start) not in ORS or not draft.amounts:
        return start
    found = amounts(line.words[:end], start + 1)
    first = names.lead(line, found.end, end, Taken()) if found else end
    if found is None or first >= end:
        return start
    draft.amounts += found.amounts
    draft.note(line.text(start, first))
    return first


def _interrupted(draft: Draft, left: list[Piece]) -> None:
    """A name that goes on behind a bracket: "chicken (or vegetable) stock", "red (large) onion"."""
    line = draft.line
    if len(left) < 2 or left[0].before != "(" or left[1].before != ")" or len(draft.names) != 1:
        return
    bracket, rest = left[0], line.text(left[1].start, left[1].end)
    other = line.text(bracket.start + 1, bracket.end)
    # "venison (or pork) sausage": the other one is known by the noun behind.
    shared = line.word(bracket.start) in ORS and known(rest) and known(f"{other} {rest}")
    if not known(f"{draft.names[0]} {rest}") and not shared:
        return
    draft.names[0] = f"{draft.names[0]} {rest}"
    draft.name_end = left[1].end
    if line.word(bracket.start) in ORS:
        draft.alternatives.append(f"{line.text(bracket.start + 1, bracket.end)} {rest}")
        del left[0]
        del left[0]
    else:
        del left[1]


def _past_lead(draft: Draft, start: int, end: int) -> int:
    """The place where the name starts: states, preparations and vague words taken off."""
    line, place = draft.line, start
    while place < end:
        after = names.lead(line, place, end, draft.taken)
        vague = max(line.after("vague", after), line.after("example", after))
        if after < vague < end:
            draft.note(line.text(after, vague))
            after = vague
        if after == place:
            break
        place = after
    return place


def _starts_aside(line: Line, at: int) -> bool:
    """Whether a remark starts here, and no name."""
    return line.word(at) in ORS or any(line.after(label, at) > at for label in ("optional", "taste", "tail"))


def _is_label(draft: Draft, piece: Piece, left: list[Piece]) -> bool:
    """Whether a piece before a colon only says what the food after it is for: "topping: walnuts"."""
    if not left or left[0].before != ":" or draft.amounts:
        return False
    after = left[0]
    found = amounts(draft.line.words[: after.end], after.start)
    if found and found.end >= after.end:
        return False
    return draft.line.has("label", piece.start, piece.end) or not known(
        draft.line.text(piece.start, piece.end)
    )


def _amount_within(draft: Draft, start: int, end: int, last: int) -> tuple[int, int]:
    """An amount behind the name in the same piece: "butter 100 g", "eggs 2 large".

    Gives where the name ends and where the rest of the piece begins.
    """
    line = draft.line
    if draft.amounts:
        return end, end
    for place in range(start + 1, end):
        times = line.word(place - 1) == "x" and place - 1 > start
        spoken = line.word(place) in ARTICLES and place + 2 == end and unit(line.words, place + 1)
        if (not spoken and not line.word(place)[0].isdigit()) or (
            line.word(place - 1) in NUMBERED and not times
        ):
            continue
        found = amounts(line.words[:last], place)
        if found and (found.main.unit or names.lead(line, found.end, end, Taken()) >= end):
            draft.take(found)
            return place - times, found.end
    return end, end


def _second_amount(draft: Draft, start: int, end: int) -> int:
    """A second food with an amount of its own: "1 cup flour and 2 eggs", "1 egg or 2 yolks"; the name ends before it."""
    line = draft.line
    for place in range(start + 1, end - 1):
        word = line.word(place)
        if word not in ANDS | ORS or place in line.whole or figure(line.words, place + 1) is None:
            continue
        if word in ORS:
            substitute(draft, place + 1, end)
        elif not plus(draft, place, end):
            draft.others.append((place + 1, end))
        return place
    return end
