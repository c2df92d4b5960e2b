"""One page: a trip becomes its plan, in the order in which the rooms are asked.

Each dish is planned as always; then the pots are settled, the fire and the coolers joined, the lists added up. Nothing
is decided here, and nothing knows how the trip was told or is shown.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime

from rules.because import Ledger
from rules.circumstances import Day
from rules.plan import Caution, Question
from rules.problem import UsageProblem
from rules.trip import dishes as the_dishes
from rules.trip import times
from rules.trip.calendar import calendar
from rules.trip.cooler import coolers
from rules.trip.diets import diets
from rules.trip.fire import fuel
from rules.trip.home import schedule
from rules.trip.irons import uses
from rules.trip.loading import load
from rules.trip.model import CoolerPlan, Diet, Dish, Settled, Trip, TripFuel, TripPlan
from rules.trip.packing import packing
from rules.trip.settle import settle
from rules.trip.shopping import shopping

#: What is asked once for the trip is not asked again for every dish.
ASKED_ONCE = frozenset({"trip", "cooler", "people", "pot"})


def plan(trip: Trip) -> TripPlan:
    """The whole trip, joined up.

    Raises:
        UsageProblem: when there is no meal, or a circumstance cannot be.
        BrokenInvariant: as `rules.convert.camp`.
    """
    if not trip.meals:
        raise UsageProblem("meals", "(none)", "a trip has at least one meal")
    ledger = Ledger()
    leave = times.leaving(trip, ledger)
    arrive = times.later(leave, 60 * trip.drive_hours)
    _ask(trip, ledger)

    # Every dish for itself, then all of them over one fire.
    first = [
        the_dishes.planned(str(number), meal, trip, leave=leave)
        for number, meal in enumerate(the_dishes.in_order(trip), start=1)
    ]
    dishes, booked, settled = settle(first, trip, leave, ledger)
    names = the_dishes.names(dishes)
    coals = fuel(dishes, booked, names, trip.zone, ledger)

    # The cold, the lists, the days.
    loaded = load(dishes, trip, leave, ledger)
    cold = coolers(loaded, trip, leave, ledger)
    home = schedule(dishes, loaded, sum(one.ice_kg for one in cold), trip.zone, leave, ledger)
    people = the_dishes.people(trip)
    eaters = diets(dishes, trip.persons, ledger)
    return TripPlan(
        name=trip.name,
        people=people,
        persons=trip.persons,
        leave=times.written(leave),
        arrive=times.written(arrive),
        units=trip.units,
        zone=trip.zone,
        dishes=dishes,
        shopping=shopping(dishes, coals, trip.units, ledger),
        packing=packing(dishes, booked, cold, coals, people, trip.units, ledger),
        coolers=cold,
        fuel=coals,
        pots=uses(booked),
        settled=settled,
        home=home,
        calendar=calendar(dishes, home, coals, names, leave=leave, arrive=arrive, zone=trip.zone),
        diets=eaters,
        warnings=tuple(_warnings(dishes, settled, cold, eaters, names, arrive, trip.zone)),
        cautions=_cautions(dishes, coals),
        questions=(*ledger.questions, *_questions(dishes)),
        why=ledger.reasons,
        file=trip.file,
    )


def _ask(trip: Trip, ledger: Ledger) -> None:
    """What the trip leaves open, once for all dishes."""
    if the_dishes.people(trip) is None:
        ledger.ask("people", "How many come along?", "every recipe once, as written")
    if not trip.pots and not any(meal.pots for meal in trip.meals):
        ledger.ask("pot", "Which camp ovens come along?", "one 12-inch camp oven, shallow")
    if trip.cooler_air_f is None:
        ledger.ask("air", "How warm is the air around the coolers, over day and night?", _air(trip))


def _air(trip: Trip) -> str:
    from rules.cold.hours import air_f

    return f"{air_f(Day(air_f=trip.air_f)):.0f} °F"


def _warnings(
    dishes: Sequence[Dish],
    settled: Sequence[Settled],
    cold: Sequence[CoolerPlan],
    eaters: Sequence[Diet],
    names: dict[str, str],
    arrive: datetime,
    zone: str | None,
) -> Iterator[str]:
    """What someone has to put right, the most pressing first."""
    for dish in dishes:
        begins = times.later(
            times.moment(dish.ready, zone),
            min((moment.at_min for moment in dish.plan.timeline if moment.kind == "light"), default=0.0),
        )
        if times.minutes_between(arrive, begins) < 0:
            yield (
                f"{names[dish.id]}: its coals are lit at {times.said(begins)}, and you arrive at"
                f" {times.said(arrive)}: eat later, or leave earlier."
            )
    yield from (clash.said for clash in settled if clash.way == "open")
    for diet in eaters:
        if diet.verdict == "another dish":
            yield f"{names[diet.dish]}: {diet.said}"
    of_the_coolers = [note for one in cold for note in one.notes[1:]]
    yield from of_the_coolers
    for dish in dishes:
        # What the coolers say of a dish rests on the whole trip; its own plan only knows an average cooler.
        if not any(dish.title in note for note in of_the_coolers):
            for note in dish.plan.cold.notes if dish.plan.cold else ():
                yield f"{names[dish.id]}: {note}"


def _cautions(dishes: Sequence[Dish], coals: TripFuel | None) -> tuple[Caution, ...]:
    """Every caution in every wording that a dish gives it, once; one that only begins another is told with it."""
    said: dict[str, Caution] = {}
    for dish in dishes:
        for caution in dish.plan.cautions:
            text = of_the_trip(caution, dish, coals)
            said.setdefault(text, Caution(id=caution.id, text=text, source=caution.source))
    return tuple(
        caution
        for text, caution in said.items()
        if not any(other != text and other.startswith(text) for other in said)
    )


def of_the_trip(caution: Caution, dish: Dish, coals: TripFuel | None) -> str:
    """A dish's caution in the words of the trip: all the briquettes burn, not the dish's alone."""
    heat = dish.plan.heat
    if heat is None or coals is None:
        return caution.text
    return caution.text.replace(
        f"{heat.fuel.briquettes} briquettes", f"{coals.briquettes} briquettes"
    ).replace("of this plan", "of this trip")


def _questions(dishes: Sequence[Dish]) -> Iterator[Question]:
    """The dishes' own questions, with the dish before them."""
    for dish in dishes:
        for ask in dish.plan.questions:
            if ask.about not in ASKED_ONCE:
                yield Question(about=f"{dish.title}: {ask.about}", text=ask.text, default=ask.default)
