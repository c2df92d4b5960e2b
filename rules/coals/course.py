"""From dish and method to the stages in order, still without coals (handbook chapter 7).

Bakes keep their oven and what is cooked for them beforehand; stews brown, come to the boil and simmer; pans fry. What
the text leaves open is filled from tables, and asked.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import msgspec

from rules.because import Ledger, Rule
from rules.circumstances import Day
from rules.coals.counts import Way
from rules.coals.drafts import Draft, family_heat, heat_figure, merged, usual
from rules.coals.oven import Aim, oven_aim
from rules.coals.pieces import FLESH, STOVE, Kind, Piece, pieces
from rules.dish import Dish
from rules.foods import Item
from rules.hazards import dry_kidney_beans, hazard_of
from rules.plan import FatUse, StageKind
from rules.recipe import Family, Recipe, Struct
from rules.roles import role_of

BAKED: frozenset[Family] = frozenset(
    {
        "batter bake", "biscuit or quick bread dough", "yeast bread", "pastry or pie", "cookie", "custard or pudding",
        "casserole or layered bake", "roast", "pot roast",
    }
)  # fmt: skip
#: Bakes for which little or nothing is cooked beforehand: a saucepan in their method melts or scalds.
PLAIN_BAKED: frozenset[Family] = frozenset(
    {"batter bake", "biscuit or quick bread dough", "yeast bread", "cookie"}
)
WET: frozenset[Family] = frozenset({"stew or braise", "soup", "beans or chili", "pot roast"})
FRIED: frozenset[Family] = frozenset({"pan fry or saute", "deep fry", "griddle"})
#: Spells in a pan.
PANNED: frozenset[Kind] = frozenset({"fry", "brown", "heat"})
#: Families whose dish may be made over water alone.
MAY_BE_WET: frozenset[Family] = WET | {"custard or pudding", "pastry or pie", "boil or steam"}
#: Families fried batch by batch: the text's time is for one of them.
IN_BATCHES: frozenset[Family] = frozenset({"griddle", "deep fry"})
#: A pan spell worth its own coals in a plain bake [min].
WORTH_MIN = 4.0
#: Coals under a pan do little in less than this [min].
SHORTEST_MIN = (3.0, 5.0)
#: Longer rises happen at home or over night, away from the fire [min].
LONGEST_RISE_MIN = 300.0
#: A rest of a yeast dough this long is a rise [min].
RISING_REST_MIN = 20.0
#: An oven spell this long makes the dish, even in a stew [min].
MAIN_OVEN_MIN = 45.0
#: A "cook" this long in a dish with an oven means the oven [min].
OVEN_COOK_MIN = 10.0
#: A time under pressure leaves the other end of its range this much later.
LONGER_TO_BE_SURE = 1.25
#: A warm place for dough [°F], 80 to 95.
RISE_F = 85.0

PRESSURE = Rule(
    id="heat.pressure",
    because="a time under pressure is no camp time: {text} minutes become {low:.0f} to {high:.0f} in an ordinary pot, a"
    " guess that a fork must test",
)
KIDNEY = Rule(
    id="heat.kidney",
    because="dry kidney beans boil hard for {minutes:.0f} minutes in fresh water before any simmer: a pot kept just"
    " under the boil leaves their poison in",
)
RISES_AWAY = Rule(
    id="heat.long-rise",
    because="a rise of {minutes:.0f} minutes happens before the fire is lit, at home or over night",
)
TO_THE_BOIL = Rule(
    id="heat.boil",
    because="the pot comes to the boil on twice its diameter in coals; then coals are taken away for what follows",
)
WARM = Rule(
    id="heat.warm",
    because="the pot warms {minutes:.0f} minutes with its coals on and under before the food goes in, as an oven is"
    " preheated",
)
HOT_FAT = Rule(
    id="heat.fat",
    because="the fat goes into the hot pot first and sizzles before the batter is poured over it",
)
DEFAULT_MINUTES = Rule(
    id="heat.minutes",
    because="the text gives no time: {what} usually takes {low:.0f} to {high:.0f} minutes",
)
IN_TURNS = Rule(
    id="heat.batches",
    because="it is fried in about {batches:.0f} batches, one after the other: the minutes are for all of them",
)
BROWN_TOP = Rule(
    id="heat.brown-top",
    because="to brown the top, three quarters of the coals or more go on the lid for a few minutes",
)


class Course(Struct, frozen=True, kw_only=True):
    """The stages in order, without coals, and the oven's aim where there is one."""

    drafts: tuple[Draft, ...]
    aim: Aim | None = None


