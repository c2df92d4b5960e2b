"""Fresh briquettes for a long cook: when they are lit, when they go on, how many (handbook chapter 5).

The pot is followed through the cook. As soon as what matters would leave its band before the next chance, so many
fresh coals go on as hold it for the usual half hour, or to the end where that is near: the iron for a bake or roast,
the food for a simmer. After 45 minutes the first ones go on in any case, as cooks do.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import lru_cache

from rules.because import Rule
from rules.circumstances import Day
from rules.coals.burn import State, after, with_coals
from rules.coals.chart import whole
from rules.coals.cook import EVERY, Cook, cook, usual_kg
from rules.coals.counts import Coals, Way
from rules.coals.figures import figure
from rules.coals.glow import useful_min
from rules.coals.weather import wind_factor
from rules.plan import Depth, Reason, Refresh

#: Fresh coals are so counted that more than this is left of the band [°F].
STEERED_F = 5.0
#: Nothing goes on by the clock in the last minutes [min].
LAST_MIN = 10.0
#: So near to the end [min] the clock alone lights nothing while the band holds.
NEAR_MIN = 20.0
#: Fresh coals are felt by a pot of food after this long [min].
FELT_AFTER_MIN = 15.0
#: Nobody lights a chimney for a coal or two: a renewing is this share of the first coals at least, by the clock more.
FEWEST_SHARE, BY_CLOCK_SHARE = 0.15, 0.25
#: A pot that has not come into its band by then is helped [min].
SLOW_MIN = 30.0
#: Ways without a temperature to steer by: their coals are renewed when their heat has fallen to this share.
UNFOLLOWED: frozenset[Way] = frozenset({"fry", "gentle fry", "boil", "bring up", "brown top"})
RENEWED_BELOW = 0.75

RENEW = Rule(
    id="coals.renew",
    because="briquettes give useful heat for 45 to 60 minutes and fade: {minutes:.0f} minutes on the coals need {total}"
    " fresh ones, lit {chimney:.0f} minutes before they go on",
)


@lru_cache(maxsize=2048)
def batches(cook: Cook, minutes: float) -> tuple[tuple[float, int], ...]:
    """Fresh coals (at minute, how many) that keep the cook in its band from the end of its warm-up."""
    found: list[tuple[float, int]] = []
    state, now, last, is_warm = cook.start, 0.0, -cook.age_min, cook.holds == "food"
    while now < minutes - 1e-9:
        left = minutes - now
        step = min(EVERY, left)
        then = after(state, cook.body, cook.ember, step)
        is_warm = is_warm or cook.held(state) >= cook.low_f or now >= SLOW_MIN
        needs = is_warm and cook.held(then) < cook.low_f + _margin(cook, now - last if found else None, left)
        is_due = now > 0 and now - last >= _clock(cook, is_first=not found) and left > LAST_MIN
        if (needs or is_due) and _lasts(cook, state, left):
            needs, is_due = False, is_due and left > NEAR_MIN and now - last + left > useful_min()
        share = BY_CLOCK_SHARE if is_due else FEWEST_SHARE
        more = _enough(cook, state, left, at_least=share) if needs or is_due else 0
        # What is due by the clock alone waits until the band bears a chimney's worth.
        if more and (needs or more >= FEWEST_SHARE * cook.start.heat_w / cook.ember.reaching_w):
            found.append((now, more))
            state, last = with_coals(state, cook.ember, more), now
            then = after(state, cook.body, cook.ember, step)
        state, now = then, now + step
    return tuple(found)


def _margin(cook: Cook, since_min: float | None, left_min: float) -> float:
    """How much of the band must be left [°F] while nothing is done about it.

    None at the very end; a pot of food, which falls slowly, is not fed again before the last coals are felt.
    """
    if left_min <= EVERY:
        return 0.0
    is_felt = since_min is None or since_min >= FELT_AFTER_MIN
    return cook.trigger_f if cook.holds == "iron" or is_felt else 1.0


def _lasts(cook: Cook, state: State, left_min: float) -> bool:
    """Whether what lies there keeps the cook in its band to an end that is near."""
    if left_min > figure("renew after").value:
        return False
    while left_min > 1e-9:
        step = min(EVERY, left_min)
        state = after(state, cook.body, cook.ember, step)
        left_min -= step
        if cook.held(state) < cook.low_f:
            return False
    return True


def _clock(cook: Cook, *, is_first: bool) -> float:
    """When coals go on by the clock alone [min]: the first after 45 minutes; a simmer's again and again."""
    if is_first:
        return figure("renew after").value
    return figure("renew simmer").value if cook.holds == "food" else math.inf


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
    coals: Coals, *, way: Way, minutes: float, diameter_in: int, depth: Depth, day: Day
) -> tuple[Refresh, ...]:
    """Fresh coals during `minutes` over so many fresh ones, divided as they are, for a pot as full as pots usually are.

    Minutes count from coals on; the pot is cold and its food is in it.
    """
    this = cook(
        way=way,
        coals=float(coals.total),
        exact=coals.exact,
        aim_f=coals.aim_f,
        diameter_in=diameter_in,
        depth=depth,
        air_f=day.air_f,
        faster=wind_factor(diameter_in, depth, coals.aim_f, day.air_f, day.wind, day.screen),
        elevation_ft=day.elevation_ft,
        food_kg=usual_kg(diameter_in, depth),
    )
    return fresh_coals(this, coals, way=way, minutes=minutes, lying=coals.total)


def fresh_coals(this: Cook, coals: Coals, *, way: Way, minutes: float, lying: float) -> tuple[Refresh, ...]:
    """Fresh coals during a stage of `minutes` from its start, divided as its coals are; `lying` ones are on the pot."""
    if way in UNFOLLOWED:
        return _by_the_clock(coals, minutes, lying, this)
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


def _by_the_clock(coals: Coals, minutes: float, lying: float, this: Cook) -> tuple[Refresh, ...]:
    """Where there is no band to steer by (open frying, a rolling boil): when a quarter of the heat is gone it is put back."""
    glow = this.ember
    beds = [(lying, -this.age_min)]
    found, now = [], EVERY
    while now <= minutes - FELT_AFTER_MIN and coals.total:
        heat = sum(count * glow.left(now - since) for count, since in beds)
        if heat < RENEWED_BELOW * coals.total:
            more = max(1, whole(coals.total - heat))
            found.append(_refresh(coals, now, more))
            beds.append((more, now))
        now += EVERY
    return tuple(found)
