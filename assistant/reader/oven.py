"""The kitchen oven as a recipe uses it: the figure it is heated to, the words, and what goes in."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from assistant.reader.places import places
from assistant.reader.prose import quantities
from assistant.reader.sections import Layout
from assistant.reader.tokens import doc
from assistant.reader.warmth import STATED, Temperature, temperatures
from rules.recipe import Action, Oven, Step

BAKES = frozenset({"bake", "roast", "broil"})
#: Temperatures of something else: what fries, what is probed, what rises.
NOT_OVEN = re.compile(
    r"\b(?:oil|internal|thermometer|reads|reaches|registers|center|centre|temp of|milk|water|warm place|fryer|lard|syrup|candy|meat|inside|room temperature|instant-read|core)\b",
    re.IGNORECASE,
)
FAN = re.compile(r"\b(?:fan|convection)\b", re.IGNORECASE)
BARE = re.compile(
    r"\b(?:oven|bake|baked|roast|preheat)\b(?:[^.;]{0,40}?\b(?:to|at|of|on)\s(?:about )?|\s)(\d{3})\b(?!\s?(?:g|ml|grams|minutes|°|degrees|f\b|c\b))",
    re.IGNORECASE,
)
HIGHEST, LOWEST = 600.0, 150.0
SENTENCE = re.compile(r"(?<=[.!?;])\s+")


class _Figure(NamedTuple):
    temperature: float
    stated: str
    preheat: bool
    fan: bool


def oven_of(layout: Layout, steps: Sequence[Step]) -> Oven | None:
    """What the recipe says of the oven, None if it uses none."""
    figures = [figure for step in steps for figure in _figures(step.text, _uses(step))]
    used = any(_uses(step) for step in steps)
    if not used and not any(figure.preheat for figure in figures):
        return None
    if not figures:
        heads = (
            line.body
            for line in layout.lines
            if line.kind in ("fact", "note", "heading", "title", "component")
        )
        figures = [figure for body in heads for figure in _figures(body, "oven" in body.lower())]
    vessel = _vessel(steps)
    if figures:
        best = next((f for f in figures if f.preheat and not f.fan), None) or next(
            (f for f in figures if not f.fan), figures[0]
        )
        return Oven(temp_f=best.temperature, stated=best.stated, vessel=vessel, fan=best.fan)
    return Oven(temp_f=None, stated=_words(steps), vessel=vessel)


def _uses(step: Step) -> bool:
    return any(_in_oven(action) for action in step.actions)


def _in_oven(action: Action) -> bool:
    return action.does in BAKES or action.does == "preheat"


def _figures(text: str, oven: bool) -> Iterator[_Figure]:
    for sentence in SENTENCE.split(text)[:80]:
        low = sentence.lower()
        if not (oven or "oven" in low):
            continue
        for found in temperatures(quantities(sentence)):
            if LOWEST <= found.fahrenheit <= HIGHEST and not _elsewhere(sentence, found):
                around = low[max(0, found.start - 14) : found.end + 14]
                yield _Figure(
                    found.fahrenheit,
                    sentence[found.start : found.end].strip(),
                    bool(
                        re.search(
                            r"pre-?\s?heat|oven (?:to|at|for)|set (?:the |your )?oven|heat (?:the |your |an )?oven|oven on",
                            low,
                        )
                    ),
                    bool(FAN.search(around)) and "no fan" not in low,
                )
        bare = BARE.search(sentence)
        if bare and not temperatures(quantities(sentence)):
            figure = float(bare[1])
            if figure < 250:
                figure = 5.0 * round((figure * 9 / 5 + 32) / 5)
            if LOWEST <= figure <= HIGHEST:
                yield _Figure(figure, bare[1], "heat" in low or "oven" in low, False)


def _elsewhere(sentence: str, found: Temperature) -> bool:
    before = sentence[max(0, found.start - 45) : found.start].lower()
    if re.search(r"oven[^,.;]{0,30}$|bake[^,.;]{0,40}$|roast[^,.;]{0,40}$", before):
        return False
    return bool(NOT_OVEN.search(sentence[max(0, found.start - 60) : found.end + 40]))


def _vessel(steps: Sequence[Step]) -> str | None:
    """What goes into the oven: the baking dish or tin that the method names, else the pot that is put in."""
    pot: str | None = None
    for step in steps:
        for place in places(doc(step.text)):
            if place.kind == "tin" and place.name.lower() not in ("pan", "tin"):
                return place.name
            if place.kind == "tin" and pot is None:
                pot = place.name
            if place.kind in ("pot", "pan") and _uses(step) and pot is None:
                pot = place.name
    return pot


def _words(steps: Sequence[Step]) -> str:
    for step in steps:
        found = STATED.search(step.text)
        if found:
            return found[0]
    for step in steps:
        if _uses(step):
            return next(
                (
                    s
                    for s in SENTENCE.split(step.text)
                    if re.search(r"oven|bak|roast|broil", s, re.IGNORECASE)
                ),
                step.text,
            )[:120]
    return ""