class _Kitchen(Struct, frozen=True, kw_only=True):
    """What the rules of this room look at together."""

    recipe: Recipe
    items: tuple[Item, ...]
    dish: Dish
    day: Day
    ledger: Ledger

    @property
    def family(self) -> Family:
        return self.dish.family

    @property
    def has_flesh(self) -> bool:
        return any(hazard_of(item) in FLESH for item in self.items)


def course(
    recipe: Recipe, items: tuple[Item, ...], dish: Dish, fat: Sequence[FatUse], day: Day, ledger: Ledger
) -> Course:
    """The stages of a dish in order; empty when nothing in it is heated."""
    kitchen = _Kitchen(recipe=recipe, items=items, dish=dish, day=day, ledger=ledger)
    told = list(pieces(recipe, items))
    if dish.family in BAKED:
        told = _with_an_oven(told, kitchen)
    elif dish.family in FRIED:
        told = _with_a_pan(told)
    aim = oven_aim(recipe, dish, told, day, ledger) if _oven(told) else None
    drafts = [*_rises(told, kitchen), *_cooked(told, aim, kitchen)]
    drafts = _with_kidney_boil(_with_a_main(drafts, bool(told), kitchen), kitchen)
    drafts = _brought_up(merged(drafts), kitchen)
    return Course(drafts=tuple(_warmed(drafts, fat, kitchen)), aim=aim)


def _oven(told: Iterable[Piece]) -> list[Piece]:
    return [piece for piece in told if piece.kind in ("bake", "roast")]


def _with_an_oven(told: list[Piece], kitchen: _Kitchen) -> list[Piece]:
    """A bake has its oven spell: an open "cook" is it where no other is told, and browning after it is its top."""
    if not _oven(told):
        cooks = [piece for piece in told if _may_be_oven(piece, kitchen)]
        if cooks:
            longest = max(cooks, key=lambda piece: piece.longest_min)
            told = [_as(piece, "bake") if piece is longest else piece for piece in told]
    if any(piece.is_timed for piece in _oven(told)):
        told = [piece for piece in told if piece.kind not in ("bake", "roast") or piece.is_timed]
    last = max((place for place, piece in enumerate(told) if piece.kind in ("bake", "roast")), default=None)
    if last is None:
        return told
    after = (_as(piece, "brown top") if piece.kind == "brown" else piece for piece in told[last + 1 :])
    return [*told[: last + 1], *after]


def _with_a_pan(told: list[Piece]) -> list[Piece]:
    """A fried dish has its pan: an open "cook" is it where no other is told."""
    if any(piece.kind in ("fry", "brown") for piece in told):
        return told
    cooks = [piece for piece in told if piece.kind in ("simmer", "boil") and piece.verb.startswith("cook")]
    longest = max(cooks, key=lambda piece: piece.longest_min, default=None)
    return [_as(piece, "fry") if piece is longest else piece for piece in told]


def _may_be_oven(piece: Piece, kitchen: _Kitchen) -> bool:
    if piece.kind not in ("fry", "simmer", "boil") or not piece.verb.startswith(
        ("cook", "put", "place", "leave")
    ):
        return False
    return kitchen.recipe.oven is not None and piece.longest_min >= OVEN_COOK_MIN


