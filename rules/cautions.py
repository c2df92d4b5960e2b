"""Cautions: what can hurt someone here, and what raised each warning.

A caution is given where it applies and nowhere else, and its text names the food that raised it. Texts and sources
stand in `tables/cautions.toml`; what is handled raw is decided in `hazards.py`, what the foods hold in
`allergens.py`. Handbook, section 9.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from fractions import Fraction
from typing import NamedTuple

from rules import table
from rules.allergens import allergens, alternatives
from rules.because import Ledger, Rule
from rules.circumstances import Day
from rules.dish import Dish
from rules.foods import Food, Item
from rules.hazards import Kind, alternatively_raw, dry_kidney_beans, is_drink, only_named, raw
from rules.method import Graph
from rules.plan import Caution, CautionId, Heat, Pack
from rules.recipe import Family, Recipe
from rules.safety import figure, limit
from rules.wording import listed, short_names

__all__ = ["allergens", "cautions"]

#: Sides of a dish from which what is left over keeps without cooling.
DRY_GOODS: frozenset[Family] = frozenset(
    {"yeast bread", "biscuit or quick bread dough", "cookie", "batter bake"}
)
#: Flatbreads, fruit pies, a spice mix: these keep unless something in them spoils.
DRY_UNLESS_IT_SPOILS: frozenset[Family] = frozenset({"no cook", "griddle", "pastry or pie"})
RISING: frozenset[Family] = DRY_GOODS | {"griddle"}
PRODUCE = frozenset({"vegetable", "fruit", "herb"})
#: Sold cold and yet no matter of two hours while it is whole: fresh produce, ice.
KEEPS_LONGER = PRODUCE | {"water"}
COVERED = frozenset({"simmer", "bake", "boil", "roast"})
DEEP_WORDS = ("deep fry", "deep-fry", "deep fried", "deep-fried", "deep fat")
#: Said of jars that are put up to keep.
CANNING_WORDS = ("steriliz", "sterilis", "canner", "water bath", "process the jars", "new lids", "headspace")
INSTEAD_OF_DRINKS = "the same of stock or juice"

Slots = Mapping[str, object]


class CautionText(table.Row, frozen=True, kw_only=True):
    """A caution's words: `because` says what raised it, `text` what to do about it."""

    id: str
    because: str
    text: str


class AlcoholLeft(table.Row, frozen=True, kw_only=True):
    """The share of a drink's alcohol that is left [%], after at least so many minutes of cooking."""

    id: str
    at_least_min: float | None = None
    left_pct: float


class LessLeavener(table.Row, frozen=True, kw_only=True):
    """How much less leavener [teaspoon per teaspoon] from a height on [ft]."""

    id: str
    from_ft: float
    low_tsp: float
    high_tsp: float


class Case(NamedTuple):
    """Everything that a caution may look at."""

    recipe: Recipe
    items: Sequence[Item]
    dish: Dish
    heat: Heat | None
    packs: Sequence[Pack]
    day: Day


class Words(NamedTuple):
    """A caution raised: the slots of its sentences, and the rows whose sentences are added."""

    slots: Slots
    more: tuple[tuple[str, Slots], ...] = ()


TEXTS = {row.id.removeprefix("caution."): row for row in table.read("cautions.toml", CautionText)}
SAID_BY = {key: Rule(id=row.id, because=row.because, source=row.source) for key, row in TEXTS.items()}


def _figure(key: str) -> float:
    return table.figures("caution_figures.csv")[key].value


def cautions(
    recipe: Recipe,
    items: Sequence[Item],
    graph: Graph,  # noqa: ARG001 - the rooms are all asked in one way; the actions themselves are enough here
    dish: Dish,
    heat: Heat | None,
    packs: Sequence[Pack],
    day: Day,
    ledger: Ledger,
) -> tuple[Caution, ...]:
    """The cautions of this dish on this day, the deadliest first, each naming what raised it."""
    case = Case(recipe, items, dish, heat, packs, day)
    given = []
    for key, raises in RAISED_BY.items():
        words = raises(case)
        if words is not None:
            given.append(_worded(key, words, ledger))
    return tuple(given)


