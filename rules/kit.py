"""The kit: the smallest set of tools that does the job, and the fire and safety kit that is always on it.

Each tool is a row of `tables/kit.csv` with what calls for it: facts of the plan (all of them must hold) or words of
the steps (one is enough). Handbook, sections 2, 8 and 9.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import cache
from typing import Literal

from rules import clock, table, units
from rules.because import Ledger, Rule
from rules.circumstances import Day
from rules.cold.hours import cooler_quarts
from rules.foods import Item
from rules.hazards import JUICY, hazard_of, only_named
from rules.plan import FatUse, Heat, Kit, Pack, PotPlan
from rules.recipe import Recipe
from rules.wording import mass, short_names

CALLED_FOR = Rule(
    id="kit.called-for",
    because="{cause} calls for {tools}",
)
ALWAYS_FUEL = Rule(
    id="kit.fuel",
    because="the forgotten thing is always fuel: {briquettes} briquettes are counted before leaving",
)

#: A bowl is chosen from these [quarts]; what is mixed fills it to two thirds.
BOWLS_QT = (2, 4, 6, 8, 12)
BOWL_FILL = 2 / 3
DARK_FROM_H, DARK_TO_H = 19, 7
#: Work for a knife. "The cut onions" were cut at home, and what comes out of a can is cut already.
CUT = re.compile(
    r"\b(?:knife|chop|slice|dice|mince|halve|quarter|core|carve|slash|slits?|(?<!the )cut)\b"
    r"|\([^)]*\b(?:cut|sliced|chopped|diced|halved|quartered|minced)\b"
)
CANNED = re.compile(r"\bcans? of [^.;]{0,80}")
AT_HOME: frozenset[str] = frozenset({"dry mix", "wet mix", "prepped"})
COLD: frozenset[str] = frozenset({"cool", "frozen"})


class Tool(table.Row, frozen=True, kw_only=True):
    """A tool: where it is wanted, the facts that call for it, the words of the steps that do."""

    id: str
    where: Literal["home", "camp"]
    item: str
    when: tuple[str, ...] = ()
    words: tuple[str, ...] = ()


def kit(
    recipe: Recipe,
    items: Sequence[Item],
    packs: Sequence[Pack],
    fat: Sequence[FatUse],
    pot: PotPlan | None,
    heat: Heat | None,
    camp_steps: Sequence[str],
    day: Day,
    ledger: Ledger,
    *,
    ice_kg: float | None = None,
    home_steps: Sequence[str] = (),
) -> Kit:
    """What to have at hand at home and what to pack for camp."""
    facts = facts_of(recipe, items, packs, fat, heat, camp_steps, day)
    if ice_kg:
        facts |= {"ice"}
    slots = _slots(items, packs, pot, heat, day, ice_kg)
    if heat:
        ledger.note(ALWAYS_FUEL.says("fuel", briquettes=heat.fuel.briquettes))
    home = _chosen("home", facts, " ".join(home_steps).lower(), slots, ledger)
    camp = [
        *_chosen("camp", facts, " ".join(camp_steps).lower(), slots, ledger),
        *named_by_the_recipe(recipe),
    ]
    return Kit(home=home, camp=tuple(dict.fromkeys(camp)))


def _chosen(
    where: str, facts: frozenset[str], steps: str, slots: Mapping[str, object], ledger: Ledger
) -> tuple[str, ...]:
    """The tools of one place, and one reason for all that the same thing calls for."""
    called: dict[str, list[str]] = {}
    for tool, cause in called_for(where, facts, steps):
        called.setdefault(cause, []).append(tool.item.format(**slots))
    for cause, tools in called.items():
        ledger.note(CALLED_FOR.says(f"kit for {where}", cause=cause, tools=", ".join(tools)))
    order = [tool.item.format(**slots) for tool in table.read("kit.csv", Tool)]
    return tuple(sorted((tool for tools in called.values() for tool in tools), key=order.index))


def called_for(where: str, facts: frozenset[str], steps: str) -> Iterator[tuple[Tool, str]]:
    """The tools of one place, in the order of the table, each with what calls for it."""
    for tool in table.read("kit.csv", Tool):
        word = _said(tool, steps)
        if tool.where == where and facts.issuperset(tool.when) and (word or not tool.words):
            yield tool, f'"{word}"' if word else " and ".join(tool.when) or "any camp meal"


def _said(tool: Tool, steps: str) -> str | None:
    """The word of the steps, in small letters, that calls for a tool."""
    if not tool.words:
        return None
    if not any(word in steps for word in tool.words):
        return None
    found = _words(tool.words).search(steps)
    return found.group() if found else None


@cache
def _words(words: tuple[str, ...]) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{'|'.join(map(re.escape, words))})")


# What is so


def facts_of(
    recipe: Recipe,
    items: Sequence[Item],
    packs: Sequence[Pack],
    fat: Sequence[FatUse],
    heat: Heat | None,
    camp_steps: Sequence[str],
    day: Day,
) -> frozenset[str]:
    """The facts of the plan that `kit.csv` knows."""
    return frozenset(_facts(recipe, items, packs, fat, heat, camp_steps, day))


def _facts(
    recipe: Recipe,
    items: Sequence[Item],
    packs: Sequence[Pack],
    fat: Sequence[FatUse],
    heat: Heat | None,
    camp_steps: Sequence[str],
    day: Day,
) -> Iterator[str]:
    yield from _of_the_fire(recipe, heat, day)
    yield from _of_the_packs(items, packs)
    hazards = {hazard_of(item) for item in items}
    hazards |= {kind for kind in JUICY if only_named(kind, recipe, items)}
    if hazards - {None, "drink"}:
        yield "raw food"
    if hazards & set(JUICY):
        yield "raw meat"
    if camp_steps:
        yield "cooking"
    steps = " ".join(camp_steps).lower()
    if CUT.search(CANNED.sub("", steps)):
        yield "cutting"
    if "thermometer" in steps:
        yield "inside check"
    if "ladle" in steps:
        yield "liquid"
    if any(item.ingredient.to_taste for item in items):
        yield "to taste"
    goes = {use.goes for use in fat}
    if "creamed at home" in goes:
        yield "creamed"
    if "cut in at home" in goes:
        yield "cut in"
    eating = clock.meal(day)
    if eating is not None and not DARK_TO_H <= eating.hour < DARK_FROM_H:
        yield "dark"


def _of_the_fire(recipe: Recipe, heat: Heat | None, day: Day) -> Iterator[str]:
    if heat is None:
        if not day.charcoal and recipe.family not in ("no cook", "preserve or ferment"):
            yield "stove"
        return
    yield "coals"
    kinds = {stage.kind for stage in heat.stages}
    if kinds & {"bake", "roast"} and not any(done.temp_f for done in heat.doneness):
        yield "baking"
    if kinds & {"simmer", "boil"}:
        yield "liquid"
    if any(done.temp_f for done in heat.doneness):
        yield "inside check"
    if recipe.family == "deep fry":
        yield "deep fat"


def _of_the_packs(items: Sequence[Item], packs: Sequence[Pack]) -> Iterator[str]:
    kinds = {pack.kind for pack in packs}
    if kinds & AT_HOME:
        yield "bags"
    if "dry mix" in kinds or "wet mix" in kinds:
        yield "measured at home"
    if "prepped" in kinds:
        yield "cut at home"
    if any(pack.travels in COLD for pack in packs):
        yield "cooler"
    if any(pack.travels == "frozen" for pack in packs):
        yield "frozen"
    if "water" in kinds:
        yield from ("water", "measuring")
    shelf = [items[part.ingredient] for pack in packs if pack.kind == "pantry" for part in pack.items]
    if any((item.food is not None and item.food.group == "canned") or _unit(item) == "can" for item in shelf):
        yield "cans"
    if any(
        hazard_of(item) == "drink" or (item.food is not None and item.food.is_drink_alcohol) for item in shelf
    ):
        yield "bottles"


def _unit(item: Item) -> str | None:
    return item.ingredient.amounts[0].unit if item.ingredient.amounts else None


# What the words of a tool are filled with


def _slots(
    items: Sequence[Item],
    packs: Sequence[Pack],
    pot: PotPlan | None,
    heat: Heat | None,
    day: Day,
    ice_kg: float | None,
) -> dict[str, object]:
    fuel = heat.fuel if heat else None
    names = short_names(packs)
    return {
        "pot": pot_words(pot),
        "briquettes": fuel.briquettes if fuel else 0,
        "reserve": fuel.reserve if fuel else 0,
        "fuel": mass(fuel.kg if fuel else 0.0, day.units),
        "quarts": f"{cooler_quarts(day):g}",
        "ice": mass(ice_kg or 0.0, day.units),
        "bowl": bowl_quarts(items, packs),
        "people": day.people or "enough",
        "bags": _bags(packs),
        "frozen": ", ".join(names[pack.id] for pack in packs if pack.travels == "frozen"),
    }


def pot_words(pot: PotPlan | None) -> str:
    """The pot as it stands on the list."""
    if pot is None:
        return "camp Dutch oven with its lid"
    many = f"{pot.count} " if pot.count > 1 else ""
    plural = "s" if pot.count > 1 else ""
    return (
        f"{many}{pot.diameter_in}-inch camp Dutch oven{plural}, {pot.depth} ({pot.quarts:g} quarts), with lid"
    )


def bowl_quarts(items: Sequence[Item], packs: Sequence[Pack]) -> int:
    """Quarts of the bowl that holds the largest mix with room to stir."""
    mixed = [pack for pack in packs if pack.kind in ("dry mix", "wet mix", "fresh", "water")]
    parts: Counter[str | None] = Counter()
    for pack in mixed:
        for part in pack.items:
            volume = items[part.ingredient].milliliters
            if volume:
                parts[pack.component] += round(volume * part.share)
    quarts = units.to(max(parts.values(), default=0), "milliliter", "quart") / BOWL_FILL
    return next((size for size in BOWLS_QT if size >= quarts), BOWLS_QT[-1])


def _bags(packs: Iterable[Pack]) -> str:
    counted = Counter(pack.container for pack in packs if pack.kind in AT_HOME and pack.container)
    return ", ".join(f"{count} x {container}" for container, count in counted.items()) or "zipper bags"


def named_by_the_recipe(recipe: Recipe) -> Iterator[str]:
    """Lines of the recipe that name only a tool."""
    for tool in recipe.tools:
        yield tool.text.strip().lstrip("-*• ").strip()
