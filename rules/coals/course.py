"""From dish and method to the stages in order, still without coals (handbook chapter 7).

Bakes keep their oven and what is cooked for them beforehand; stews brown, come to the boil and simmer; pans fry. What
the text leaves open is filled from tables, and asked.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

import msgspec

from rules.because import Ledger, Rule
from rules.circumstances import Day
from rules.coals.degrees import oven_figures
from rules.coals.drafts import Draft, family_heat, merged, usual
from rules.coals.kitchen import BAKED, FRIED, MAY_BE_WET, WET, Kitchen
from rules.coals.oven import oven_aim
from rules.coals.pieces import Kind, Piece, pieces
from rules.coals.spells import DEFAULT_MINUTES, cooked, rises
from rules.coals.water import (
    SLOW_COOKER_MIN,
    brought_up,
    counted_from_the_boil,
    has_slow_cooker,
    simmer_key,
    with_kidney_boil,
)
from rules.dish import Dish
from rules.foods import Item
from rules.plan import FatUse, StageKind
from rules.recipe import Recipe

#: A "cook" this long in a dish with an oven means the oven [min].
OVEN_COOK_MIN = 10.0
#: A pan dish that simmers this long is made by it [min].
LONG_SIMMER_MIN = 45.0
#: What the text does to the lid before a top is browned on purpose.
_LID = re.compile(r"\b(?:lid|uncover|cover|foil|broil|grill)", re.IGNORECASE)

HOT_PAN = Rule(
    id="heat.pan",
    because="the iron stands over its coals until fat shimmers in it: in a cold pan meat stews and sticks",
)
HOT_FAT = Rule(
    id="heat.fat",
    because="the fat goes into the hot pot first and sizzles before the batter is poured over it",
)


def course(
    recipe: Recipe, items: tuple[Item, ...], dish: Dish, fat: Sequence[FatUse], day: Day, ledger: Ledger
) -> tuple[Draft, ...]:
    """The stages of a dish in order, without coals; empty when nothing in it is heated."""
    kitchen = Kitchen(recipe=recipe, items=items, dish=dish, day=day, ledger=ledger)
    told = [_in_its_place(piece, kitchen) for piece in pieces(recipe, items)]
    told = _with_an_oven(told, kitchen)
    if dish.family in FRIED:
        told = _with_a_pan(told)
    aim = oven_aim(recipe, dish, told, day, ledger) if _oven(told) else None
    drafts = [*rises(told, kitchen), *cooked(told, aim, kitchen)]
    drafts = with_kidney_boil(_with_a_main(drafts, bool(told), kitchen), kitchen)
    drafts = merged(drafts, 1) if _is_made_slowly(drafts, kitchen) else merged(drafts)
    drafts = brought_up(counted_from_the_boil(drafts, kitchen), kitchen)
    return tuple(_warmed(drafts, fat, kitchen))


def _in_its_place(piece: Piece, kitchen: Kitchen) -> Piece:
    """A bake is the oven's in a dish that is baked; what a stew "cooks" simmers, as does all in a slow cooker."""
    if kitchen.family in BAKED and piece.kind == "fry" and piece.verb.startswith(("bake", "roast")):
        return _as(piece, "bake")
    if piece.low_min is not None and piece.low_min >= SLOW_COOKER_MIN and has_slow_cooker(kitchen):
        return _as(piece, "simmer")
    if kitchen.family in WET and piece.kind == "boil" and piece.verb.startswith("cook"):
        return _as(piece, "simmer")
    return piece


def _oven(told: Iterable[Piece]) -> list[Piece]:
    return [piece for piece in told if piece.kind in ("bake", "roast")]


def _with_an_oven(told: list[Piece], kitchen: Kitchen) -> list[Piece]:
    """A bake has its oven spell: an open "cook" is it where no other is told, and browning after it is its top."""
    if not _oven(told) and _names_an_oven(kitchen):
        cooks = [piece for piece in told if _may_be_oven(piece)]
        longest = max(cooks, key=lambda piece: piece.longest_min, default=None)
        told = [_as(piece, "bake") if piece is longest else piece for piece in told]
    if kitchen.family not in BAKED:
        return told
    if any(piece.is_timed for piece in _oven(told)):
        told = [piece for piece in told if piece.kind not in ("bake", "roast") or piece.is_timed]
    last = max((place for place, piece in enumerate(told) if piece.kind in ("bake", "roast")), default=None)
    if last is None:
        return told
    after = (_topped(piece, kitchen) for piece in told[last + 1 :])
    return [*told[: last + 1], *(piece for piece in after if piece is not None)]


def _names_an_oven(kitchen: Kitchen) -> bool:
    recipe = kitchen.recipe
    return recipe.oven is not None or any(
        action.vessel is not None and "oven" in action.vessel and bool(oven_figures(step, 1))
        for step in recipe.steps
        for action in step.actions
    )


