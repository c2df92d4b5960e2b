"""The parts of a trip's plan in words, the same in every form."""

from __future__ import annotations

import re
import textwrap
from collections import Counter
from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta
from itertools import groupby

from assistant.show import words
from assistant.show.plain import one_line
from rules.plan import Reason
from rules.trip.model import Buy, CoolerPlan, Diet, Dish, Layer, Packed, Share, TripFuel, TripMoment, TripPlan
from rules.wording import mass


def moment(written: str) -> str:
    """A written moment as it is told: "Fri 2 Jul 18:30"."""
    when = datetime.fromisoformat(written)
    return f"{words.date(when)} {when:%H:%M}"


def date(written: str) -> str:
    """The day of a written moment."""
    return words.date(datetime.fromisoformat(written))


def hour(written: str) -> str:
    """The time of a written moment."""
    return written.partition("T")[2]


#: A title longer than this is cut after a whole word.
LONGEST_NAME = 28
#: Where a title goes on with something else than the dish.
SIDE = re.compile(r"\s+(?:for|with|in|on|from|at|over|to)\s+", re.IGNORECASE)
#: What more dishes than this call for is simply needed.
MOST_NAMED = 2


def names(plan: TripPlan) -> dict[str, str]:
    """By dish: its title, short enough for a list; numbered where two are cut to the same."""
    short = {dish.id: _short(one_line(dish.title, 200)) for dish in plan.dishes}
    counted = Counter(short.values())
    return {key: f"{name} ({key})" if counted[name] > 1 else name for key, name in short.items()}


def _short(title: str) -> str:
    """A title as it is, or up to what it is served with or for, or cut after a whole word."""
    if len(title) <= LONGEST_NAME:
        return title
    head = SIDE.split(title, maxsplit=1)[0]
    return textwrap.shorten(head, LONGEST_NAME, placeholder="") or title[:LONGEST_NAME]


def of_dishes(ids: Sequence[str], plan: TripPlan) -> str:
    """One or two dishes in words; nothing for more or for none."""
    named = names(plan)
    return words.joined([named[one] for one in ids]) if len(ids) <= MOST_NAMED else ""


def facts(plan: TripPlan) -> list[tuple[str, str]]:
    """Name and figure of what one looks for first."""
    told = [("People", str(plan.people))] if plan.people else []
    told += [
        ("We leave", moment(plan.leave)),
        ("Meals", str(len(meals(plan)))),
        ("Dishes", str(len(plan.dishes))),
    ]
    if plan.fuel:
        told.append(("Briquettes to bring", str(plan.fuel.briquettes)))
    ice = sum(one.ice_kg for one in plan.coolers)
    if ice:
        told.append(("Ice to bring", mass(ice, plan.units)))
    return told


def meals(plan: TripPlan) -> list[tuple[str, list[Dish]]]:
    """The dishes by meal: "Fri 2 Jul 18:30, Friday supper"."""
    grouped = groupby(plan.dishes, key=lambda dish: (dish.eat, dish.meal))
    return [(f"{moment(eat)}, {one_line(meal, 60)}", list(dishes)) for (eat, meal), dishes in grouped]


def pot(dish: Dish) -> str:
    """The pot of a dish, and when it is ready where that is not the meal."""
    told = words.pot(dish.plan.pot) if dish.plan.pot else "no pot"
    return told if dish.ready == dish.eat else f"{told}, done {hour(dish.ready)}"


def aisles(plan: TripPlan) -> list[tuple[str, list[Buy]]]:
    """What to buy by aisle, and last what most kitchens have."""
    to_buy = [line for line in plan.shopping if not line.likely_at_home]
    at_home = [line for line in plan.shopping if line.likely_at_home]
    found = [
        (words.capital(aisle or "other"), list(lines))
        for aisle, lines in groupby(to_buy, key=lambda line: line.aisle)
    ]
    return [*found, *([("Look at home first", at_home)] if at_home else [])]


def bought(line: Buy, plan: TripPlan) -> str:
    """Who needs how much of it, and what is left over."""
    named = names(plan)
    if len(line.for_) == 1:
        for_whom = f"{_asked(line.for_[0])} for {named[line.for_[0].dish]}"
    elif line.for_:
        parts = ", ".join(f"{_asked(share)} for {named[share.dish]}" for share in line.for_)
        for_whom = f"{line.need}: {parts}"
    else:
        for_whom = line.need
    return f"{for_whom}; {line.left_over} left over" if line.left_over else for_whom


