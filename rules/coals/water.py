"""Spells over water as stages: boiling, simmering, and what a pressure cooker's time means (handbook chapters 5 and 7)."""

from __future__ import annotations

import re
from collections.abc import Sequence

from rules.because import Rule
from rules.coals.drafts import Draft, family_heat, heat_figure, minutes, usual
from rules.coals.kitchen import FRIED, WET, Kitchen
from rules.coals.pieces import Piece
from rules.hazards import dry_kidney_beans, hazard_of

#: What simmers, in words, by the row of its usual minutes.
NAMES = {
    "tough": "a tough cut",
    "poultry": "poultry",
    "fish": "fish",
    "dry beans": "a pot of soaked dry beans",
}
#: A slow cooker's time begins here [min]; less is said of something else.
SLOW_COOKER_MIN = 150.0
_SLOW_COOKER = re.compile(r"\b(?:slow[- ]?cooker|crock[- ]?pot)\b", re.IGNORECASE)
#: A time under pressure leaves the other end of its range this much later.
LONGER_TO_BE_SURE = 1.25

PRESSURE = Rule(
    id="heat.pressure",
    because="a time under pressure is no camp time: {text} minutes become {low:.0f} to {high:.0f} in an ordinary pot, a"
    " guess that a fork must test",
)
SLOW = Rule(
    id="heat.slow-cooker",
    because="{text} hours in a slow cooker become {low:.0f} to {high:.0f} minutes in a pot that simmers, a guess that a"
    " fork must test",
)
KIDNEY = Rule(
    id="heat.kidney",
    because="dry kidney beans boil hard for {minutes:.0f} minutes in fresh water before any simmer: a pot kept just"
    " under the boil leaves their poison in",
)
TO_THE_BOIL = Rule(
    id="heat.boil",
    because="the pot comes to the boil on twice its diameter in coals; then coals are taken away for what follows",
)
UNTIMED = Rule(
    id="heat.simmer",
    because="the text gives no time for the simmer: {what} usually takes {low:.0f} to {high:.0f} minutes",
)


def boiled(group: Sequence[Piece], stove: Sequence[Piece], kitchen: Kitchen) -> list[Draft]:
    """Food boiled in water; a pot that only comes to the boil is left to `brought_up`."""
    after = stove[stove.index(group[-1]) + 1 :]
    comes_up = bool(after) and after[0].kind == "simmer"
    cooked = [
        piece
        for piece in group
        if piece.is_timed
        or (
            not _brings(piece, after)
            and (_grain(piece, kitchen) or (not comes_up and kitchen.family not in WET))
        )
    ]
    if not cooked:
        return []
    key = next((name for piece in cooked if (name := _grain(piece, kitchen))), "boil")
    low, high = minutes(cooked, key)
    return [
        Draft(
            kind="boil",
            way="boil",
            low_min=low,
            high_min=high,
            look="boil",
            is_main=kitchen.family == "boil or steam",
        )
    ]


def _brings(piece: Piece, after: Sequence[Piece]) -> bool:
    """Whether an untimed boil only brings up what simmers next: "bring to a boil, turn down and simmer"."""
    return bool(after) and after[0].kind == "simmer" and not piece.verb.startswith("boil")


def _grain(piece: Piece, kitchen: Kitchen) -> str | None:
    """The row of usual minutes for what boils in plain water beside the dish: potatoes, rice, pasta, grain."""
    for use in piece.uses:
        food, name = kitchen.items[use].food, kitchen.recipe.ingredients[use].name
        if "potato" in name:
            return "boil potatoes"
        if "rice" in name.split():
            return "boil rice"
        if food is not None and food.group == "pasta":
            return "boil"
        if food is not None and food.group == "grain":
            return "boil grain"
    return None


def simmered(group: Sequence[Piece], kitchen: Kitchen) -> Draft:
    """A simmer; without a time in the text as long as the toughest food in it takes."""
    is_wet = kitchen.family in WET or kitchen.family in ("boil or steam", "other")
    key = simmer_key(kitchen) if is_wet else "sauce" if kitchen.family in FRIED else "simmer"
    low, high = minutes([piece for piece in group if piece.kind == "simmer"], key or "simmer")
    if key is None and not any(piece.is_timed for piece in group):
        row = family_heat(kitchen.family)
        low, high = row.low_min, row.high_min
    if is_wet and not any(piece.is_timed for piece in group):
        what = "it" if key is None else key.removeprefix("simmer ")
        row_of = family_heat(kitchen.family) if key is None else usual(key)
        kitchen.ledger.note(UNTIMED.says("simmer", row_of, what=NAMES.get(what, what), low=low, high=high))
        kitchen.ledger.ask("simmer", "No simmering time was given.", f"{low:.0f} to {high:.0f} minutes")
    pressed = [piece for piece in group if piece.kind == "pressure"]
    if pressed:
        low, high = _unpressed(pressed, kitchen)
    elif low >= SLOW_COOKER_MIN and has_slow_cooker(kitchen):
        low, high = _quickened(group, low, high, kitchen)
    return Draft(
        kind="simmer", way="simmer", low_min=low, high_min=high, look="simmer", is_main=kitchen.family in WET
    )


