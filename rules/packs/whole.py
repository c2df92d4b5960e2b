"""What is made at home as a whole, and what travels strictly by itself: preserves, doughs, dips, raw flesh, water."""

from __future__ import annotations

from collections.abc import Set as AbstractSet

from rules.because import Rule
from rules.method import Taking
from rules.packs.kitchen import Kitchen, Portion
from rules.packs.place import BOOK, Place, alone, frozen_or_cool
from rules.roles import BODY, DAIRY, SHELF_WET, Role

WATER = Rule(
    id="water.camp",
    because="water is drawn at camp and treated where it is not safe; nobody carries it mixed in",
    source=BOOK,
)
PRESERVE = Rule(
    id="prepped.preserve",
    because="{food} becomes part of a preserve that is made at home, days or weeks before; it is no camp job",
    source=BOOK,
)
DOUGH = Rule(
    id="prepped.dough",
    because="{food} is part of a dough that rests for long or wants the cold: it is made at home and travels as one",
    source=BOOK,
)
MIX = Rule(
    id="prepped.mix",
    because="{food} is mixed at home into what needs no fire; it travels ready in one tub",
    source=BOOK,
)
FLESH = Rule(
    id="fresh.raw-meat",
    because="raw {food} has a pack of its own, sealed, at the bottom of the cooler, away from all that is eaten raw",
    source=BOOK,
)
FLESH_CUT = Rule(
    id="prepped.raw-meat",
    because="raw {food} is cut at home and sealed by itself; frozen solid it is ice for the first day",
    source=BOOK,
)
MARINADE = Rule(
    id="prepped.marinade",
    because="{food} seasons the {meat} on the way: it travels in the same sealed bag, which nothing else shares",
    source=BOOK,
)
FISH_ACID = Rule(
    id="wet.fish-acid",
    because="{food} is part of a sour marinade, which would cook the fish on the way: it waits apart until camp",
)
CURED_CUT = Rule(
    id="prepped.cured-meat",
    because="{food} needs no cooking: it is cut at home and kept cold in its own bag",
    source=BOOK,
)
COOKED_MEAT = Rule(
    id="prepped.cooked-meat",
    because="{food} is cooked already: kept cold in its own bag, it is only warmed",
    source=BOOK,
)

CAUSTIC = Rule(
    id="pantry.caustic",
    because="{food} burns skin and eyes: it travels in its own labelled bottle, away from all food",
)

_FLESH: frozenset[Role] = frozenset({"meat", "fish", "cured meat", "tofu"})
#: What never waits in a marinade: it swells, cakes, spoils or rises.
_NOT_IN_MARINADE: frozenset[Role] = frozenset(
    {
        "flour",
        "starch",
        "leavener",
        "yeast",
        "egg",
        "crumbs",
        "oats",
        "grain",
        "cheese",
        "bread",
        "water",
        "greens",
        "can",
    }
)
#: Vegetables that season a marinade; others are cut and bagged by themselves.
AROMATIC = frozenset(
    [
        "garlic",
        "fresh ginger",
        "onion",
        "red onion",
        "shallot",
        "green onion",
        "jalapeno",
        "lemongrass",
        "horseradish root",
    ]
)
#: What makes a marinade wet.
_WETS: frozenset[Role] = SHELF_WET | {"milk", "cultured", "fat", "water", "mayonnaise", "stock"}
#: What a forcemeat holds and a marinade does not.
_BINDERS: frozenset[Role] = frozenset({"egg", "crumbs", "bread"})


def caustic_travels_alone(portion: Portion, kitchen: Kitchen) -> Place | None:  # noqa: ARG001 - one signature
    """Lye never shares a bag with food."""
    if portion.role != "caustic":
        return None
    return Place(
        kind="pantry",
        key=alone(portion),
        travels="shelf",
        because=CAUSTIC.says(portion.name, food=portion.name),
    )


def preserve_is_made_at_home(portion: Portion, kitchen: Kitchen) -> Place | None:
    """A preserve or ferment is made wholly at home; the plan says that it is no camp job."""
    if kitchen.dish.family != "preserve or ferment":
        return None
    return Place(
        kind="prepped",
        key=("preserve",),
        travels="cool",
        because=PRESERVE.says(portion.name, food=portion.name),
    )


def dough_is_made_at_home(portion: Portion, kitchen: Kitchen) -> Place | None:
    """Pastry, a dough that is chilled, and a dough that rises overnight are made at home, the water too."""
    taking = portion.taking or portion.guess
    if taking is None or taking.group not in kitchen.home_doughs or taking.laid:
        return None
    if portion.job is not None and portion.job.goes in ("greasing", "on top"):
        return None
    travels = "cool" if kitchen.dish.yeasted else frozen_or_cool(kitchen)
    return Place(
        kind="prepped",
        key=("dough", taking.group),
        travels=travels,
        because=DOUGH.says(portion.name, food=portion.name),
        part=portion.part,
    )