def _as(piece: Piece, kind: Kind) -> Piece:
    return msgspec.structs.replace(piece, kind=kind)


# Rising


def _rises(told: Sequence[Piece], kitchen: _Kitchen) -> list[Draft]:
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


# Spells of heat as stages


def _cooked(told: Sequence[Piece], aim: Aim | None, kitchen: _Kitchen) -> list[Draft]:
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
            drafts += _boiled(group, stove, kitchen)
        elif piece.kind in ("simmer", "pressure"):
            drafts.append(_simmered(group, kitchen))
        else:
            drafts += _fried(group, [p for p in stove if p.kind in PANNED], kitchen)
    return drafts


def _is_worth(piece: Piece, kitchen: _Kitchen) -> bool:
    """Whether a spell on the stove is a stage of its own: melting and scalding for a plain bake is none."""
    if kitchen.family in PLAIN_BAKED:
        return piece.kind != "heat" and (piece.longest_min >= WORTH_MIN or piece.has_flesh)
    if piece.kind == "heat":
        return piece.longest_min >= WORTH_MIN
    return kitchen.family != "no cook" or piece.is_timed or piece.has_flesh


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


def _minutes(group: Sequence[Piece], usual_key: str) -> tuple[float, float]:
    """The minutes of a spell: the text's added up, and not less than usual where another step of it has no time."""
    low = sum(piece.low_min or 0.0 for piece in group)
    high = sum(piece.high_min or 0.0 for piece in group)
    timed_steps = {piece.step for piece in group if piece.is_timed}
    if any(piece.step not in timed_steps for piece in group):
        row = usual(usual_key)
        low, high = max(low, row.low_min), max(high, row.high_min)
    return low, high


def _fried(group: Sequence[Piece], all_fried: Sequence[Piece], kitchen: _Kitchen) -> list[Draft]:
    """Browning and frying: meat and what wants a crust hot, the rest gently; one stage each at most."""
    hot = [piece for piece in group if _is_hot(piece, kitchen, all_fried)]
    gentle = [piece for piece in group if piece not in hot]
    is_main = kitchen.family in FRIED
    drafts = []
    ways: tuple[tuple[list[Piece], Way], ...] = ((gentle, "gentle fry"), (hot, "fry"))
    for some, way in ways:
        if not some:
            continue
        browns = way == "fry" and not is_main and kitchen.has_flesh
        key = "brown" if browns else "fry main" if is_main else "fry"
        low, high = _in_turns(some, kitchen) if kitchen.family in IN_BATCHES else _minutes(some, key)
        drafts.append(
            Draft(
                kind="brown" if browns else "fry",
                way=way,
                low_min=max(low, SHORTEST_MIN[0]),
                high_min=max(high, SHORTEST_MIN[1]),
                temp_f=next((piece.temp_f for piece in some if piece.temp_f), None),
                look="brown" if browns else "deep fry" if kitchen.family == "deep fry" else way,
                is_main=is_main,
            )
        )
    return drafts if group[0] in gentle else drafts[::-1]


def _is_hot(piece: Piece, kitchen: _Kitchen, all_fried: Sequence[Piece]) -> bool:
    """Hot: raw meat, a brown crust on a dish with meat, deep fat, a high flame; gentle: the rest."""
    if kitchen.family == "deep fry":
        return True
    if piece.heat == "low" or piece.kind == "heat" or kitchen.family == "griddle":
        return False
    if piece.has_flesh or piece.heat == "high":
        return True
    if piece.does == "saute" and kitchen.family not in WET:
        return False
    if piece.kind == "brown":
        return kitchen.has_flesh
    if kitchen.family == "pan fry or saute":
        # A pan of meat that the text does not name again ("cook for five minutes a side").
        return kitchen.has_flesh and not piece.uses
    # The only pan of a stew with meat is the one in which the meat is browned.
    return kitchen.family in WET and kitchen.has_flesh and not any(_browns(other) for other in all_fried)


