"""What goes into a dry mix: one bag a part of the dish, measured and mixed at home."""

from __future__ import annotations

from collections.abc import Hashable

from msgspec.structs import replace

from rules.because import Rule
from rules.packs.kitchen import Kitchen, Portion
from rules.packs.place import BOOK, Place, frozen_or_cool
from rules.roles import Role

LEAVENER = Rule(
    id="dry.leavener",
    because="{food} rides dry: once wet it spends its gas within minutes, so it meets liquid only at camp, in the bowl",
    source=BOOK,
)
BODY = Rule(
    id="dry.body",
    because="{food} goes into the dry mix of its part: powders and granules that meet before any liquid share one bag",
    source=BOOK,
)
SUGAR = Rule(
    id="dry.sugar",
    because="{food} rides in the dry mix: beaten with eggs, butter or milk at camp, it needs no bag of its own",
    source=BOOK,
)
SEASONING = Rule(
    id="dry.seasoning",
    because="{food} goes into the seasoning bag with all that enters the pot at that moment",
    source=BOOK,
)
FRESH_CRUMBS = Rule(
    id="dry.fresh-crumbs",
    because="{food} are of fresh bread and go mouldy on the shelf: they are kept cold and used within days",
)
STARCH = Rule(
    id="dry.starch",
    because="{food} stays dry: in a wet bag that waits it settles and cakes",
    source=BOOK,
)
MIX_IN = Rule(id="dry.mix-in", because="{food} is folded in, so it rides in the dry mix", source=BOOK)
MIX_IN_APART = Rule(
    id="dry.mix-in-apart",
    because="{food} is sprinkled on or added by itself, so it has a bag of its own on the shelf",
    source=BOOK,
)
CUT_IN = Rule(
    id="dry.cut-in",
    because="{food} is cut into the flour at home: the dry mix becomes chilled crumbs",
    source=BOOK,
)
YEAST = Rule(
    id="pantry.yeast",
    because="{food} rides in its own small packet: it would work or weaken in the flour",
    source=BOOK,
)
INSTANT_YEAST = Rule(
    id="dry.instant-yeast",
    because="{food} may ride in the flour when it is used within {hours:g} hours",
    source=BOOK,
)
WHOLE_SPICE = Rule(
    id="pantry.whole-spice",
    because="{food} is grated over the dish at the last, so it rides whole with a small grater",
)
YEAST_SUGAR = Rule(
    id="dry.yeast-sugar",
    because="{food} feeds the yeast before the flour is in, so it has a bag of its own",
)
TABLE = Rule(
    id="pantry.table",
    because="{food} without a measure is the salt and pepper of the table: it rides on the shelf and is used to taste",
    source=BOOK,
)
MEASURED = Rule(
    id="dry.measured",
    because="{food} is measured at home into a bag: nobody levels spoons in the wind",
    source=BOOK,
)

#: Instant yeast may wait so long in flour [h].
INSTANT_YEAST_H = 48.0

SEVERAL = 2

_SEASONING: frozenset[Role] = frozenset({"spice", "salt", "pepper", "dry good", "sugar"})


def _dry(portion: Portion, key: tuple[Hashable, ...], rule: Rule, *, hours: float = 0.0) -> Place:
    return Place(
        kind="dry mix",
        key=key,
        travels="shelf",
        because=rule.says(portion.name, food=portion.name, hours=hours),
        part=portion.part,
    )


def mixture(portion: Portion) -> tuple[Hashable, ...]:
    """The key of the dry mix of the portion's part and mixture."""
    return ("dry", portion.part, portion.entry.group if portion.entry is not None else None)


def cut_in_fat_is_part_of_the_mix(portion: Portion, kitchen: Kitchen) -> Place | None:
    """Fat cut in at home makes the dry mix a chilled one."""
    if portion.job is None or portion.job.goes != "cut in at home":
        return None
    place = _dry(portion, mixture(portion), CUT_IN)
    return replace(place, travels=frozen_or_cool(kitchen))


def yeast_has_its_packet(portion: Portion, kitchen: Kitchen) -> Place | None:
    """Dry yeast rides by itself; instant yeast may ride in the flour for two days."""
    if portion.role != "yeast":
        return None
    hours = kitchen.day.trip_hours
    instant = (portion.food is not None and portion.food.name == "instant yeast") or portion.is_said(
        "instant"
    )
    if instant and "flour" in kitchen.beside(portion) and (hours is None or hours <= INSTANT_YEAST_H):
        return _dry(portion, mixture(portion), INSTANT_YEAST, hours=INSTANT_YEAST_H)
    return Place(
        kind="pantry",
        key=("alone", portion.item.index),
        travels="shelf",
        because=YEAST.says(portion.name, food=portion.name),
    )


