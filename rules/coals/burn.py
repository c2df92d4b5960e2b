"""How coals fade and what the pot does meanwhile: iron and food as two nodes, in closed form (handbook chapter 5).

A briquette gives s(t) = 1 - (1 - exp(-t / tau))^n of its first heat: level at first, then fading. Multiplied out that is a
sum of n exponentials, so iron and food, tied by a conductance, have an exact solution over any interval. Food does not
pass the boiling point: from there on its surplus leaves as steam. Temperatures in °F outside, heat in watts.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache

from rules.recipe import Struct

DEGREES_F_PER_K = 1.8
#: Two rates closer than this (relative) would divide by zero; the solution is smooth, so one is nudged.
RESONANCE = 1e-7
#: How closely the moment of boiling is found [°F, min], and the most trials for it.
CLOSE_F, CLOSE_MIN, MOST_TRIALS = 1e-5, 1e-9, 60


class Ember(Struct, frozen=True, kw_only=True):
    """How one briquette burns: first useful heat that reaches the pot [W], time constant [min], steepness n."""

    reaching_w: float
    tau_min: float
    steepness: int

    def left(self, minutes: float) -> float:
        """The share of the first heat left after so many minutes on the pot."""
        return 1 - (1 - math.exp(-max(minutes, 0.0) / self.tau_min)) ** self.steepness

    def age_at(self, left: float) -> float:
        """How old [min] a briquette is that has this share left; the inverse of `left`."""
        if left >= 1:
            return 0.0
        return -self.tau_min * math.log(1 - (1 - max(left, 1e-6)) ** (1 / self.steepness))

    def mean_left(self, minutes: float) -> float:
        """The mean of `left` from 0 to `minutes`."""
        return (
            sum(
                weight * self.tau_min / order * (1 - math.exp(-order * minutes / self.tau_min))
                for order, weight in enumerate(_weights(self.steepness), start=1)
            )
            / minutes
        )

    @property
    def minutes_in_all(self) -> float:
        """All its heat over its first heat [min]: the integral of `left`."""
        return self.tau_min * sum(1 / order for order in range(1, self.steepness + 1))


class Body(Struct, frozen=True, kw_only=True):
    """A pot with food: heat capacities [J/K], what the pot loses [W/K], what passes to the food [W/K], °F around it.

    `loss_w_k` counts from the air; `food_j_k` 0 leaves the food out.
    """

    iron_j_k: float
    loss_w_k: float
    food_j_k: float
    contact_w_k: float
    air_f: float
    boil_f: float


class State(Struct, frozen=True, kw_only=True):
    """A moment: iron and food [°F], and the heat of the coals as amplitudes of its exponentials [W]."""

    iron_f: float
    food_f: float
    modes: tuple[float, ...]

    @property
    def heat_w(self) -> float:
        """Heat that reaches the pot now [W]."""
        return sum(self.modes)


@lru_cache(maxsize=64)
def _weights(steepness: int) -> tuple[float, ...]:
    """1 - (1 - x)^n written as the sum of weight_k x^k, k = 1 .. n."""
    return tuple((-1.0) ** (k + 1) * math.comb(steepness, k) for k in range(1, steepness + 1))


def modes(ember: Ember, coals: float, age_min: float = 0.0) -> tuple[float, ...]:
    """The amplitudes [W] of `coals` briquettes that have lain for `age_min` [min]."""
    return tuple(
        coals * ember.reaching_w * weight * math.exp(-order * age_min / ember.tau_min)
        for order, weight in enumerate(_weights(ember.steepness), start=1)
    )


def with_coals(state: State, ember: Ember, coals: float, age_min: float = 0.0) -> State:
    """The same moment with more coals laid on."""
    more = modes(ember, coals, age_min)
    return State(
        iron_f=state.iron_f,
        food_f=state.food_f,
        modes=tuple(a + b for a, b in zip(state.modes, more, strict=True)),
    )


class Step(Struct, frozen=True, kw_only=True):
    """One interval of a body as a linear map: iron and food over the air [K] and the modes, before and after.

    `below` and `boiling` hold (matrix 2x2 as four numbers, response of iron and food to each mode).
    """

    decay: tuple[float, ...]
    matrix: tuple[float, float, float, float]
    iron_by_mode: tuple[float, ...]
    food_by_mode: tuple[float, ...]


@lru_cache(maxsize=4096)
def _below(body: Body, ember: Ember, minutes: float) -> Step:
    """The interval while the food is below its boiling point (or there is none)."""
    seconds = minutes * 60
    loss, contact = body.loss_w_k, body.contact_w_k if body.food_j_k else 0.0
    food = body.food_j_k or 1.0
    a, b = -(loss + contact) / body.iron_j_k, contact / body.iron_j_k
    c, d = contact / food, -contact / food
    matrix = _exponential(a, b, c, d, seconds)
    iron, by_food, decay = [], [], []
    for order in range(1, ember.steepness + 1):
        rate = order / (ember.tau_min * 60)
        iron_v, food_v = _particular(a, b, c, d, 1 / body.iron_j_k, rate)
        fall = math.exp(-rate * seconds)
        iron.append(iron_v * fall - matrix[0] * iron_v - matrix[1] * food_v)
        by_food.append(food_v * fall - matrix[2] * iron_v - matrix[3] * food_v)
        decay.append(fall)
    return Step(decay=tuple(decay), matrix=matrix, iron_by_mode=tuple(iron), food_by_mode=tuple(by_food))


def _exponential(a: float, b: float, c: float, d: float, t: float) -> tuple[float, float, float, float]:
    """exp(t M) of a 2x2 matrix with real eigenvalues (b c >= 0), after Cayley and Hamilton."""
    half, root = (a + d) / 2, math.sqrt(((a - d) / 2) ** 2 + b * c)
    # Both eigenvalues are at most 0, so neither exponential overflows; the hyperbolic functions of the root would.
    slow, fast = math.exp((half + root) * t), math.exp((half - root) * t)
    even = (slow + fast) / 2
    odd = (slow - fast) / (2 * root) if root else slow * t
    return even + (a - half) * odd, b * odd, c * odd, even + (d - half) * odd


def _particular(a: float, b: float, c: float, d: float, drive: float, rate: float) -> tuple[float, float]:
    """Iron and food that follow a heat exp(-rate t) of 1 W at the same rate: (-rate - M) v = (drive, 0)."""
    determinant = (a + rate) * (d + rate) - b * c
    if abs(determinant) < RESONANCE * (abs(a * d) + rate * rate):
        return _particular(a, b, c, d, drive, rate * (1 + 10 * RESONANCE))
    return -(d + rate) * drive / determinant, c * drive / determinant


@lru_cache(maxsize=4096)
def _boiling(body: Body, ember: Ember, minutes: float) -> Step:
    """The interval while the food boils: it stays, and only the iron follows the coals."""
    seconds = minutes * 60
    a = -(body.loss_w_k + body.contact_w_k) / body.iron_j_k
    fall = math.exp(a * seconds)
    iron, decay = [], []
    for order in range(1, ember.steepness + 1):
        rate = order / (ember.tau_min * 60)
        gap = a + rate
        if abs(gap) < RESONANCE * rate:
            gap = RESONANCE * rate
        following = -1 / (body.iron_j_k * gap)
        here = math.exp(-rate * seconds)
        iron.append(following * (here - fall))
        decay.append(here)
    share = body.contact_w_k / (body.loss_w_k + body.contact_w_k)
    zero = (0.0,) * ember.steepness
    return Step(
        decay=tuple(decay),
        matrix=(fall, share * (1 - fall), 0.0, 1.0),
        iron_by_mode=tuple(iron),
        food_by_mode=zero,
    )


def _applied(step: Step, body: Body, state: State) -> State:
    iron = (state.iron_f - body.air_f) / DEGREES_F_PER_K
    food = (state.food_f - body.air_f) / DEGREES_F_PER_K
    a, b, c, d = step.matrix
    new_iron = a * iron + b * food + sum(map(float.__mul__, step.iron_by_mode, state.modes))
    new_food = c * iron + d * food + sum(map(float.__mul__, step.food_by_mode, state.modes))
    return State(
        iron_f=body.air_f + new_iron * DEGREES_F_PER_K,
        food_f=body.air_f + new_food * DEGREES_F_PER_K,
        modes=tuple(map(float.__mul__, state.modes, step.decay)),
    )


def after(state: State, body: Body, ember: Ember, minutes: float) -> State:
    """The state `minutes` later, exact up to the moments when the food starts or stops boiling (found by trial)."""
    if minutes <= 0:
        return state
    if body.food_j_k and _is_boiling(state, body):
        end = _applied(_boiling(body, ember, minutes), body, state)
        if end.iron_f >= body.boil_f:
            return end
        # The iron falls below the boiling point: the food cools from there on.
        stop = _crossing(state, body, ember, minutes, boiling=True)
        then = _applied(_boiling(body, ember, stop), body, state)
        # Just off the boil, so that the rest of the interval is the cooling one.
        then = State(iron_f=then.iron_f, food_f=body.boil_f - 1e-9, modes=then.modes)
        return _applied(_below(body, ember, minutes - stop), body, then)
    end = _applied(_below(body, ember, minutes), body, state)
    if not body.food_j_k or end.food_f < body.boil_f:
        return end
    start = _crossing(state, body, ember, minutes, boiling=False)
    then = _applied(_below(body, ember, start), body, state)
    then = State(iron_f=then.iron_f, food_f=body.boil_f, modes=then.modes)
    return _applied(_boiling(body, ember, minutes - start), body, then)


def _is_boiling(state: State, body: Body) -> bool:
    return state.food_f >= body.boil_f and state.iron_f >= body.boil_f


def _crossing(state: State, body: Body, ember: Ember, minutes: float, *, boiling: bool) -> float:
    """When within the interval the food comes to the boil, or (`boiling`) the iron falls below it [min]."""

    def over(at: float) -> float:
        """Above 0 once it has happened."""
        there = _applied((_boiling if boiling else _below).__wrapped__(body, ember, at), body, state)
        return body.boil_f - there.iron_f if boiling else there.food_f - body.boil_f

    # False position with the standing end's weight halved (Illinois): brackets, and needs no slope.
    low, high = 0.0, minutes
    at_low, at_high = over(low), over(high)
    side = 0
    for _ in range(MOST_TRIALS):
        if high - low < CLOSE_MIN or at_high - at_low <= 0:
            break
        guess = (low * at_high - high * at_low) / (at_high - at_low)
        found = over(guess)
        if abs(found) < CLOSE_F:
            return guess
        if found > 0:
            high, at_high = guess, found
            at_low /= 2 if side > 0 else 1
            side = 1
        else:
            low, at_low = guess, found
            at_high /= 2 if side < 0 else 1
            side = -1
    return high


def history(
    state: State,
    body: Body,
    ember: Ember,
    *,
    minutes: float,
    fresh: Sequence[tuple[float, float]] = (),
    every_min: float = 5.0,
) -> list[tuple[float, State]]:
    """States every `every_min` minutes, `fresh` coals (at minute, how many) laid on as they come."""
    marks = sorted(
        {at for at, _ in fresh} | {n * every_min for n in range(int(minutes / every_min) + 1)} | {minutes}
    )
    points, now = [], 0.0
    for mark in marks:
        state = after(state, body, ember, mark - now)
        now = mark
        for at, coals in fresh:
            if at == mark:
                state = with_coals(state, ember, coals)
        points.append((mark, state))
    return points
