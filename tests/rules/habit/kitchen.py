"""A synthetic cook: a pot, a charcoal and a hand that stray from the chart by known factors, with noise."""

from __future__ import annotations

import math
from collections.abc import Sequence
from random import Random
from typing import NamedTuple

from rules.circumstances import Day, Habit
from rules.habit import Cooked, Told, coal_factor, fit, minutes_factor, split_factor

CHART_MIN, AIM_F, AIR_F, COALS = 60.0, 350.0, 70.0, 24


class Bias(NamedTuple):
    """What is true and nobody knows: logarithms; `per_heat` is how time follows heat in this kitchen."""

    pot: float = 0.0
    charcoal: float = 0.0
    minutes: float = 0.0
    noise: float = 0.1
    per_heat: float = 1.5
    split: float = 0.0


def day(habit: Habit | None) -> Day:
    return Day(habit=habit)


def planned_min(habit: Habit | None) -> float:
    """What the plan says after what was learnt."""
    return CHART_MIN * minutes_factor(day(habit), "bake", 12, "shallow").factor


def true_min(bias: Bias, habit: Habit | None) -> float:
    """What it takes on the average over the coals that the plan then asks for."""
    laid = math.log(coal_factor(day(habit), 12, "shallow").factor)
    return CHART_MIN * math.exp(bias.minutes - bias.per_heat * (bias.pot + bias.charcoal + laid))


def error(bias: Bias, habit: Habit | None) -> float:
    """How far the plan's minutes are from those that it takes on the average, as a logarithm."""
    return abs(math.log(planned_min(habit) / true_min(bias, habit)))


def one_cook(bias: Bias, habit: Habit | None, chance: Random, *, with_reading: bool) -> Cooked:
    """A meal as it was logged: minutes, and with a thermometer in the pot its reading."""
    factor = coal_factor(day(habit), 12, "shallow").factor
    heat = bias.pot + bias.charcoal + math.log(factor)
    minutes = true_min(bias, habit) * math.exp(chance.gauss(0, bias.noise))
    read_f = AIR_F + (AIM_F - AIR_F) * math.exp(heat + chance.gauss(0, bias.noise / 2))
    odds = 2.0 * split_factor(day(habit), 12, "shallow").factor
    total = COALS * factor
    top = round(total * odds / (1 + odds))
    return Cooked(
        dish="Gravel Bar Peach Cobbler",
        kind="bake",
        diameter_in=12,
        depth="shallow",
        air_f=AIR_F,
        wind="calm",
        aim_f=AIM_F,
        chart_low_min=CHART_MIN,
        chart_high_min=CHART_MIN,
        chart_top=16,
        chart_under=8,
        laid_top=top,
        laid_under=round(total) - top,
        told=Told(minutes=minutes, pot_f=read_f if with_reading else None),
    )


def season(bias: Bias, seed: int, *, meals: int = 5, with_reading: bool = False) -> Sequence[float]:
    """The errors before each meal and after the last, each meal planned by what the earlier ones taught."""
    chance, log, habit = Random(seed), [], None
    errors = [error(bias, habit)]
    for _ in range(meals):
        log.append(one_cook(bias, habit, chance, with_reading=with_reading))
        habit = fit(log)
        errors.append(error(bias, habit))
    return errors
