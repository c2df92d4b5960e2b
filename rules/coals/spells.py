"""Spells of heat as stages, in the order of the text; those of the oven and of rising here, pan and water beside it.

Handbook chapter 7.
"""

from __future__ import annotations

from collections.abc import Sequence

from rules.because import Rule
from rules.coals.counts import Way
from rules.coals.drafts import Draft, family_heat, minutes, usual
from rules.coals.kitchen import BAKED, PLAIN_BAKED, WET, Kitchen
from rules.coals.oven import Aim
from rules.coals.pan import PANNED, fried
from rules.coals.pieces import STOVE, Piece
from rules.coals.water import boiled, simmered
from rules.plan import StageKind
from rules.recipe import Recipe
from rules.roles import role_of

#: What is only brought to the boil for a dough or filling: groups of foods.
LIQUIDS = frozenset({"water", "fat", "dairy", "sugar", "stock", "alcohol", "salt"})
#: A pan spell worth its own coals in a plain bake [min].
WORTH_MIN = 4.0
#: Longer rises happen at home or over night, away from the fire [min].
LONGEST_RISE_MIN = 300.0
#: A rest of a yeast dough this long is a rise [min].
RISING_REST_MIN = 20.0
#: An oven spell this long makes the dish, even in a stew [min].
MAIN_OVEN_MIN = 45.0
#: A loaf in the oven this long gets its heat from above at the end; rolls are brown before [min].
LONG_ENOUGH_TO_TOP_MIN = 20.0
#: A warm place for dough [°F], 80 to 95.
RISE_F = 85.0

RISES_AWAY = Rule(
    id="heat.long-rise",
    because="a rise of {minutes:.0f} minutes happens before the fire is lit, at home or over night",
)
DEFAULT_MINUTES = Rule(
    id="heat.minutes",
    because="the text gives no time: {what} usually takes {low:.0f} to {high:.0f} minutes",
)
BROWN_TOP = Rule(
    id="heat.brown-top",
    because="to brown the top, three quarters of the coals or more go on the lid for a few minutes",
)


def cooked(told: Sequence[Piece], aim: Aim | None, kitchen: Kitchen) -> list[Draft]:
    """Every spell as a stage, in the order of the text."""
    drafts: list[Draft] = []
    stove = [piece for piece in told if piece.kind in STOVE and _is_worth(piece, kitchen)]
    for group in _spells(told, stove):
        piece = group[0]
        if piece.kind in ("bake", "roast"):
            drafts += [_baked(oven, aim, told, kitchen) for oven in group]
        elif piece.kind == "brown top":
            drafts.append(_top(group, aim, kitchen))
        elif piece.kind == "boil":
            drafts += boiled(group, stove, kitchen)
        elif piece.kind in ("simmer", "pressure"):
            drafts.append(simmered(group, kitchen))
        else:
            drafts += fried(group, [p for p in told if p.kind in PANNED], kitchen)
    return drafts


def _is_worth(piece: Piece, kitchen: Kitchen) -> bool:
    """Whether a spell on the stove is a stage of its own: melting and scalding for a plain bake is none."""
    if kitchen.family in PLAIN_BAKED:
        return piece.kind != "heat" and (piece.longest_min >= WORTH_MIN or piece.has_flesh)
    if piece.kind == "heat":
        return piece.longest_min >= WORTH_MIN
    if kitchen.family in BAKED and piece.kind == "boil" and not piece.is_timed and piece.uses:
        groups = {food.group for use in piece.uses if (food := kitchen.items[use].food) is not None}
        return not groups <= LIQUIDS
    return kitchen.family != "no cook" or piece.longest_min > WORTH_MIN or piece.has_flesh


def _spells(told: Sequence[Piece], stove: Sequence[Piece]) -> list[list[Piece]]:
    """Neighbouring pieces of one kind together."""
    groups: list[list[Piece]] = []
    for piece in told:
        if piece.kind == "rise" or (piece.kind in STOVE and piece not in stove):
            continue
        if groups and _is_one_spell(groups[-1][-1], piece):
            groups[-1].append(piece)
        else:
            groups.append([piece])
    return groups


