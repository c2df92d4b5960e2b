"""Deeds that a sentence tells without a verb for them: "Oven at 450F", "Onions in", "Into the tin, 25 min"."""

from __future__ import annotations

import re

from assistant.reader.scene import Scene
from assistant.reader.sheet import Sheet
from rules.recipe import Deed

#: A sentence without a verb, told in passing, is no longer than this [tokens].
SHORT = 16
#: Verbs that tell and do not ask.
TELLS = re.compile(
    r"\b(?:is|are|was|were|will|should|would|can|may|has|have|had|do|does|it's|they're|makes?|gives?|needs?|works?"
    r"|goes well|tastes?|said|says)\b"
)
ON_TOP = re.compile(r"\b(?:over|on) (?:the )?(?:top|it|them|everything)\b|\bon\W*$")
IN = re.compile(
    r"\bin(?:to (?:the|a) [\w ]{1,20})?(?:\W|$)|\b(?:too|last|next|then|only|finally|now|at the end)\b"
)
INTO_THE_OVEN = re.compile(r"\b(?:in|into|to) (?:the |a |your )?(?:\w{1,12} ){0,2}oven\b")
#: A heat and a time without a verb bake from here on [F]: "Into a greased skillet, 450, 14 min".
OVEN_HOT_F = 275.0
BETWEEN_FOODS = frozenset({",", "and", "&", "+", ".", ";", "!", "then", "the", "plus", "-"})
AFTERWARDS = re.compile(r"\b(?:after|while|when|once|ago|before)\b")
OVEN_FIGURE = re.compile(r"\boven\b.{0,24}\b\d{3}(?!\d)|\b\d{3}(?!\d).{0,12}\boven\b")


def unspoken(sheet: Sheet, start: int, end: int, scene: Scene) -> list[Deed]:
    """The deeds of a sentence that has no verb for them, in order; none where it only tells."""
    said = sheet.said(start, end)
    kinds = {place.kind for place in sheet.places_in(start, end)}
    if "to taste" in said:
        return ["season"]
    deeds: list[Deed] = []
    preheats = bool("oven" in kinds and OVEN_FIGURE.search(said))
    short = end - start <= SHORT + 8 * preheats
    if short and not TELLS.search(said) and sheet.mentions_in(start, end):
        added = IN.search(said) or _is_only_food(sheet, start, end)
        deeds += ["top"] if ON_TOP.search(said) else ["add"] if added else []
    hot = (sheet.temperature_in(start, end) or 0.0) >= OVEN_HOT_F
    timed = bool(sheet.times_in(start, end)) and not AFTERWARDS.search(said)
    if preheats:
        deeds.append("preheat")
    into = "oven" in kinds and INTO_THE_OVEN.search(said)
    if timed and (
        (preheats and short) or (not preheats and (into or hot or (kinds & {"tin", "oven"} and scene.oven)))
    ):
        deeds.append("bake")
    return deeds


def _is_only_food(sheet: Sheet, start: int, end: int) -> bool:
    """Whether a sentence names foods and says nothing else: "Fish sauce, sugar, lime."."""
    foods = {at for mention in sheet.mentions_in(start, end) for at in range(mention.start, mention.end)}
    return all(at in foods or sheet.low(at) in BETWEEN_FOODS for at in range(start, end))
