"""Fresh briquettes for a long cook: when they are lit, when they go on, how many (handbook chapter 5).

The pot is followed through the cook (`burn`). As soon as what matters would leave its band before the next chance, so
many fresh coals go on as hold it for the usual half hour, or to the end where that is near: the iron for a bake or
roast, the food for a simmer.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import lru_cache
from typing import Literal

from rules.because import Rule
from rules.circumstances import Day
from rules.coals.balance import INCH
from rules.coals.burn import Body, Ember, State, after, history, modes, with_coals
from rules.coals.chart import CHART_AIR_F, baseline, whole
from rules.coals.counts import Coals, Way
from rules.coals.figures import figure
from rules.coals.glow import ember
from rules.coals.highground import boiling_f
from rules.coals.vessel import iron
from rules.coals.weather import wind_factor
from rules.plan import Depth, Reason, Refresh
from rules.recipe import Struct

POUND_KG = 0.45359237  # exact by definition
#: The pot is looked at this often [min].
EVERY = 5.0
#: Fresh coals go on when less than this is left of the band [°F]; they are counted so that more than this stays.
TRIGGER_F, STEERED_F = 2.0, 5.0
#: A pot that does not boil by then wants more coals or less in it [min].
LONGEST_TO_BOIL_MIN = 60.0
#: Fresh coals are felt by a pot of food after this long [min].
FELT_AFTER_MIN = 15.0
#: Nobody lights a chimney for a coal or two: a renewing is this share of the first coals at least, by the clock more.
FEWEST_SHARE, BY_CLOCK_SHARE = 0.15, 0.25
#: A simmer falls by a few degrees in its last minutes, which no fresh coals would mend [°F, min].
SIMMER_TRIGGER_F, LAST_MIN = 6.0, 10.0
#: A pot that has not come into its band by then is helped [min].
SLOW_MIN = 30.0
#: A usual bake: the pot is warmed over its coals so long; within so long it is at its hottest [min].
USUAL_PREHEAT_MIN, USUAL_PEAK_MIN = 10.0, 50.0
#: Food starts out of the cooler, or the pot of water out of the can, about here [°F].
FOOD_STARTS_F = 60.0

RENEW = Rule(
    id="coals.renew",
    because="briquettes give useful heat for 45 to 60 minutes and fade: {minutes:.0f} minutes on the coals need {total}"
    " fresh ones, lit {chimney:.0f} minutes before they go on",
)


#: Where nothing is steered by temperature, coals are renewed when their heat has fallen to this share.
RENEWED_BELOW = 0.75
WET: frozenset[Way] = frozenset({"simmer", "boil", "bring up"})
UNFOLLOWED: frozenset[Way] = frozenset({"fry", "gentle fry", "boil", "bring up", "brown top"})


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
    age_min: float = 0.0,
    preheat_min: float = 0.0,
) -> Cook:
    """A pot at the start of a stage: `coals` briquettes on it where `exact` ones would hold `aim_f` on this day.

    A simmer starts at the boil; anything else with the iron as warm as `preheat_min` minutes over its coals make it.
    """
    burning = ember(faster)
    body = pot_body(
        way=way,
        loss_w_k=held_loss(
            coals=exact, aim_f=aim_f, diameter_in=diameter_in, depth=depth, air_f=air_f, faster=faster
        ),
        diameter_in=diameter_in,
        depth=depth,
        air_f=air_f,
        boil_f=boiling_f(elevation_ft),
        food_kg=food_kg,
    )
    lit = modes(burning, coals, age_min)
    if way == "simmer" and aim_f <= body.boil_f + 1:
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
        trigger_f=TRIGGER_F,
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
) -> Body:
    """A pot of that size and food as two heat capacities and two conductances."""
    contact = figure("contact wet" if way in WET else "contact baked").value
    return Body(
        iron_j_k=iron(diameter_in, depth).weight_lb * POUND_KG * figure("iron heat").value,
        loss_w_k=loss_w_k,
        food_j_k=food_kg * figure("food heat").value,
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

    So found that a usual pot (warmed, two fifths full) has the aim on the average once it is warm: the printed chart
    wins over the correlations, which differ from it by what `misfit` tells.
    """
    low, high = 0.05, 60.0
    for _ in range(24):
        middle = math.sqrt(low * high)
        hot = _usual_f(middle, coals, diameter_in, depth, air_f, faster) > aim_f
        low, high = (middle, high) if hot else (low, middle)
    return math.sqrt(low * high)


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
    """What the iron of a usual pot is taken to hold [°F]: a little under the hottest that it gets."""
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
    return max(state.iron_f for _, state in points) - figure("overshoot").value


