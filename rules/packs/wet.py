"""What goes into a wet mix: liquids, fruit and sauces of one part that may wait together for days."""

from __future__ import annotations

from rules.because import Rule
from rules.packs.kitchen import Kitchen, Portion
from rules.packs.place import BOOK, Place, frozen_or_cool
from rules.roles import Role

FRUIT = Rule(
    id="wet.fruit",
    because="{food} goes into the fruit bag with what flavours it, pressed flat: frozen, it cools the cooler on the way",
    source=BOOK,
)
FRUIT_SUGAR = Rule(
    id="wet.fruit-sugar",
    because="{food} goes with the fruit: it draws the juice on the way",
    source=BOOK,
)
SAUCE = Rule(
    id="wet.sauce",
    because="{food} enters in one breath with the other sauces: one bottle is filled at home",
    source=BOOK,
)
DISSOLVED = Rule(
    id="wet.dissolved",
    because="{food} dissolves in the bottle it belongs to, so it is mixed at home",
)
BERRIES = Rule(
    id="prepped.fruit",
    because="{food} is washed, picked over and bagged flat at home",
    source=BOOK,
)
CREAMED = Rule(
    id="prepped.creamed",
    because="{food} is creamed at home with the fat and sugar, without the egg, and travels cold in one bag",
    source=BOOK,
)

_FLAVOUR: frozenset[Role] = frozenset({"juice", "zest", "spirits", "extract", "acid", "syrup"})
#: What makes a dressing, with oil.
_SOUR: frozenset[Role] = frozenset({"acid", "juice", "sauce", "syrup"})
_DISSOLVES: frozenset[Role] = frozenset({"sugar", "salt", "spice", "pepper", "dry good"})
#: What is minced into a dressing and waits in it.
_MINCED: frozenset[Role] = frozenset({"herb", "vegetable"})
SEVERAL = 2


def creamed_fat_and_sugar_travel_together(portion: Portion, kitchen: Kitchen) -> Place | None:
    """Creamed fat and sugar is one prepped pack, cool; the sugar counts there."""
    taking = portion.entry
    if taking is None:
        return None
    if portion.job is not None and portion.job.goes == "creamed at home":
        key = taking
    elif portion.role == "sugar":
        fats = [
            other.taking
            for other in kitchen.portions
            if other.job is not None and other.job.goes == "creamed at home" and other.taking is not None
        ]
        beside = [
            fat
            for fat in fats
            if fat.thing == taking.thing
            and (fat.at == taking.at or _only_sugar(fat.at, taking.at, kitchen, fat.thing))
        ]
        if not beside:
            return None
        key = beside[0]
    else:
        return None
    return Place(
        kind="prepped",
        key=("creamed", key.thing, portion.part),
        travels="cool",
        because=CREAMED.says(portion.name, food=portion.name),
        part=portion.part,
    )


def _only_sugar(start: int, end: int, kitchen: Kitchen, thing: int) -> bool:
    """Whether nothing but sugar and fat went into the thing up to there."""
    return all(
        kitchen.role(taking) in ("sugar", "fat", "salt", "extract")
        for taking in kitchen.graph.inside(thing)
        if min(start, end) <= taking.at <= max(start, end)
    )


def fruit_and_its_flavours(portion: Portion, kitchen: Kitchen) -> Place | None:
    """Fruit, its sugar, juice, zest, spirits and vanilla share a bag, unless flour stands in the same bowl."""
    taking = portion.taking
    if taking is None or taking.laid or (taking.hot and not kitchen.is_compote(taking)):
        return None
    bowl = [other for other in kitchen.graph.inside(taking.thing) if not other.laid]
    roles = {kitchen.role(other) for other in bowl}
    fruit = any(kitchen.role(other) == "fruit" and _is_bagged(other.ingredient, kitchen) for other in bowl)
    if not fruit or roles & {"flour", "oats", "crumbs", "leavener", "egg"} or kitchen.curdles(bowl):
        return None
    if portion.role == "fruit" and _is_bagged(portion.item.index, kitchen) and roles & (_FLAVOUR | {"sugar"}):
        return _wet(portion, kitchen, FRUIT)
    if portion.role == "sugar":
        return _wet(portion, kitchen, FRUIT_SUGAR)
    return _wet(portion, kitchen, FRUIT) if portion.role in _FLAVOUR | {"spice"} else None


