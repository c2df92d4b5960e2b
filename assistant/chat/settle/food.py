"""Foods that are named: replaced, left out, added, put back."""

from __future__ import annotations

from assistant.chat.context import Context, names_of
from assistant.chat.lexicon import Heard, Word
from assistant.chat.patterns import Found
from assistant.chat.settle.matched import Slots, Told, set_by
from assistant.chat.slots import KINDS
from assistant.reader.lines import read_line
from rules.units import in_all, kitchen

#: A food that nobody knows is a word or a few, not half a sentence.
MOST_STRANGE_WORDS = 4
_DROPPED_ARTICLES = ("the ", "a ", "an ", "some ", "any ", "my ", "our ", "all the ", "all ")


def swap(match: Found, _heard: Heard, context: Context) -> Told:
    """A food and what replaces it; which of the two is in the recipe decides where the sentence may be turned."""
    slots: Slots = {}
    for slot in ("from", "to"):
        word = match.slots.get(slot)
        if isinstance(word, Word):
            slots[slot] = word.text
    listed = {name for item in context.recipe.ingredients for name in names_of(item.name)}
    out, put = str(slots.get("from", "")), str(slots.get("to", ""))
    if out and out not in listed and put in listed:
        slots = {"from": put, "to": out}  # "swap sorghum for the molasses" by one who has molasses
    elif not out and put in listed:
        return  # "use butter", where there is butter
    yield "swap", slots


def food(match: Found, heard: Heard, _context: Context) -> Told:
    """A food by its name, known or not."""
    word = match.slots.get("food")
    if isinstance(word, Word):
        yield match.act, {"food": word.text}
        return
    things = [heard.words[place] for place in sorted(match.own)]
    rest = _plain(set_by(match, "rest") or "")
    if rest and len(rest.split()) <= MOST_STRANGE_WORDS and "IT" not in things[-1].groups:
        yield match.act, {"food": rest}


def _plain(text: str) -> str:
    text = text.strip().rstrip("?!. ").lower()
    for article in _DROPPED_ARTICLES:
        text = text.removeprefix(article)
    for tail in (" please", " too", " also", " as well", " out", " in"):
        text = text.removesuffix(tail)
    return text


def add(match: Found, heard: Heard, context: Context) -> Told:
    """A food with its amount in kitchen words; one that was left out comes back without."""
    own = [heard.words[place] for place in sorted(match.own)]
    food = next((word for word in reversed(own) if word.value(KINDS["food"])), None)
    if food is None:
        return
    if set_by(match, "back"):
        yield "add", {"food": food.text}
        return
    (read, *_) = read_line(heard.text[own[0].end : food.end].strip().lower(), line=0) or (None,)
    is_measured = read is not None and read.amounts and read.name in food.text
    slots: Slots = {"food": read.name if is_measured and read is not None else food.text}
    if read is not None and (amount := in_all(read.amounts)):
        slots["amount"] = kitchen(amount, units=context.day.units)
    yield "add", slots
