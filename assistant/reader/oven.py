"""The kitchen oven as a recipe uses it: the figure it is heated to, the words, and what goes in."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from assistant.reader.places import places
from assistant.reader.prose import quantities
from assistant.reader.sections import Layout
from assistant.reader.tokens import doc
from assistant.reader.warmth import STATED, Temperature, fahrenheit, is_celsius, temperatures
from rules.recipe import Action, Oven, Step

BAKES = frozenset({"bake", "roast", "broil", "preheat"})
#: Temperatures of something else: what fries, what is probed, what rises.
NOT_OVEN = re.compile(
    r"\b(?:oil|internal|thermometer|reads|reaches|registers|center|centre|temp of|milk|water|warm place|fryer|lard"
    r"|syrup|candy|meat|inside|room temperature|instant-read|core)\b",
    re.IGNORECASE,
)
IN_OVEN = re.compile(
    r"(?:oven|bake|roast)(?:(?!until|reads|reach|register|internal)[^,.;]){0,40}$", re.IGNORECASE
)
FAN = re.compile(r"\b(?:fan|convection)\b", re.IGNORECASE)
PREHEATS = re.compile(
    r"pre-?\s?heat|oven (?:to|at|for)|set (?:the |your )?oven|heat (?:the |your |an )?oven|oven on",
    re.IGNORECASE,
)
#: "Preheat the oven to 350", "bake 350": a figure without its degrees.
BARE = re.compile(
    r"\b(?:oven|bake|baked|roast|preheat)\b(?:(?:[^.;]|(?<=hr|in)\.|(?<=hrs)\.){0,40}?(?:\b(?:to|at|of|on)\s|@\s?)(?:about )?|\s)(\d{3})\b"
    r"(?!\s?(?:g|ml|grams|minutes|°|degrees|f\b|c\b))",
    re.IGNORECASE,
)
TELLS_OF_OVEN = re.compile(r"oven|bak|roast|broil", re.IGNORECASE)
SENTENCE = re.compile(r"(?<=[.!?;])\s+(?![a-z])")
HIGHEST, LOWEST = 600.0, 150.0
#: Sentences looked at in one step; characters looked at around a figure, and kept of the words.
SENTENCES, BEFORE, AFTER, AROUND, WORDS = 80, 60, 40, 14, 120
HEAD_KINDS = frozenset({"fact", "note", "heading", "title", "component"})

#: How much cooler a fan oven is set than a still one, as recipes print the pair [°F].
FAN_LESS_F = (15.0, 45.0)


class _Told(NamedTuple):
    """A step of the method with its wrapped lines joined, and whether it uses the oven."""

    text: str
    bakes: bool


class _Figure(NamedTuple):
    temp_f: float
    stated: str
    preheats: bool
    fan: bool


def oven_of(layout: Layout, steps: Sequence[Step]) -> Oven | None:
    """What the recipe says of the oven, None if it uses none."""
    told = _told(layout, steps)
    figures = [figure for step in told for figure in _figures(step.text, bakes=step.bakes)]
    if not any(step.bakes for step in told) and not any(figure.preheats for figure in figures):
        return None
    if not figures:
        heads = (line.body for line in layout.lines if line.kind in HEAD_KINDS)
        figures = [figure for body in heads for figure in _figures(body, bakes=False)]
    vessel = _vessel(told)
    if not figures:
        return Oven(temp_f=None, stated=_words(told), vessel=vessel)
    still = [figure for figure in figures if not figure.fan]
    if not still:
        # "160 C fan (180 C)": the word stands near to both, and the hotter one is the still oven's.
        still = [figure for figure in figures if _is_hotter_of_pair(figure, figures)]
    best = next((figure for figure in still if figure.preheats), still[0] if still else figures[0])
    # "200C/fan 180C": the hotter of such a pair is the still oven's, whichever the word "fan" stands nearer to.
    paired = _is_hotter_of_pair(best, figures)
    return Oven(temp_f=best.temp_f, stated=best.stated, vessel=vessel, fan=best.fan and not paired)


def _is_hotter_of_pair(figure: _Figure, figures: Sequence[_Figure]) -> bool:
    """Whether another figure is as much lower as a fan oven is set."""
    return any(FAN_LESS_F[0] <= figure.temp_f - other.temp_f <= FAN_LESS_F[1] for other in figures)


def _told(layout: Layout, steps: Sequence[Step]) -> list[_Told]:
    fresh = {line.number: line.fresh for line in layout.lines if line.kind == "step"}
    told: list[_Told] = []
    for step in steps:
        bakes = any(_in_oven(action) for action in step.actions)
        if told and not fresh.get(step.line, True):
            told[-1] = _Told(f"{told[-1].text} {step.text}", told[-1].bakes or bakes)
        else:
            told.append(_Told(step.text, bakes))
    return told


def _in_oven(action: Action) -> bool:
    return action.does in BAKES


def _figures(text: str, *, bakes: bool) -> Iterator[_Figure]:
    """The oven temperatures of a text, in order."""
    for sentence in SENTENCE.split(text)[:SENTENCES]:
        if not bakes and "oven" not in sentence.lower():
            continue
        preheats = bool(PREHEATS.search(sentence))
        found = temperatures(quantities(sentence))
        for figure in found:
            if LOWEST <= figure.fahrenheit <= HIGHEST and not _elsewhere(sentence, figure):
                around = sentence[max(0, figure.start - AROUND) : figure.end + AROUND]
                stated = sentence[figure.start : figure.end].strip(" .,")
                yield _Figure(figure.fahrenheit, stated, preheats, bool(FAN.search(around)))
        if not found and (bare := BARE.search(sentence)):
            degrees = fahrenheit(float(bare[1])) if is_celsius(float(bare[1])) else float(bare[1])
            if LOWEST <= degrees <= HIGHEST:
                yield _Figure(degrees, bare[1], preheats, fan=False)


def _elsewhere(sentence: str, figure: Temperature) -> bool:
    """Whether a temperature is that of the oil, of the meat's inside."""
    if IN_OVEN.search(sentence[max(0, figure.start - BEFORE) : figure.start]):
        return False
    return bool(NOT_OVEN.search(sentence[max(0, figure.start - BEFORE) : figure.end + AFTER]))


def _vessel(told: Sequence[_Told]) -> str | None:
    """What goes into the oven: the baking dish or tin that the method names, else the pot that is put in."""
    second: str | None = None
    for step in told:
        for place in places(doc(step.text)):
            if place.kind == "tin" and place.name.lower() not in ("pan", "tin"):
                return place.name
            if place.kind == "tin" or (place.kind in ("pot", "pan") and step.bakes):
                second = second or place.name
    return second


def _words(told: Sequence[_Told]) -> str:
    """How the text speaks of an oven without a figure: "a slow oven", "gas mark 4"."""
    for step in told:
        if stated := STATED.search(step.text):
            return stated[0]
    for step in told:
        if step.bakes:
            sentences = SENTENCE.split(step.text)[:SENTENCES]
            return next((s for s in sentences if TELLS_OF_OVEN.search(s)), step.text)[:WORDS]
    return ""
