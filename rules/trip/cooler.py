"""The coolers over the whole trip: how much ice, how long frozen packs serve as ice, how each pack is when it is wanted.

The least ice that keeps the inside at 40 °F until the last pack is out is found by running `rules.trip.thermal`; the
margin of the cold chapter comes on top. Whatever does not fit is told with the moment at which new ice is due.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from datetime import datetime

from rules.because import Ledger, Rule
from rules.circumstances import Day
from rules.cold.cooler import room_for_ice_kg
from rules.cold.freezing import enthalpy
from rules.cold.hours import air_f, celsius, figure
from rules.plan import BagState
from rules.trip import times
from rules.trip.loading import Loaded, Pile, drips_on
from rules.trip.model import CoolerPlan, Energy, Layer, Reading, Trip
from rules.trip.thermal import Bagged, Cooled, Course, Load, State, curve, run
from rules.wording import mass

ICE = Rule(
    id="cooler.ice",
    because="in {hours:.0f} hours at {air:.0f} °F the walls of {name} let in {leak:.0f} kJ and the lid {openings:.0f};"
    " frozen packs take up {bags:.0f} of it and {ice:g} kg of ice with its margin keep the rest at 40 °F or below",
    source="simulation from the leak of the walls, the thawing of the packs and the melting of the ice"
    " (tables/cold_figures.csv)",
)
SERVES = Rule(
    id="cooler.serves",
    because="{label} stays frozen for {hours:.0f} hours and takes up {heat:.0f} kJ until it is wanted, as much as"
    " {ice:.1f} kg of ice",
    source="simulation from composition, thickness and the air in the cooler (tables/cold_figures.csv)",
)
THAWED_EARLY = Rule(
    id="cooler.thawed-early",
    because="{label} is thawed by {when} and keeps {days} at 40 °F from then, which does not last until its meal",
    source="simulation of the cooler; food tables, low end of the days of USDA FSIS FoodKeeper",
)
HOURS_PER_DAY = 24
#: Food is kept at or below this [°C]: 40 °F.
SAFE_C = 40 / 1.8 - 32 / 1.8
MOST_ICE_KG = 200.0
ICE_STEP_KG = 0.5
READING_H = 6.0
SOFT_SHARE = 0.15


def coolers(loaded: Sequence[Loaded], trip: Trip, leave: datetime, ledger: Ledger) -> tuple[CoolerPlan, ...]:
    """Each cooler with its layers, its ice and its course."""
    return tuple(_planned(one, trip, leave, ledger) for one in loaded if one.piles)


def _planned(one: Loaded, trip: Trip, leave: datetime, ledger: Ledger) -> CoolerPlan:
    around = air_f(Day(air_f=trip.air_f, trip_air_f=trip.cooler_air_f))
    least = least_ice_kg(one, celsius(around))
    bring = math.ceil(least * figure("ice_margin").value / ICE_STEP_KG) * ICE_STEP_KG
    load = _load(one, celsius(around), bring)
    course = run(load)
    gone = next((state.at_h for state in course.states if bring and state.ice_kg < 0.01), None)
    ledger.note(
        ICE.says(
            one.name,
            figure("cooler_ua"),
            hours=one.hours,
            air=around,
            name=one.name,
            leak=course.leak,
            openings=course.openings,
            bags=course.bags,
            ice=bring,
        )
    )
    return CoolerPlan(
        name=one.name,
        quarts=one.quarts,
        layers=tuple(_layer(pile, one, course, ledger) for pile in one.piles),
        hours=round(one.hours, 2),
        ice_kg=bring,
        ice_gone_h=gone,
        warmest_c=round(_warmest(course), 2),
        fill=round(one.liters / _liters(one), 2),
        energy=_energy(load, course),
        course=tuple(_readings(load, course)),
        notes=(*_notes(one, bring, trip, leave), *_thawed_early(one, course, leave, ledger)),
    )


def least_ice_kg(one: Loaded, air_c: float) -> float:
    """The least ice [kg], to the half kilogram, that keeps the inside cold until the last pack is taken out."""

    def keeps(steps: int) -> bool:
        return _warmest(run(_load(one, air_c, steps * ICE_STEP_KG))) <= SAFE_C

    low, high = -1, int(MOST_ICE_KG / ICE_STEP_KG)
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if keeps(middle) else (middle, high)
    return high * ICE_STEP_KG


def _load(one: Loaded, air_c: float, ice_kg: float) -> Load:
    known = [(pile, pile.made_of, pile.kg) for pile in one.piles if pile.made_of is not None and pile.kg]
    return Load(
        quarts=one.quarts,
        air_c=air_c,
        hours=one.hours,
        ice_kg=ice_kg,
        frozen=tuple(
            Bagged(key=pile.key, made_of=made_of, kg=kg, thick=pile.thick, out_h=pile.out_h)
            for pile, made_of, kg in known
            if pile.thick is not None
        ),
        cool=tuple(
            Cooled(key=pile.key, made_of=made_of, kg=kg, out_h=pile.out_h)
            for pile, made_of, kg in known
            if pile.thick is None
        ),
    )


def _warmest(course: Course) -> float:
    """The warmest that the inside gets once what went in has cooled [°C]."""
    settled = times.figure("settle_h").value
    last = course.states[-1].at_h
    return max((state.inside_c for state in course.states if min(settled, last) <= state.at_h), default=0.0)


def _energy(load: Load, course: Course) -> Energy:
    """The balance; what the bags took is counted from their temperatures, not from what flowed."""
    ice = course.melted_kg * figure("latent_heat").value
    out = dict(course.out)
    bags = sum(
        bag.kg
        * (
            enthalpy(bag.made_of, curve(bag.made_of).temp(out[bag.key]))
            - enthalpy(bag.made_of, figure("freezer").value)
        )
        for bag in load.frozen
    )
    return Energy(
        leak=course.leak,
        openings=course.openings,
        food=course.cooled,
        ice=ice,
        bags=bags,
        missing=course.leak + course.openings + course.cooled - ice - bags,
    )


def _readings(load: Load, course: Course) -> Iterator[Reading]:
    """The course every six hours and at its end."""
    curves = {bag.key: curve(bag.made_of) for bag in load.frozen}
    soft = figure("mostly_thawed").value
    due = 0.0
    for state in course.states:
        if state.at_h >= due - 1e-9 or state is course.states[-1]:
            due = state.at_h + READING_H
            yield Reading(
                at_h=round(state.at_h, 2),
                inside_c=round(state.inside_c, 2),
                ice_kg=round(state.ice_kg, 2),
                frozen=sum(curves[key].thawed_share(held) < soft for key, held in state.bags),
            )


def _layer(pile: Pile, one: Loaded, course: Course, ledger: Ledger) -> Layer:
    under = drips_on(pile, one)
    plain = Layer(
        dish=pile.dish.id,
        pack=pile.pack.id,
        label=pile.pack.label,
        travels=pile.pack.travels,
        out_h=round(pile.out_h, 2),
        kg=round(pile.kg, 3) if pile.kg else None,
        temp_c=round(_inside_at(course, pile.out_h), 1),
        note="raw: in a lidded box of its own, above food that is eaten as it is" if under else None,
    )
    held = dict(course.out).get(pile.key)
    if pile.made_of is None or pile.kg is None or held is None:
        return plain
    line = curve(pile.made_of)
    share = line.thawed_share(held)
    until = _frozen_until(pile, course)
    if not until:
        return plain
    heat = pile.kg * (held - line.solid)
    ledger.note(
        SERVES.says(
            pile.pack.label,
            label=pile.pack.label,
            hours=until,
            heat=heat,
            ice=heat / figure("latent_heat").value,
        )
    )
    return Layer(
        dish=plain.dish,
        pack=plain.pack,
        label=plain.label,
        travels=plain.travels,
        out_h=plain.out_h,
        kg=plain.kg,
        frozen_until_h=round(until, 2),
        state=_state(share),
        temp_c=round(line.temp(held), 1),
        heat_kj=round(heat, 1),
        note=plain.note,
    )


def _state(share: float) -> BagState:
    if share >= figure("mostly_thawed").value:
        return "thawed"
    return "frozen" if share < SOFT_SHARE else "part thawed"


def _frozen_until(pile: Pile, course: Course) -> float:
    """How long it has ice in it: until it is mostly thawed, or taken out."""
    assert pile.made_of is not None
    line, soft = curve(pile.made_of), figure("mostly_thawed").value
    for state in course.states:
        held = dict(state.bags).get(pile.key)
        if held is None or line.thawed_share(held) >= soft:
            return min(state.at_h, pile.out_h)
    return pile.out_h


def _inside_at(course: Course, at_h: float) -> float:
    near: State = min(course.states, key=lambda state: abs(state.at_h - at_h))
    return near.inside_c


def _liters(one: Loaded) -> float:
    return one.quarts * 0.946353


def _notes(one: Loaded, bring: float, trip: Trip, leave: datetime) -> Iterator[str]:
    """How much ice, whether it fits, and what to do where it does not."""
    room = room_for_ice_kg(quarts=one.quarts, food_liters=one.liters)
    yield (
        f"Bring {mass(bring, trip.units)} of ice for {one.name}; keep it shut and in the shade, and leave the melt"
        " water in until new ice comes."
    )
    if one.liters > _liters(one):
        yield (
            f"The packs alone take {one.liters:.0f} of its {_liters(one):.0f} liters: bring another cooler, or buy what"
            " is wanted last on the way."
        )
    elif bring > room + 0.25:
        holds = run(_load(one, _air_c(trip), room))
        warm = next(
            (state.at_h for state in holds.states if state.at_h >= 3 and state.inside_c > SAFE_C), one.hours
        )
        when = times.said(times.later(times.shut(leave), 60 * warm))
        yield (
            f"That does not fit: {mass(round(room), trip.units)} go in beside the packs, and by {when} they no longer"
            f" hold 40 °F. Buy {mass(math.ceil(bring - room), trip.units)} on the way before then, or bring a larger"
            " cooler."
        )


def _thawed_early(one: Loaded, course: Course, leave: datetime, ledger: Ledger) -> Iterator[str]:
    """Raw food that is thawed longer before its meal than it keeps."""
    for pile in one.piles:
        if pile.keeps_days is None or pile.made_of is None or pile.thick is None:
            continue
        soft = _frozen_until(pile, course)
        if pile.out_h - soft > HOURS_PER_DAY * pile.keeps_days:
            when = times.said(times.later(times.shut(leave), 60 * soft))
            days = f"{pile.keeps_days} day{'' if pile.keeps_days == 1 else 's'}"
            ledger.note(THAWED_EARLY.says(one.name, label=pile.pack.label, when=when, days=days))
            yield (
                f"{pile.pack.label} of {pile.dish.title} is thawed by {when} and keeps {days} from then: cook it earlier, freeze"
                " it in a thicker parcel, or take canned, cured or dried food."
            )


def _air_c(trip: Trip) -> float:
    return celsius(air_f(Day(air_f=trip.air_f, trip_air_f=trip.cooler_air_f)))