def _is_one_spell(first: Piece, second: Piece) -> bool:
    if first.kind == second.kind or {first.kind, second.kind} == {"fry", "heat"}:
        return True
    return first.step == second.step and {first.kind, second.kind} <= PANNED


def _baked(piece: Piece, aim: Aim | None, told: Sequence[Piece], kitchen: Kitchen) -> Draft:
    """A spell in the oven; its own temperature where the text gives one, else the recipe's."""
    row = family_heat(kitchen.family)
    is_main = kitchen.family in BAKED
    simmered = max((p.longest_min for p in told if p.kind in ("simmer", "boil")), default=0.0)
    way: Way = row.way if is_main else "bake" if _must_brown(kitchen) else "roast"
    if kitchen.family in WET and kitchen.family != "pot roast":
        is_main = piece.longest_min >= max(MAIN_OVEN_MIN, simmered)
        way = "simmer" if is_main else "roast"
    low, high = (piece.low_min, piece.high_min) if piece.is_timed else (row.low_min, row.high_min)
    if not piece.is_timed:
        kitchen.ledger.note(DEFAULT_MINUTES.says("bake", row, what=f"a {row.id}", low=low, high=high))
        kitchen.ledger.ask("minutes", "No baking time was given.", f"{low:.0f} to {high:.0f} minutes")
    temp = aim.temp_f if aim is not None else row.temp_f
    if aim is not None and piece.temp_f and not aim.is_asked:
        temp = piece.temp_f + aim.more_f
    kind: StageKind = "roast" if row.stage == "roast" else "bake"
    is_bread = is_main and kitchen.family == "yeast bread" and (low or 0.0) >= LONG_ENOUGH_TO_TOP_MIN
    return Draft(
        kind=kind,
        way=way,
        low_min=low or 0.0,
        high_min=high or 0.0,
        temp_f=temp,
        look="bake bread" if is_bread else kind,
        is_main=is_main,
    )


def _must_brown(kitchen: Kitchen) -> bool:
    """Whether there is a crust above to brown: cheese, crumbs or a dough."""
    roles = {role_of(item.ingredient, item.food) for item in kitchen.items}
    return bool(roles & {"cheese", "crumbs", "dough"})


def _top(group: Sequence[Piece], aim: Aim | None, kitchen: Kitchen) -> Draft:
    """The top browned at the end with the coals that are there, most of them on the lid."""
    low, high = minutes(group, "brown top")
    kitchen.ledger.note(BROWN_TOP.says("brown top"))
    return Draft(
        kind="brown top",
        way="brown top",
        low_min=low,
        high_min=high,
        temp_f=aim.temp_f if aim else None,
        look="brown top",
    )


def rises(told: Sequence[Piece], kitchen: Kitchen) -> list[Draft]:
    """Rises beside the fire; longer ones happen away from it."""
    if not kitchen.dish.yeasted:
        return []
    spells = [(p.low_min, p.high_min) for p in told if p.kind == "rise"] or _rests(kitchen.recipe)
    usual_rise = usual("rise")
    drafts = []
    for low, high in spells or [(None, None)]:
        if low is not None and low > LONGEST_RISE_MIN:
            kitchen.ledger.note(RISES_AWAY.says("rise", minutes=low))
            continue
        drafts.append(
            Draft(
                kind="rise",
                way="keep warm",
                low_min=low or usual_rise.low_min,
                high_min=high or low or usual_rise.high_min,
                temp_f=RISE_F,
                look="rise",
            )
        )
    return drafts


def _rests(recipe: Recipe) -> list[tuple[float | None, float | None]]:
    """Rests long enough to raise a yeast dough, for a text that names no rise."""
    return [
        (time.low_min, time.high_min)
        for step in recipe.steps
        for time in step.durations
        if time.what in ("rest", "rise") and time.low_min >= RISING_REST_MIN
    ]
