"""What a change did, with figures: the wish confirmed, then what is different now and what it was before.

Nothing is worked out here; two plans are compared.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from assistant.chat.acts import Meant
from assistant.chat.figures import (
    coals_figure,
    fuel_figure,
    ice_figure,
    light_figure,
    minutes_figure,
    pot_figure,
    scale_figure,
    tail,
)
from assistant.show import words
from rules.circumstances import Day
from rules.plan import Plan

#: The parts of a plan whose change is told, by their field.
PARTS = (
    ("packs", "packs"), ("fat", "fat"), ("pot", "pot"), ("heat", "heat"), ("no_coals_because", "heat"), ("cold", "cold"),
    ("home_steps", "steps"), ("camp_steps", "steps"), ("timeline", "timeline"), ("shopping", "shopping"), ("kit", "kit"),
    ("labels", "labels"), ("cautions", "cautions"), ("allergens", "allergens"), ("check_label", "allergens"),
    ("questions", "questions"),
)  # fmt: skip


#: How a sentence begins that only names parts of the plan.
_ONLY_PARTS = "That changes: "


def changed_parts(before: Plan | None, after: Plan | None) -> tuple[str, ...]:
    """The names of the parts that differ, in the order of a plan."""
    if before is after:
        return ()
    if before is None or after is None:
        return ("recipe",)
    found = [name for field, name in PARTS if getattr(before, field) != getattr(after, field)]
    if before.recipe.title != after.recipe.title or before.recipe.ingredients != after.recipe.ingredients:
        found.insert(0, "recipe")
    return tuple(dict.fromkeys(found))


def undone(left: Day, now: Day, *, same_recipe: bool) -> str:
    """What an undo took back."""
    names = {
        "people": "the number of people", "scale": "the scale", "pots": "the pot", "temp_f": "the temperature",
        "air_f": "the air", "wind": "the wind", "ground": "the ground", "screen": "the windscreen", "elevation_ft": "the elevation",
        "eat": "the time of the meal", "trip_hours": "the hours of the trip", "cooler_quarts": "the cooler", "freezer": "the freezer",
        "charcoal": "the charcoal", "units": "the units", "swaps": "the changed foods",
    }  # fmt: skip
    back = [said for field, said in names.items() if getattr(left, field) != getattr(now, field)]
    if not same_recipe:
        back.insert(0, "the recipe")
    return f"Took back: {words.joined(back)}." if back else "Took the last change back."


def change(changes: Sequence[Meant], before: Plan | None, after: Plan | None, day: Day) -> str:
    """What a change of the day or the recipe did, with figures."""
    said = [sentence for one in changes if one.slots for sentence in [_confirmed(one, day)] if sentence]
    if after is None:
        return " ".join(said)
    told = _differences(before, after, day) if before is not None else []
    if any(one.act == "eat at" for one in changes) and before != after and light_figure(after, day):
        told = [f"{light_figure(after, day)}.", *(part for part in told if not part.startswith(_ONLY_PARTS))]
    if before is not None and not told:
        told = ["The plan stays as it is."]
    return " ".join([*said, *told])


def _confirmed(one: Meant, day: Day) -> str:
    slots: dict[str, Any] = dict(one.slots)
    confirm = _CONFIRM.get(one.act)
    return confirm(slots, day) if confirm else ""


def _said_weather(slots: dict[str, Any], day: Day) -> str:
    parts = []
    if "air_f" in slots:
        parts.append(f"{words.degrees(slots['air_f'], day.units)} out")
    if "wind" in slots:
        parts.append(str(slots["wind"]))
    if "ground" in slots:
        parts.append(
            f"{slots['ground']} on the ground" if slots["ground"] == "snow" else f"{slots['ground']} ground"
        )
    if slots.get("screen") == "yes":
        parts.append("a windscreen around the pot")
    return words.sentence(", ".join(parts)) if parts else ""


def _said_cooler(slots: dict[str, Any], _day: Day) -> str:
    told = [f"A cooler of {words.number(slots['quarts'])} quarts."] if "quarts" in slots else []
    if "freezer" in slots:
        told.append("A freezer at home." if slots["freezer"] == "yes" else "Nothing is frozen at home.")
    return " ".join(told)


def _said_pot(_slots: dict[str, Any], day: Day) -> str:
    owned = day.pots[0]
    depth = "deep " if owned.depth == "deep" else ""
    pots = (
        f"{owned.count} {depth}{owned.diameter_in}-inch pots"
        if owned.count > 1
        else f"a {depth}{owned.diameter_in}-inch pot"
    )
    return words.sentence(f"in {pots}")


def _said_swap(slots: dict[str, Any], day: Day) -> str:
    to = str(slots["to"])
    food = slots.get("from") or next((swap.food for swap in reversed(day.swaps) if swap.to == to), "it")
    return f"{to.capitalize()} instead of {food}."


_CONFIRM: dict[str, Callable[[dict[str, Any], Day], str]] = {
    "people": lambda slots, _: f"For {slots['people']}.",
    "scale": lambda slots, _: f"{words.number(slots['factor'])} times.",
    "pot": _said_pot,
    "temperature": lambda slots, day: f"At {words.degrees(slots['temp_f'], day.units)}.",
    "weather": _said_weather,
    "elevation": lambda slots, day: f"At {_height(slots['feet'], day)}.",
    "eat at": lambda slots, _: f"Eating at {slots['clock']}.",
    "trip": lambda slots, _: f"{words.number(slots['hours'])} hours in the cooler.",
    "fire ban": lambda slots, _: (
        "Charcoal is allowed."
        if slots["allowed"] == "yes"
        else "No charcoal; the land manager's word overrides every plan."
    ),
    "cooler": _said_cooler,
    "units": lambda slots, _: "Grams and °C." if slots["units"] == "metric" else "Cups and °F.",
    "swap": _said_swap,
    "leave out": lambda slots, _: f"Without {_foods(slots['food'])}.",
    "add": lambda slots, _: (
        f"Added {slots['amount']} {slots['food']}." if "amount" in slots else f"Added {slots['food']}."
    ),
}


def _foods(said: object) -> str:
    return words.joined([str(food) for food in said]) if isinstance(said, list) else str(said)


def _height(feet: float, day: Day) -> str:
    return f"{round(feet * 0.3048):,} m" if day.units == "metric" else f"{round(feet):,} feet"


def _differences(before: Plan, after: Plan, day: Day) -> list[str]:
    """What a cook would notice, each as "now ..., before ..."."""
    told = []
    for figure in (
        scale_figure,
        pot_figure,
        coals_figure,
        minutes_figure,
        fuel_figure,
        light_figure,
        ice_figure,
    ):
        was, now = figure(before, day), figure(after, day)
        if was != now and now:
            told.append(f"{now} (was {tail(was)})." if was else f"{now}.")
    if after.no_coals_because and after.no_coals_because != before.no_coals_because:
        told.append(words.sentence(after.no_coals_because))
    gone = _names(before) - _names(after)
    come = _names(after) - _names(before)
    if gone or come:
        told.append(
            words.sentence(
                "; ".join(
                    ([f"no longer in it: {words.joined(sorted(gone))}"] if gone else [])
                    + ([f"new in it: {words.joined(sorted(come))}"] if come else [])
                )
            )
        )
    new_cautions = [
        caution.text for caution in after.cautions if caution.id not in {old.id for old in before.cautions}
    ]
    told += new_cautions[:2]
    new_questions = [
        f"{one.text} Taken: {one.default}." for one in after.questions if one not in before.questions
    ]
    told += new_questions[:2]
    if not told and changed_parts(before, after):
        told.append(f"{_ONLY_PARTS}{words.joined(changed_parts(before, after))}.")
    return told


def _names(plan: Plan) -> set[str]:
    return {item.name for item in plan.recipe.ingredients}
