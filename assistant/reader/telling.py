"""The lines of a method: steps, what goes on with them, sub-headings, remarks.

Every numbered line is a step, and so is every bullet where nothing is numbered. Any other line has to ask for
something to be done, or to stand straight under a step.
"""

from __future__ import annotations

import re

from assistant.reader import headings
from assistant.reader.clauses import clauses
from assistant.reader.desk import Desk, asks
from assistant.reader.marks import Marked

CHATTER = re.compile(
    r"(?:(?:notes?|tips?|hints?)(?=\s?(?:$|[:.!,-]|on\b|for\b|from\b|that\b|about\b))|nb|n\.b|p\.?s|fyi|warning|caution|disclaimer|photo|image|source|credit|recipe by"
    r"|adapted from|copyright|enjoy|bon app|happy (?:cooking|baking|camping))\b[\s:.!,]?",
    re.IGNORECASE,
)
LOOKED_AT = 600
#: What stands under a numbered step and is set in this deep belongs to it [columns].
INDENT = 2
#: The level of a line that is bold as a whole.
BOLD = 7


def sort_method(desk: Desk, first: int, last: int, component: str | None) -> None:
    """File the lines of a method; `component` is what its heading called the part, if it did."""
    filled = [line for line in desk.lines[first:last] if line.body]
    numbered = any(line.bullet == "1" for line in filled)
    listed = numbered or any(line.bullet for line in filled)
    gap = True
    #: what the line above was: a step of the list, a sentence that asks, or none
    above = ""
    for line in desk.lines[first:last]:
        if desk.is_blank(line):
            gap = gap or desk.kinds[line.number] == "blank"
            continue
        body = desk.body[line.number]
        ordered = asks(body)
        if is_sub_heading(line, ordered=ordered):
            desk.kinds[line.number] = "component"
            component = headings.component_name(line.body)
            above = "" if line.body.endswith("?") else "list"
            gap = True
            desk.component[line.number] = component
            continue
        inside = line.indent >= INDENT and above == "list"
        if line.bullet == "1" or (line.bullet and (not numbered or inside)):
            above = "list"
        elif inside:
            desk.fresh[line.number] = False
        elif not gap and above and (above == "list" or not line.bullet or ordered):
            desk.fresh[line.number] = bool(line.bullet)
        elif CHATTER.match(body) or not (ordered or (not listed and tells(body))):
            above = ""
        else:
            above = "asked"
        desk.kinds[line.number] = "step" if above else "note"
        desk.component[line.number] = component
        gap = False


def is_sub_heading(line: Marked, *, ordered: bool) -> bool:
    """Whether a line of the method only names what follows."""
    if 0 < line.level < BOLD:
        return True
    return not line.bullet and headings.standing(line) and not (ordered and line.words > headings.SHORT_ORDER)


def tells(body: str) -> bool:
    """Whether a line without a plain order still tells what is done: "In a bowl, whisk the eggs"."""
    return any(clause.told for clause in clauses(body[:LOOKED_AT]))
