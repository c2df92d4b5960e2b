"""The end of an ingredient line: what it leaves unsaid, and the name where none was found."""

from __future__ import annotations

from functools import cache

from assistant.reader import words as tables
from assistant.reader.draft import SIGNS, Draft
from assistant.reader.holding import packed
from assistant.reader.measures import Unit, spellings
from assistant.reader.names import Taken, known
from rules import units
from rules.foods import catalogue
from rules.foods.names import singular
from rules.recipe import Amount


def name_of_last_resort(draft: Draft, at: int) -> None:
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


def settle(draft: Draft) -> None:
    """Say what the line leaves unsaid: the unit of a counted part, tins of a tinned food, one of a whole thing; find tools."""
    line, main = draft.line, draft.main
    if main and main.unit is None and {"canned", "tinned"} & set(draft.taken.states):
        _sized_tins(draft, main)
    if main is None and "whole" in draft.taken.states[:1] and _is_one_piece(draft.names[0]):
        draft.amounts = [Amount(low=1, high=1)]
    measured = main is not None and units.kind(main.unit) is not None
    if not (main and (units.is_mass(main.unit) or units.is_volume(main.unit))) and _names_tool(draft):
        draft.is_tool = True
    fruit, possessive, of_fruit = draft.names[0].rpartition("'s ")
    if possessive and of_fruit in ("juice", "zest", "rind", "peel"):
        draft.names[0] = fruit
        draft.taken.preps.append(of_fruit)
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