def table_seasoning_stays_on_the_shelf(portion: Portion, kitchen: Kitchen) -> Place | None:
    """Salt and pepper that are not measured are carried as they are."""
    if portion.role not in ("salt", "pepper"):
        return None
    if portion.ingredient.amounts and len(kitchen.graph.moments(portion.item.index)) < SEVERAL:
        return None
    if kitchen.has_body(portion) and portion.ingredient.from_ == "list":
        return None
    return Place(
        kind="pantry", key=("table",), travels="shelf", because=TABLE.says(portion.name, food=portion.name)
    )


def leavener_goes_dry(portion: Portion, kitchen: Kitchen) -> Place | None:  # noqa: ARG001 - one signature
    """Chemical leavener travels in the dry mix of its own part."""
    if portion.role != "leavener":
        return None
    return _dry(portion, mixture(portion), LEAVENER)


def body_goes_dry(portion: Portion, kitchen: Kitchen) -> Place | None:
    """Flour, oats, crumbs and what is whisked into them; starch wherever it thickens."""
    if portion.role == "crumbs" and _is_moist(portion):
        return replace(_dry(portion, mixture(portion), FRESH_CRUMBS), travels="cool")
    if portion.role in ("flour", "crumbs"):
        return _dry(portion, mixture(portion), BODY)
    if portion.role == "starch":
        return _dry(portion, mixture(portion), STARCH)
    if portion.role == "oats" and kitchen.dish.family != "boil or steam":
        cold = portion.taking is None or not portion.taking.hot
        return _dry(portion, mixture(portion), BODY) if cold else None
    return None


def _is_later_than_the_roux(portion: Portion, kitchen: Kitchen) -> bool:
    """Whether it goes into the pot at another step than the flour that thickens it: a bay leaf is no part of a roux."""
    entry = portion.entry
    if entry is None or not entry.hot or portion.role == "starch":
        return False
    bodies = [taking for taking in kitchen.company(portion) if kitchen.role(taking) == "flour" and taking.hot]
    return bool(bodies) and all(taking.step != entry.step for taking in bodies)


def _feeds_yeast(portion: Portion, kitchen: Kitchen) -> bool:
    """Whether it is stirred into warm liquid with the yeast, before any flour."""
    entry = portion.entry
    if entry is None:
        return False
    beside = {kitchen.roles[index] for index in entry.beside}
    return bool(beside & {"yeast", "culture"}) and "flour" not in beside


def _is_moist(portion: Portion) -> bool:
    """Whether crumbs are of bread that is not dried."""
    said = f"{portion.ingredient.text} {' '.join(portion.ingredient.state)}".lower()[:300]
    return portion.is_said("fresh", "soft") or any(f"{word} " in said for word in ("fresh", "soft"))


def sugar_and_spice_beside_flour_go_dry(portion: Portion, kitchen: Kitchen) -> Place | None:
    """What shares a mixture with flour shares its bag, sugar beaten with the eggs included."""
    if portion.role not in _SEASONING or portion.entry is None or portion.entry.laid:
        return None
    if not kitchen.has_body(portion) or _is_later_than_the_roux(portion, kitchen):
        return None
    if portion.role == "sugar" and _feeds_yeast(portion, kitchen):
        return _dry(portion, ("season", portion.part, "yeast", portion.entry.at), YEAST_SUGAR)
    return _dry(portion, mixture(portion), SUGAR if portion.role == "sugar" else BODY)


def mix_ins_go_dry(portion: Portion, kitchen: Kitchen) -> Place | None:
    """Dried fruit, nuts and chips ride in the dry mix when folded in, in their own bag on top."""
    if portion.role != "mix-in":
        return None
    taking = portion.taking
    melted = taking is not None and taking.does in ("melt", "heat")
    if taking is not None and not taking.laid and not melted and kitchen.has_body(portion):
        return _dry(portion, mixture(portion), MIX_IN)
    chopped = portion.is_said("chop", "crush", "toast", "slic") or kitchen.graph.handled(
        portion.item.index, "chop", "grind"
    )
    return Place(
        kind="prepped" if chopped else "pantry",
        key=("alone", portion.item.index),
        travels="shelf",
        because=MIX_IN_APART.says(portion.name, food=portion.name),
        part=portion.part,
    )


def seasonings_make_a_bag(portion: Portion, kitchen: Kitchen) -> Place | None:
    """All dry seasonings that enter together make one bag; a nutmeg to be grated rides whole."""
    if portion.role not in _SEASONING:
        return None
    if _is_grated_at_camp(portion, kitchen):
        because = WHOLE_SPICE.says(portion.name, food=portion.name)
        return Place(kind="pantry", key=("alone", portion.item.index), travels="shelf", because=because)
    entry = portion.entry
    rule = MEASURED if entry is None else SEASONING
    return _dry(portion, ("season", portion.part, entry.group if entry is not None else None), rule)


def _is_grated_at_camp(portion: Portion, kitchen: Kitchen) -> bool:
    """Whether a spice comes as a nut or a stick that is grated over the dish."""
    unit = portion.ingredient.amounts[0].unit if portion.ingredient.amounts else None
    grated = kitchen.graph.handled(portion.item.index, "grate") or unit == "grating"
    return portion.role == "spice" and grated and unit in (None, "grating", "whole")