def _asked(share: Share) -> str:
    """What one dish needs; "some" where its recipe leaves it open."""
    return share.need if share.amounts else "some"


def boxes(plan: TripPlan) -> list[tuple[str, list[Packed]]]:
    """The packing list box by box."""
    return [(words.capital(box), list(rows)) for box, rows in groupby(plan.packing, key=lambda row: row.box)]


def layer(one: Layer, plan: TripPlan) -> str:
    """One pack of a cooler: what, for when, how long it is ice."""
    named = names(plan)
    out = words_of_hours(plan, one.out_h)
    told = f"{words.capital(one.label)} ({one.pack} of {named[one.dish]}), out {out}"
    if one.frozen_until_h is not None:
        until = (
            f"until {words_of_hours(plan, one.frozen_until_h)}"
            if one.frozen_until_h < one.out_h
            else "until it is taken out"
        )
        told += f"; serves as ice {until}, then {one.state}"
    return f"{told}; {one.note}" if one.note else told


def words_of_hours(plan: TripPlan, hours: float) -> str:
    """The moment so many hours after the coolers are shut."""
    packed = next((task.at for task in plan.home if task.kind == "pack"), plan.leave)
    return moment(f"{datetime.fromisoformat(packed) + timedelta(hours=hours):%Y-%m-%dT%H:%M}")


def course(cooler: CoolerPlan, plan: TripPlan) -> Iterator[tuple[str, str, str, str]]:
    """The cooler's readings: when, inside, ice left, packs still frozen."""
    for reading in cooler.course:
        inside = words.degrees(reading.inside_c * 1.8 + 32, plan.units)
        yield (
            words_of_hours(plan, reading.at_h),
            inside,
            mass(round(reading.ice_kg, 1), plan.units),
            str(reading.frozen),
        )


def fuel(total: TripFuel, plan: TripPlan) -> str:
    """All the charcoal in one sentence."""
    saved = f", {total.saved} fewer where pots are stacked" if total.saved else ""
    return (
        f"Bring {total.briquettes} briquettes, {mass(total.kg, plan.units)}: {total.lit} are lit in"
        f" {len(total.lightings)} lightings{saved}, and {total.reserve} are the reserve."
    )


def lightings(plan: TripPlan) -> Iterator[tuple[str, str, str]]:
    """When, how many, for which dishes."""
    named = names(plan)
    for lit in plan.fuel.lightings if plan.fuel else ():
        if len(lit.for_) == 1:
            yield moment(lit.at), str(lit.count), named[lit.for_[0].dish]
        else:
            yield (
                moment(lit.at),
                str(lit.count),
                ", ".join(f"{part.count} for {named[part.dish]}" for part in lit.for_),
            )


def diets(plan: TripPlan) -> Iterator[tuple[str, str, str]]:
    """Who, which dish, what to do; dishes that fit are told together."""
    named = names(plan)
    for (person, avoids), rows in groupby(plan.diets, key=lambda diet: (diet.person, diet.avoids)):
        found = list(rows)
        who = f"{person}, {avoids}"
        for diet in found:
            if diet.verdict != "fits":
                yield who, named[diet.dish], diet.said
        if fits := [named[diet.dish] for diet in found if diet.verdict == "fits"]:
            yield who, words.joined(fits), "fits as it is"


def diets_of(dish: Dish, plan: TripPlan) -> Iterator[str]:
    """What to mind about one dish, person by person."""
    for diet in plan.diets:
        if diet.dish == dish.id and diet.verdict != "fits":
            yield f"{diet.person} avoids {diet.avoids}: {_lower(diet)}"


def _lower(diet: Diet) -> str:
    return diet.said[:1].lower() + diet.said[1:]


def by_date(moments: Sequence[TripMoment]) -> list[tuple[str, list[TripMoment]]]:
    """The calendar by days."""
    return [(day, list(rows)) for day, rows in groupby(moments, key=lambda one: date(one.at))]


def reasons(plan: TripPlan) -> list[tuple[str, list[Reason]]]:
    """The trip's own reasons by what they are about."""
    return [(about, list(rows)) for about, rows in groupby(plan.why, key=lambda reason: reason.about)]