def _worded(key: CautionId, words: Words, ledger: Ledger) -> Caution:
    rows = [(key, words.slots), *words.more]
    for row, slots in rows:
        ledger.note(SAID_BY[row].says(key, None, **slots))
    text = " ".join(TEXTS[row].text.format(**slots) for row, slots in rows)
    return Caution(id=key, text=text, source="; ".join(dict.fromkeys(TEXTS[row].source for row, _ in rows)))


# Fire


def _carbon_monoxide(case: Case) -> Words | None:
    return Words({"briquettes": case.heat.fuel.briquettes}) if case.heat else None


def _fire_restrictions(case: Case) -> Words | None:
    if case.heat:
        return Words({})
    if not case.day.charcoal and case.dish.family not in ("no cook", "preserve or ferment"):
        return Words({}, more=(("fire-restrictions.forbidden", {}),))
    return None


def _hot_iron(case: Case) -> Words | None:
    return Words({"briquettes": case.heat.fuel.briquettes}) if case.heat else None


def _deep_fry(case: Case) -> Words | None:
    if case.dish.family in ("no cook", "preserve or ferment"):
        return None
    fried = "deep fry" in (case.dish.family, case.dish.second) or any(
        action.does == "deep fry" for step in case.recipe.steps for action in step.actions
    )
    said = any(word in step.text.lower() for step in case.recipe.steps for word in DEEP_WORDS)
    if not (fried or said or _oil_in_one_frying(case) >= _figure("deep_oil_ml")):
        return None
    return Words({"foods": (case.recipe.title or "this dish").strip()})


def _oil_in_one_frying(case: Case) -> float:
    """The most oil [ml] that one frying takes."""
    most = 0.0
    for step in case.recipe.steps:
        for action in step.actions:
            if action.does == "fry":
                oils = [case.items[use.ingredient] for use in action.uses]
                most = max(most, sum(item.milliliters or 0 for item in oils if _is_oil(item.food)))
    return most


def _is_oil(food: Food | None) -> bool:
    return food is not None and food.is_fat and food.is_liquid


# Raw food


def _raw(kind: Kind) -> Callable[[Case], Words | None]:
    def raises(case: Case) -> Words | None:
        found = [item.ingredient.name for item in raw(kind, case.recipe, case.items, case.dish)]
        if kind in ("poultry", "meat", "fish"):
            found += [
                name
                for item, name, other in alternatives(case.items)
                if alternatively_raw(kind, item, name, other)
            ]
            found += only_named(kind, case.recipe, case.items)
        return Words({"foods": listed(found)}) if found else None

    return raises


def _raw_meat(case: Case) -> Words | None:
    words = _raw("meat")(case)
    birds = [
        name
        for item, name, other in alternatives(case.items)
        if other and other.raw_hazard == "poultry" and item.food and item.food.raw_hazard == "meat"
    ]
    if words and birds:
        return words._replace(more=(("raw-meat.poultry", {"foods": listed(birds)}),))
    return words


def _raw_egg(case: Case) -> Words | None:
    words = _raw("egg")(case)
    if words and case.dish.family == "no cook":
        return words._replace(more=(("raw-egg.uncooked", words.slots),))
    return words


def _kidney_beans(case: Case) -> Words | None:
    found = dry_kidney_beans(case.recipe, case.items)
    return Words({"foods": listed(item.ingredient.name for item in found)}) if found else None


# Cold


def _two_hour(case: Case) -> Words | None:
    spoils = _what_spoils(case)
    return Words({"foods": listed(spoils)}) if spoils else None


