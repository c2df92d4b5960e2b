"""One ingredient line read: amounts, food, state, preparation, what may stand for it, and what else the line says.

The line is taken apart at commas, dashes and brackets (`pieces.py`); its first amounts come from the amount grammar
(`amounts.py`); the first piece that is more than states and remarks holds the name (`names.py`); pieces after it are
further foods (`lists.py`) or asides (`asides.py`).
"""

from __future__ import annotations

from functools import cache

from assistant.reader import clean, names
from assistant.reader import words as tables
from assistant.reader.amounts import amounts, packed
from assistant.reader.asides import aside, plus, substitute
from assistant.reader.draft import SIGNS, Draft
from assistant.reader.figures import figure
from assistant.reader.lists import listed
from assistant.reader.marks import mark
from assistant.reader.measures import Unit, spellings, unit
from assistant.reader.names import ANDS, ORS, Taken, known
from assistant.reader.pieces import Line, Piece, pieces
from rules import units
from rules.foods import catalogue
from rules.foods.names import singular
from rules.recipe import Amount, Ingredient

#: A line longer than this is a text; what stands beyond is not read as an ingredient.
LONGEST = 1000
#: A figure after one of these is a name or a size, no amount: "no. 2", "type 00".
NUMBERED = frozenset({"no", ".", "#", "-", "/", "x", "type", "size"})


def read_line(text: str, *, line: int, component: str | None = None) -> tuple[Ingredient, ...]:
    """The ingredients that a line names, in its order; none where it names no food (a blank, a tool).

    `text` is the line as pasted, bullet and markup included; `component` is the sub-heading it stands under.
    """
    found: list[Ingredient] = []
    for draft in _drafts(text):
        if draft.is_tool:
            return ()
        found += draft.ingredients(text=clean.safe(text).strip(), number=line, component=component)
    return tuple(found)


def is_tool(text: str) -> bool:
    """Whether a line of an ingredient list names a tool and no food: "1 cheesecloth", "wooden skewers"."""
    return any(draft.is_tool for draft in _drafts(text))


def _drafts(text: str) -> list[Draft]:
    """What is understood of a line: one draft, and one more for every further food with its own amount."""
    body = mark(0, text[: 4 * LONGEST]).body[:LONGEST]
    if not any(character.isalpha() for character in body):
        return []
    line = Line(_spelled_out(body))
    waiting = [(0, len(line))]
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
    """In "1 red and 1 green pepper" the first food borrows the noun of the second."""
    parts = second.names[0].split()
    if first.names and names.is_kind(first.names[0]) and len(parts) > 1 and not known(first.names[0]):
        first.names[0] = " ".join([first.names[0], *parts[1:]])


def _read(draft: Draft) -> None:
    """Read the draft's stretch from left to right."""
    place = _part_of(draft, _opening(draft))
    found = amounts(draft.line.words[: draft.end], place, implied=True)
    if found:
        draft.take(found)
        place = found.end
    left = pieces(draft.line, place, draft.end)
    while left and not draft.names:
        _name_piece(draft, left)
    listed(draft, left)
    for piece in left:
        aside(draft, piece.start, piece.end, bracket=piece.before == "(")
    if not draft.names:
        _name_of_last_resort(draft, place)
    _settle(draft)


def _opening(draft: Draft) -> int:
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


def _part_of(draft: Draft, at: int) -> int:
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
    end, rest = _amount_within(draft, start, end, piece.end)
    draft.name_start = start
    draft.name_end = _second_amount(draft, start, names.trail(line, start, end, draft.taken))
    found_names, others = names.foods(line, start, draft.name_end, draft.taken)
    draft.names = [name for name in found_names if name]
    draft.alternatives += others
    aside(draft, rest, piece.end)
    if rest >= piece.end:
        _interrupted(draft, left)


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
    if not known(f"{draft.names[0]} {rest}"):
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
        if not line.word(place)[0].isdigit() or (line.word(place - 1) in NUMBERED and not times):
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


def _name_of_last_resort(draft: Draft, at: int) -> None:
    """Nothing but amounts, states and remarks: the unit is the food ("2 cloves"), or the words as they stand."""
    line, main = draft.line, draft.main
    written = spellings().get(line.word(at - 1)) if at > draft.start else None
    if main and main.unit and written and written.id == main.unit:
        draft.amounts[0] = Amount(low=main.low, high=main.high, approx=main.approx)
        draft.names = [line.word(at - 1)]
        return
    text = line.text(at, draft.end).strip(SIGNS) or line.text(draft.start, draft.end)
    draft.names = [text]
    if text in (*draft.taken.preps, *draft.taken.states, *draft.notes):
        draft.taken, draft.notes = Taken(), []


def _settle(draft: Draft) -> None:
    """Say what the line leaves unsaid: the unit of a counted part, tins of a tinned food, one of a whole thing; find tools."""
    line, main = draft.line, draft.main
    if main and main.unit is None and {"canned", "tinned"} & set(draft.taken.states):
        _sized_tins(draft, main)
    if main is None and "whole" in draft.taken.states[:1] and _is_one_piece(draft.names[0]):
        draft.amounts = [Amount(low=1, high=1)]
    measured = main is not None and units.kind(main.unit) is not None
    if not (main and (units.is_mass(main.unit) or units.is_volume(main.unit))) and _names_tool(draft):
        draft.is_tool = True
    parts = draft.names[0].split()
    if len(parts) < 2 or draft.name_end - 1 in line.whole:
        return
    part = spellings().get(parts[-1])
    if part and part.trails and _counts(draft, part):
        draft.names[0] = " ".join(parts[:-1])
    elif measured and line.before("shape", draft.name_end) < draft.name_end and len(draft.names) == 1:
        draft.names[0] = " ".join(parts[:-1])
        draft.taken.preps.append(parts[-1])


def _sized_tins(draft: Draft, main: Amount) -> None:
    """A count of tinned food with a size is a count of tins."""
    if main.package:
        _set_unit(draft, main, "can")
    elif main.high == 1 and len(draft.amounts) > 1 and units.kind(draft.amounts[1].unit):
        _set_unit(draft, packed(main, draft.amounts.pop(1)), "can")


def _set_unit(draft: Draft, main: Amount, unit_id: str) -> None:
    draft.amounts[0] = Amount(
        low=main.low, high=main.high, unit=unit_id, approx=main.approx, package=main.package
    )


def _is_one_piece(name: str) -> bool:
    """Whether a name is the singular of a food that comes in pieces."""
    food = catalogue().find(name).food
    return food is not None and food.g_per_piece is not None and singular(name) == name


def _counts(draft: Draft, part: Unit) -> bool:
    """Give the count its unit: "3 garlic cloves" are cloves. Without a count, only cloves are taken off the name."""
    main = draft.main
    if main is None:
        if part.id == "clove":
            draft.note("cloves")
        return part.id == "clove"
    if main.unit is not None:
        return False
    _set_unit(draft, main, part.id)
    return True


@cache
def _tools() -> frozenset[str]:
    return frozenset(tables.groups("tools.toml")["tool"])


def _names_tool(draft: Draft) -> bool:
    """Whether the name ends with the word of a tool and is no food."""
    parts = draft.names[0].split()
    return any(" ".join(parts[-count:]) in _tools() for count in (1, 2, 3)) and not known(draft.names[0])