def _browns(piece: Piece) -> bool:
    return piece.kind == "brown" or piece.has_flesh


def _in_turns(some: Sequence[Piece], kitchen: _Kitchen) -> tuple[float, float]:
    """What is fried batch by batch takes its time as often as there are batches; untimed, the family's usual time."""
    row = family_heat(kitchen.family)
    timed = [piece for piece in some if piece.is_timed]
    if not timed:
        return row.low_min, row.high_min
    low, high = _minutes(timed, "fry main")
    if low >= row.low_min:
        return low, high
    batches = heat_figure("batches")
    kitchen.ledger.note(IN_TURNS.says("fry", batches, batches=batches.value))
    return low * batches.value, high * batches.value


def _boiled(group: Sequence[Piece], stove: Sequence[Piece], kitchen: _Kitchen) -> list[Draft]:
    """Food boiled in water; a pot that only comes to the boil is left to `to_the_boil`."""
    after = stove[stove.index(group[-1]) + 1 :]
    comes_up = (after and after[0].kind == "simmer") or kitchen.family in WET
    cooked = [piece for piece in group if piece.is_timed or not comes_up or _grain(piece, kitchen)]
    if not cooked:
        return []
    key = next((name for piece in cooked if (name := _grain(piece, kitchen))), "boil")
    low, high = _minutes(cooked, key)
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


def _grain(piece: Piece, kitchen: _Kitchen) -> str | None:
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


def _simmered(group: Sequence[Piece], kitchen: _Kitchen) -> Draft:
    is_wet = kitchen.family in WET or kitchen.family in ("boil or steam", "other")
    key = _simmer_key(kitchen) if is_wet else "sauce" if kitchen.family in FRIED else "simmer"
    low, high = _minutes([piece for piece in group if piece.kind == "simmer"], key or "simmer")
    if key is None and not any(piece.is_timed for piece in group):
        row = family_heat(kitchen.family)
        low, high = row.low_min, row.high_min
    pressed = [piece for piece in group if piece.kind == "pressure"]
    if pressed:
        low, high = _unpressed(pressed, kitchen)
    return Draft(
        kind="simmer", way="simmer", low_min=low, high_min=high, look="simmer", is_main=kitchen.family in WET
    )


def _unpressed(pressed: Sequence[Piece], kitchen: _Kitchen) -> tuple[float, float]:
    """Minutes under pressure as minutes in an ordinary pot."""
    factor = heat_figure("pressure factor")
    low, high = _minutes(pressed, "simmer")
    text = f"{low:g}" if low == high else f"{low:g} to {high:g}"
    low, high = low * factor.value, high * factor.value * LONGER_TO_BE_SURE
    kitchen.ledger.note(PRESSURE.says("simmer", factor, text=text, low=low, high=high))
    kitchen.ledger.ask(
        "simmer",
        "The text cooks under pressure; an ordinary pot takes longer.",
        f"{low:.0f} to {high:.0f} minutes",
    )
    return low, high


def _simmer_key(kitchen: _Kitchen) -> str | None:
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


def _baked(piece: Piece, aim: Aim | None, told: Sequence[Piece], kitchen: _Kitchen) -> Draft:
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
    return Draft(
        kind=kind, way=way, low_min=low or 0.0, high_min=high or 0.0, temp_f=temp, look=kind, is_main=is_main
    )


def _must_brown(kitchen: _Kitchen) -> bool:
    """Whether there is a crust above to brown: cheese, crumbs or a dough."""
    roles = {role_of(item.ingredient, item.food) for item in kitchen.items}
    return bool(roles & {"cheese", "crumbs", "dough"})


def _top(group: Sequence[Piece], aim: Aim | None, kitchen: _Kitchen) -> Draft:
    """The top browned at the end with the coals that are there, most of them on the lid."""
    low, high = _minutes(group, "brown top")
    kitchen.ledger.note(BROWN_TOP.says("brown top"))
    return Draft(
        kind="brown top",
        way="brown top",
        low_min=low,
        high_min=high,
        temp_f=aim.temp_f if aim else None,
        look="brown top",
    )