def _unpressed(pressed: Sequence[Piece], kitchen: Kitchen) -> tuple[float, float]:
    """Minutes under pressure as minutes in an ordinary pot."""
    factor = heat_figure("pressure factor")
    low, high = minutes(pressed, "simmer")
    text = f"{low:g}" if low == high else f"{low:g} to {high:g}"
    low, high = low * factor.value, high * factor.value * LONGER_TO_BE_SURE
    kitchen.ledger.note(PRESSURE.says("simmer", factor, text=text, low=low, high=high))
    kitchen.ledger.ask(
        "simmer",
        "The text cooks under pressure; an ordinary pot takes longer.",
        f"{low:.0f} to {high:.0f} minutes",
    )
    return low, high


def has_slow_cooker(kitchen: Kitchen) -> bool:
    """Whether the method uses a slow cooker, which keeps food under the simmer for hours."""
    vessels = [action.vessel for step in kitchen.recipe.steps for action in step.actions if action.vessel]
    return any(_SLOW_COOKER.search(words) for words in (*vessels, kitchen.recipe.title or ""))


def _quickened(group: Sequence[Piece], low: float, high: float, kitchen: Kitchen) -> tuple[float, float]:
    """A slow cooker's hours as a pot's."""
    is_high = any(piece.heat == "high" for piece in group)
    factor = heat_figure("slow cooker high" if is_high else "slow cooker low")
    text = f"{low / 60:g} to {high / 60:g}" if high > low else f"{low / 60:g}"
    low, high = low * factor.value, high * factor.value * LONGER_TO_BE_SURE
    kitchen.ledger.note(SLOW.says("simmer", factor, text=text, low=low, high=high))
    kitchen.ledger.ask(
        "simmer",
        "The text gives a slow cooker's hours; a pot over coals is quicker.",
        f"{low:.0f} to {high:.0f} minutes",
    )
    return low, high


def simmer_key(kitchen: Kitchen) -> str | None:
    """What decides how long an untimed simmer takes: tough meat, dry beans, poultry, fish; None for the family's."""
    foods = [(item, item.food) for item in kitchen.items if item.food is not None]
    if any("tough" in food.traits for _, food in foods):
        return "simmer tough"
    if any(food.group == "legume" and "dry" in food.name for _, food in foods):
        return "simmer lentils" if any("lentil" in food.name for _, food in foods) else "simmer dry beans"
    hazards = {hazard_of(item) for item in kitchen.items}
    if "poultry" in hazards:
        return "simmer poultry"
    return "simmer fish" if "fish" in hazards and "meat" not in hazards else None


def with_kidney_boil(drafts: list[Draft], kitchen: Kitchen) -> list[Draft]:
    """Dry kidney beans boil hard before anything slower."""
    if not dry_kidney_beans(kitchen.recipe, kitchen.items):
        return drafts
    row = usual("kidney boil")
    kitchen.ledger.note(KIDNEY.says("boil", row, minutes=row.low_min))
    boils = [draft for draft in drafts if draft.kind == "boil"]
    if any(draft.low_min >= row.low_min for draft in boils):
        return drafts
    hard = Draft(kind="boil", way="boil", low_min=row.low_min, high_min=row.high_min, look="boil")
    return [hard, *drafts]


def counted_from_the_boil(drafts: list[Draft], kitchen: Kitchen) -> list[Draft]:
    """The hard boil of dry kidney beans counts from the rolling boil: coming to it is a stage of its own."""
    if not dry_kidney_beans(kitchen.recipe, kitchen.items):
        return drafts
    needed = usual("kidney boil").low_min
    place = next(
        (
            at
            for at, draft in enumerate(drafts)
            if draft.kind == "boil" and draft.look == "boil" and draft.low_min >= needed
        ),
        None,
    )
    if place is None or (place and drafts[place - 1].look == "bring up"):
        return drafts
    row = usual("bring up")
    up = Draft(kind="boil", way="boil", low_min=row.low_min, high_min=row.high_min, look="bring up")
    return [*drafts[:place], up, *drafts[place:]]


def brought_up(drafts: list[Draft], kitchen: Kitchen) -> list[Draft]:
    """A stew or soup comes to the boil before it simmers, water before it boils food, in whatever dish."""
    is_wet = kitchen.family in WET
    kinds = ("simmer",) if is_wet else ("boil", "simmer") if kitchen.family == "boil or steam" else ("boil",)
    first = next((place for place, draft in enumerate(drafts) if draft.kind in kinds), None)
    is_usual_boil = first is not None and drafts[first].is_guess and drafts[first].kind == "boil"
    if first is None or is_usual_boil or sum(draft.kind == "boil" for draft in drafts) > 1:
        return drafts
    row = usual("bring up")
    kitchen.ledger.note(TO_THE_BOIL.says("boil"))
    up = Draft(
        kind="boil",
        way="bring up" if is_wet else "boil",
        low_min=row.low_min,
        high_min=row.high_min,
        look="bring up",
    )
    return [*drafts[:first], up, *drafts[first:]]