@lru_cache(maxsize=2048)
def batches(cook: Cook, minutes: float) -> tuple[tuple[float, int], ...]:
    """Fresh coals (at minute, how many) that keep the cook in its band from the end of its warm-up."""
    found: list[tuple[float, int]] = []
    state, now, last, is_warm = cook.start, 0.0, -cook.age_min, cook.holds == "food"
    while now < minutes - 1e-9:
        step = min(EVERY, minutes - now)
        then = after(state, cook.body, cook.ember, step)
        is_warm = is_warm or cook.held(state) >= cook.low_f or now >= SLOW_MIN
        left = minutes - now
        needs = is_warm and cook.held(then) < cook.low_f + (cook.trigger_f if left > EVERY else 0.0)
        is_due = now > 0 and now - last >= figure("renew after").value and left > LAST_MIN and not found
        if cook.holds == "food":
            needs = needs and left > LAST_MIN and (not found or now - last >= FELT_AFTER_MIN)
            is_due = is_due or (now - last >= figure("renew simmer").value and left > LAST_MIN)
        more = (
            _enough(cook, state, left, at_least=BY_CLOCK_SHARE if is_due else FEWEST_SHARE)
            if needs or is_due
            else 0
        )
        if more:
            found.append((now, more))
            state, last = with_coals(state, cook.ember, more), now
            then = after(state, cook.body, cook.ember, step)
        state, now = then, now + step
    return tuple(found)


def _enough(cook: Cook, state: State, left_min: float, *, at_least: float) -> int:
    """The fewest fresh coals that last to the next renewing, or as many as the band's upper end bears.

    They are `at_least` that share of the first ones, where the band bears it.

    Temperatures follow the coals in proportion, but for the food's boiling; so two trials tell the count, and a few
    more settle it.
    """
    horizon = _horizon(cook, left_min)
    most = max(2, math.ceil(2 * sum(cook.start.modes) / cook.ember.reaching_w))

    def course(coals: int) -> list[float]:
        here, temps, left = with_coals(state, cook.ember, coals), [], horizon
        while left > 1e-9:
            step = min(EVERY, left)
            here = after(here, cook.body, cook.ember, step)
            temps.append(cook.held(here))
            left -= step
        return temps

    def least(coals: int) -> float:
        # The first moments are past mending by fresh coals; they count from when the coals have had time to act.
        temps = course(coals)
        return min(temps[1:] or temps) - cook.low_f - STEERED_F

    def room(coals: int) -> float:
        return cook.high_f - STEERED_F - max(course(coals))

    wanted = max(_root(least, most), math.ceil(at_least * cook.start.heat_w / cook.ember.reaching_w))
    if cook.holds == "iron" and room(wanted) < 0:
        wanted = _root(lambda coals: -room(coals), most) - 1
    return max(wanted, 0)


def _root(rising: Callable[[int], float], most: int) -> int:
    """The least whole number from 0 to `most` at which a nearly straight, rising function is not negative."""
    first, second = rising(0), rising(most)
    if first >= 0 or second < 0:
        return 0 if first >= 0 else most
    low, high = 0, most  # rising(low) < 0 <= rising(high)
    while high - low > 1:
        guess = low + max(1, min(high - low - 1, math.ceil((high - low) * -first / (second - first))))
        found = rising(guess)
        if found >= 0:
            high, second = guess, found
        else:
            low, first = guess, found
    return high


def _horizon(cook: Cook, left_min: float) -> float:
    """How long fresh coals have to last [min]: to the end where it is near, else until the next renewing."""
    if left_min <= figure("renew after").value:
        return left_min
    return figure("renew every" if cook.holds == "iron" else "renew simmer").value


