"""A pot with its food over its coals: what heats, what loses, and what has to be held (handbook chapter 5).

Puts the iron, the food and the day's coals together for `burn`. The printed count is taken to be right: what the pot
loses is so found that the usual pot holds the printed temperature.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import Literal

from rules.coals.balance import INCH
from rules.coals.burn import DEGREES_F_PER_K, Body, Ember, State, after, history, modes
from rules.coals.counts import Way
from rules.coals.figures import figure
from rules.coals.glow import ember
from rules.coals.highground import boiling_f
from rules.coals.vessel import iron
from rules.plan import Depth
from rules.recipe import Struct

POUND_KG = 0.45359237  # exact by definition
#: The pot is looked at this often [min].
EVERY = 5.0
#: How much of the band is left when something has to be done [°F]: the iron falls fast, a simmer slowly.
IRON_TRIGGER_F, SIMMER_TRIGGER_F = 2.0, 6.0
#: A usual bake: the pot is warmed over its coals so long; within so long after that it is at its hottest [min].
USUAL_PREHEAT_MIN, USUAL_PEAK_MIN = 18.0, 50.0
#: Food starts out of the cooler, or the pot of water out of the can, about here [°F].
FOOD_STARTS_F = 60.0
OPEN: frozenset[Way] = frozenset({"fry", "gentle fry"})
WET: frozenset[Way] = frozenset({"simmer", "boil", "bring up"})


class Cook(Struct, frozen=True, kw_only=True):
    """What is followed: the pot with its food, its coals, and what has to stay between `low_f` and `high_f`."""

    body: Body
    ember: Ember
    start: State
    holds: Literal["iron", "food"]
    aim_f: float
    low_f: float
    high_f: float
    trigger_f: float
    #: how long the coals have lain when the stage begins [min]
    age_min: float = 0.0

    def held(self, state: State) -> float:
        """The temperature that matters [°F]."""
        return state.iron_f if self.holds == "iron" else state.food_f


@lru_cache(maxsize=2048)
def cook(
    *,
    way: Way,
    coals: float,
    exact: float,
    aim_f: float,
    diameter_in: int,
    depth: Depth,
    air_f: float,
    faster: float,
    elevation_ft: float,
    food_kg: float,
    food_heat: float | None = None,
    age_min: float = 0.0,
    preheat_min: float = 0.0,
) -> Cook:
    """A pot at the start of a stage: `coals` briquettes on it where `exact` ones would hold `aim_f` on this day.

    A simmer starts at the boil; anything else with the iron as warm as `preheat_min` minutes over its coals make it.
    `food_heat` [J/(kg K)] is that of moist food where nothing is said; 0 kg is an empty pot.
    """
    burning = ember(faster)
    body = pot_body(
        way=way,
        loss_w_k=open_loss(coals=exact, aim_f=aim_f, air_f=air_f)
        if way in OPEN
        else held_loss(
            coals=exact, aim_f=aim_f, diameter_in=diameter_in, depth=depth, air_f=air_f, faster=faster
        ),
        diameter_in=diameter_in,
        depth=depth,
        air_f=air_f,
        boil_f=boiling_f(elevation_ft),
        food_kg=food_kg,
        food_heat=food_heat,
    )
    lit = modes(burning, coals, age_min)
    if way == "simmer" and aim_f <= figure("simmer").value:
        start = State(iron_f=body.boil_f, food_f=body.boil_f, modes=lit)
        low = body.boil_f - figure("simmer band").value
        return Cook(
            body=body,
            ember=burning,
            start=start,
            holds="food",
            aim_f=aim_f,
            low_f=low,
            high_f=body.boil_f,
            trigger_f=SIMMER_TRIGGER_F,
            age_min=age_min,
        )
    # The coals that warmed the pot are those that lie on it now, so much younger.
    start = warmed(body, burning, modes(burning, coals, max(age_min - preheat_min, 0.0)), preheat_min)
    band = figure("band").value
    return Cook(
        body=body,
        ember=burning,
        start=start,
        holds="iron",
        aim_f=aim_f,
        low_f=aim_f - band,
        high_f=aim_f + band,
        trigger_f=IRON_TRIGGER_F,
        age_min=age_min,
    )


def pot_body(
    *,
    way: Way,
    loss_w_k: float,
    diameter_in: int,
    depth: Depth,
    air_f: float,
    boil_f: float,
    food_kg: float,
    food_heat: float | None = None,
) -> Body:
    """A pot of that size and food as two heat capacities and two conductances."""
    contact = figure("contact wet" if way in WET else "contact baked").value if food_kg else 0.0
    return Body(
        iron_j_k=iron(diameter_in, depth).weight_lb * POUND_KG * figure("iron heat").value,
        loss_w_k=loss_w_k,
        food_j_k=food_kg * (figure("food heat").value if food_heat is None else food_heat),
        contact_w_k=contact * math.pi * (diameter_in * INCH / 2) ** 2,
        air_f=air_f,
        boil_f=boil_f,
    )


def warmed(body: Body, burning: Ember, lit: tuple[float, ...], minutes: float) -> State:
    """The pot when its food goes in: the iron has stood `minutes` over its coals, empty."""
    empty = Body(
        iron_j_k=body.iron_j_k,
        loss_w_k=body.loss_w_k,
        food_j_k=0.0,
        contact_w_k=0.0,
        air_f=body.air_f,
        boil_f=body.boil_f,
    )
    state = after(State(iron_f=body.air_f, food_f=FOOD_STARTS_F, modes=lit), empty, burning, minutes)
    return State(iron_f=state.iron_f, food_f=FOOD_STARTS_F, modes=state.modes)


@lru_cache(maxsize=1024)
def held_loss(
    *, coals: float, aim_f: float, diameter_in: int, depth: Depth, air_f: float, faster: float
) -> float:
    """What a pot loses [W per K over the air] if `coals` briquettes are the right count for `aim_f` on this day.

    So found that a usual pot (warmed, two fifths full) comes to the aim and not above it: the printed chart wins over
    the correlations, which differ from it by what `misfit` tells.
    """
    low, high = 0.05, 60.0
    for _ in range(24):
        middle = math.sqrt(low * high)
        hot = _usual_f(middle, coals, diameter_in, depth, air_f, faster) > aim_f
        low, high = (middle, high) if hot else (low, middle)
    return math.sqrt(low * high)


def open_loss(*, coals: float, aim_f: float, air_f: float) -> float:
    """What an open pan with its food loses [W per K over the air] if `coals` briquettes hold its fat at `aim_f`."""
    return coals * ember().reaching_w / ((aim_f - air_f) / DEGREES_F_PER_K)


def usual_kg(diameter_in: int, depth: Depth = "shallow") -> float:
    """Food [kg] in a pot as full as pots usually are: the frustum's volume times the fill, as heavy as water."""
    pot = iron(diameter_in, depth)
    top, bottom = pot.diameter_in * INCH / 2, pot.bottom_in * INCH / 2
    liters = math.pi / 3 * pot.depth_in * INCH * (top * top + top * bottom + bottom * bottom) * 1000
    return liters * figure("usual fill").value


