"""What travels as it comes in the cooler, what is cut at home, and what rides on the shelf."""

from __future__ import annotations

from rules.because import Rule
from rules.packs.kitchen import Kitchen, Portion
from rules.packs.place import BOOK, Place, alone
from rules.plan import PackKind, Travels
from rules.roles import Role

EGGS = Rule(
    id="fresh.eggs",
    because="{food} travels in the shell in the cooler: cracked, it would have a day",
    source=BOOK,
)
DAIRY = Rule(
    id="fresh.dairy",
    because="{food} spoils, so it travels cold as it comes, or measured into a cold bottle",
    source=BOOK,
)
OPENED = Rule(id="fresh.opened", because="{food} wants the cooler once its jar is open", source=BOOK)
SOLID_FAT = Rule(
    id="fresh.fat", because="{food} travels cold and keeps its shape until it is needed", source=BOOK
)
CHILLED = Rule(id="fresh.chilled", because="{food} is sold chilled and stays so", source=BOOK)
FROZEN = Rule(id="fresh.frozen", because="{food} is bought frozen and travels frozen", source=BOOK)
HERB = Rule(
    id="fresh.herb",
    because="{food} wilts: it travels cold in a damp paper towel and is picked at camp",
    source=BOOK,
)
BROWNS = Rule(
    id="fresh.browns",
    because="{food} browns or softens once it is cut, so it is cut at camp",
    source=BOOK,
)
CUT = Rule(
    id="prepped.cut",
    because="{food} is washed and cut at home: it keeps for days, and camp has no board and no sink",
    source=BOOK,
)
UNDER_WATER = Rule(
    id="prepped.under-water",
    because="{food}, peeled and cut at home, travels under cold water so that it does not brown",
    source=BOOK,
)
GRATED = Rule(id="prepped.cheese", because="{food} is grated or cut at home and bagged cold", source=BOOK)
BOILED_EGG = Rule(id="prepped.boiled-egg", because="{food} is boiled at home and travels cold", source=BOOK)
COOKED = Rule(
    id="prepped.cooked",
    because="{food} is cooked at home, cooled shallow at once and travels cold",
    source=BOOK,
)
WHOLE = Rule(
    id="pantry.whole",
    because="{food} rides whole without cooling and is cut at camp, if at all",
    source=BOOK,
)
SHELF = Rule(id="pantry.shelf", because="{food} keeps on the shelf in the shop's package", source=BOOK)
GRAIN = Rule(
    id="pantry.grain",
    because="{food} enters at a moment of its own, so it stays apart and rides on the shelf",
    source=BOOK,
)
UNKNOWN = Rule(
    id="pantry.unknown",
    because="{food} is not in the food tables: it is taken to keep on the shelf until someone says otherwise",
)

_CUTTING = ("chop", "dice", "mince", "minc", "slice", "slic", "cut", "cube", "grate", "grat", "shred", "julienne", "crush",
            "peel", "trim", "halve", "quarter", "chunk", "ring", "wedge", "strip", "puree", "mash", "press", "wash", "seed", "half", "halves")  # fmt: skip
_CHEESE_WORK = ("grat", "shred", "crumbl", "cube", "slic", "dice", "cut")
_SHELF_ROLES: dict[Role, Rule] = {
    "can": SHELF, "stock": SHELF, "jar": SHELF, "bread": SHELF, "drink": SHELF, "nut paste": SHELF, "sauce": SHELF,
    "syrup": SHELF, "spirits": SHELF, "acid": SHELF, "extract": SHELF, "shelf milk": SHELF, "grain": GRAIN, "oats": GRAIN,
    "juice": SHELF, "fat": SHELF,
}  # fmt: skip


def _place(
    portion: Portion, kind: PackKind, travels: Travels, rule: Rule, key: tuple[object, ...] | None = None
) -> Place:
    return Place(
        kind=kind,
        key=key or alone(portion),
        travels=travels,
        because=rule.says(portion.name, food=portion.name),
        part=portion.part,
    )


def is_cut(portion: Portion, kitchen: Kitchen) -> bool:
    """Whether the line or the method cuts, peels or grates it."""
    return portion.is_said(*_CUTTING) or kitchen.graph.handled(
        portion.item.index, "chop", "grate", "peel", "grind"
    )


def bought_frozen_stays_frozen(portion: Portion, kitchen: Kitchen) -> Place | None:  # noqa: ARG001 - one signature
    """Vegetables, fruit and ice bought frozen travel frozen."""
    food = portion.food
    if (
        portion.role == "ice"
        or (food is not None and food.keeps == "frozen")
        or "frozen" in portion.ingredient.state
    ):
        return _place(portion, "fresh", "frozen", FROZEN)
    return None