def renewals(
    coals: Coals,
    *,
    way: Way,
    minutes: float,
    diameter_in: int,
    depth: Depth,
    day: Day,
    food_kg: float | None = None,
    lying: float | None = None,
    age_min: float = 0.0,
    preheat_min: float = 0.0,
) -> tuple[Refresh, ...]:
    """Fresh coals during a stage of `minutes`, divided as its coals are; minutes count from the stage's start.

    `lying` coals of `age_min` minutes are on the pot; all of them fresh where nothing is said.
    """
    if way in UNFOLLOWED:
        return _by_the_clock(coals, minutes, coals.total if lying is None else lying, age_min)
    kg = usual_kg(diameter_in, depth) if food_kg is None else food_kg
    faster = wind_factor(diameter_in, depth, coals.aim_f, day.air_f, day.wind, day.screen)
    this = cook(
        way=way,
        coals=round(coals.total if lying is None else lying, 1),
        exact=coals.exact,
        aim_f=coals.aim_f,
        diameter_in=diameter_in,
        depth=depth,
        air_f=day.air_f,
        faster=faster,
        elevation_ft=day.elevation_ft,
        # Whole kilograms: the band does not feel a few spoonfuls, and like pots are followed once.
        food_kg=float(max(whole(kg), 1)),
        age_min=round(age_min),
        preheat_min=preheat_min,
    )
    return tuple(_refresh(coals, at, more) for at, more in batches(this, minutes))


def renewing(fresh: tuple[Refresh, ...], minutes: float) -> tuple[Reason, ...]:
    """Why fresh coals are laid on; nothing where none are."""
    total = sum(more.top + more.under for more in fresh)
    if not total:
        return ()
    chimney = figure("chimney").value
    return (RENEW.says("coals", figure("renew after"), minutes=minutes, total=total, chimney=chimney),)


def _refresh(coals: Coals, at_min: float, more: int) -> Refresh:
    top = min(whole(more * coals.top / coals.total), more)
    return Refresh(at_min=at_min, light_at_min=at_min - figure("chimney").value, top=top, under=more - top)


def _by_the_clock(coals: Coals, minutes: float, lying: float, age_min: float) -> tuple[Refresh, ...]:
    """Where there is no band to steer by (open frying, a rolling boil): when a quarter of the heat is gone it is put back."""
    glow = ember()
    beds = [(lying, -age_min)]
    found, now = [], EVERY
    while now <= minutes - LAST_MIN and coals.total:
        heat = sum(count * glow.left(now - since) for count, since in beds)
        if heat < RENEWED_BELOW * coals.total:
            more = max(1, whole(coals.total - heat))
            found.append(_refresh(coals, now, more))
            beds.append((more, now))
        now += EVERY
    return tuple(found)


@lru_cache(maxsize=1024)
def minutes_to_boil(
    *,
    food_kg: float,
    diameter_in: int,
    depth: Depth,
    coals: float,
    air_f: float,
    elevation_ft: float,
    is_hot: bool,
) -> float:
    """How long [min] a covered pot of `food_kg` takes to boil over so many coals, the iron hot from browning or cold."""
    burning = ember()
    aim = figure("bake").value
    body = pot_body(
        way="boil",
        loss_w_k=held_loss(
            coals=baseline(diameter_in, aim).total,
            aim_f=aim,
            diameter_in=diameter_in,
            depth=depth,
            air_f=CHART_AIR_F,
            faster=1.0,
        ),
        diameter_in=diameter_in,
        depth=depth,
        air_f=air_f,
        boil_f=boiling_f(elevation_ft),
        food_kg=food_kg,
    )
    state = State(iron_f=aim if is_hot else air_f, food_f=FOOD_STARTS_F, modes=modes(burning, coals))
    for at, here in history(state, body, burning, minutes=LONGEST_TO_BOIL_MIN, every_min=2.0):
        if here.food_f >= body.boil_f - 1:
            return at
    return LONGEST_TO_BOIL_MIN
