"""Slots settled: what a match says, as the figures and words that `coalside ask` prints.

"half past six" becomes "18:30", "a bit hotter" 25 °F more than the plan has, "half the crowd" half of its people,
"and for nine?" the act of the sentence before.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import TYPE_CHECKING

from assistant.chat.clocks import clock_of
from assistant.chat.context import Context, names_of
from assistant.chat.lexicon import EDGE, LIGHT, Heard, Word
from assistant.chat.patterns import Found
from assistant.chat.slots import KINDS, air_f, fits, is_fat, oven_f
from assistant.chat.values import Value
from assistant.reader.lines import read_line
from rules.circumstances import DIAMETERS_IN
from rules.foods.names import singular
from rules.units import in_all, kitchen

if TYPE_CHECKING:
    from assistant.chat.acts import Meant

STEP_F = 25
#: So many pies are said to mean times the recipe; more are pieces of it.
MOST_BATCHES = 6
AIR_SLOTS = ("air", "air_degrees", "air_word", "air_minus")
FREEZING_F = 32
#: A food that nobody knows is a word or a few, not half a sentence.
MOST_STRANGE_WORDS = 4
_DROPPED_ARTICLES = ("the ", "a ", "an ", "some ", "any ", "my ", "our ", "all the ", "all ")

_EDGES = frozenset(["COMMA", "STOP"])

Slots = dict[str, object]


def settled(match: Found, heard: Heard, context: Context) -> list[Meant]:
    """The act or acts that a match stands for; none where its slots make no sense."""
    from assistant.chat.acts import Meant

    settle = _SETTLERS.get(match.act)
    if settle is None:
        return [Meant(act=match.act)]
    return [Meant(act=act, slots=slots) for act, slots in settle(match, heard, context)]


Told = Iterable[tuple[str, Slots]]


def _value(match: Found, slot: str) -> Value | None:
    word = match.slots.get(slot)
    return word.value(KINDS[slot]) if isinstance(word, Word) else None


def _number(match: Found, slot: str) -> float | None:
    value = _value(match, slot)
    return float(value.value) if value is not None else None


def _set(match: Found, slot: str) -> str | None:
    said = match.slots.get(slot)
    return said if isinstance(said, str) else None


def _people(match: Found, _heard: Heard, context: Context) -> Told:
    said, count = _number(match, "people"), _number(match, "count")
    relative = _set(match, "people")
    if _set(match, "after") not in (None, context.last):
        return
    if said is not None:
        more = sum(_number(match, slot) or 0 for slot in ("and_people", "and_more"))
        yield "people", {"people": int(said + more)}
    elif (times := _number(match, "factor")) is not None and context.people is not None:
        yield "people", {"people": max(1, round(context.people * times))}
    elif relative is not None and relative.startswith("="):
        yield "people", {"people": int(relative[1:])}
    elif relative is not None and context.people is not None:
        now = context.people
        if relative.startswith("x"):
            people = round(now * float(relative[1:]))
        else:
            sign = -1 if relative.startswith("-") else 1
            people = now + sign * int(count if count is not None else float(relative[1:] or 1))
        yield "people", {"people": max(1, people)}


def _times_made(match: Found, heard: Heard, context: Context) -> float | None:
    """How many times the recipe a number of its loaves, rolls or pies is."""
    count = _number(match, "made")
    if count is None:
        return None
    things = {word.text for place in match.own for word in [heard.words[place]] if "MADE" in word.groups}
    served = context.recipe.servings
    of_one = {singular(word) for word in served.of.split()} if served is not None else set()
    if served is not None and of_one & {singular(thing) for thing in things}:
        return count / ((served.low + served.high) / 2)
    return count if count <= MOST_BATCHES else None


def _scale(match: Found, heard: Heard, context: Context) -> Told:
    made = _times_made(match, heard, context)
    if match.slots.get("made") is not None:
        if made is not None:
            yield "scale", {"factor": round(made, 4)}
        return
    said = _number(match, "factor") or _number(match, "scale") or _number(match, "part")
    fixed = _set(match, "factor")
    factor = said if said is not None else float(fixed or 1)
    yield "scale", {"factor": round(factor, 4)}


def _next_size(match: Found, context: Context) -> int | None:
    """The next larger or smaller pot than the one that is planned with."""
    step, now = _set(match, "size"), context.pot_in
    if step is None or now is None:
        return None
    others = [size for size in DIAMETERS_IN if (size > now if step == "+" else size < now)]
    return (min(others) if step == "+" else max(others)) if others else None


def _pot(match: Found, heard: Heard, context: Context) -> Told:
    if _set(match, "asked"):
        yield "pot", {}
        return
    slots: Slots = {}
    size = _number(match, "pot") or _number(match, "inches") or _next_size(match, context)
    if size is not None:
        slots["diameter_in"] = int(size) if size == int(size) else size
    if _set(match, "size") and size is None:
        return
    depth = _depth(match, heard)
    if depth is not None:
        slots["depth"] = depth
    count = _number(match, "pots")
    if count is not None and (count > 1 or size is None):
        slots["count"] = int(count)
    yield "pot", slots


def _depth(match: Found, heard: Heard) -> str | None:
    """Deep or shallow, whichever was said without a "not" before it."""
    for place in sorted(match.own):
        groups = heard.words[place].groups
        if groups & {"DEEP", "SHALLOW"} and "NOT" not in heard.words[place - 1].groups:
            return "deep" if "DEEP" in groups else "shallow"
    return None


def _temperature(match: Found, _heard: Heard, context: Context) -> Told:
    if _set(match, "asked"):
        yield "temperature", {}
        return
    value = _value(match, "oven") or _value(match, "oven_degrees") or _value(match, "oven_bare")
    if value is not None:
        yield "temperature", {"temp_f": _whole(oven_f(value) or 0)}
        return
    relative = _set(match, "temp_f")
    now = context.day.temp_f or context.temp_f
    if relative is None or now is None:
        return
    step = _step_f(_value(match, "oven_step"))
    by = float(relative) if len(relative) > 1 else (step if relative == "+" else -step)
    yield "temperature", {"temp_f": _whole(now + by)}


def _step_f(value: Value | None) -> float:
    if value is None:
        return STEP_F
    return float(value.value) * (1.8 if value.unit == "C" else 1)


def _weather(match: Found, heard: Heard, context: Context) -> Told:
    slots: Slots = {}
    value = next((said for slot in AIR_SLOTS if (said := _value(match, slot))), None)
    if value is not None:
        rains = any(word.value(("sky",)) for word in heard.words)
        # Rain is water: a figure below freezing on the one scale was meant on the other.
        is_metric = context.day.units == "metric" or (rains and float(value.value) < 32)
        air = air_f(_below(match, value), is_metric=is_metric)
        if air is None:
            return
        if _set(match, "below") == "freezing":
            air += FREEZING_F if value.unit != "C" else 0
        slots["air_f"] = _whole(air)
    for slot in ("wind", "ground"):
        word, fixed = _value(match, slot), _set(match, slot)
        if word is not None or fixed is not None:
            slots[slot] = word.value if word is not None else fixed
    if _value(match, "sky") is not None:
        slots["ground"] = "damp"
    screen = _set(match, "screen")
    if screen is not None:
        slots["screen"] = screen
    yield "weather", slots


def _below(match: Found, value: Value) -> Value:
    """A figure said to be below zero or below freezing, with its sign."""
    is_below = _set(match, "below") is not None and isinstance(value.value, float | int)
    return value._replace(value=-abs(float(value.value))) if is_below else value


def _elevation(match: Found, _heard: Heard, _context: Context) -> Told:
    fixed = _set(match, "feet")
    feet = float(fixed) if fixed is not None else _number(match, "feet")
    yield "elevation", {"feet": round(feet if feet is not None else _number(match, "height") or 0)}


def _eat_at(match: Found, heard: Heard, context: Context) -> Told:
    value = _value(match, "clock") or _value(match, "sure_clock")
    if value is not None:
        clock = clock_of(value, meal=meal_of(heard) or _meal_at(context.day.eat))
    else:
        clock = _moved(match, (context.day.eat or "").rpartition("T")[2])
    if clock is not None:
        yield "eat at", {"clock": clock}


def _meal_at(eat: str | None) -> str | None:
    """The meal of a time that was set before: who breakfasts at half past eight and says nine means the morning."""
    hour = int((eat or "24").rpartition("T")[2].partition(":")[0])
    return "breakfast" if hour < 10 else "lunch" if hour < 14 else None


def _moved(match: Found, eat: str) -> str | None:
    """The time of the meal moved: "make it half past" keeps the hour, "an hour later" counts from it."""
    if not eat:
        return None
    hour, _, minute = eat.partition(":")
    past, by = _set(match, "past"), _number(match, "moved")
    if past is not None:
        minutes = int(hour) * 60 + int(past)
    else:
        sign = -1 if _set(match, "by") == "-" else 1
        minutes = int(hour) * 60 + int(minute) + sign * round((by or 0) * 60)
    minutes %= 24 * 60
    return f"{minutes // 60:02d}:{minutes % 60:02d}"


def meal_of(heard: Heard) -> str | None:
    """The meal that a sentence names, which says which half of the day it is."""
    for word in heard.words:
        for meal in ("breakfast", "brunch", "lunch", "dinner", "supper"):
            if meal in word.text:
                return meal
        if "morning" in word.text:
            return "breakfast"
    return None


def _trip(match: Found, _heard: Heard, _context: Context) -> Told:
    yield "trip", {"hours": _whole(_number(match, "hours") or 0)}


def _fire_ban(match: Found, _heard: Heard, _context: Context) -> Told:
    yield "fire ban", {"allowed": _set(match, "allowed") or "no"}


def _cooler(match: Found, _heard: Heard, _context: Context) -> Told:
    freezer = _set(match, "freezer")
    if freezer is not None:
        yield "cooler", {"freezer": freezer}
        return
    quarts = _number(match, "quarts") or _number(match, "quarts_number") or 0
    yield "cooler", {"quarts": _whole(quarts)}


def _units(match: Found, _heard: Heard, _context: Context) -> Told:
    value = _value(match, "units")
    yield "units", {"units": value.value if value is not None else "us"}


def _swap(match: Found, _heard: Heard, context: Context) -> Told:
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


def _food(match: Found, heard: Heard, _context: Context) -> Told:
    word = match.slots.get("food")
    if isinstance(word, Word):
        yield match.act, {"food": word.text}
        return
    things = [heard.words[place] for place in sorted(match.own)]
    rest = _plain(_set(match, "rest") or "")
    if rest and len(rest.split()) <= MOST_STRANGE_WORDS and "IT" not in things[-1].groups:
        yield match.act, {"food": rest}


def _plain(text: str) -> str:
    text = text.strip().rstrip("?!. ").lower()
    for article in _DROPPED_ARTICLES:
        text = text.removeprefix(article)
    for tail in (" please", " too", " also", " as well", " out", " in"):
        text = text.removesuffix(tail)
    return text


def _add(match: Found, heard: Heard, context: Context) -> Told:
    own = [heard.words[place] for place in sorted(match.own)]
    food = next((word for word in reversed(own) if word.value(KINDS["food"])), None)
    if food is None:
        return
    if _set(match, "back"):
        if any(food.text in one.food or one.food in food.text for one in context.day.swaps):
            yield "add", {"food": food.text}
        return
    slots: Slots = {"food": food.text}
    before = heard.text[own[0].end : food.start].strip()
    (read, *_) = read_line(f"{before} {food.text}", line=0) or (None,)
    if read is not None and (amount := in_all(read.amounts)):
        slots["amount"] = kitchen(amount, units=context.day.units)
    yield "add", slots


def _why(match: Found, heard: Heard, context: Context) -> Told:
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
    elif context.last and not about:
        yield "why", {"about": context.last}


def _foods_before(match: Found, heard: Heard) -> list[str]:
    """The foods that were named before a bare "why is that?" of the same sentence."""
    return [word.text for word in heard.words[: match.start] if word.value(("food",))]


def _undo(match: Found, _heard: Heard, _context: Context) -> Told:
    count, fixed = _number(match, "count"), _set(match, "steps")
    steps = fixed if fixed is not None else str(int(count)) if count is not None else "1"
    yield "undo", {"steps": int(steps) if steps.isdigit() else steps} if steps != "1" else {}


def _end_of_part(match: Found, heard: Heard) -> int:
    place = match.end
    while place < len(heard.words) and EDGE not in heard.words[place].groups:
        place += 1
    return place


def _steps(match: Found, heard: Heard, _context: Context) -> Told:
    said = [group for word in heard.words[match.start : _end_of_part(match, heard)] for group in word.groups]
    where = "home" if "HOME" in said else "camp" if "ATCAMP" in said else _set(match, "where")
    yield "steps", {"where": where} if where else {}


def _show(match: Found, _heard: Heard, _context: Context) -> Told:
    yield "show", {"what": _set(match, "what") or "plan"}


def _export(match: Found, _heard: Heard, _context: Context) -> Told:
    slots: Slots = {}
    form, path = _value(match, "as"), _value(match, "path")
    if path is not None:
        slots["path"] = path.value
    if form is not None:
        slots["as"] = form.value
    yield "export", slots


def _named(match: Found, _heard: Heard, _context: Context) -> Told:
    word = match.slots.get("quoted") or match.slots.get("day_name")
    if isinstance(word, Word):
        yield match.act, {"name": str(word.values[0].value)}
        return
    name = (_set(match, "name") or "").strip().rstrip("?!. ").strip("\"'")
    yield match.act, {"name": name} if name else {}


#: Acts whose figure may be said again alone, with the slot it fills.
_FIGURES: tuple[tuple[str, str], ...] = (
    ("people", "people"), ("pot", "pot"), ("temperature", "oven"), ("eat at", "clock"), ("weather", "air"),
    ("elevation", "height"), ("cooler", "quarts_number"), ("scale", "scale"),
)  # fmt: skip


def _again(match: Found, heard: Heard, context: Context) -> Told:
    word = match.slots.get("bare")
    if isinstance(word, Word):
        yield from _figure_again(match, word, heard, context)
        return
    food = match.slots.get("food")
    if isinstance(food, Word):
        if context.last in ("leave out", "allergens", "shopping", "doneness", "add"):
            yield context.last, {"food": food.text} if context.last in ("leave out", "add") else {}
        elif context.last == "why":
            yield "why", {"about": food.text}
        elif is_fat(food.text):
            yield "fat", {}
    elif context.last in ("fat", "coals", "turning", "doneness"):
        yield context.last, {}


def _figure_again(match: Found, word: Word, heard: Heard, context: Context) -> Told:
    """A bare figure: what the sentence before set, if the figure can be that, else what it most likely is."""
    slots = dict(_FIGURES)
    first = [context.last] if context.last in slots else []
    own = {part for place in match.own for part in heard.words[place].text.split()}
    if "for" in own and context.last not in ("eat at", "scale"):
        first = ["people"]  # "and for nine?", whatever was said before
    likely = ["temperature", "eat at"] if "at" in own else ["temperature", "people"]
    if context.last == "pot" and fits("pots", word) and not fits("pot", word):
        yield "pot", {"count": int(word.values[0].value)}
        return
    if not first and not own & {"for", "at", "make"}:
        return  # a figure that nothing explains
    for act in [*first, *likely]:
        if act is not None and fits(slots[act], word):
            again = match._replace(act=act, slots={slots[act]: word})
            yield from _SETTLERS[act](again, heard, context)
            return


def _whole(value: float) -> float | int:
    return int(value) if value == int(value) else round(value, 1)


_SETTLERS: Mapping[str, Callable[[Found, Heard, Context], Told]] = {
    "people": _people,
    "scale": _scale,
    "pot": _pot,
    "temperature": _temperature,
    "weather": _weather,
    "elevation": _elevation,
    "eat at": _eat_at,
    "trip": _trip,
    "fire ban": _fire_ban,
    "cooler": _cooler,
    "units": _units,
    "undo": _undo,
    "swap": _swap,
    "leave out": _food,
    "add": _add,
    "why": _why,
    "steps": _steps,
    "show": _show,
    "export": _export,
    "keep": _named,
    "open": _named,
    "forget": _named,
    "again": _again,
}