def _what_spoils(case: Case) -> list[str]:
    """Food that travels cold because it spoils: chilled and frozen food, and what was cut or opened at home."""
    if case.dish.family == "preserve or ferment":
        return [item.ingredient.name for item in case.items if _sold_cold(item.food)]
    found = [item.ingredient.name for item in case.items if _sold_cold(item.food)]
    names = short_names(case.packs)
    for pack in case.packs:
        if pack.kind in ("prepped", "wet mix") and pack.travels != "shelf":
            inside = [case.items[part.ingredient] for part in pack.items]
            cut = [item.ingredient.name for item in inside if item.food and item.food.group in PRODUCE]
            # A dough or a sauce of shelf foods spoils once it is mixed; it goes by its label.
            found += cut or ([] if any(_sold_cold(item.food) for item in inside) else [names[pack.id]])
    if not found and any(action.does == "chill" for step in case.recipe.steps for action in step.actions):
        found = [_dish_name(case.recipe)]
    return found


def _sold_cold(food: Food | None) -> bool:
    return food is not None and food.keeps in ("chilled", "frozen") and food.group not in KEEPS_LONGER


def _leftovers(case: Case) -> Words | None:
    """Every dish that is moist; bread, biscuits, cake and cookies keep on the shelf."""
    if case.dish.family == "preserve or ferment" or (
        case.dish.family in DRY_GOODS and case.dish.second is None
    ):
        return None
    if case.dish.family == "no cook" and not _what_spoils(case):
        return None
    hot = limit("hot_air_f")
    told = f"one hour (the air is above {hot})" if is_hot(case.day) else f"two hours (one above {hot})"
    return Words({"foods": _dish_name(case.recipe), "limit": told})


# Drinks, honey, water, height


def _alcohol(case: Case) -> Words | None:
    drinks = [item for item in case.items if is_drink(_written(item), item.food)]
    others = [
        name for item, name, other in alternatives(case.items) if is_drink(name, other) and item not in drinks
    ]
    if not drinks and not others:
        return None
    spirits = [item.ingredient.name for item in drinks if _burns(item.food)]
    return Words(
        {
            "foods": listed([*(item.ingredient.name for item in drinks), *others]),
            "left": _how_much_is_left(case),
            "instead": INSTEAD_OF_DRINKS,
        },
        more=(("alcohol.spirits", {"foods": listed(spirits)}),) if spirits else (),
    )


def _written(item: Item) -> str:
    return " ".join((*item.ingredient.state, item.ingredient.name))


def _burns(food: Food | None) -> bool:
    return food is not None and "spirit" in food.traits


def _how_much_is_left(case: Case) -> str:
    minutes = _minutes_over_heat(case)
    left = alcohol_left(minutes)
    if minutes is None:
        return f"Nothing here cooks it away; after a night in the cold about {left.left_pct:g} % of the alcohol is left."
    if not left.at_least_min:
        return f"About {left.left_pct:g} % of the alcohol is left when it is only stirred in and taken off the heat."
    return f"About {left.left_pct:g} % of the alcohol is left after {left.at_least_min:g} minutes of cooking, more if it enters later."


def _minutes_over_heat(case: Case) -> float | None:
    """The least minutes that a covered pot cooks; None when nothing is heated."""
    if case.heat:
        spans = [stage.minutes.low for stage in case.heat.stages if stage.kind in COVERED and stage.minutes]
        return sum(spans)
    spans = [
        span.low_min
        for step in case.recipe.steps
        for span in step.durations
        if span.what in ("bake", "simmer", "boil")
    ]
    return sum(spans) if spans else None


def alcohol_left(minutes: float | None) -> AlcoholLeft:
    """The row that tells how much alcohol is left after `minutes` stirred in and cooked; None: never heated.

    Between two printed times the shorter one is taken, so that nobody is told of less alcohol than there is.
    """
    rows = table.read("alcohol_left.csv", AlcoholLeft)
    if minutes is None:
        return next(row for row in rows if row.id == "unheated")
    reached = [row for row in rows if row.at_least_min is not None and row.at_least_min <= minutes]
    return max(reached, key=lambda row: row.at_least_min or 0.0)


def _honey(case: Case) -> Words | None:
    found = [
        item.ingredient.name
        for item in case.items
        if "honey" in item.ingredient.name.split() and not (item.food and item.food.group in PRODUCE)
    ]
    found += [item.ingredient.name for item in case.items if item.food and "honey" in item.food.traits]
    return Words({"foods": listed(found)}) if found else None


