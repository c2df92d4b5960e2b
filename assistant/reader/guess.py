"""Parts without headings: which lines are list, method or talk, weighed together over the whole text.

Each line gives evidence for each part; moving from one part to the next costs something, and the cheapest way
through all lines is taken (a shortest path over four parts, linear in the number of lines).
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.reader.deeds import starts_with_order
from assistant.reader.headings import Part, standing
from assistant.reader.marks import POSTED, Marked
from rules.foods import catalogue

UNITS = r"(?:tsps?|tbsps?|tbs|teaspoons?|tablespoons?|cups?|c|oz|ounces?|lbs?|pounds?|g|grams?|kg|ml|l|liters?|litres?|pints?|quarts?|sticks?|cans?|tins?|pinch(?:es)?|dash(?:es)?|cloves?|handfuls?|splash|drizzle|knob|bunch|sprigs?|slices?|packages?|packets?|jars?)"
AMOUNT = re.compile(
    r"(?:about |approx\.? |around |roughly |ca\.? |~ ?)?"
    r"(?:\d|\.\d|half |a half |an? (?!bit |little |lot )|one |two |three |four |five |six |seven |eight |nine |ten |eleven |twelve |a dozen |dozen |"
    # "Slice the onion" and "slice bread" are deeds.
    rf"{UNITS} of |(?!slice){UNITS} (?!(?:the|your|each|all|both|it|them|be)\b))",
    re.IGNORECASE,
)
BRACKETS = re.compile(r"\([^()]{0,400}\)?")
#: A line this long that ends without a sign goes on in the line below [words].
UNENDED = 8
AMOUNT_INSIDE = re.compile(rf"\d\s?{UNITS}\b", re.IGNORECASE)
MEASURED = re.compile(
    rf"[\d./ -]{{1,8}}\s?(?:(?:large|small|medium|big|good|heaped|level) )?{UNITS}\b", re.IGNORECASE
)
FIRST_PERSON = re.compile(r"\b(?:I|I'm|I've|we|my|our|you'll|you're)\b")
SENTENCES = re.compile(r"(?<=[.!?;])\s+")
PARTS: tuple[Part, ...] = ("head", "ingredients", "method", "notes")
#: What speaks for a title: being a text's first line; standing alone between blank lines.
FIRST, ALONE = 3.0, 2.0
LONGEST_TITLE = 12
#: "9 servings", "for 9", "14 to 16 minutes": a number that counts no food.
COUNTS_NO_FOOD = re.compile(
    r"(?:for |serves |feeds |makes )?[\w ½-]{1,20}?\s?(?:minutes?|mins?|hours?|hrs?|servings?|people|persons)\b|for \w{1,10}$",
    re.IGNORECASE,
)
TALKS_TO_YOU = re.compile(r"\b(?:you|your|everybody|everyone|anyone)\b", re.IGNORECASE)
#: A shortened unit's full stop ends no sentence: "1 tsp. dry mustard".
SHORTENED = re.compile(rf"\b({UNITS})\.", re.IGNORECASE)
#: What a move from one part to another costs; staying is free.
MOVES: dict[tuple[Part, Part], float] = {
    ("head", "ingredients"): 0.5, ("head", "method"): 1.5, ("head", "notes"): 9,
    ("ingredients", "method"): 0.5, ("ingredients", "head"): 9, ("ingredients", "notes"): 2,
    ("method", "ingredients"): 3, ("method", "notes"): 1, ("method", "head"): 9,
    ("notes", "method"): 1.5, ("notes", "ingredients"): 3, ("notes", "head"): 9,
}  # fmt: skip


def guess(lines: list[Marked], parts: list[Part], kinds: Sequence[str], start: int) -> None:
    """Change `parts` where headings leave them open: no list heading, or no method heading."""
    have = {parts[line.number] for line in lines[start:]}
    if "ingredients" in have and "method" in have:
        return
    if "ingredients" in have:
        allowed: tuple[Part, ...] = ("ingredients", "method", "notes")
        open_parts: tuple[Part, ...] = ("ingredients",)
    elif "method" in have:
        allowed, open_parts = ("head", "ingredients", "notes"), ("head",)
    else:
        allowed, open_parts = PARTS, ("head",)
    open_lines = [
        line
        for line in lines[start:]
        if parts[line.number] in open_parts and kinds[line.number] != "heading" and line.body
    ]
    # A sub-heading goes with what stands under it.
    heads = {line.number for line in open_lines[1:] if standing(line) and (line.colon or line.level)}
    open_lines = [line for line in open_lines if line.number not in heads]
    for line, part in zip(open_lines, _cheapest(open_lines, allowed), strict=True):
        parts[line.number] = part
    for line in reversed(lines[start:]):
        if line.number in heads and line.number + 1 < len(lines):
            parts[line.number] = _below(lines, parts, line.number)
    _carry(lines, parts, start)


def _below(lines: list[Marked], parts: list[Part], number: int) -> Part:
    """The part of the next line that says something; its own part if none does."""
    below = next((line.number for line in lines[number + 1 : number + 4] if line.body), number)
    return parts[below]


def _carry(lines: list[Marked], parts: list[Part], start: int) -> None:
    """Blank lines go with the line above."""
    for line in lines[start + 1 :]:
        if not line.body:
            parts[line.number] = parts[line.number - 1]


def _cheapest(lines: list[Marked], allowed: tuple[Part, ...]) -> list[Part]:
    if not lines:
        return []
    best: dict[Part, float] = {part: 0.0 if part == allowed[0] else 1.0 for part in allowed}
    came: list[dict[Part, Part]] = []
    numbers = {line.number for line in lines}
    first = next((line for line in lines if not POSTED.match(line.body)), lines[0])
    below = lines[lines.index(first) + 1] if first is not lines[-1] else first
    if first.body.endswith("!") and below.shouted:
        # "Two for the weekend!" stands over the title.
        first = below
    # "1. Apple burgers": the number of the recipe in its book.
    numbered = first.bullet == "1" and first is not lines[-1] and lines[lines.index(first) + 1].bullet != "1"
    for above, line, following in zip([None, *lines[:-1]], lines, [*lines[1:], None], strict=True):
        weights = evidence(line)
        if line.number < first.number:
            weights["head"] += FIRST
        elif line is first and _begins_a_list(line, following):
            weights["ingredients"] += FIRST
        elif line is first and (not line.bullet or numbered) and line.words <= LONGEST_TITLE:
            weights["head"] += FIRST + (ALONE if line.number + 1 not in numbers else 0.0)
        elif _goes_on(line, above):
            weights["ingredients"] = min(weights["ingredients"], 0.0)
        elif _heads_orders(line, following) and line.number - 1 not in numbers:
            weights["method"] += ALONE
        step: dict[Part, float] = {}
        back: dict[Part, Part] = {}
        for part in allowed:
            origin = min(allowed, key=lambda before: best[before] + MOVES.get((before, part), 0.0))
            back[part] = origin
            step[part] = best[origin] + MOVES.get((origin, part), 0.0) - weights.get(part, 0.0)
        best = step
        came.append(back)
    path = [min(allowed, key=lambda part: best[part])]
    for back in reversed(came[1:]):
        path.append(back[path[-1]])
    return path[::-1]


def _begins_a_list(line: Marked, following: Marked | None) -> bool:
    """Whether a text opens with a bare food straight above more of the list: "eggs" over "milk" is no title."""
    if following is None or following.number != line.number + 1 or not _is_bare_food(line):
        return False
    return _is_bare_food(following) or (line.body.islower() and bool(AMOUNT.match(following.body)))


def _is_bare_food(line: Marked) -> bool:
    return line.words <= 3 and catalogue().knows(line.body.lower())


def _goes_on(line: Marked, above: Marked | None) -> bool:
    """Whether a line is the wrapped end of the sentence above it, though a figure opens it: "into a tin of / 25 cm"."""
    if above is None or line.bullet or above.number + 1 != line.number or above.words < UNENDED:
        return False
    return not above.body.endswith((".", "!", "?", ":", ")")) and not AMOUNT.match(above.body)


def _heads_orders(line: Marked, following: Marked | None) -> bool:
    """Whether a few words stand straight above an order: "Evening"."""
    return (
        following is not None
        and following.number == line.number + 1
        and line.words <= 4
        and not line.bullet
        and not AMOUNT.match(line.body)
        and not AMOUNT.match(following.body)
        and (starts_with_order(following.body) or (following.words > 6 and following.body.endswith(".")))
    )


def evidence(line: Marked) -> dict[Part, float]:
    """How much a line speaks for each part."""
    # What stands in brackets may be any talk about a food: it counts for nothing.
    body = BRACKETS.sub("", line.body).strip() or line.body
    words = len(body.split())
    measured = MEASURED.match(body) is not None
    told = bool(TALKS_TO_YOU.search(body)) and words > 8 and not measured
    amount = bool(AMOUNT.match(body)) and not told and not COUNTS_NO_FOOD.match(body)
    ordered = any(
        starts_with_order(sentence) for sentence in SENTENCES.split(SHORTENED.sub(r"\1", body))[:12]
    )
    weights: dict[Part, float] = {"head": 0.3, "ingredients": 0.0, "method": 0.0, "notes": 0.2}
    if amount and words <= (30 if measured else 16) and not ordered:
        weights["ingredients"] += 3
        weights["method"] -= 1.5
    elif AMOUNT_INSIDE.search(body) and words <= 10:
        weights["ingredients"] += 1.5
    if words <= 6 and not ordered and not body.endswith("."):
        weights["ingredients"] += 0.8
    if ordered:
        weights["method"] += 3
        weights["ingredients"] -= 3
        weights["notes"] -= 1
        weights["head"] -= 1
    if line.bullet == "1" and not amount:
        weights["method"] += 1.5
    if line.bullet == "-" and words <= 8 and not ordered:
        weights["ingredients"] += 0.7
    if words > 14:
        weights["ingredients"] -= 2
        weights["method"] += 0.5
    if told:
        weights["ingredients"] -= 1.5
    if FIRST_PERSON.search(body):
        weights["notes"] += 0.7
        weights["head"] += 0.7
    if amount:
        weights["head"] -= 1.5
    if standing(line):
        weights["head"] += 0.3
    return weights
