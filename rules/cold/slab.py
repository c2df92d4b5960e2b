"""How long a flat bag takes to freeze or to thaw: the enthalpy method, integrated over the bag's own heat content.

The bag has one mean temperature for its mean heat content, as composition and ice give it. What flows passes the film
at its faces and a part of its half thickness, which grows as the change eats its way in. So the time to give or take
each small portion of heat follows, and their sum: a few dozen steps instead of thousands. Held against the enthalpy
method solved over the thickness. Temperatures in °C, heat in kJ/kg, lengths in m, h in W/(m2 K), times in hours.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Sequence
from functools import lru_cache

from rules.cold.composition import Composition, conductivity, density, specific_heat
from rules.cold.freezing import freezing_point, ice_fraction
from rules.cold.hours import figure
from rules.recipe import Struct

SECONDS_PER_HOUR = 3600
#: Points of a heat content's curve: the closer, the nearer to where most of the ice melts.
COLDEST_C, WARMEST_C = -40.0, 40.0
COLD_POINTS, MELTING_POINTS, WARM_POINTS = 12, 14, 6
#: Above the freezing point, where melting is done [K]; what is colder by so much is no warmer than its surroundings.
JUST_ABOVE, JUST_SHORT = 0.05, 0.02
#: Below the freezing point so far most of the ice melts [K].
MELTING_FROM = 2.0
#: The end of freezing is a temperature and is met on the way; that of thawing is known beforehand.
FREEZING_STEPS, THAWING_STEPS = 48, 16
#: The face's temperature settles within so many rounds.
ROUNDS = 2


class Curve(Struct, frozen=True, kw_only=True):
    """A food's heat content and conductivity over temperature, point by point."""

    temps: tuple[float, ...]
    heats: tuple[float, ...]
    conductivities: tuple[float, ...]

    def heat(self, temp_c: float) -> float:
        """The heat content at a temperature."""
        return _read(self.temps, self.heats, temp_c)

    def temp(self, heat_kj: float) -> float:
        """The temperature at a heat content."""
        return _read(self.heats, self.temps, heat_kj)

    def conductivity(self, temp_c: float) -> float:
        """The conductivity at a temperature, ice included [W/(m K)]."""
        return _read(self.temps, self.conductivities, temp_c)


@lru_cache(maxsize=512)
def curve(food: Composition) -> Curve:
    """The curve of a food, computed once."""
    begins = freezing_point(food)
    knee = max(begins - MELTING_FROM, COLDEST_C)
    span = (begins - COLDEST_C) / MELTING_FROM
    cold = [
        begins - MELTING_FROM * span ** (place / COLD_POINTS) for place in range(COLD_POINTS + 1) if span > 1
    ]
    melting = [
        begins - (begins - knee) * (1 - place / MELTING_POINTS) ** 2 for place in range(MELTING_POINTS + 1)
    ]
    first = max(begins + JUST_ABOVE, COLDEST_C)
    warm = [first + (WARMEST_C - first) * place / WARM_POINTS for place in range(WARM_POINTS + 1)]
    temps = tuple(sorted({*cold, *melting, *warm}))
    ice = [ice_fraction(food, temp) for temp in temps]
    heats = [0.0]
    for low, high, more, less in zip(temps, temps[1:], ice, ice[1:], strict=False):
        warming = specific_heat(food, (low + high) / 2, ice=(more + less) / 2) * (high - low)
        heats.append(heats[-1] + warming + (more - less) * figure("latent_heat").value)
    return Curve(
        temps=temps,
        heats=tuple(heats),
        conductivities=tuple(
            conductivity(food, temp, ice=frozen) for temp, frozen in zip(temps, ice, strict=True)
        ),
    )


def freezing_hours(
    food: Composition, *, thickness: float, freezer_c: float, start_c: float, h: float
) -> float:
    """Hours until the middle of a flat bag is as cold as what is called frozen through; infinite when it never is."""
    through = max(figure("frozen_through").value, freezer_c + 2)
    if freezing_point(food) <= through:
        return math.inf
    line = curve(food)
    first, last = line.heat(start_c), line.heat(freezer_c + JUST_SHORT)
    seconds, before = 0.0, start_c
    for heat in _portions(first, last, FREEZING_STEPS):
        mean = line.temp(heat)
        share = min(1.0, (first - heat) / (first - line.heat(through)))
        flow, path = _flow(line, mean, freezer_c, thickness / 2, h, share)
        portion = (first - last) / FREEZING_STEPS / -flow
        # The middle of a slab is warmer than its mean by half of what the mean is warmer than the face.
        middle = mean - flow * path / 2
        if middle <= through:
            seconds += portion * (before - through) / (before - middle)
            break
        seconds, before = seconds + portion, middle
    return seconds * 1000 * density(food, max(start_c, 0.0)) * thickness / 2 / SECONDS_PER_HOUR


def thaw_hours(
    food: Composition, *, thickness: float, around_c: float, h: float, from_c: float, share: float
) -> float:
    """Hours until `share` of the heat that thaws the bag has come in; infinite where it is too cold to thaw."""
    line = curve(food)
    first, thawed = line.heat(from_c), line.heat(freezing_point(food) + JUST_ABOVE)
    if thawed <= first:
        return 0.0
    last = first + share * (thawed - first)
    if around_c <= max(line.temp(last), freezing_point(food)):
        return math.inf
    seconds = 0.0
    for heat in _portions(first, last, THAWING_STEPS):
        flow, _ = _flow(line, line.temp(heat), around_c, thickness / 2, h, (heat - first) / (thawed - first))
        if flow <= 0:
            return math.inf
        seconds += (last - first) / THAWING_STEPS / flow
    return seconds * 1000 * density(food, 0.0) * thickness / 2 / SECONDS_PER_HOUR


def _portions(first: float, last: float, steps: int) -> Sequence[float]:
    """The middle of each portion of heat."""
    return [first + (last - first) * (place + 0.5) / steps for place in range(steps)]


def _flow(
    line: Curve, mean_c: float, around_c: float, half: float, h: float, share: float
) -> tuple[float, float]:
    """The heat that comes in through one face [W/m2] when `share` of the change is done, and what hinders it inside."""
    face = mean_c
    flow = path = 0.0
    for _ in range(ROUNDS):
        path = figure("path_in_slab").value * share * half / line.conductivity((mean_c + face) / 2)
        flow = (around_c - mean_c) / (1 / h + path)
        face = around_c - flow / h
    return flow, path


def _read(xs: Sequence[float], ys: Sequence[float], x: float) -> float:
    """The value between two points of a rising curve; beyond its ends the end's."""
    place = bisect_left(xs, x)
    if place == 0:
        return ys[0]
    if place == len(xs):
        return ys[-1]
    low, high = xs[place - 1], xs[place]
    return ys[place - 1] + (ys[place] - ys[place - 1]) * (x - low) / (high - low)
