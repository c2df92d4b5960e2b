"""Stretches of time in the method: which of the times in a step are told to the cook, and what each is for.

Left out are intervals ("every 5 minutes"), parts of a stretch ("the last 5 minutes"), cues ("after 10 minutes", "a
minute before it is done"), and how long the dish keeps.
"""

from __future__ import annotations

import re

from assistant.reader.deeds import lexicon
from assistant.reader.prose import Quantity
from rules.recipe import Deed, DurationKind

KINDS: dict[Deed, DurationKind] = {
    "bake": "bake", "roast": "bake", "broil": "bake", "simmer": "simmer", "reduce": "simmer", "boil": "boil",
    "steam": "boil", "fry": "fry", "saute": "fry", "brown": "fry", "deep fry": "fry", "griddle": "fry", "toast": "fry",
    "deglaze": "simmer", "rest": "rest", "cool": "rest", "marinate": "marinate", "rise": "rise", "chill": "chill", "soak": "rest",
    "freeze": "chill",
}  # fmt: skip
DAY = 1440.0
BEFORE = re.compile(
    r"(?:\b(?:every|once every|per|last|final|first|after|beyond|exceed|exceeding|over the|going over|more than|longer than|than|within|it's been|this|that|these)\b)(?:\s(?:about|approx(?:imately)?\.?|around|the|another|next|roughly|some|at least|up to))?\s?~?$"
    r"|\bkeeps?(?: (?:well|fresh|good|them|it))?(?: for)?(?: about| up to| at least)?\s?$|\bafter (?:the|about|around) (?:first )?$|\b(?:prep|preparation|total|active)(?: time)?:?\s?$",
    re.IGNORECASE,
)
AFTER = re.compile(
    r"\s?(?:less\b|timer|mark\b|per (?!side|batch)|after\b|ahead|in advance|apart|old\b|(?:a|per) (?:pound|lb|kilo|kg)\b|earlier|beforehand|from the end|intervals?)",
    re.IGNORECASE,
)
#: "5 minutes before the end" is a cue; "for an hour before serving" and "simmer 2 minutes before adding" are stretches.
BEFORE_IT = re.compile(r"\s?(?:more )?(?:before|prior to)\s(\w{0,20})", re.IGNORECASE)
STRETCH = re.compile(r"\b(?:for|least|minimum|another)\s?(?:at least |about |another )?~?\s?$", re.IGNORECASE)
HEDGE = re.compile(r"\b(?:about|approximately|approx\.?|around|roughly)\s?$", re.IGNORECASE)
#: A camp oven with fire above it bakes, whatever was done in it before.
FIRE_ABOVE = re.compile(r"\b(?:coals|briquettes|embers)\b.{0,20}\b(?:on top|on the lid|above|over)\b")
STORAGE = re.compile(
    r"\b(?:store[ds]?|storing|keeps?|kept|frozen|freezes?|lasts?|leftovers?|up to|good for|shelf life|in advance|ahead of time|max(?:imum)?)\b",
    re.IGNORECASE,
)
#: The sentence takes the dish from the fire: "Off the heat, still covered, 10 min", "Leave them on the tray".
WAITS = re.compile(
    r"[\s\d.)-]{0,6}(?:off the (?:heat|fire|stove)\b|leave (?:them|it) (?:on|in) the (?:tray|tin|pan|rack|sheet)\b)"
)
#: "Freezing them for an hour makes clean cuts".
FREEZING = re.compile(r"\bfreezing (?:\w{1,10} ){0,3}for (?:about )?(?:an?|\d{1,3}|half an?) \w{1,8}$")
MARINADE = re.compile(r"\bmarinades?\b|\bmarinat\w{1,3}\b")
#: A pot that is told to go on so does not boil, whatever brought it there.
GENTLE = re.compile(r"\b(?:gently|very low|low heat|low flame|lowest|barely|bare simmer|slowly)\b")
COOKS = re.compile(r"\bcook\b")
#: What cooks as long as this in its liquid [min] simmers.
LONG_COOK = 45.0
NEAR_BEFORE, NEAR_AFTER = 40, 24
#: Deeds that wait: "leave it 5 minutes before you cut" is a stretch.
WAITING: frozenset[Deed] = frozenset({"rest", "cool", "chill", "rise", "marinate", "soak", "freeze"})
#: "Flip after 2 minutes" tells how long one side fries; no side takes longer [min].
TURNS = re.compile(r"\b(?:flip|turn)\b")
TURNED = re.compile(r"\bafter(?: about| around)?\s?$", re.IGNORECASE)
LONGEST_SIDE = 15.0
COVERED = re.compile(r"\b(?:lid|covered|cover)\b")
#: What cooks so long under a lid [min] does not fry.
LONG_UNDER_A_LID = 20.0
IN_OVEN = re.compile(r"\b(?:in|into|to) (?:the |a |your )?(?:[\w°]{1,12} ){0,2}oven\b")
UNBOILED = re.compile(r"\b(?:never|not|n't|without) (?:\w{1,8} ){0,2}boil")