def eggs_in_the_shell(portion: Portion, kitchen: Kitchen) -> Place | None:  # noqa: ARG001 - one signature
    """Eggs travel in the shell; boiled ones are prepped."""
    if portion.role == "boiled egg" or (portion.role == "egg" and portion.is_said("boiled", "hard-boiled")):
        return _place(portion, "prepped", "cool", BOILED_EGG)
    return _place(portion, "fresh", "cool", EGGS) if portion.role == "egg" else None


def dairy_in_the_cooler(portion: Portion, kitchen: Kitchen) -> Place | None:  # noqa: ARG001 - one signature
    """Milk, cream, cultured milks and opened sauces that want the cold."""
    if portion.role in ("milk", "cultured"):
        return _place(portion, "fresh", "cool", DAIRY)
    return _place(portion, "fresh", "cool", OPENED) if portion.role == "mayonnaise" else None


def fat_as_it_comes(portion: Portion, kitchen: Kitchen) -> Place | None:  # noqa: ARG001 - one signature
    """Butter and its like travel cold; oil and shortening on the shelf."""
    if portion.role != "fat":
        return None
    food = portion.food
    key = ("fat", portion.item.index, portion.job.goes if portion.job is not None else None)
    if food is not None and food.keeps == "shelf":
        return _place(portion, "pantry", "shelf", SHELF)
    return _place(portion, "fresh", "cool", SOLID_FAT, key)


def cheese_is_grated_at_home(portion: Portion, kitchen: Kitchen) -> Place | None:
    """Cheese that the recipe grates or cuts is grated at home."""
    if portion.role != "cheese":
        return None
    if portion.is_said(*_CHEESE_WORK) or kitchen.graph.handled(portion.item.index, "chop", "grate"):
        return _place(portion, "prepped", "cool", GRATED)
    return _place(portion, "fresh", "cool", DAIRY)


def cooked_at_home(portion: Portion, kitchen: Kitchen) -> Place | None:  # noqa: ARG001 - one signature
    """Rice or potatoes that the list wants cooked are cooked at home."""
    cooked = portion.role == "cooked grain" or (
        portion.role == "grain" and "cooked" in portion.ingredient.state
    )
    return _place(portion, "prepped", "cool", COOKED) if cooked else None


def produce(portion: Portion, kitchen: Kitchen) -> Place | None:
    """Vegetables and fruit: cut at home, or whole when they brown; greens and herbs as they are."""
    if portion.role == "herb":
        return _place(portion, "fresh", "cool", HERB)
    if portion.role == "greens":
        return _place(portion, "fresh", "cool", CHILLED)
    if portion.role not in ("vegetable", "fruit", "zest"):
        return None
    food = portion.food
    hardy = food is None or food.is_hardy or food.keeps == "cool"
    if food is not None and food.browns_when_cut:
        if hardy:
            return _place(portion, "pantry", "shelf", WHOLE)
        return _place(portion, "fresh", "cool", BROWNS)
    if portion.role == "zest" or is_cut(portion, kitchen):
        if food is not None and "under water when cut" in food.traits:
            return _under_water(portion, kitchen)
        return _place(portion, "prepped", "cool", CUT, _cut_key(portion))
    if hardy:
        return _place(portion, "pantry", "shelf", WHOLE)
    return _place(portion, "fresh", "cool", CHILLED)


def _under_water(portion: Portion, kitchen: Kitchen) -> Place:
    """Roots that brown: cut at home under water for a day, whole for longer or where they are cooked whole."""
    events = kitchen.graph.moments(portion.item.index)
    hours = kitchen.day.trip_hours
    long = hours is not None and hours > 24
    cut = portion.is_said("cut", "cube", "dice", "slic", "chop", "chunk", "peel") or kitchen.graph.handled(
        portion.item.index, "chop", "peel"
    )
    if long or not cut or not events:
        return _place(portion, "pantry", "shelf", WHOLE)
    return _place(portion, "prepped", "cool", UNDER_WATER)


def _cut_key(portion: Portion) -> tuple[object, ...]:
    """Cut vegetables that enter together share a bag."""
    taking = portion.taking
    if taking is None:
        return alone(portion)
    return ("cut", portion.part, taking.group)


def on_the_shelf(portion: Portion, kitchen: Kitchen) -> Place | None:  # noqa: ARG001 - one signature
    """What keeps on the shelf rides there in the shop's package; what is sold chilled in the cooler."""
    food = portion.food
    if portion.role == "unknown" or (food is None and portion.role not in _SHELF_ROLES):
        return _place(portion, "pantry", "shelf", UNKNOWN)
    if food is not None and food.keeps == "chilled":
        return _place(portion, "fresh", "cool", CHILLED)
    return _place(portion, "pantry", "shelf", _SHELF_ROLES.get(portion.role, SHELF))
