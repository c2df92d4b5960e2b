"""The fit: what a whole log says of every effect, as means with their covariance.

Conjugate Bayesian regression on logarithms, which is least squares held towards nothing: every effect is 0 give or
take its spread before the first cook. How far the log scatters about the fit tells how much the next line is worth,
so a noisy log teaches slowly. Everything is closed form and small: a handful of effects, so no library is asked.
Source: A. Gelman and others, Bayesian Data Analysis, 3rd ed., 2013, section 14.8 (regression with a normal prior).
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from rules.circumstances import Habit
from rules.habit.evidence import Evidence, evidence, spread
from rules.habit.figures import figure
from rules.habit.record import Cooked

#: Scatter and means are found in turn; after so many turns neither moves by a thousandth.
TURNS = 8

Matrix = list[list[float]]


def fit(cooks: Iterable[Cooked]) -> Habit | None:
    """What a log teaches; None while it teaches nothing."""
    lines = [(cook, tuple(evidence(cook))) for cook in cooks]
    told = [equation for _, equations in lines for equation in equations]
    if not told:
        return None
    effects = tuple(sorted({name for equation in told for name in equation.weights}))
    scatter = 1.0
    mean, spread_of = _solved(effects, told, scatter)
    for _ in range(TURNS):
        scatter = _scatter(effects, told, mean)
        mean, spread_of = _solved(effects, told, scatter)
    return Habit(
        effects=effects,
        mean=tuple(mean),
        covariance=tuple(tuple(row) for row in spread_of),
        cooks=sum(bool(equations) for _, equations in lines),
    )


def _scatter(effects: Sequence[str], told: Sequence[Evidence], mean: Sequence[float]) -> float:
    """How much larger [variance] the noise of this log is than the table's; few figures leave the table's."""
    weight = figure("noise weight")
    means = dict(zip(effects, mean, strict=True))
    missed = (
        (equation.value - sum(part * means[name] for name, part in equation.weights.items())) / equation.noise
        for equation in told
    )
    return (weight + math.fsum(miss * miss for miss in missed)) / (weight + len(told))


def _solved(effects: Sequence[str], told: Sequence[Evidence], scatter: float) -> tuple[list[float], Matrix]:
    """Mean and covariance of the effects for a given scatter."""
    size = len(effects)
    place = {name: number for number, name in enumerate(effects)}
    precision: Matrix = [[0.0] * size for _ in effects]
    pull = [0.0] * size
    for name in effects:
        precision[place[name]][place[name]] = 1 / spread(name) ** 2
    for equation in told:
        sure = 1 / (scatter * equation.noise**2)
        for one, weight in equation.weights.items():
            pull[place[one]] += sure * weight * equation.value
            for other, its in equation.weights.items():
                precision[place[one]][place[other]] += sure * weight * its
    covariance = inverse(precision)
    return [math.fsum(a * b for a, b in zip(row, pull, strict=True)) for row in covariance], covariance


def inverse(matrix: Sequence[Sequence[float]]) -> Matrix:
    """The inverse of a symmetric, positive definite matrix by elimination; such a one needs no change of rows."""
    size = len(matrix)
    rows = [[*row, *(float(a == b) for b in range(size))] for a, row in enumerate(matrix)]
    for column in range(size):
        pivot = rows[column][column]
        rows[column] = [cell / pivot for cell in rows[column]]
        for row in range(size):
            by = rows[row][column]
            if row != column and by:
                rows[row] = [cell - by * above for cell, above in zip(rows[row], rows[column], strict=True)]
    return [row[size:] for row in rows]