def counts(text: str, quantity: Quantity, deed: Deed | None) -> bool:
    """Whether a time in a text is a stretch of the work, given the deed it stands with."""
    before = text[max(0, quantity.start - NEAR_BEFORE) : quantity.start]
    after = text[quantity.end : quantity.end + NEAR_AFTER]
    if (BEFORE.search(before.rstrip()) and not _turns(text, quantity)) or AFTER.match(after):
        return False
    if (
        (cue := BEFORE_IT.match(after))
        and deed not in WAITING
        and not (cue[1].endswith("ing") and _is_stretch(before))
    ):
        return False
    if quantity.high < DAY:
        return True
    if deed not in ("ferment", "rise", "marinate", "soak", "rest", "chill"):
        return False
    return not STORAGE.search(text[max(text.rfind(".", 0, quantity.start), 0) : quantity.start])


def _cooks_on(sentence: str, quantity: Quantity) -> bool:
    """Whether a pot that came to the boil cooks on so long, or under its lid, that it simmers."""
    if not COOKS.search(sentence):
        return False
    return quantity.high >= LONG_COOK or (
        quantity.high >= LONG_UNDER_A_LID and bool(COVERED.search(sentence))
    )


def _turns(text: str, quantity: Quantity) -> bool:
    """Whether something is turned after a time that nothing else tells: "flip it after 2 minutes"."""
    sentence = text[text.rfind(". ", 0, quantity.start) + 1 : quantity.start].lower()
    turned = quantity.high <= LONGEST_SIDE and TURNS.search(sentence) and TURNED.search(sentence)
    return bool(turned) and not any(character.isdigit() for character in sentence)


def _is_stretch(before: str) -> bool:
    """Whether the words before a time say that it is one: "for at least", or a verb: "simmer"."""
    last = HEDGE.sub("", before).split()[-1:] or [""]
    verb = lexicon().get(last[0].lower().strip("~("))
    return bool(STRETCH.search(before)) or (verb is not None and verb.form == "plain")


def kind(deed: Deed | None, text: str, quantity: Quantity) -> DurationKind:
    """What a stretch of time is for: by its deed, unless its sentence says that it waits or only trembles."""
    sentence = text[text.rfind(". ", 0, quantity.start) + 1 : quantity.end].lower()
    if WAITS.match(sentence):
        return "rest"
    after = text[quantity.end : quantity.end + NEAR_BEFORE].lower().partition(".")[0]
    found = KINDS.get(deed, "other") if deed else "other"
    if found == "rest" and FREEZING.search(sentence):
        return "chill"
    if found in ("rest", "chill") and MARINADE.search(sentence):
        return "marinate"
    if found == "simmer" and IN_OVEN.search(sentence):
        return "bake"
    if deed == "soak" and UNBOILED.search(sentence + after):
        return "simmer"
    if (
        found == "fry"
        and quantity.high >= LONG_UNDER_A_LID
        and COOKS.search(sentence)
        and COVERED.search(sentence)
    ):
        return "simmer"
    if found in ("other", "fry", "simmer") and FIRE_ABOVE.search(sentence + after):
        return "bake"
    if deed == "toast" and IN_OVEN.search(sentence):
        return "bake"
    if found == "boil" and (
        GENTLE.search(re.split(r"\bthen\b", sentence)[-1]) or _cooks_on(sentence, quantity)
    ):
        return "simmer"
    return found
