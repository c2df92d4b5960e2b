"""Raw meat, poultry and fish against their days in the cold, counted from purchase or from thaw (handbook, section 6)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rules.because import Ledger, Rule
from rules.circumstances import Day
from rules.cold.hours import in_cooler
from rules.foods import Item
from rules.hazards import JUICY, hazard_of
from rules.plan import Bag, Pack
from rules.safety import limit

RAW_DAYS = Rule(
    id="cold.raw-days",
    because="{food} keeps {days} at {limit} and the trip takes {hours:.0f} hours: {verdict}",
    source="food tables, low end of the days in the refrigerator of USDA FSIS FoodKeeper",
)

HOURS_PER_DAY = 24


def raw_food(
    cooled: Sequence[Pack], bags: Sequence[Bag], items: Sequence[Item], day: Day, ledger: Ledger
) -> Iterator[str]:
    """What has to be said of raw food that does not last the trip as it is packed."""
    # The low end of the days already errs on the safe side; for the thaw the middle of its range is taken.
    soft = {bag.pack: (bag.thaw_hours.low + bag.thaw_hours.high) / 2 for bag in bags if bag.thaw_hours}
    for pack in cooled:
        frozen_for = soft.get(pack.id, 0.0) if pack.travels == "frozen" else 0.0
        for part in pack.items:
            item = items[part.ingredient]
            if hazard_of(item) in JUICY and item.food is not None and item.food.fridge_days is not None:
                yield from _judged(item, item.food.fridge_days, frozen_for, pack, day, ledger)


def _judged(item: Item, days: int, frozen_for: float, pack: Pack, day: Day, ledger: Ledger) -> Iterator[str]:
    name, hours, said = item.ingredient.name, in_cooler(day), f"{days} day{'' if days == 1 else 's'}"
    lasts = hours - frozen_for <= HOURS_PER_DAY * days
    if lasts:
        verdict = (
            "it travels frozen, and the days count from its thaw"
            if pack.travels == "frozen"
            else "bought on the day it is packed, it lasts"
        )
    elif pack.travels == "frozen":
        verdict = "even frozen it has thawed too long before the meal"
        yield (
            f"{name}: not for {hours:g} hours, even frozen. Buy it on the way, at most {said} before the meal, or take"
            " canned, cured or dried food instead."
        )
    elif day.freezer:
        verdict = "it has to travel frozen solid"
        yield f"{name}: freeze it solid and pack it against the ice; it keeps {said} at {limit('cold_f')}, counted from its thaw."
    else:
        verdict = "without a freezer this does not work"
        yield (
            f"{name}: not for {hours:g} hours without a freezer. Buy it on the way, at most {said} before the meal, or"
            " take canned, cured or dried food instead."
        )
    ledger.note(
        RAW_DAYS.says(name, food=name, limit=limit("cold_f"), days=said, hours=hours, verdict=verdict)
    )
