"""Frozen bags: how each freezes at home, how it is when it is wanted, how to help it thaw (handbook, section 6).

Food with a raw hazard, milk or egg thaws in the cooler or in cold water, never on the table.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from msgspec.structs import replace

from rules.because import Ledger, Rule
from rules.circumstances import Day
from rules.cold.composition import Composition
from rules.cold.contents import of_pack, thickness
from rules.cold.freezing import freezing_point
from rules.cold.hours import celsius, figure, in_cooler
from rules.cold.slab import freezing_hours
from rules.cold.thaw import state_after, thaw_heat, thaw_range
from rules.foods import Item
from rules.hazards import JUICY, hazard_of
from rules.plan import Bag, Hours, Minutes, Pack
from rules.recipe import Recipe, Struct
from rules.safety import figure as safety
from rules.units import to

BAG_IS_ICE = Rule(
    id="cold.bag-is-ice",
    because="{label} begins to freeze at {begins:.1f} °C and takes {heat:.0f} kJ to thaw, as much as {ice:.1f} kg of ice",
    source="composition after Choi and Okos (1986); ASHRAE Handbook - Refrigeration 2006, chapter 9",
)
FREEZE = Rule(
    id="cold.freeze",
    because="{label}, {mm:.0f} mm thick, is frozen through after {low:.0f} to {high:.0f} hours in a home freezer",
    source="enthalpy method for a slab; heat content after the ASHRAE Handbook - Refrigeration 2006, chapter 9",
)
SOFT = Rule(
    id="cold.soft",
    because="sugar and alcohol keep {label} from freezing hard at {freezer:.0f} °C: it cools little as ice",
    source="molal depression of the freezing point",
)
THAW = Rule(
    id="cold.thaw",
    because="{label} is mostly thawed after {low:.0f} to {high:.0f} hours in the cooler, so after {hours:.0f} hours it is"
    " {state}",
    source="enthalpy method for a slab; film coefficients from memory, their range is the range told",
)
OUTSIDE = Rule(
    id="cold.outside",
    because="{label} holds nothing raw and no milk, so it may thaw in the open air: {low:.0f} to {high:.0f} minutes at"
    " {air:.0f} °F",
)
COLD_WATER = Rule(
    id="cold.cold-water",
    because="{label} never thaws on the table: in the cooler, or sealed in cold water changed every {minutes:.0f} minutes,"
    " and then it is cooked",
)

FROM_FROZEN = Rule(
    id="cold.from-frozen",
    because="{label} comes frozen from the shop and goes over the heat as it is: thawed it would be limp",
)
DRY_FOR_FAT = Rule(
    id="cold.dry-for-fat",
    because="{label} is thawed and patted dry before it meets hot fat: ice and water spatter in it",
)

DAIRY_AND_EGG = frozenset({"dairy", "egg"})
PLANTS = frozenset({"vegetable", "fruit"})


class Frozen(Struct, frozen=True, kw_only=True):
    """A pack that travels frozen, as the physics sees it: its mass [kg] and thickness [m]."""

    pack: Pack
    made_of: Composition
    kg: float
    thick: float

    @property
    def begins(self) -> float:
        """Where it begins to freeze [°C]."""
        return freezing_point(self.made_of)

    @property
    def heat(self) -> float:
        """What it takes to thaw from the freezer [kJ]."""
        return thaw_heat(self.made_of, from_c=figure("freezer").value) * self.kg


def frozen(pack: Pack, items: Sequence[Item]) -> Frozen | None:
    """A pack as the physics sees it; None when nothing is known of what it holds."""
    found = of_pack(pack, items)
    if found is None:
        return None
    made_of, kg = found
    return Frozen(pack=pack, made_of=made_of, kg=kg, thick=thickness(made_of, kg, pack.container))


def bag(one: Frozen, recipe: Recipe, items: Sequence[Item], day: Day, ledger: Ledger) -> Bag:
    """How a bag freezes, how it is when it is wanted, and how to help it."""
    made = replace(_bag(one, items, day, ledger), bought_frozen=is_bought_frozen(one.pack, items))
    if not made.bought_frozen or made.move_hours_before is None:
        return made
    if _goes_in_hard(one.pack, recipe, items):
        ledger.note(FROM_FROZEN.says(one.pack.id, label=one.pack.label))
        return replace(made, move_hours_before=None, advice="stays in the ice and goes over the heat frozen.")
    if recipe.family == "deep fry":
        ledger.note(DRY_FOR_FAT.says(one.pack.id, label=one.pack.label))
        return replace(made, advice=f"{(made.advice or '').rstrip('.')}; then pat it dry, for the hot fat.")
    return made


def is_bought_frozen(pack: Pack, items: Sequence[Item]) -> bool:
    """Whether all of a pack comes frozen from the shop."""
    return pack.kind == "fresh" and all(_is_sold_frozen(items[part.ingredient]) for part in pack.items)


def _is_sold_frozen(item: Item) -> bool:
    return "frozen" in item.ingredient.state or (item.food is not None and item.food.keeps == "frozen")


def _goes_in_hard(pack: Pack, recipe: Recipe, items: Sequence[Item]) -> bool:
    """Vegetables and fruit that are cooked need no thawing, unless the text asks for it or hot fat waits."""
    if recipe.family in ("no cook", "deep fry"):
        return False
    lines = [items[part.ingredient] for part in pack.items]
    if any("thaw" in item.ingredient.text.lower() or item.food is None for item in lines):
        return False
    thawed = {
        use.ingredient
        for step in recipe.steps
        for action in step.actions
        if action.does == "thaw"
        for use in action.uses
    }
    groups = {item.food.group for item in lines if item.food is not None}
    return groups <= PLANTS and not thawed & {item.index for item in lines}


def _bag(one: Frozen, items: Sequence[Item], day: Day, ledger: Ledger) -> Bag:
    label, key = one.pack.label, one.pack.id
    freeze = _freezing(one)
    if freeze is None:
        ledger.note(SOFT.says(key, label=label, freezer=figure("freezer").value))
        return Bag(pack=key, state="thawed", advice="stays soft; use it as it is.")
    ledger.note(
        FREEZE.says(key, label=label, mm=1000 * one.thick, low=freeze.low, high=freeze.high),
        BAG_IS_ICE.says(
            key, label=label, begins=one.begins, heat=one.heat, ice=one.heat / figure("latent_heat").value
        ),
    )
    hours = in_cooler(day)
    around = figure("in_cooler")
    thaw = _thawing(one, (around.least, around.most), "h_cooler", from_c=figure("freezer").value)
    state = state_after(hours, thaw)
    if thaw is not None:
        ledger.note(THAW.says(key, label=label, low=thaw.low, high=thaw.high, hours=hours, state=state))
    made = Bag(
        pack=key,
        freeze_hours=freeze,
        thaw_hours=thaw,
        slush_hours=_thawing(one, (0.0, 0.0), "h_slush", from_c=one.begins - 1),
        state=state,
    )
    if _may_stand_outside(one.pack, items):
        return _in_the_open(made, one, day, ledger)
    change = safety("water_change_min")
    ledger.note(COLD_WATER.says(key, change, label=label, minutes=change.value))
    return _in_water(made, one, items) if state != "thawed" else made


def _freezing(one: Frozen) -> Hours | None:
    freezer, start, h = figure("freezer"), figure("fridge"), figure("h_freezer")
    low, high = (
        freezing_hours(one.made_of, thickness=one.thick, freezer_c=freezer_c, start_c=start_c, h=contact)
        for freezer_c, start_c, contact in (
            (freezer.least, start.least, h.most),
            (freezer.most, start.most, h.least),
        )
    )
    return None if math.isinf(high) else Hours(low=low, high=high)


def _thawing(one: Frozen, around: tuple[float, float], h: str, *, from_c: float) -> Hours | None:
    return thaw_range(one.made_of, thickness=one.thick, around=around, h=figure(h), from_c=from_c)


def _in_the_open(made: Bag, one: Frozen, day: Day, ledger: Ledger) -> Bag:
    """Minutes in the open air; a bag that is still icy as it is wanted is taken out so long before."""
    air, is_hot = celsius(day.air_f), day.air_f > safety("hot_air_f").value
    hours = _thawing(one, (air, air), "h_calm" if day.wind == "calm" else "h_breezy", from_c=one.begins - 1)
    if hours is None:
        return made
    outside = Minutes(low=60 * hours.low, high=60 * hours.high)
    ledger.note(
        OUTSIDE.says(made.pack, label=one.pack.label, low=outside.low, high=outside.high, air=day.air_f)
    )
    made = replace(made, outside_min=outside)
    if made.state == "thawed":
        return made
    if outside.high > 60 * safety("out_hot_h" if is_hot else "out_h").value:
        return _in_water(made, one, ())
    return replace(made, move_hours_before=hours.high, advice="out of the cooler, to thaw in the shade.")


def _in_water(made: Bag, one: Frozen, items: Sequence[Item]) -> Bag:
    water = figure("cold_water")
    hours = _thawing(one, (water.least, water.most), "h_slush", from_c=one.begins - 1)
    raw = bool(items) and any(hazard_of(items[part.ingredient]) in JUICY for part in one.pack.items)
    then = "; then cook it at once (from frozen it takes half as long again)" if raw else ""
    # Flesh that lies in pieces is no flat slab: what is printed for a pound goes before the physics of the bag.
    printed = safety("water_h_per_lb").value * to(one.kg, "kilogram", "pound") if raw else 0.0
    change = safety("water_change_min").value
    return replace(
        made,
        move_hours_before=max(hours.high, printed) if hours else None,
        advice=f"sealed into cold water, changed every {change:.0f} minutes, until it is soft{then}.",
    )


def _may_stand_outside(pack: Pack, items: Sequence[Item]) -> bool:
    """Fruit and other food without a raw hazard, milk or egg."""
    for part in pack.items:
        item = items[part.ingredient]
        if item.food is None or item.food.group in DAIRY_AND_EGG or hazard_of(item) in (*JUICY, "egg"):
            return False
    return pack.kind in ("wet mix", "prepped", "fresh")
