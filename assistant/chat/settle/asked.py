"""What is asked for, and what the talk itself is told: reasons, steps, what to show, names, how far back."""

from __future__ import annotations

from assistant.chat.context import Context
from assistant.chat.lexicon import EDGE, LIGHT, Heard, Word
from assistant.chat.patterns import Found
from assistant.chat.settle.matched import Slots, Told, number_of, set_by, value_of

#: Acts that no reason is about; a bare "why?" behind them asks back.
NO_REASON = frozenset(["undo", "new", "show", "export", "keep", "kept", "open", "forget", "help", "units"])
_EDGES = frozenset(["COMMA", "STOP"])


def why(match: Found, heard: Heard, context: Context) -> Told:
    """About the food in the question, else about what is left of it without its small words."""
    asked = [heard.words[place] for place in sorted(match.own)][1:]
    foods = [word.text for word in asked if word.value(("food",))]
    if foods:
        listed = (item.name for item in context.recipe.ingredients)
        yield "why", {"about": next((name for name in listed if f" {name} " in f" {foods[0]} "), foods[0])}
        return
    if not foods and not any(LIGHT not in word.groups for word in asked):
        foods = _foods_before(match, heard)
        if foods:
            yield "why", {"about": foods[-1]}
            return
    things = list(asked)
    while things and (LIGHT in things[0].groups or things[0].text in ("so", "many", "much")):
        things.pop(0)
    about = " ".join(word.text for word in things if not word.groups & _EDGES)
    if about and any(LIGHT not in word.groups and "NOT" not in word.groups for word in things):
        yield "why", {"about": about}
    elif not about:
        yield "why", {"about": context.last} if context.last and context.last not in NO_REASON else {}


def _foods_before(match: Found, heard: Heard) -> list[str]:
    """The foods that were named before a bare "why is that?" of the same sentence."""
    return [word.text for word in heard.words[: match.start] if word.value(("food",))]


def undo(match: Found, _heard: Heard, _context: Context) -> Told:
    """How many steps back: none said is one."""
    count, fixed = number_of(match, "count"), set_by(match, "steps")
    steps = fixed if fixed is not None else str(int(count)) if count is not None else "1"
    yield "undo", {"steps": int(steps) if steps.isdigit() else steps} if steps != "1" else {}


def _end_of_part(match: Found, heard: Heard) -> int:
    place = match.end
    while place < len(heard.words) and EDGE not in heard.words[place].groups:
        place += 1
    return place


def steps(match: Found, heard: Heard, _context: Context) -> Told:
    """At home or at camp, by whatever the part of the sentence says of the place."""
    said = [group for word in heard.words[match.start : _end_of_part(match, heard)] for group in word.groups]
    where = "home" if "HOME" in said else "camp" if "ATCAMP" in said else set_by(match, "where")
    yield "steps", {"where": where} if where else {}


def show(match: Found, _heard: Heard, _context: Context) -> Told:
    """The plan, or the recipe."""
    yield "show", {"what": set_by(match, "what") or "plan"}


def export(match: Found, _heard: Heard, _context: Context) -> Told:
    """The form and the path of a file."""
    slots: Slots = {}
    form, path = value_of(match, "as"), value_of(match, "path")
    if path is not None:
        slots["path"] = path.value
    if form is not None:
        slots["as"] = form.value
    yield "export", slots


def named(match: Found, _heard: Heard, _context: Context) -> Told:
    """The name of a kept meal."""
    word = match.slots.get("quoted") or match.slots.get("day_name")
    if isinstance(word, Word):
        yield match.act, {"name": str(word.values[0].value)}
        return
    name = (set_by(match, "name") or "").strip().rstrip("?!. ").strip("\"'")
    yield match.act, {"name": name} if name else {}