def _water(case: Case) -> Words | None:
    drawn = [
        case.items[part.ingredient].ingredient.name
        for pack in case.packs
        for part in pack.items
        if pack.kind == "water"
    ]
    if not drawn:
        return None
    return Words({"foods": listed(drawn), "minutes": rolling_boil(case.day.elevation_ft)})


def rolling_boil(elevation_ft: float) -> str:
    """How long water is boiled to make it safe."""
    minutes = _figure("treat_high_min" if elevation_ft > _figure("treat_high_ft") else "treat_min")
    return f"{minutes:g} minute{'s' if minutes != 1 else ''}"


def _altitude(case: Case) -> Words | None:
    feet = case.day.elevation_ft
    if feet < _figure("altitude_from_ft") or case.dish.family == "no cook":
        return None
    words = Words({"feet": f"{feet:,.0f}", "drop": f"{feet / 500 * _figure('boil_lower_per_500ft'):.0f}"})
    if case.dish.family not in RISING:
        return words
    row = less_leavener(feet)
    return words._replace(
        more=(("altitude.leavened", {"less": f"{_spoon(row.low_tsp)} to {_spoon(row.high_tsp)}"}),)
    )


def less_leavener(feet: float) -> LessLeavener:
    """The row of the highest printed elevation that `feet` reaches (the lowest one below that)."""
    rows = table.read("altitude_leavener.csv", LessLeavener)
    return max((row for row in rows if row.from_ft <= feet), key=lambda row: row.from_ft, default=rows[0])


def _spoon(teaspoons: float) -> str:
    return str(Fraction(teaspoons).limit_denominator(8))


# Made at home, kept at camp


def _home_canning(case: Case) -> Words | None:
    """The method cans, or sterilises jars and fills them; opening a can is no canning."""
    canned = any(action.does == "can" for step in case.recipe.steps for action in step.actions)
    said = " ".join(step.text.lower() for step in case.recipe.steps)
    jars = "jar" in said and any(word in said for word in CANNING_WORDS)
    return Words({"foods": _dish_name(case.recipe)}) if canned or jars else None


def _home_ferment(case: Case) -> Words | None:
    """Vegetables, milk or drinks left to ferment; a dough that ferments is baked."""
    if case.dish.family in RISING | {"pastry or pie"}:
        return None
    ferments = any(action.does == "ferment" for step in case.recipe.steps for action in step.actions)
    return Words({"foods": _dish_name(case.recipe)}) if ferments else None


def _wildlife(case: Case) -> Words | None:
    return None if case.dish.family == "preserve or ferment" else Words({})


#: The deadliest first; the order in which a plan shows them.
RAISED_BY: dict[CautionId, Callable[[Case], Words | None]] = {
    "fire-restrictions": _fire_restrictions,
    "carbon-monoxide": _carbon_monoxide,
    "hot-iron": _hot_iron,
    "deep-fry": _deep_fry,
    "kidney-beans": _kidney_beans,
    "raw-poultry": _raw("poultry"),
    "raw-meat": _raw_meat,
    "raw-fish": _raw("fish"),
    "raw-egg": _raw_egg,
    "raw-flour": _raw("flour"),
    "two-hour": _two_hour,
    "leftovers": _leftovers,
    "honey-infant": _honey,
    "alcohol": _alcohol,
    "water-treatment": _water,
    "altitude": _altitude,
    "home-canning": _home_canning,
    "home-ferment": _home_ferment,
    "wildlife": _wildlife,
}


def is_hot(day: Day) -> bool:
    """Air in which food may be out of the cold for one hour only."""
    warmest = day.air_f if day.trip_air_f is None else max(day.air_f, day.trip_air_f)
    return warmest > figure("hot_air_f").value


def _dish_name(recipe: Recipe) -> str:
    return recipe.title.strip() if recipe.title else "this dish"