def mix_is_made_at_home(portion: Portion, kitchen: Kitchen) -> Place | None:
    """A dip, a spread or a puree that needs no fire is mixed at home, when nothing in it forbids."""
    taking = portion.taking or portion.guess
    if taking is None or taking.group not in kitchen.home_mixes:
        return None
    if portion.role == "can" and not kitchen.is_machined(taking.group):
        return None
    return Place(
        kind="prepped",
        key=("mix", taking.group),
        travels="cool",
        because=MIX.says(portion.name, food=portion.name),
        part=portion.part,
    )


def water_is_drawn_at_camp(portion: Portion, kitchen: Kitchen) -> Place | None:  # noqa: ARG001 - one signature
    """Plain water is never packed."""
    if portion.role != "water":
        return None
    return Place(kind="water", key=("water",), travels="camp", because=WATER.says(portion.name))


def flesh_travels_alone(portion: Portion, kitchen: Kitchen) -> Place | None:
    """Raw meat, poultry and fish each have a pack of their own; cooked meat is prepped."""
    if portion.role not in ("meat", "fish", "cured meat"):
        return None
    food = portion.food
    if food is not None and not food.is_raw_meat:
        if portion.role == "cured meat" or food.group == "fish":
            return _cut_at_home(portion, kitchen)
        return Place(
            kind="prepped",
            key=alone(portion),
            travels="cool",
            because=COOKED_MEAT.says(portion.name, food=portion.name),
        )
    worked = (
        marinates(portion, kitchen)
        or kitchen.graph.handled(portion.item.index, "chop", "grind")
        or portion.is_said("cut", "cube", "dice", "slice", "chop", "strip", "chunk", "piece", "trim")
    )
    rule = FLESH_CUT if worked else FLESH
    return Place(
        kind="prepped" if worked else "fresh",
        key=("flesh", portion.item.index),
        travels=frozen_or_cool(kitchen),
        because=rule.says(portion.name, food=portion.name),
        part=portion.part,
    )


def _cut_at_home(portion: Portion, kitchen: Kitchen) -> Place | None:
    """Ham and cooked sausage that the recipe cuts are cut at home; whole ones travel as they come."""
    cut = portion.is_said("cut", "cube", "dice", "slice", "chop", "strip") or kitchen.graph.handled(
        portion.item.index, "chop"
    )
    if not cut or portion.role != "cured meat":
        return None
    because = CURED_CUT.says(portion.name, food=portion.name)
    return Place(kind="prepped", key=alone(portion), travels="cool", because=because, part=portion.part)


def _is_sour(taking: Taking, kitchen: Kitchen) -> bool:
    food = kitchen.items[taking.ingredient].food
    return food is not None and food.is_acid


def marinates(portion: Portion, kitchen: Kitchen) -> bool:
    """Whether raw flesh waits in a marinade and not in a forcemeat."""
    return any(
        taking.marinade
        and is_marinade({kitchen.role(other) for other in kitchen.graph.company(taking) if other.marinade})
        for taking in kitchen.graph.moments(portion.item.index)
    )


def is_marinade(roles: AbstractSet[Role]) -> bool:
    """Neither a forcemeat with egg and crumbs nor a dry dredge of flour."""
    dredge = bool(roles & BODY) and not roles & _WETS
    return not roles & _BINDERS and not dredge


def marinade_travels_with_its_meat(portion: Portion, kitchen: Kitchen) -> Place | None:
    """Herbs, oil, juice and spices of a marinade ride in the bag of the meat; starch and flour never do."""
    taking = portion.taking
    if taking is None or not taking.marinade or portion.role in _NOT_IN_MARINADE or portion.role in _FLESH:
        return None
    # What joins the meat after its wait (bread to wrap it in, the other skewers' vegetables) is no part of the marinade.
    waiting = [other for other in kitchen.company(portion) if other.marinade]
    if not is_marinade({kitchen.role(other) for other in waiting}):
        return None
    if portion.role == "vegetable" and (portion.food is None or portion.food.name not in AROMATIC):
        return None
    flesh = [other for other in waiting if kitchen.role(other) in _FLESH]
    raw = [other for other in flesh if kitchen.role(other) != "tofu"] or flesh
    if not raw:
        return None
    if portion.role in DAIRY and kitchen.curdles(waiting):
        return None
    meat = raw[0]
    name = kitchen.recipe.ingredients[meat.ingredient].name
    sour = any(_is_sour(other, kitchen) for other in waiting)
    if kitchen.role(meat) == "fish" and sour:
        return Place(
            kind="wet mix",
            key=("wet", portion.part, "marinade", taking.group),
            travels="cool",
            because=FISH_ACID.says(portion.name, food=portion.name),
            part=portion.part,
        )
    return Place(
        kind="prepped",
        key=("flesh", meat.ingredient),
        travels=frozen_or_cool(kitchen),
        because=MARINADE.says(portion.name, food=portion.name, meat=name),
        part=portion.part,
    )
