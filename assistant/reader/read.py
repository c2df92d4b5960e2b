"""Text in, Recipe out: the one way into the reader."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TypeVar

import msgspec

from assistant.reader.desk import asks
from assistant.reader.lines import is_tool, read_line
from assistant.reader.oven import oven_of
from assistant.reader.page import is_page, page
from assistant.reader.sections import Layout, Line, layout
from assistant.reader.servings import servings_of
from assistant.reader.steps import read_steps
from assistant.reader.told import told
from assistant.reader.warmth import is_celsius
from rules import dish, method
from rules.because import Ledger
from rules.foods import weigh
from rules.recipe import Doubt, Family, Ingredient, Oven, Recipe, Step, Unread

#: A title that opens a paragraph has no more words.
LONGEST_OPENING = 6


def read(text: str, *, file: str | None = None) -> Recipe:
    """Read a recipe as pasted, or a saved web page.

    Nothing in a text is an error: what was not understood is in `unread`.
    """
    if not is_page(text):
        return _read(text, file)
    found = page(text)
    recipe = _renumbered(_read(found.text, file), found.lines)
    return msgspec.structs.replace(recipe, others=(*recipe.others, *found.others))


def _read(text: str, file: str | None) -> Recipe:
    sorted_ = layout(text)
    ingredients: list[Ingredient] = []
    unread: list[Unread] = []
    tools: list[Unread] = [_as_written(line) for line in sorted_.lines if line.kind == "tool"]
    for line, body in _items(sorted_.lines):
        found = read_line(body, line=line.number, component=line.component, optional=line.optional)
        if sorted_.guessed and not any(ingredient.food or ingredient.amounts for ingredient in found):
            # Nothing says that this is food: no heading, no amount, no known name.
            found = ()
        ingredients += found
        if not found:
            (tools if is_tool(body) else unread).append(_as_written(line))
    unread += map(_as_written, sorted_.beyond)
    title = sorted_.title or _opening(sorted_)
    steps = [line for line in sorted_.lines if line.kind == "step"]
    reading = read_steps(steps, ingredients or told(steps), title=title)
    oven = oven_of(sorted_, reading.steps)
    doubts = [*_doubts(sorted_, reading.ingredients, reading.steps), *_doubt_of_degrees(oven, reading.steps)]
    recipe = Recipe(
        title=title,
        servings=servings_of(sorted_),
        ingredients=reading.ingredients,
        steps=reading.steps,
        oven=oven,
        file=file,
        unread=tuple(unread),
        tools=tuple(tools),
        doubts=tuple(doubts),
        others=sorted_.others,
    )
    return msgspec.structs.replace(recipe, family=family_of(recipe))


def family_of(recipe: Recipe) -> Family:
    """The family of dish, as the rules decide it."""
    ledger = Ledger()
    return dish.decide(recipe, weigh(recipe), method.graph(recipe), ledger).family


def _opening(page: Layout) -> str | None:
    """The title of a recipe told in one breath: its first words, up to the first full stop."""
    first = next((line for line in page.lines if line.body), None)
    if first is None or first.kind != "step":
        return None
    words, stop, rest = first.body.partition(". ")
    short = bool(stop and rest) and len(words.split()) <= LONGEST_OPENING
    return words if short and not asks(words) and words[:1].isupper() else None


R = TypeVar("R", Ingredient, Step, Unread, Doubt)


def _renumbered(recipe: Recipe, lines: Sequence[int]) -> Recipe:
    """The recipe of a page with the line numbers of the page's source."""

    def moved(rows: tuple[R, ...]) -> tuple[R, ...]:
        return tuple(msgspec.structs.replace(row, line=lines[row.line]) for row in rows)

    return msgspec.structs.replace(
        recipe,
        ingredients=moved(recipe.ingredients),
        steps=moved(recipe.steps),
        unread=moved(recipe.unread),
        tools=moved(recipe.tools),
        doubts=moved(recipe.doubts),
    )


def _items(lines: Sequence[Line]) -> list[tuple[Line, str]]:
    """The lines of the list with their words, wrapped ends joined to the line that they belong to."""
    items: list[tuple[Line, str]] = []
    for line in lines:
        if line.kind == "ingredient":
            items.append((line, line.body))
        elif line.kind == "more" and items:
            first, body = items[-1]
            items[-1] = (first, f"{body} {line.body}")
    return items


def _as_written(line: Line) -> Unread:
    return Unread(line=line.number, text=line.text.strip())


def _doubt_of_degrees(oven: Oven | None, steps: Sequence[Step]) -> Iterator[Doubt]:
    """An oven's figure without a letter was taken for one scale or the other."""
    if oven is None or oven.temp_f is None or not oven.stated.isdigit():
        return
    step = next((step for step in steps if oven.stated in step.text), None)
    if step is not None:
        scale = "°C" if is_celsius(float(oven.stated)) else "°F"
        yield Doubt(
            line=step.line,
            text=oven.stated,
            taken=f"the oven's {oven.stated} was read as {oven.stated} {scale}",
        )


def _doubts(page: Layout, ingredients: Sequence[Ingredient], steps: Sequence[Step]) -> list[Doubt]:
    """What the layout left open: no list, no method, more than one recipe."""
    doubts = []
    first = next((line for line in page.lines if line.body), None)
    if first is not None and not steps:
        taken = (
            "no method was found; the list alone was read"
            if ingredients
            else "no recipe was found in this text"
        )
        doubts.append(Doubt(line=first.number, text=first.text.strip(), taken=taken))
    elif first is not None and all(ingredient.from_ == "method" for ingredient in ingredients):
        doubts.append(
            Doubt(
                line=first.number,
                text=first.text.strip(),
                taken="no list was found; the foods are those that the method names",
            )
        )
    if page.others and page.beyond:
        taken = "only the first recipe was read; paste the other by itself"
        doubts.append(Doubt(line=page.beyond[0].number, text=page.others[0], taken=taken))
    elif page.beyond:
        doubts.append(
            Doubt(
                line=page.beyond[0].number,
                text=page.beyond[0].text[:80].strip(),
                taken="longer than any recipe; the rest was not read",
            )
        )
    return doubts
