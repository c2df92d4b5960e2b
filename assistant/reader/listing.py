"""The lines of an ingredient list: foods, sub-headings, wrapped ends, remarks."""

from __future__ import annotations

import re
from functools import cache

from assistant.reader import headings, words
from assistant.reader.desk import Desk, Kind, asks, is_fact
from assistant.reader.guess import AMOUNT, COUNTS_NO_FOOD
from assistant.reader.marks import Marked
from rules.foods import catalogue
from rules.foods.names import singulars

#: "Oven at 450F" among the foods is a deed.
OVEN = re.compile(
    r"(?:pre-?heat|heat|set)?\s?(?:the |your |an )?oven\b.{0,20}\d{3}|pre-?heat\b", re.IGNORECASE
)
#: The head of a table of foods.
TABLE_HEAD = frozenset(
    {
        "ingredient",
        "ingredients",
        "amount",
        "amounts",
        "quantity",
        "qty",
        "unit",
        "item",
        "measure",
        "name",
        "notes",
    }
)
#: Buttons of a web page that are pasted with the list.
FURNITURE = re.compile(
    r"(?:us customary|us|metric|imperial|cups|grams|[\s/|\u2013-]|1x|2x|3x|scale|servings:?|print|save|pin|cook mode.{0,60})+",
    re.IGNORECASE,
)
#: A sentence of more words than these is talk, unless an amount opens it.
TALK = 12
LONGEST_HEADING = 10
SHORT_ITEM, SHORT, SHORT_BARE = 6, 6, 5
#: A part's name that stands between amounts without a colon has at most so many words.
SHORT_PART = 3


def sort_list(desk: Desk, first: int, last: int, component: str | None) -> None:
    """File the lines of a list; `component` is what its heading called the part, if it did."""
    filled = [line for line in desk.lines[first:last] if line.body]
    bullets = sum(bool(line.bullet) for line in filled)
    bulleted = bullets > 0 and bullets * 2 >= len(filled)
    #: the item that opened items of its own: its indent, the component outside and whether that is optional
    outer: tuple[int, str | None, bool] | None = None
    opened = optional = False
    for line in desk.lines[first:last]:
        if desk.is_blank(line):
            continue
        if outer and line.indent <= outer[0] and (line.bullet or not line.indent):
            component, optional, outer = outer[1], outer[2], None
        kind = _kind(desk, line, last, bulleted=bulleted, goes_on=opened)
        if kind == "component":
            outer = (line.indent, component, optional) if _nests(desk, line, last) else None
            component, optional = headings.component_name(line.body), headings.is_optional(line.body)
        opened = kind in ("ingredient", "more") or (opened and kind != "component")
        desk.kinds[line.number] = kind
        desk.component[line.number] = component
        desk.optional[line.number] = optional


def _kind(desk: Desk, line: Marked, last: int, *, bulleted: bool, goes_on: bool) -> Kind:
    body = desk.body[line.number]
    amount = bool(AMOUNT.match(body))
    if goes_on and _goes_on(desk, line, bulleted=bulleted):
        return "more"
    if FURNITURE.fullmatch(body):
        return "note"
    if _nests(desk, line, last) or _is_component(desk, line, last, bulleted=bulleted):
        return "component"
    if set(body.lower().split()) <= TABLE_HEAD:
        return "heading"
    if is_fact(body) and (not amount or COUNTS_NO_FOOD.match(body)):
        return "fact"
    if not amount and OVEN.match(body):
        return "step"
    if bulleted and not line.bullet and not amount and (body.endswith((".", "!")) or asks(body)):
        return "note"
    if not line.bullet and (body.startswith("(") or (line.words > TALK and not amount)):
        return "step" if asks(body) and line.words > TALK else "note"
    return "ingredient"


def _goes_on(desk: Desk, line: Marked, *, bulleted: bool) -> bool:
    """Whether a line is the wrapped end of the ingredient above it."""
    above = line.number - 1
    if (
        line.bullet
        or line.level
        or desk.kinds[above] not in ("ingredient", "more")
        or AMOUNT.match(line.body)
    ):
        return False
    wrapped = line.body[:1].islower() or line.body.startswith(("(", "&", ","))
    open_end = desk.body[above].endswith((",", "(", " or", " and"))
    return wrapped and (bulleted or bool(line.indent) or open_end)


def _nests(desk: Desk, line: Marked, last: int) -> bool:
    """Whether an item opens items of its own, set in more deeply."""
    below = desk.following(line, last)
    return bool(
        line.bullet and below and below.bullet and below.indent > line.indent and not AMOUNT.match(line.body)
    )


def _is_component(desk: Desk, line: Marked, last: int, *, bulleted: bool) -> bool:
    """Whether a line among the ingredients is a sub-heading."""
    if AMOUNT.match(line.body) or line.words > LONGEST_HEADING or _is_food_for(line.body):
        return False
    if line.level or (line.colon and (not line.bullet or line.words <= SHORT_ITEM)):
        return True
    if line.bullet or line.body.endswith("."):
        return False
    below = desk.following(line, last)
    if bulleted:
        return line.words <= SHORT and bool(below and below.bullet)
    alone = not (line.number and desk.lines[line.number - 1].body)
    heads = (alone or is_part(line)) and below is not None and bool(AMOUNT.match(below.body))
    return line.words <= SHORT_BARE and heads and (line.shouted or "," not in line.body)


def is_part(line: Marked) -> bool:
    """Whether a line between amounts is nothing but the name of a part: "Frosting", "Crumb topping"."""
    said = singulars(line.body.lower()).split()
    return (
        line.words <= SHORT_PART and line.body[:1].isupper() and said[-1:] != [] and said[-1] in _part_words()
    )


@cache
def _part_words() -> frozenset[str]:
    return frozenset(words.groups("headings.toml")["parts"])


def _is_food_for(body: str) -> bool:
    """Whether a line is a food and what it is for: "Butter for the dish"."""
    name, said, _ = body.lower().partition(" for ")
    return bool(said) and not body.endswith(":") and catalogue().knows(name) and name not in _part_words()