# What is missing, what comes before


def _with_a_main(drafts: list[Draft], is_heated: bool, kitchen: _Kitchen) -> list[Draft]:
    """The stage that makes the dish, from the family's table where the text has none."""
    if any(draft.is_main for draft in drafts) or kitchen.family == "no cook":
        return drafts
    if kitchen.family == "other" and (drafts or not is_heated):
        return drafts
    # A custard on the stove, a soup that boils: the longest spell over water makes the dish.
    wet = [draft for draft in drafts if draft.kind in ("simmer", "boil")]
    if wet and kitchen.family in MAY_BE_WET:
        longest = max(wet, key=lambda draft: draft.middle_min)
        return [msgspec.structs.replace(draft, is_main=draft is longest) for draft in drafts]
    return [*drafts, _usual_main(kitchen)]


def _usual_main(kitchen: _Kitchen) -> Draft:
    row = family_heat(kitchen.family)
    low, high = row.low_min, row.high_min
    key = _simmer_key(kitchen) if row.stage == "simmer" else None
    if key is not None:
        low, high = usual(key).low_min, usual(key).high_min
    temp = row.temp_f
    if row.stage in ("bake", "roast"):
        temp = oven_aim(kitchen.recipe, kitchen.dish, (), kitchen.day, kitchen.ledger).temp_f
    kitchen.ledger.note(DEFAULT_MINUTES.says(row.stage, row, what=row.id, low=low, high=high))
    kitchen.ledger.ask("minutes", "The text gives no time over the heat.", f"{low:.0f} to {high:.0f} minutes")
    look = "deep fry" if row.id == "deep fry" else row.way if row.stage == "fry" else row.stage
    return Draft(
        kind=row.stage, way=row.way, low_min=low, high_min=high, temp_f=temp, look=look, is_main=True
    )


def _with_kidney_boil(drafts: list[Draft], kitchen: _Kitchen) -> list[Draft]:
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


def _brought_up(drafts: list[Draft], kitchen: _Kitchen) -> list[Draft]:
    """A stew or soup comes to the boil before it simmers, water before it boils food."""
    is_wet = kitchen.family in WET
    kinds = ("simmer",) if is_wet else ("boil",) if kitchen.family == "boil or steam" else ()
    first = next((place for place, draft in enumerate(drafts) if draft.kind in kinds), None)
    if first is None or sum(draft.kind == "boil" for draft in drafts) > 1:
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


def _warmed(drafts: list[Draft], fat: Sequence[FatUse], kitchen: _Kitchen) -> list[Draft]:
    """The pot warmed before its first bake, the fat heated where a batter or deep frying waits for it."""
    first = next((place for place, draft in enumerate(drafts) if draft.kind not in ("rise", "light")), None)
    if first is None:
        return drafts
    lead = drafts[first]
    before: list[Draft] = []
    if lead.kind in ("bake", "roast"):
        row = usual("warm")
        kitchen.ledger.note(WARM.says("warm", row, minutes=row.low_min))
        before.append(_before(lead, "warm", "warm"))
        if any(use.goes == "hot pot first" for use in fat):
            kitchen.ledger.note(HOT_FAT.says("heat fat"))
            before.append(_before(lead, "heat fat", "heat fat"))
    elif kitchen.family == "deep fry" and lead.kind == "fry":
        before.append(_before(lead, "heat fat", "heat oil"))
    return [*drafts[:first], *before, *drafts[first:]]


def _before(lead: Draft, kind: StageKind, key: str) -> Draft:
    row = usual(key)
    return Draft(
        kind=kind, way=lead.way, low_min=row.low_min, high_min=row.high_min, temp_f=lead.temp_f, look=key
    )