def _usual_f(
    loss_w_k: float,
    coals: float,
    diameter_in: int,
    depth: Depth,
    air_f: float,
    faster: float,
) -> float:
    """What the iron of a usual pot is taken to hold [°F]: the hottest that it gets."""
    body = pot_body(
        way="bake",
        loss_w_k=loss_w_k,
        diameter_in=diameter_in,
        depth=depth,
        air_f=air_f,
        boil_f=boiling_f(0.0),
        food_kg=usual_kg(diameter_in, depth),
    )
    burning = ember(faster)
    start = warmed(body, burning, modes(burning, coals), USUAL_PREHEAT_MIN)
    points = history(start, body, burning, minutes=USUAL_PEAK_MIN, every_min=EVERY)
    return max(state.iron_f for _, state in points)


class Point(Struct, frozen=True, kw_only=True):
    """A moment of a cook [min from its start]: iron and food [°F], and the heat that reaches the pot [W]."""

    at_min: float
    iron_f: float
    food_f: float
    heat_w: float


def temperatures(
    cook: Cook, *, minutes: float, fresh: Sequence[tuple[float, float]] = (), every_min: float = EVERY
) -> tuple[Point, ...]:
    """The course of a cook with its `fresh` coals (at minute, how many), every `every_min` minutes."""
    points = history(cook.start, cook.body, cook.ember, minutes=minutes, fresh=fresh, every_min=every_min)
    return tuple(
        Point(at_min=at, iron_f=state.iron_f, food_f=state.food_f, heat_w=state.heat_w)
        for at, state in points
    )