def _is_bagged(index: int, kitchen: Kitchen) -> bool:
    """Fruit that is washed, cut or stewed at home, not carried whole to be cut at camp."""
    item = kitchen.items[index]
    food = item.food
    if food is None:
        return True
    if food.keeps == "frozen" or not food.is_hardy:
        return True
    cut = (
        kitchen.graph.handled(index, "chop", "grate", "peel")
        or item.ingredient.prep is not None
        or any(kitchen.is_sugared(taking) for taking in kitchen.graph.moments(index))
    )
    sour = any(
        other.food is not None and other.food.is_acid and other.index != index
        for other in kitchen.items
        if other.ingredient.component == item.ingredient.component
    )
    return cut and (not food.browns_when_cut or sour)


def _wet(portion: Portion, kitchen: Kitchen, rule: Rule) -> Place:
    return Place(
        kind="wet mix",
        key=("fruit", portion.part, portion.taking.thing if portion.taking is not None else None),
        travels=frozen_or_cool(kitchen),
        because=rule.says(portion.name, food=portion.name),
        part=portion.part,
    )


def sauces_that_enter_together(portion: Portion, kitchen: Kitchen) -> Place | None:
    """Sauces, syrups and juices of one moment are bottled together, with what dissolves in them."""
    taking = portion.entry
    if taking is None or taking.marinade:
        return None
    mates = kitchen.wet_mates(portion)
    if len({mate.ingredient for mate in mates}) < SEVERAL or kitchen.curdles(mates):
        return None
    moment = (taking.group, taking.step) if taking.hot or taking.laid else (taking.thing,)
    key = ("wet", portion.part, *moment)
    cool = any(kitchen.role(mate) in ("mayonnaise", "zest") for mate in mates) or portion.role in _MINCED
    if any(mate.ingredient == portion.item.index for mate in mates):
        return _bottle(portion, key, SAUCE, cool=cool)
    if kitchen.has_body(portion):
        return None
    if taking.hot or taking.laid:
        breath = [mate for mate in mates if mate.at == taking.at]
        dissolves = portion.role == "sugar" or (taking.laid and portion.role in _DISSOLVES)
        return _bottle(portion, key, DISSOLVED, cool=cool) if dissolves and len(breath) >= SEVERAL else None
    if portion.role in _DISSOLVES and not (
        portion.role in ("salt", "pepper") and not portion.ingredient.amounts
    ):
        return _bottle(portion, key, DISSOLVED, cool=cool)
    minced = portion.is_said("minc", "chop", "grat", "crush", "press") or kitchen.graph.handled(
        portion.item.index, "chop", "grate", "grind"
    )
    small = portion.role == "herb" or (
        portion.food is not None and portion.food.name in ("garlic", "fresh ginger", "shallot")
    )
    if portion.role in _MINCED and small and minced and kitchen.dish.family == "no cook":
        return _bottle(portion, key, SAUCE, cool=True)
    return None


def dressing_that_no_step_names(portion: Portion, kitchen: Kitchen) -> Place | None:
    """Oil, something sour and what seasons them, named only as "the dressing ingredients", make one bottle."""
    if portion.taking is not None or kitchen.dish.family != "no cook":
        return None
    unsaid = [other for other in kitchen.portions if other.taking is None and other.part == portion.part]
    wet = [other for other in unsaid if other.role in _SOUR or (other.role == "fat" and _is_oil(other))]
    if len(wet) < SEVERAL or not any(other.role in ("acid", "juice") for other in wet):
        return None
    key = ("wet", portion.part, None)
    if any(other.item.index == portion.item.index for other in wet):
        return _bottle(portion, key, SAUCE, cool=False)
    if portion.role in _DISSOLVES and portion.ingredient.amounts:
        return _bottle(portion, key, DISSOLVED, cool=False)
    return None


def _is_oil(portion: Portion) -> bool:
    return portion.food is not None and portion.food.is_liquid


def _bottle(portion: Portion, key: tuple[object, ...], rule: Rule, *, cool: bool) -> Place:
    return Place(
        kind="wet mix",
        key=key,
        travels="cool" if cool else "shelf",
        because=rule.says(portion.name, food=portion.name),
        part=portion.part,
    )


def loose_fruit_is_bagged(portion: Portion, kitchen: Kitchen) -> Place | None:
    """Berries and other soft fruit are washed and bagged at home, frozen flat where there is a freezer."""
    food = portion.food
    if portion.role != "fruit" or food is None or food.is_hardy or food.keeps == "frozen":
        return None
    return Place(
        kind="prepped",
        key=("alone", portion.item.index),
        travels=frozen_or_cool(kitchen) if food.freezes != "badly" else "cool",
        because=BERRIES.says(portion.name, food=portion.name),
        part=portion.part,
    )
