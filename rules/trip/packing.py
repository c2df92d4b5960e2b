"""One packing list: the tools that the dishes call for, each once, in the boxes in which they travel.

What calls for a tool is `rules.kit`'s business. Its words are filled here with the figures of the whole trip: all the
pots, all the fuel, every cooler, the largest bowl.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rules import foods, kit
from rules.because import Ledger, Rule
from rules.circumstances import Units
from rules.kit import Tool
from rules.plan import PotPlan
from rules.pot.iron import oven
from rules.trip.irons import Booked, Iron, Kind
from rules.trip.model import CoolerPlan, Dish, Packed, TripFuel
from rules.wording import mass

ONCE = Rule(
    id="trip.kit-once",
    because="{count} dishes call for {lines} tools between them; what several call for comes along once: {packed} lines",
)

FIRE, POTS, KITCHEN, COLD, SHELF = "fire box", "pots", "kitchen box", "coolers", "shelf box"
#: Tools of the fire box by their number in `kit.csv`: fuel, fire and what puts it out.
FIRE_TOOLS = range(11, 28)
COLD_TOOLS = range(30, 33)
POT_TOOL = "010 pot"


def packing(
    dishes: Sequence[Dish],
    booked: Sequence[Booked],
    coolers: Sequence[CoolerPlan],
    fuel: TripFuel | None,
    people: int | None,
    units: Units,
    ledger: Ledger,
) -> tuple[Packed, ...]:
    """What to pack for camp, box by box; the packs of food come last."""
    slots = _slots(dishes, coolers, fuel, people, units)
    called: dict[str, tuple[Tool, list[str]]] = {}
    lines = 0
    for dish in dishes:
        for tool in _tools(dish):
            called.setdefault(tool.id, (tool, []))[1].append(dish.id)
            lines += 1
    everywhere = len(dishes)
    rows = [
        Packed(box=_box(tool), item=item, dishes=() if len(ids) == everywhere else tuple(ids))
        for tool, ids in (called[key] for key in sorted(called) if key != POT_TOOL)
        for item in _items(tool, slots, coolers)
    ]
    rows += _pots(booked)
    rows += _named_tools(dishes)
    ledger.note(ONCE.says("packing", count=everywhere, lines=lines, packed=len(rows)))
    order = [FIRE, POTS, KITCHEN, COLD, SHELF]
    return tuple(sorted([*rows, *_food(dishes)], key=lambda row: order.index(row.box)))


def _tools(dish: Dish) -> Iterator[Tool]:
    """What one dish calls for at camp."""
    plan = dish.plan
    items = foods.weigh(plan.recipe, plan.scale)
    facts = kit.facts_of(plan.recipe, items, plan.packs, plan.fat, plan.heat, plan.camp_steps, dish.day)
    if plan.cold:
        facts |= {"ice"}
    for tool, _ in kit.called_for("camp", facts, " ".join(plan.camp_steps).lower()):
        yield tool


def _items(tool: Tool, slots: dict[str, object], coolers: Sequence[CoolerPlan]) -> Iterator[str]:
    """The lines of one tool: every cooler has its own."""
    if "{quarts}" in tool.item:
        for cooler in coolers:
            yield tool.item.format(**{**slots, "quarts": f"{cooler.quarts:g}"})
    elif "{ice}" in tool.item:
        for cooler in coolers:
            if cooler.ice_kg:
                yield f"{tool.item.format(**{**slots, 'ice': slots['ice of ' + cooler.name]})} for {cooler.name}"
    else:
        yield tool.item.format(**slots)


def _pots(booked: Sequence[Booked]) -> Iterator[Packed]:
    """The pots that are used, alike ones together, each with the dishes that are cooked in it."""
    used: dict[Kind, tuple[set[Iron], list[str]]] = {}
    for one in booked:
        for iron in one.irons:
            irons, dishes = used.setdefault(iron.kind, (set(), []))
            irons.add(iron)
            dishes.append(one.dish.id)
    for (diameter, depth), (irons, dishes) in used.items():
        pot = PotPlan(
            diameter_in=diameter, depth=depth, quarts=oven(diameter, depth).quarts, count=len(irons)
        )
        yield Packed(box=POTS, item=kit.pot_words(pot), dishes=tuple(dict.fromkeys(dishes)))


def _box(tool: Tool) -> str:
    number = int(tool.id.partition(" ")[0])
    if number in FIRE_TOOLS:
        return FIRE
    return COLD if number in COLD_TOOLS else KITCHEN


def _slots(
    dishes: Sequence[Dish],
    coolers: Sequence[CoolerPlan],
    fuel: TripFuel | None,
    people: int | None,
    units: Units,
) -> dict[str, object]:
    """The trip's figures for the words of the tools."""
    bowls = [
        kit.bowl_quarts(foods.weigh(dish.plan.recipe, dish.plan.scale), dish.plan.packs) for dish in dishes
    ]
    return {
        "briquettes": fuel.briquettes if fuel else 0,
        "reserve": fuel.reserve if fuel else 0,
        "fuel": mass(fuel.kg if fuel else 0.0, units),
        "bowl": max(bowls, default=kit.BOWLS_QT[0]),
        "people": people or "enough",
        "quarts": "",
        "ice": "",
        "pot": "",
        "bags": "",
        "frozen": "",
        **{f"ice of {cooler.name}": mass(cooler.ice_kg, units) for cooler in coolers},
    }


def _named_tools(dishes: Sequence[Dish]) -> list[Packed]:
    """Lines of the recipes that name only a tool."""
    named: dict[str, list[str]] = {}
    for dish in dishes:
        for tool in kit.named_by_the_recipe(dish.plan.recipe):
            named.setdefault(tool, []).append(dish.id)
    return [Packed(box=KITCHEN, item=tool, dishes=tuple(ids)) for tool, ids in named.items()]


def _food(dishes: Sequence[Dish]) -> Iterator[Packed]:
    """The packs that travel on the shelf; those in the coolers stand in the coolers' own lists."""
    for dish in dishes:
        for pack in dish.plan.packs:
            if pack.travels == "shelf":
                yield Packed(box=SHELF, item=f"{pack.label} ({pack.id})", dishes=(dish.id,))