def _topped(piece: Piece, kitchen: Kitchen) -> Piece | None:
    """Browning told after the bake: a stage of its own where the lid is named, else only how the bake should look."""
    if piece.kind != "brown":
        return piece
    is_meant = _LID.search(kitchen.recipe.steps[piece.step].text[:2000]) is not None
    return _as(piece, "brown top") if is_meant else None


def _with_a_pan(told: list[Piece]) -> list[Piece]:
    """A fried dish has its pan: an open "cook" is it where no other is told."""
    if any(piece.kind in ("fry", "brown") for piece in told):
        return told
    cooks = [
        piece
        for piece in told
        if piece.kind in ("simmer", "boil")
        and piece.verb.startswith("cook")
        and piece.longest_min < LONG_SIMMER_MIN
    ]
    longest = max(cooks, key=lambda piece: piece.longest_min, default=None)
    return [_as(piece, "fry") if piece is longest else piece for piece in told]


def _may_be_oven(piece: Piece) -> bool:
    """A spell that the text leaves open, long enough for an oven."""
    is_open = not piece.verb or piece.verb.startswith(("cook", "put", "place", "leave"))
    return piece.kind in ("fry", "simmer", "boil") and is_open and piece.longest_min >= OVEN_COOK_MIN


def _as(piece: Piece, kind: Kind) -> Piece:
    return msgspec.structs.replace(piece, kind=kind)


def _with_a_main(drafts: list[Draft], is_heated: bool, kitchen: Kitchen) -> list[Draft]:
    """The stage that makes the dish, from the family's table where the text has none."""
    if any(draft.is_main for draft in drafts) or kitchen.family == "no cook":
        return drafts
    if kitchen.family == "other" and (drafts or not is_heated):
        return drafts
    if kitchen.family not in WET and any(draft.kind in ("bake", "roast", "brown top") for draft in drafts):
        return drafts
    if _is_made_slowly(drafts, kitchen):
        return drafts
    # A custard on the stove, a soup that boils: the longest spell over water makes the dish.
    wet = [draft for draft in drafts if draft.kind in ("simmer", "boil")]
    if wet and kitchen.family in MAY_BE_WET:
        longest = max(wet, key=lambda draft: draft.middle_min)
        return [msgspec.structs.replace(draft, is_main=draft is longest) for draft in drafts]
    return [*drafts, _usual_main(kitchen)]


def _is_made_slowly(drafts: Sequence[Draft], kitchen: Kitchen) -> bool:
    """Whether a pan dish is made by one long spell, beside which the others are small."""
    return kitchen.family in FRIED and any(draft.low_min >= LONG_SIMMER_MIN for draft in drafts)


def _usual_main(kitchen: Kitchen) -> Draft:
    row = family_heat(kitchen.family)
    low, high = row.low_min, row.high_min
    key = simmer_key(kitchen) if row.stage == "simmer" else None
    if key is not None:
        low, high = usual(key).low_min, usual(key).high_min
    temp = row.temp_f
    if row.stage in ("bake", "roast"):
        temp = oven_aim(kitchen.recipe, kitchen.dish, (), kitchen.day, kitchen.ledger).temp_f
    kitchen.ledger.note(DEFAULT_MINUTES.says(row.stage, row, what=row.id, low=low, high=high))
    kitchen.ledger.ask("minutes", "The text gives no time over the heat.", f"{low:.0f} to {high:.0f} minutes")
    look = "deep fry" if row.id == "deep fry" else row.way if row.stage == "fry" else row.stage
    return Draft(
        kind=row.stage,
        way=row.way,
        low_min=low,
        high_min=high,
        temp_f=temp,
        look=look,
        is_main=True,
        is_guess=True,
    )


def _warmed(drafts: list[Draft], fat: Sequence[FatUse], kitchen: Kitchen) -> list[Draft]:
    """The pot warmed before its first bake, the fat heated where a batter or deep frying waits for it."""
    found: list[Draft] = []
    has_hot_fat = any(use.goes == "hot pot first" for use in fat)
    for draft in drafts:
        is_first = all(before.kind == "rise" for before in found)
        if draft.kind in ("bake", "roast") and is_first:
            found.append(_before(draft, "warm", "warm"))
        if draft.kind == "bake" and draft.is_main and has_hot_fat:
            kitchen.ledger.note(HOT_FAT.says("heat fat"))
            found.append(_before(draft, "heat fat", "heat fat"))
            has_hot_fat = False
        if draft.look == "deep fry" and is_first:
            found.append(_before(draft, "heat fat", "heat oil"))
        elif draft.kind in ("fry", "brown") and is_first:
            kitchen.ledger.note(HOT_PAN.says("warm", usual("hot pan")))
            found.append(_before(draft, "warm", "hot pan"))
        found.append(draft)
    return found


def _before(lead: Draft, kind: StageKind, key: str) -> Draft:
    row = usual(key)
    return Draft(
        kind=kind, way=lead.way, low_min=row.low_min, high_min=row.high_min, temp_f=lead.temp_f, look=key
    )
