"""The part of the day at home: shopping, kitchen work, the cold, the cooler packed and shut."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from rules import clock
from rules.because import Ledger, Rule
from rules.circumstances import Day
from rules.day.figures import figure
from rules.day.task import Task
from rules.day.waiting import MADE, is_at_home, long
from rules.plan import Cold, Pack
from rules.recipe import Recipe
from rules.waits import waits
from rules.wording import mass, short_names

EVENING = Rule(
    id="day.evening",
    because="kitchen work that would fall between {night:.0f}:00 and {morning:.0f}:00 is done on the evening before",
)
#: At home nobody looks at the minute.
QUARTER_HOUR = 15
LONG_WAITS = frozenset({"marinate", "rise", "chill"})


def at_home(
    recipe: Recipe,
    packs: Sequence[Pack],
    cold: Cold | None,
    home_steps: Sequence[str],
    shut: float,
    day: Day,
    ledger: Ledger,
) -> Iterator[Task]:
    """From the shop to the road; `shut` is when the cooler is shut [min from the meal]."""
    names = short_names(packs)
    made = [pack for pack in packs if pack.kind in ("dry mix", "wet mix", "prepped")]
    chilled = [pack for pack in made if pack.travels != "shelf"]
    frozen = [pack for pack in packs if cold is not None and pack.id in cold.frozen_packs]
    work = figure("home_min").value + figure("home_pack_min").value * len(made)
    # The bags are done so early that the cold has its time before the cooler is shut.
    wait = figure("fridge_min").value if chilled else 0.0
    if frozen and cold is not None and cold.freeze_hours:
        wait = 60 * cold.freeze_hours.high
    waited = longest_wait(recipe, packs) if any(pack.kind in MADE for pack in made) else 0.0
    begin = shut - wait - waited
    if made or home_steps:
        begin = not_at_night(begin - work, day, ledger)
        then = f" Something in it waits {long(waited)}." if waited else ""
        what = "; ".join(names[pack.id] for pack in made) or "the steps for home"
        yield Task(begin, "home", f"Kitchen work: {what}.{then}", work, "the kitchen work")
        begin += work
    # What rises or ferments does so before the cold; what chills or marinates does it there.
    warm = waited if _waits_in_the_warm(recipe, waited) else 0.0
    sold_frozen = frozenset(bag.pack for bag in cold.bags if bag.bought_frozen) if cold else frozenset()
    yield from _into_the_cold(names, frozen, chilled, sold_frozen, begin + warm, freezer=day.freezer)
    yield Task(not_at_night(begin - work - figure("shop_min").value, day, ledger), "home", "Shop.")
    yield Task(shut, "home", _packed(packs, cold, day))
    yield Task(shut + figure("leave_min").value, "home", "Leave.")


def _into_the_cold(
    names: dict[str, str],
    frozen: Sequence[Pack],
    chilled: Sequence[Pack],
    sold_frozen: frozenset[str],
    at_min: float,
    *,
    freezer: bool,
) -> Iterator[Task]:
    flat = [names[pack.id] for pack in frozen if pack.id not in sold_frozen]
    hard = [names[pack.id] for pack in frozen if pack.id in sold_frozen]
    if flat:
        yield Task(at_min, "home", f"Lay flat in the freezer: {'; '.join(flat)}.")
    if hard and freezer:
        yield Task(at_min, "home", f"Into the freezer as it was bought: {'; '.join(hard)}.")
    if cool := [names[pack.id] for pack in chilled if pack not in frozen]:
        yield Task(at_min, "home", f"Into the refrigerator: {'; '.join(cool)}.")


def longest_wait(recipe: Recipe, packs: Sequence[Pack] = ()) -> float:
    """The longest rise, marinade or chill that is done at home before packing [min]; short ones hide in the work.

    With `packs`, waits of what is put together at camp are left out. What is preserved or fermented waits its longest
    time of any kind.
    """
    kept = recipe.family == "preserve or ferment"
    later = {
        (wait.what, wait.low_min)
        for wait in waits(recipe)
        if packs and not kept and not is_at_home(wait, packs)
    }
    found = [
        span.low_min
        for step in recipe.steps
        for span in step.durations
        if kept or (span.what in LONG_WAITS and (span.what, span.low_min) not in later)
    ]
    return max((minutes for minutes in found if minutes >= figure("long_wait_min").value), default=0.0)


def _waits_in_the_warm(recipe: Recipe, minutes: float) -> bool:
    return minutes > 0 and any(
        span.low_min == minutes and span.what not in ("chill", "marinate")
        for step in recipe.steps
        for span in step.durations
    )


def _packed(packs: Sequence[Pack], cold: Cold | None, day: Day) -> str:
    if cold is None:
        return "Pack the box and the kit, fuel counted."
    # Two sticks of butter lie side by side: here nobody minds for which part each is.
    names = {pack.id: short_names([pack])[pack.id] for pack in packs}
    order = "; then ".join(
        ", ".join(dict.fromkeys(names[pack] for pack in layer.packs)) for layer in cold.layers
    )
    ice = f" {mass(cold.ice_kg, day.units)} of ice beside and on top;" if cold.ice_kg else ""
    late = [names[bag.pack] for bag in cold.bags if bag.bought_frozen and not day.freezer]
    first = f"Fetch hard from the shop: {', '.join(late)}. " if late else ""
    return f"{first}Pack the cooler from the bottom up: {order};{ice} shut it. Shelf packs and kit beside it, fuel counted."


def not_at_night(at_min: float, day: Day, ledger: Ledger) -> float:
    """A quarter of an hour for work in the kitchen; what would fall into the night moves to the evening before it."""
    at_min = QUARTER_HOUR * math.floor(at_min / QUARTER_HOUR)
    back = back_to_the_evening(at_min, day)
    if back:
        night, morning = figure("night_from_h").value, figure("night_to_h").value
        ledger.note(EVENING.says("day", figure("evening_h"), night=night, morning=morning))
    return at_min - back


def back_to_the_evening(at_min: float, day: Day) -> float:
    """Minutes from a moment in the night back to the evening before it; none by day, or where no clock is known."""
    moment = clock.at(day, at_min)
    if moment is None:
        return 0.0
    night, morning, evening = (figure(key).value for key in ("night_from_h", "night_to_h", "evening_h"))
    hour = moment.hour + moment.minute / 60
    if morning <= hour < night:
        return 0.0
    return 60 * (hour - evening if hour >= night else hour + 24 - evening)
