"""Saved web pages: the recipe that a page declares (schema.org Recipe, as JSON-LD or microdata), else its visible text.

A page becomes plain text in the usual order (title, servings, list, method), which is then read like any other; for
every line of that text it is kept where in the page's source it stands. Property names: schema.org/Recipe.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterable, Iterator
from typing import Any, NamedTuple

HTML = re.compile(r"<(?:!doctype html|html|head|body)\b", re.IGNORECASE)
#: The title of the window names the site as well.
WINDOW_TITLE = re.compile(r"<title\b[^>]{0,200}>[^<]{0,400}</title>", re.IGNORECASE)
#: Where a page shows that it is one [characters].
HEAD = 4_000
#: Lists of schema.org nest sections in sections; nobody needs more than this.
DEEPEST = 6
#: No recipe has more lines, and a line of it is looked for by no more than its first characters.
MOST_LINES, LOOKED_FOR = 600, 40
#: The words of a list that were given under other names before schema.org settled on one.
INGREDIENTS = ("recipeIngredient", "ingredients", "ingredient")
Item = dict[str, Any]


class Page(NamedTuple):
    """A page as plain text; `lines` says for every line of it at which line of the source it was found."""

    text: str
    lines: tuple[int, ...]
    others: tuple[str, ...] = ()


def is_page(text: str) -> bool:
    """Whether a text is the source of a web page."""
    return bool(HTML.search(text[:HEAD]))


def page(source: str) -> Page:
    """The recipe of a page's source as plain text."""
    recipes = [found for item in _declared(source) if (found := _properties(item)) is not None]
    lines = _as_lines(recipes[0]) if recipes else []
    if not lines:
        lines = _visible(source)
    lines = lines[:MOST_LINES]
    others = tuple(title for recipe in recipes[1:] if (title := _first(recipe.get("name"))))
    return Page("\n".join(lines), tuple(_places(source, lines)), others)


def _declared(source: str) -> list[Item]:
    """Everything that a page declares of itself, JSON-LD first."""
    import extruct

    try:
        found = extruct.extract(source, syntaxes=["json-ld", "microdata"], errors="ignore")
    except (ValueError, RecursionError):
        # Not HTML after all, or JSON nested to drown in.
        return []
    items: list[Item] = []
    for item in (*found.get("json-ld", ()), *found.get("microdata", ())):
        items += _unfolded(item, DEEPEST)
    return items


def _unfolded(item: object, depth: int) -> Iterator[Item]:
    """An item and what it holds in @graph or as a list."""
    if depth == 0:
        return
    if isinstance(item, list):
        for inner in item:
            yield from _unfolded(inner, depth - 1)
    elif isinstance(item, dict):
        yield item
        for key in ("@graph", "mainEntity", "mainEntityOfPage"):
            yield from _unfolded(item.get(key), depth - 1)


def _properties(item: Item) -> Item | None:
    """The properties of an item that is a recipe, whichever way it was declared; None for any other."""
    types = item.get("@type") or item.get("type") or ()
    names = [types] if isinstance(types, str) else types if isinstance(types, list) else []
    if not any(str(name).rstrip("/").rpartition("/")[2] == "Recipe" for name in names):
        return None
    properties = item.get("properties", item)
    return properties if isinstance(properties, dict) else None


def _as_lines(recipe: Item) -> list[str]:
    """The text of a declared recipe; none if it declares neither list nor method."""
    foods = [line for key in INGREDIENTS for line in _texts(recipe.get(key), DEEPEST)]
    steps = list(_steps(recipe.get("recipeInstructions"), DEEPEST))
    if not foods and not steps:
        return []
    lines = [_first(recipe.get("name")) or "", ""]
    if servings := _first(recipe.get("recipeYield") or recipe.get("yield")):
        lines += [f"Servings: {servings}", ""]
    lines += ["## Ingredients", "", *(f"- {food}" for food in foods), "", "## Method", ""]
    return lines + steps


def _steps(value: object, depth: int) -> Iterator[str]:
    """The lines of the method: steps numbered, sections under their names."""
    if depth == 0:
        return
    if isinstance(value, list):
        for inner in value:
            yield from _steps(inner, depth - 1)
    elif isinstance(value, dict):
        properties = value.get("properties", value)
        parts = properties.get("itemListElement") or properties.get("steps")
        if parts:
            if name := _first(properties.get("name")):
                yield from ("", f"### {name}", "")
            yield from _steps(parts, depth - 1)
        else:
            yield from _steps(properties.get("text") or properties.get("name"), depth - 1)
    else:
        yield from (f"1. {line}" for line in _texts(value, depth))


def _texts(value: object, depth: int) -> Iterator[str]:
    """The lines of a text or of a list of texts; markup inside is taken off."""
    if depth == 0:
        return
    if isinstance(value, list):
        for inner in value:
            yield from _texts(inner, depth - 1)
    elif isinstance(value, dict):
        yield from _texts(value.get("text") or value.get("name") or value.get("@value"), depth - 1)
    elif isinstance(value, str | int | float):
        text = str(value)
        for line in (_without_markup(text) if "<" in text else text).split("\n"):
            if line.strip():
                yield " ".join(line.split())


def _first(value: object) -> str | None:
    """The longest of several ways to say one thing: "4 servings" rather than "4"."""
    return max(_texts(value, DEEPEST), key=len, default=None)


def _without_markup(text: str) -> str:
    import html_text

    return str(html_text.extract_text(text))


def _visible(source: str) -> list[str]:
    """What a reader of the page sees, line by line."""
    import lxml.etree

    try:
        return _without_markup(WINDOW_TITLE.sub("", source, count=1)).split("\n")
    except (ValueError, RecursionError, lxml.etree.LxmlError):
        return source.split("\n")


def _places(source: str, lines: Iterable[str]) -> Iterator[int]:
    """The source line of every line, where its words are found there; else that of the line before."""
    breaks = [at for at, character in enumerate(source) if character == "\n"]
    line_number = 0
    for line in lines:
        words = line.lstrip("#-1. ")[:LOOKED_FOR]
        at = source.find(words) if words else -1
        if at >= 0:
            line_number = bisect_right(breaks, at)
        yield line_number
