"""Text in, Recipe out: the one way into the reader."""

from __future__ import annotations

import msgspec

from assistant.reader.lines import read_line
from assistant.reader.oven import oven_of
from assistant.reader.sections import layout
from assistant.reader.servings import servings_of
from assistant.reader.steps import read_steps
from assistant.reader.told import told
from rules import dish, method
from rules.because import Ledger
from rules.foods import weigh
from rules.recipe import Family, Ingredient, Recipe, Unread


def read(text: str, *, file: str | None = None) -> Recipe:
    """Read a recipe as pasted. Nothing in a text is an error: what was not understood is in `unread`."""
    page = layout(text)
    ingredients: list[Ingredient] = []
    unread: list[Unread] = []
    for line in page.lines:
        if line.kind != "ingredient":
            continue
        found = read_line(line.body, line=line.number, component=line.component)
        ingredients += found
        if not found:
            unread.append(Unread(line=line.number, text=line.text.strip()))
    steps = [line for line in page.lines if line.kind == "step"]
    reading = read_steps(steps, ingredients or told(steps), title=page.title)
    recipe = Recipe(
        title=page.title,
        servings=servings_of(page),
        ingredients=reading.ingredients,
        steps=reading.steps,
        oven=oven_of(page, reading.steps),
        file=file,
        unread=tuple(unread),
        others=page.others,
    )
    return msgspec.structs.replace(recipe, family=family_of(recipe))


def family_of(recipe: Recipe) -> Family:
    """The family of dish, as the rules decide it."""
    ledger = Ledger()
    return dish.decide(recipe, weigh(recipe), method.graph(recipe), ledger).family
